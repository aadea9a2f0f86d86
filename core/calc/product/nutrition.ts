import type { Composition } from '../formula/composition.ts';
import type { LabelRegime } from './allergens.ts';
import type { Nutrient } from './nutrition-figures.ts';
import { labelFigure } from './nutrition-figures.ts';

/** A weight of one food, in grams, and what it consists of. */
export interface FoodPortion {
  readonly name: string;
  readonly grams: number;
  readonly composition: Composition;
  /** Its energy as a file states it, kJ per gram: it stands instead of what the composition makes. */
  readonly kilojoulesPerGram?: number;
}

/**
 * How much there is at least and at most. Both are the same where every ingredient says what it has; `lacking` names
 * those that do not. What is missing is bounded by what the rest of the ingredient leaves room for, and is never taken
 * for nothing.
 */
export interface NutrientRange {
  readonly low: number;
  readonly high: number;
  readonly lacking: readonly string[];
}

/** One row of a nutrition table, for some mass of the product. */
export interface NutrientRow extends NutrientRange {
  readonly nutrient: Nutrient;
  /** As printed; absent where what is missing could change the printed figure. */
  readonly figure?: string;
}

/** Energy factors per gram. Where `fibre` is left out the carbohydrate is meant with its fibre. */
export interface EnergyFactors {
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
  readonly fibre?: number;
  readonly alcohol?: number;
}

/** Regulation (EU) 1169/2011, Annex XIV, kJ per gram; carbohydrate without fibre. */
export const euKilojoules: EnergyFactors = { protein: 17, fat: 37, carbohydrate: 17, fibre: 8, alcohol: 29 };
/** Regulation (EU) 1169/2011, Annex XIV, kcal per gram; carbohydrate without fibre. */
export const euKilocalories: EnergyFactors = { protein: 4, fat: 9, carbohydrate: 4, fibre: 2, alcohol: 7 };
/** 21 CFR 101.9(c)(1)(i)(B), kcal per gram of protein, fat and total carbohydrate; alcohol is from memory. */
export const usKilocalories: EnergyFactors = { protein: 4, fat: 9, carbohydrate: 4, alcohol: 7 };

/** The rows of a table in the order the regime prints them. */
export const nutrientsOf: Readonly<Record<LabelRegime, readonly Nutrient[]>> = {
  EU: [
    'kilojoules',
    'kilocalories',
    'fat',
    'saturates',
    'carbohydrate',
    'sugars',
    'fibre',
    'protein',
    'salt',
  ],
  US: ['kilocalories', 'fat', 'saturates', 'sodium', 'carbohydrate', 'fibre', 'sugars', 'protein'],
};

/**
 * Energy of one food by factors per gram: `amounts` are masses in one unit, with the carbohydrate including the fibre as
 * in the tables of the USDA. The answer is in the unit of the factors times that mass.
 */
export function energyOf(
  amounts: {
    readonly protein: number;
    readonly fat: number;
    readonly carbohydrate: number;
    readonly fibre?: number;
    readonly alcohol?: number;
  },
  factors: EnergyFactors,
): number {
  const fibre = factors.fibre === undefined ? 0 : (amounts.fibre ?? 0);
  return (
    amounts.protein * factors.protein +
    amounts.fat * factors.fat +
    Math.max(0, amounts.carbohydrate - fibre) * factors.carbohydrate +
    fibre * (factors.fibre ?? 0) +
    (amounts.alcohol ?? 0) * (factors.alcohol ?? 0)
  );
}

/**
 * The nutrition table of `servingGrams` of a product that is `productGrams` in all. What bakes off is water, so nothing
 * else is lost; alcohol counts only where an ingredient states it. Rows are in the order of the regime.
 */
export function nutritionTable(
  portions: readonly FoodPortion[],
  productGrams: number,
  servingGrams: number,
  regime: LabelRegime,
): readonly NutrientRow[] {
  const share = productGrams > 0 ? servingGrams / productGrams : 0;
  return nutrientsOf[regime].map((nutrient): NutrientRow => {
    const { low, high, lacking } = totalOf(portions, nutrient, regime);
    const range = { low: low * share, high: high * share, lacking };
    const [least, most] = [
      labelFigure(nutrient, range.low, regime),
      labelFigure(nutrient, range.high, regime),
    ];
    return { nutrient, ...range, ...(least !== undefined && least === most ? { figure: least } : {}) };
  });
}

/** How much of a nutrient is in all the portions together. */
export function totalOf(
  portions: readonly FoodPortion[],
  nutrient: Nutrient,
  regime: LabelRegime,
): NutrientRange {
  let [low, high] = [0, 0];
  const lacking: string[] = [];
  for (const portion of portions) {
    const { name, grams, composition } = portion;
    if (!(grams > 0)) continue;
    const stated = statedEnergy(portion, nutrient);
    const [least, most] = stated === undefined ? perGram(composition, nutrient, regime) : [stated, stated];
    low += grams * least;
    high += grams * most;
    if (most - least > 1e-12 && !lacking.includes(name)) lacking.push(name);
  }
  return { low, high: lacking.length === 0 ? low : high, lacking };
}

/** Water in all the portions together, in grams. */
export function waterOf(portions: readonly FoodPortion[]): NutrientRange {
  let [low, high] = [0, 0];
  const lacking: string[] = [];
  for (const { name, grams, composition } of portions) {
    if (!(grams > 0)) continue;
    const [least, most] = main(composition, 'water');
    low += grams * least;
    high += grams * most;
    if (most - least > 1e-12 && !lacking.includes(name)) lacking.push(name);
  }
  return { low, high: lacking.length === 0 ? low : high, lacking };
}

/** Kilojoules in a kilocalorie: the thermochemical calorie, exactly. */
const kilojoulesPerKilocalorie = 4.184;

function statedEnergy({ kilojoulesPerGram }: FoodPortion, nutrient: Nutrient): number | undefined {
  if (kilojoulesPerGram === undefined || !(kilojoulesPerGram >= 0 && kilojoulesPerGram < Infinity))
    return undefined;
  if (nutrient === 'kilojoules') return kilojoulesPerGram;
  return nutrient === 'kilocalories' ? kilojoulesPerGram / kilojoulesPerKilocalorie : undefined;
}

type Bounds = readonly [low: number, high: number];

const mainParts = ['water', 'protein', 'fat', 'carbohydrate', 'ash'] as const;
/** Salt of a label by sodium (Regulation (EU) 1169/2011, Annex I). */
const saltPerSodium = 2.5;
/** Salt counted from sodium per gram: sodium carbonate, the most of what goes into dough, makes 1.08. */
const saltiest = 1.1;

/** A main part of a food; one that is not told can be no more than the others leave. */
function main(composition: Composition, part: (typeof mainParts)[number] | 'alcohol'): Bounds {
  const told = composition[part];
  if (told !== undefined && Number.isFinite(told)) return [clamped(told), clamped(told)];
  let rest = 1;
  for (const one of mainParts) rest -= clamped(composition[one] ?? 0);
  return [0, Math.max(0, rest)];
}

/** Something inside another part, such as saturates in fat: no more than the whole of it. */
function within(told: number | undefined, whole: Bounds): Bounds {
  if (told === undefined || !Number.isFinite(told)) return [0, whole[1]];
  return [clamped(told), clamped(told)];
}

function perGram(composition: Composition, nutrient: Nutrient, regime: LabelRegime): Bounds {
  const carbohydrate = main(composition, 'carbohydrate');
  const fibre = within(composition.fibre, carbohydrate);
  const net: Bounds = [Math.max(0, carbohydrate[0] - fibre[1]), Math.max(0, carbohydrate[1] - fibre[0])];
  switch (nutrient) {
    case 'protein':
      return main(composition, 'protein');
    case 'fat':
      return main(composition, 'fat');
    case 'saturates':
      return within(composition.saturates, main(composition, 'fat'));
    case 'carbohydrate':
      return regime === 'EU' ? net : carbohydrate;
    case 'fibre':
      return fibre;
    case 'sugars':
      return within(composition.sugars, net);
    case 'salt':
      return saltBounds(composition);
    case 'sodium': {
      const [low, high] = saltBounds(composition);
      return [(low / saltPerSodium) * 1000, (high / saltPerSodium) * 1000];
    }
    case 'kilojoules':
      return energyBounds(composition, carbohydrate, fibre, euKilojoules);
    case 'kilocalories':
      return energyBounds(
        composition,
        carbohydrate,
        fibre,
        regime === 'EU' ? euKilocalories : usKilocalories,
      );
  }
}

function saltBounds(composition: Composition): Bounds {
  const told = composition.saltFraction;
  if (told === undefined || !Number.isFinite(told)) return [0, saltiest];
  return [clamped(told), clamped(told)];
}

function energyBounds(
  composition: Composition,
  carbohydrate: Bounds,
  fibre: Bounds,
  factors: EnergyFactors,
): Bounds {
  const [protein, fat] = [main(composition, 'protein'), main(composition, 'fat')];
  const alcohol = clamped(composition.alcohol ?? 0);
  const at = (end: 0 | 1): number =>
    energyOf(
      {
        protein: protein[end],
        fat: fat[end],
        carbohydrate: carbohydrate[end],
        // More fibre is less energy, so the least energy is with the most fibre that fits.
        fibre: Math.min(fibre[end === 0 ? 1 : 0], carbohydrate[end]),
        alcohol,
      },
      factors,
    );
  return [at(0), at(1)];
}

function clamped(fraction: number): number {
  return Number.isFinite(fraction) ? Math.min(1, Math.max(0, fraction)) : 0;
}
