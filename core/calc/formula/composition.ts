/**
 * What a food consists of, as fractions of its mass (0 to 1). A component that is absent is not known; it is never
 * taken for zero on a label. `carbohydrate` includes the fibre, as in the tables of the USDA.
 */
export interface Composition {
  readonly water?: number;
  readonly protein?: number;
  readonly fat?: number;
  readonly carbohydrate?: number;
  readonly fibre?: number;
  readonly ash?: number;
  readonly saturates?: number;
  readonly sugars?: number;
  readonly starch?: number;
  readonly alcohol?: number;
  /** Salt as on a label: sodium times 2.5. */
  readonly saltFraction?: number;
}

/** The components whose thermal properties Choi and Okos give. */
export type FoodComponent = 'protein' | 'fat' | 'carbohydrate' | 'fibre' | 'ash' | 'water' | 'ice';

/** Heat needed to melt a kilogram of ice, kJ/kg (ASHRAE Handbook Refrigeration, chapter 9). */
export const latentHeatOfIce = 333.6;

type Polynomial = readonly [number, number, number];

// Choi & Okos (1986), as printed in ASHRAE Handbook Refrigeration 2006, chapter 9: kJ/(kg·K) against °C. The first
// constant for water is 4.1762: one widely copied print has 4.1289, but calorimetry gives 4.176 ± 0.008.
const specificHeats: Readonly<Record<FoodComponent, Polynomial>> = {
  protein: [2.0082, 1.2089e-3, -1.3129e-6],
  fat: [1.9842, 1.4733e-3, -4.8008e-6],
  carbohydrate: [1.5488, 1.9625e-3, -5.9399e-6],
  fibre: [1.8459, 1.8306e-3, -4.6509e-6],
  ash: [1.0926, 1.8896e-3, -3.6817e-6],
  water: [4.1762, -9.0864e-5, 5.4731e-6],
  ice: [2.0623, 6.0769e-3, 0],
};

// The same source: kg/m³ against °C.
const densities: Readonly<Record<FoodComponent, Polynomial>> = {
  protein: [1329.9, -0.5184, 0],
  fat: [925.59, -0.41757, 0],
  carbohydrate: [1599.1, -0.31046, 0],
  fibre: [1311.5, -0.36589, 0],
  ash: [2423.8, -0.28063, 0],
  water: [997.18, 3.1439e-3, -3.7574e-3],
  ice: [916.89, -0.13071, 0],
};

/** Specific heat of one component, kJ/(kg·K), at −40 to 150 °C (Choi & Okos 1986). */
export function componentSpecificHeat(component: FoodComponent, celsius: number): number {
  const [a, b, c] = specificHeats[component];
  return a + celsius * (b + celsius * c);
}

/** Density of one component, kg/m³, at −40 to 150 °C (Choi & Okos 1986). */
export function componentDensity(component: FoodComponent, celsius: number): number {
  const [a, b, c] = densities[component];
  return a + celsius * (b + celsius * c);
}

/** Specific heat of a food that is not frozen, kJ/(kg·K): the mass-weighted mean of its components. */
export function specificHeat(composition: Composition, celsius: number): number {
  return slopeAt(heatCurve(composition), celsius);
}

/**
 * Heat above 0 °C of something that is not frozen, as t·(a + t·(b + t·c)) with t in °C: the integral of the specific
 * heats. In kJ/kg of a food, or in kJ of all that is summed up in it. Below 0 °C it stands for liquid water that has a
 * part of ice in it.
 */
export interface HeatCurve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** The heat of a food, kJ/kg. It is worked out once for a composition. */
export function heatCurve(composition: Composition): HeatCurve {
  const before = curves.get(composition);
  if (before !== undefined) return before;
  let [a, b, c] = [0, 0, 0];
  const parts = sharesOf(composition);
  for (const component of unfrozen) {
    const share = parts[component];
    const heat = specificHeats[component];
    a += share * heat[0];
    b += (share * heat[1]) / 2;
    c += (share * heat[2]) / 3;
  }
  const curve: HeatCurve = { a, b, c };
  curves.set(composition, curve);
  return curve;
}

/** The heat at a temperature, in the unit of the curve. */
export function heatAt({ a, b, c }: HeatCurve, celsius: number): number {
  return celsius * (a + celsius * (b + celsius * c));
}

/** Its slope, the heat capacity at a temperature, per K. */
export function slopeAt({ a, b, c }: HeatCurve, celsius: number): number {
  return a + celsius * (2 * b + celsius * 3 * c);
}

/** The temperature, °C, at which the curve holds so much heat, by Newton’s method; NaN where there is none. */
export function celsiusOf(curve: HeatCurve, heat: number): number {
  let celsius = heat / curve.a;
  for (let step = 0; step < 60; step++) {
    const move = (heatAt(curve, celsius) - heat) / slopeAt(curve, celsius);
    celsius -= move;
    if (!(Math.abs(move) > 1e-12)) break;
  }
  return celsius;
}

/** Density of a food without air in it, kg/m³: the masses of its components over their volumes. */
export function density(composition: Composition, celsius: number): number {
  let volume = 0;
  const parts = sharesOf(composition);
  for (const component of unfrozen) volume += parts[component] / componentDensity(component, celsius);
  return 1 / volume;
}

/** Heat content of a food that is not frozen, kJ/kg above 0 °C. */
export function liquidEnthalpy(composition: Composition, celsius: number): number {
  return heatAt(heatCurve(composition), celsius);
}

/**
 * Heat content of a food as it lies there, kJ/kg above liquid at 0 °C. Unless told, its water is ice below −1 °C, which is
 * our choice: butter, milk and egg freeze within a degree of 0 °C.
 */
export function enthalpy(composition: Composition, celsius: number, frozen = celsius < -1): number {
  const liquid = liquidEnthalpy(composition, celsius);
  if (!frozen) return liquid;
  const frozenWater = componentEnthalpy('ice', celsius) - latentHeatOfIce;
  return liquid + sharesOf(composition).water * (frozenWater - componentEnthalpy('water', celsius));
}

/**
 * Heat of hydration of flour loaded dry, kJ per kg flour, by the fraction of moisture in it. 6.5 Btu/lb = 15.1 kJ/kg at
 * 12 % moisture (Sosland Baker's Dictionary). It falls to nothing as the flour is wetter; that it does so linearly and is
 * gone at 20 % is our choice.
 */
export function heatOfHydration(moistureFraction: number): number {
  const atTwelvePercent = 15.1;
  if (!(moistureFraction < 0.2)) return 0;
  return (atTwelvePercent * (0.2 - Math.max(0, moistureFraction))) / 0.08;
}

/**
 * The mix of several foods by mass in grams, as its heat has it: what one of them does not tell counts as in that food alone, and makes
 * nothing of what the others tell unknown.
 */
export function mixCompositions(
  foods: readonly { readonly grams: number; readonly composition: Composition }[],
): Composition {
  const total = foods.reduce((sum, food) => sum + food.grams, 0);
  if (!(total > 0)) return {};
  const mixed = { water: 0, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 };
  for (const { grams, composition } of foods) {
    const shares = sharesOf(composition);
    for (const component of unfrozen) mixed[component] += (shares[component] * grams) / total;
  }
  // A table's carbohydrate includes the fibre.
  return { ...mixed, carbohydrate: mixed.carbohydrate + mixed.fibre };
}

/** Every property of a composition, in the order of a label. */
export const compositionKeys: readonly (keyof Composition)[] = [
  'water',
  'protein',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'starch',
  'fibre',
  'ash',
  'alcohol',
  'saltFraction',
];

const unfrozen = ['water', 'protein', 'fat', 'carbohydrate', 'fibre', 'ash'] as const;
const curves = new WeakMap<Composition, HeatCurve>();

// The fractions that the thermal sums run over: fibre taken out of the carbohydrate, what nobody told counted as
// carbohydrate, and the whole brought to 1 unless it is only a table's rounding away from it.
function sharesOf(composition: Composition): Readonly<Record<(typeof unfrozen)[number], number>> {
  const water = fraction(composition.water);
  const protein = fraction(composition.protein);
  const fat = fraction(composition.fat);
  const ash = fraction(composition.ash) || fraction(composition.saltFraction);
  const fibre = fraction(composition.fibre);
  const told = composition.carbohydrate ?? Math.max(composition.sugars ?? 0, composition.starch ?? 0);
  const net = Math.max(0, fraction(told) - (composition.carbohydrate === undefined ? 0 : fibre));
  const sum = water + protein + fat + ash + fibre + net;
  const rest = composition.carbohydrate === undefined || sum === 0 ? Math.max(0, 1 - sum) : 0;
  const total = Math.abs(sum + rest - 1) <= 0.001 ? 1 : sum + rest;
  return {
    water: water / total,
    protein: protein / total,
    fat: fat / total,
    carbohydrate: (net + rest) / total,
    fibre: fibre / total,
    ash: ash / total,
  };
}

function fraction(value: number | undefined): number {
  return value !== undefined && value > 0 && value < 2 ? value : 0;
}

function componentEnthalpy(component: FoodComponent, celsius: number): number {
  const [a, b, c] = specificHeats[component];
  return celsius * (a + celsius * (b / 2 + (celsius * c) / 3));
}
