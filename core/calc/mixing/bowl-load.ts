/** Water to flour of the dough that a bowl is rated for: a medium bread dough, by makers’ manuals of dough mixers. */
export const ratedWaterToFlour = 0.6;

/** What of a dough decides how stiff it is, grams. */
export interface Softness {
  readonly flourGrams: number;
  readonly freeWaterGrams: number;
  readonly fatGrams: number;
  readonly sugarGrams: number;
  /** Weight of liquid egg that its water, fat and sugar do not account for yet, as `eggBeyond` has it; absent: no egg. */
  readonly eggBeyondGrams?: number;
}

/**
 * Water to flour, by weight, up to which makers’ manuals of dough mixers keep to the first speed; of a rich dough by
 * `softness`.
 */
export const stiffWaterToFlour = 0.5;

/** How much a gram of fat or sugar softens a dough beside one of water; common practice, no source. */
const softensAsWater = 0.5;

/**
 * What liquid egg softens a dough by beyond its water, fat and sugar, grams: it is poured, and counts whole. Its fractions are of
 * its own weight; egg that is half solids or more is dried, and counts like other powders. Common practice, no source.
 */
export function eggBeyond(grams: number, egg: { water?: number; fat?: number; sugars?: number }): number {
  const { water = 0, fat = 0, sugars = 0 } = egg;
  return water < liquidFrom ? 0 : grams * Math.max(0, 1 - water - softensAsWater * (fat + sugars));
}

/** Egg with less water than this is a powder; yolk has half. */
const liquidFrom = 0.4;

/**
 * Water to flour of a lean dough as stiff as all this together, by weight: sugar dissolves, fat greases and egg is poured, so a rich
 * dough is softer than its water alone says. Undefined without flour or water.
 */
export function softness(portions: readonly Softness[]): number | undefined {
  const sum = (what: keyof Softness): number =>
    portions.reduce((all, portion) => all + Math.max(0, portion[what] ?? 0), 0);
  const [flour, water] = [sum('flourGrams'), sum('freeWaterGrams')];
  if (!(flour > 0) || !(water > 0)) return undefined;
  const soft = softensAsWater * (sum('fatGrams') + sum('sugarGrams')) + sum('eggBeyondGrams');
  return (water + soft) / flour;
}

/** The part of what it is good for that a bowl is usually filled with: it mixes well, and leaves room. Common practice, no source. */
const usualPart = 0.75;

/** The dough that a bowl is usually given, in grams: three quarters of the most it is good for, and never less than its least. */
export function usualDoughGrams(
  ratedGrams: number,
  leastGrams: number | undefined,
  waterToFlour: number,
): number {
  return Math.max(leastGrams ?? 0, usualPart * mostDoughGrams(ratedGrams, { waterToFlour }));
}

/** What makes a dough heavier work for a machine than the one it is rated for. */
export interface DoughLoad {
  /** Water to flour, by weight; of a rich dough by `softness`. */
  readonly waterToFlour: number;
  readonly isHighGluten?: boolean;
  readonly isCold?: boolean;
}

/** Makers’ manuals take a tenth off for high-gluten flour, and 15 to 20 % for cold water: the middle of it. */
const highGlutenShare = 0.9;
const coldShare = 0.825;

/**
 * The most dough that a machine is good for, in grams: its rating in proportion to how wet the dough is beside the rated
 * one, and never more than the rating; less for high-gluten flour and for cold water. Mixer manuals: Hobart HL600 Legacy,
 * p. 22–23; Hobart HL200, p. 33–34.
 */
export function mostDoughGrams(
  ratedGrams: number,
  { waterToFlour, isHighGluten = false, isCold = false }: DoughLoad,
  ratedRatio = ratedWaterToFlour,
): number {
  const wetness = waterToFlour > 0 && ratedRatio > 0 ? Math.min(1, waterToFlour / ratedRatio) : 1;
  return ratedGrams * wetness * (isHighGluten ? highGlutenShare : 1) * (isCold ? coldShare : 1);
}
