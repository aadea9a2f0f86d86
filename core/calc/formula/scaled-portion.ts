import type { MixPortion } from '../mixing/mixing-programme.ts';

/** So many times a portion. */
export function scaledPortion(portion: MixPortion, factor: number): MixPortion {
  return {
    ...portion,
    grams: portion.grams * factor,
    flourGrams: portion.flourGrams * factor,
    freeWaterGrams: portion.freeWaterGrams * factor,
    fatGrams: portion.fatGrams * factor,
    sugarGrams: portion.sugarGrams * factor,
    saltGrams: portion.saltGrams * factor,
  };
}
