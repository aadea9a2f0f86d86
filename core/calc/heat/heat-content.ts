import {
  type Composition,
  celsiusOf,
  enthalpy,
  type HeatCurve,
  heatCurve,
  heatOfHydration,
} from '../formula/composition.ts';

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
  let content = 0;
  for (const item of items) content += (item.grams / 1000) * contentOf(item);
  return celsiusOf(curveOf(items), content + extraKilojoules);
}

/** The heat of portions as dough, kJ. */
export function curveOf(items: readonly HeatItem[]): HeatCurve {
  let [a, b, c] = [0, 0, 0];
  for (const { grams, composition } of items) {
    const curve = heatCurve(composition);
    const kilograms = grams / 1000;
    a += kilograms * curve.a;
    b += kilograms * curve.b;
    c += kilograms * curve.c;
  }
  return { a, b, c };
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

/** Heat content of a portion as it lies there, kJ/kg above liquid at 0 °C. */
export function contentOf(item: HeatItem): number {
  const frozen = item.frozen ?? (item.kind !== 'water' && item.celsius < -1);
  return enthalpy(item.composition, item.celsius, frozen);
}

/** The mean temperature of all portions of a kind by their weight, °C; undefined where there is none. */
export function meanCelsius(items: readonly HeatItem[], kind: HeatKind): number | undefined {
  let [grams, sum] = [0, 0];
  for (const item of items) {
    if (item.kind !== kind) continue;
    grams += item.grams;
    sum += item.grams * item.celsius;
  }
  return grams > 0 ? sum / grams : undefined;
}

/** Whether a number can be a temperature in a bakery, oven included; others are slips that would drown every result. */
export function believableCelsius(celsius: number): boolean {
  return celsius >= -100 && celsius <= 500;
}
