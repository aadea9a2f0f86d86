/** Cardinal temperatures of a microbe, °C: no growth at least and most, fastest at best. */
export interface CardinalTemperatures {
  readonly leastCelsius: number;
  readonly bestCelsius: number;
  readonly mostCelsius: number;
}

/** Growth of *S. cerevisiae*: Salvadó and others, AEM 77 (2011) 2292; the least within its genus’ range of 1.3–4.3 °C. */
export const yeastGrowth: CardinalTemperatures = { leastCelsius: 2.8, bestCelsius: 32.3, mostCelsius: 45.4 };

/**
 * Gassing is not growth: it goes on in the cold where growth has ended, and is fastest at 35–38 °C (from memory), above the best
 * of growth. The two ends are our own choice, common practice.
 */
export const yeastGassing: CardinalTemperatures = { leastCelsius: -3, bestCelsius: 38, mostCelsius: 50 };

/**
 * Rate at a temperature over that at the best one, 0 to 1, by the cardinal temperature model with inflection (Rosso and others
 * 1993); 0 outside of its least and most temperature.
 */
export function cardinalRate(at: CardinalTemperatures, celsius: number): number {
  const { leastCelsius: least, bestCelsius: best, mostCelsius: most } = at;
  if (!(celsius > least && celsius < most)) return 0;
  const above = (celsius - most) * (celsius - least) ** 2;
  const below =
    (best - least) * ((best - least) * (celsius - best) - (best - most) * (best + least - 2 * celsius));
  return Math.max(0, above / below);
}

/** Relative rates of sourdough yeast and of sourdough lactobacilli by temperature, as points, °C. */
export const sourdoughYeast: readonly (readonly [celsius: number, rate: number])[] = [
  [8, 0],
  [14, 0.25],
  [20, 0.5],
  [28, 1],
  [32, 0.5],
  [34, 0.25],
  [35, 0],
];
export const sourdoughLactobacilli: readonly (readonly [celsius: number, rate: number])[] = [
  [4, 0],
  [15, 0.25],
  [20, 0.5],
  [32.5, 1],
  [37, 0.5],
  [39, 0.25],
  [41, 0],
];

/**
 * Rate of a sourdough’s microbes at a temperature over that at their best one, straight between the points that M. Gänzle
 * gives as multiples of the generation time (letter in the FAQ of rec.food.sourdough).
 */
export function sourdoughRate(points: typeof sourdoughYeast, celsius: number): number {
  const after = points.findIndex(([at]) => at >= celsius);
  const [left, right] = [points[after - 1], points[after]];
  if (left === undefined || right === undefined) return 0;
  return left[1] + ((celsius - left[0]) / (right[0] - left[0])) * (right[1] - left[1]);
}

/** What slows or feeds the yeast of a dough, fractions of flour. */
export interface DoughForYeast {
  readonly saltFraction: number;
  readonly sugarFraction: number;
}

/** Salt slows by some 12 % a point (0.1–0.15, from memory); never to nothing. */
function saltFactor(fraction: number): number {
  return Math.max(0.1, 1 - 12 * Math.max(0, fraction));
}

/**
 * Sugar to 5 % does not slow, above 6 % it does, above 10 % clearly (direction from a trade source; size common practice): 3 % a
 * point from 5 %, 5 % a point from 10 %; never to less than a fifth.
 */
function sugarFactor(fraction: number): number {
  const points = 100 * Math.max(0, fraction);
  return Math.max(0.2, 1 - 0.03 * Math.max(0, Math.min(10, points) - 5) - 0.05 * Math.max(0, points - 10));
}

/** The dough that times are told by: 2 % fresh yeast and 2 % salt at 27 °C. */
export const referenceCelsius = 27;
const referenceYeast = 0.02;
const referenceSalt = 0.02;

/** Minutes in which the dough that times are told by fills its bulk: 60–75. Common practice, no source. */
export const referenceBulkMinutes = 67.5;

/** The same for dough raised by a fifth of its flour in ripe levain alone, at 25 °C. Common practice, no source. */
const levainBulkMinutes = 240;
const levainCelsius = 25;
const levainFlour = 0.2;

/** What raises a dough. */
export interface Leavening extends DoughForYeast {
  /** As fresh yeast, of all flour. */
  readonly freshYeastFraction: number;
  /** Flour that comes in ripe levain, of all flour. */
  readonly levainFraction: number;
  /** How many times as fast as worked out it was seen to rise; 1 where nobody wrote it down. */
  readonly observedFactor: number;
}

/** How many minutes at 27 °C of the dough that times are told by one minute of this dough at this temperature is worth. */
export function gassingRate(leavening: Leavening, celsius: number): number {
  const dough = saltFactor(leavening.saltFraction) * sugarFactor(leavening.sugarFraction);
  const relative = dough / (saltFactor(referenceSalt) * sugarFactor(0));
  const byYeast =
    (Math.max(0, leavening.freshYeastFraction) / referenceYeast) *
    (cardinalRate(yeastGassing, celsius) / cardinalRate(yeastGassing, referenceCelsius));
  const byLevain =
    (Math.max(0, leavening.levainFraction) / levainFlour) *
    (sourdoughRate(sourdoughYeast, celsius) / sourdoughRate(sourdoughYeast, levainCelsius)) *
    (referenceBulkMinutes / levainBulkMinutes);
  return leavening.observedFactor * relative * (byYeast + byLevain);
}

/** Minutes at another temperature that do as much as `minutes` at this one; endless where nothing moves there. */
export function equivalentMinutes(
  leavening: Leavening,
  minutes: number,
  fromCelsius: number,
  toCelsius: number,
): number {
  return (minutes * gassingRate(leavening, fromCelsius)) / gassingRate(leavening, toCelsius);
}

/**
 * Fresh yeast, a fraction of flour, that fills the bulk of a dough in `minutes` at a temperature, beside what levain does;
 * undefined where no yeast can.
 */
export function yeastFor(leavening: Leavening, minutes: number, celsius: number): number | undefined {
  const perYeast = gassingRate({ ...leavening, freshYeastFraction: 1, levainFraction: 0 }, celsius);
  const byLevain = gassingRate({ ...leavening, freshYeastFraction: 0 }, celsius);
  const wanted = (referenceBulkMinutes / minutes - byLevain) / perYeast;
  return Number.isFinite(wanted) ? Math.max(0, wanted) : undefined;
}

/** What a temperature curve of dough is worth in minutes at 27 °C of the dough that times are told by, by Simpson’s rule. */
export function referenceMinutes(
  leavening: Leavening,
  minutes: number,
  celsiusAt: (minutes: number) => number,
): number {
  if (!(minutes > 0)) return 0;
  const pieces = 24;
  const width = minutes / pieces;
  let sum = 0;
  for (let piece = 0; piece <= pieces; piece++) {
    const weight = piece === 0 || piece === pieces ? 1 : piece % 2 === 1 ? 4 : 2;
    sum += weight * gassingRate(leavening, celsiusAt(piece * width));
  }
  return (sum * width) / 3;
}
