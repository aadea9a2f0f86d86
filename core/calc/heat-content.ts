import { type Composition, enthalpy, heatOfHydration, liquidEnthalpy } from './composition.ts';

/** What a portion is to the bakers' rule of three temperatures. Water is liquid even at a virtual temperature below 0 °C. */
export type HeatKind = 'flour' | 'water' | 'salt' | 'preferment' | 'other';

/** One portion that goes into the bowl. */
export interface HeatItem {
  readonly label: string;
  readonly grams: number;
  readonly celsius: number;
  readonly composition: Composition;
  readonly kind: HeatKind;
  /** Its water is ice, as of ice at 0 °C; absent: it is frozen below −1 °C. */
  readonly frozen?: boolean;
  /** Moisture fraction of flour loaded dry, which gives off its heat of hydration; absent for everything else. */
  readonly dryFlourMoisture?: number;
}

/** Water alone, for sums in which its trace of minerals is left out. */
export const pureWater: Composition = { water: 1, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 };

/** The temperature of portions poured together, °C, with heat given off in kJ added; NaN only for an empty bowl. */
export function mixedCelsius(items: readonly HeatItem[], extraKilojoules = 0): number {
  let grams = 0;
  let guess = 0;
  for (const item of items) {
    grams += item.grams;
    guess += item.grams * item.celsius;
  }
  if (!(grams > 0)) return Number.NaN;
  return solveCelsius((celsius) => heatTaken(items, celsius) - extraKilojoules, guess / grams);
}

/** Heat that the portions take up to reach `celsius` as dough, kJ. */
export function heatTaken(items: readonly HeatItem[], celsius: number): number {
  let sum = 0;
  for (const item of items)
    sum += (item.grams / 1000) * (liquidEnthalpy(item.composition, celsius) - contentOf(item));
  return sum;
}

/** Heat of hydration of all flour loaded dry, kJ. */
export function hydrationHeat(items: readonly HeatItem[]): number {
  let sum = 0;
  for (const item of items) {
    if (item.dryFlourMoisture !== undefined)
      sum += (item.grams / 1000) * heatOfHydration(item.dryFlourMoisture);
  }
  return sum;
}

/**
 * The temperature, °C, at which a heat content that rises with temperature misses nothing: Newton's method, the slope
 * taken numerically. NaN only where `miss` is.
 */
export function solveCelsius(miss: (celsius: number) => number, guess: number): number {
  let celsius = guess;
  for (let step = 0; step < 60; step++) {
    const here = miss(celsius);
    const slope = (miss(celsius + 0.01) - miss(celsius - 0.01)) / 0.02;
    const move = here / slope;
    celsius -= move;
    if (!(Math.abs(move) > 1e-12)) break;
  }
  return celsius;
}

function contentOf(item: HeatItem): number {
  const frozen = item.frozen ?? (item.kind !== 'water' && item.celsius < -1);
  return enthalpy(item.composition, item.celsius, frozen);
}

/** Whether a number can be a temperature in a bakery, oven included; others are slips that would drown every result. */
export function believableCelsius(celsius: number): boolean {
  return celsius >= -100 && celsius <= 500;
}
