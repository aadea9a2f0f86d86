import { blendCurve, type FlourData } from '../../core/calc/flour/flour.ts';
import type { Composition } from '../../core/calc/formula/composition.ts';
import type { HeatItem } from '../../core/calc/heat/heat-content.ts';
import type { MixerData } from '../../core/calc/mixing/mixer.ts';
import type { MixingInput, MixingPhase, MixPortion } from '../../core/calc/mixing/mixing-programme.ts';
import { portionOf } from './mixing-portion.ts';

// USDA SR27, NDB 20083, bread flour.
export const breadFlour: Composition = {
  water: 0.1336,
  protein: 0.1198,
  fat: 0.0166,
  carbohydrate: 0.7253,
  fibre: 0.024,
  ash: 0.0047,
};
export const water: Composition = { water: 1, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 };
export const salt: Composition = {
  water: 0,
  protein: 0,
  fat: 0,
  carbohydrate: 0,
  fibre: 0,
  ash: 1,
  saltFraction: 1,
};
export const butter: Composition = {
  water: 0.16,
  protein: 0.01,
  fat: 0.83,
  carbohydrate: 0,
  fibre: 0,
  ash: 0,
};

export const strongWhite: FlourData = {
  grain: 'wheat',
  milling: 'white',
  protein: 0.13,
  proteinMoistureBasis: 0.14,
  moisture: 0.14,
};
export const wholemeal13: FlourData = { ...strongWhite, milling: 'wholemeal' };

export const hand: MixerData = { kind: 'hand', speeds: [] };
export const spiral: MixerData = {
  kind: 'spiral',
  speeds: [
    { number: 1, rpm: 100 },
    { number: 2, rpm: 200 },
  ],
};
export const planetary: MixerData = {
  kind: 'planetary',
  speeds: [60, 95, 130, 165, 200, 250].map((rpm, index) => ({ number: index + 1, rpm })),
};

export function item(
  label: string,
  grams: number,
  celsius: number,
  composition: Composition,
  kind: HeatItem['kind'],
): HeatItem {
  return { label, grams, celsius, composition, kind };
}

export function flourPortion(grams: number, celsius = 21, moisture = 0.14): MixPortion {
  return portionOf(
    { ...item('flour', grams, celsius, breadFlour, 'flour'), dryFlourMoisture: moisture },
    'flour',
  );
}

export function waterPortion(grams: number, celsius = 21): MixPortion {
  return portionOf(item('water', grams, celsius, water, 'water'), 'other');
}

export function temperedWater(grams: number): MixPortion {
  return { ...waterPortion(grams), tempered: true };
}

export function saltPortion(grams: number, celsius = 21): MixPortion {
  return portionOf(item('salt', grams, celsius, salt, 'salt'), 'salt');
}

export function butterPortion(grams: number, celsius = 8): MixPortion {
  return portionOf(item('butter', grams, celsius, butter, 'other'), 'other');
}

/** A dough of flour and water, 2 % salt, worked by one programme. */
export function programme(
  flour: FlourData,
  hydration: number,
  mixer: MixerData,
  work: readonly MixingPhase[],
  options: { flourGrams?: number; saltFirst?: boolean; restFirstMinutes?: number } = {},
): MixingInput {
  const grams = options.flourGrams ?? 1000;
  const saltLoad: MixingPhase = { kind: 'add', portions: [saltPortion(grams * 0.02)] };
  const phases: MixingPhase[] = [
    { kind: 'load', portions: [flourPortion(grams), waterPortion(grams * hydration)] },
  ];
  if (options.restFirstMinutes !== undefined)
    phases.push({ kind: 'rest', seconds: options.restFirstMinutes * 60 });
  phases.push(saltLoad, ...work);
  return { phases, mixer, curve: blendCurve([{ grams, flour }]), roomCelsius: 21 };
}
