import { elementAt } from '../../text/element.ts';
import type { YieldInput } from './formula-input.ts';
import type { SolvedFormula } from './formula-result.ts';

export interface LineWeight {
  readonly lineId: string;
  /** Absent when the weight is not known. */
  readonly grams?: number;
}

export interface RoundedWeight extends LineWeight {
  /** The step this line is rounded to; absent when it was not rounded. */
  readonly stepGrams?: number;
  /** The line is too light for the scale's own step: weigh it on a finer scale. */
  readonly finer: boolean;
}

export interface RoundedBatch {
  readonly lines: readonly RoundedWeight[];
  /** Sums of the weights that are known, as rounded and before. */
  readonly totalGrams: number;
  readonly exactTotalGrams: number;
}

/** What a solved formula is to be scaled to. */
export type ScaleTarget =
  /** Without `pieceGrams` the pieces stay as heavy as they are. Baked weight when `baked`. */
  | {
      readonly kind: 'pieces';
      readonly count: number;
      readonly pieceGrams?: number;
      readonly baked?: boolean;
    }
  /** Dough at the divider, after the loss in bowl and on bench. */
  | { readonly kind: 'dough'; readonly grams: number }
  | { readonly kind: 'baked'; readonly grams: number }
  | { readonly kind: 'flour'; readonly grams: number }
  /** What is on hand of one ingredient, by its key, or of one part, by its section’s; all of it to be used. */
  | { readonly kind: 'ingredient'; readonly key: string; readonly grams: number };

export type ScaleFailure =
  /** The formula's own weight of the target is not known, or is nothing. */
  | 'weight-unknown'
  | 'not-in-formula'
  /** The target is not a positive, finite number. */
  | 'impossible-target';

export type ScaleResult =
  | {
      readonly ok: true;
      /** New weight by old weight, for every weight of the formula. */
      readonly factor: number;
      /** Dough weighed into the bowl. */
      readonly doughGrams: number;
      readonly flourGrams: number;
      /** The yield to write in the formula to have it so. */
      readonly yield: YieldInput;
    }
  | { readonly ok: false; readonly failure: ScaleFailure };

export interface BowlCapacity {
  readonly leastGrams: number;
  readonly mostGrams: number;
}

export type BowlBatches =
  | { readonly ok: true; readonly batches: number; readonly gramsEach: number }
  | {
      readonly ok: false;
      /**
       * Too little for the bowl even in one batch; or one batch too much for it and two too little (`gap`); or the
       * weights are not positive numbers.
       */
      readonly failure: 'below-least' | 'gap' | 'impossible-weight';
      /** Dough weights nearest below and above that the bowl takes in equal batches. */
      readonly nearestBelowGrams?: number;
      readonly nearestAboveGrams?: number;
    };

/**
 * Rounds the lines of one batch to the scale's step (grams): each line to its nearest step, and what is left over to the
 * heaviest line that no other equals, so that the total stays within half a step of the exact one. Equal weights stay
 * equal: where every line has a twin the heaviest twins share what is left over, and the total may be off by half a step
 * for each of them. A line of fewer than ten steps keeps a step finer by tens, so no ingredient is rounded away. Weights
 * that are unknown, negative or not finite come back as they are, and nothing is rounded unless the step is a positive
 * number.
 */
export function roundToStep(lines: readonly LineWeight[], stepGrams: number): RoundedBatch {
  const usable = isWeight(stepGrams);
  const groups = new Map<number, { index: number; grams: number }[]>();
  const rounded: RoundedWeight[] = lines.map((line, index) => {
    const { grams } = line;
    if (!usable || grams === undefined || !(grams >= 0) || !Number.isFinite(grams))
      return { ...line, finer: false };
    const power = finerPower(grams, stepGrams);
    const group = groups.get(power) ?? [];
    group.push({ index, grams });
    groups.set(power, group);
    return { ...line, stepGrams: stepGrams / 10 ** power, finer: power > 0 };
  });

  // From the finest step to the coarsest: what the finer lines could not take up goes to the heaviest of all.
  let carriedGrams = 0;
  const byFineness = [...groups].sort(([some], [other]) => other - some);
  for (const [power, group] of byFineness) {
    const step = stepGrams / 10 ** power;
    const takesRest = power === byFineness.at(-1)?.[0];
    carriedGrams = roundGroup(group, step, carriedGrams, takesRest, (index, units) => {
      rounded[index] = { ...elementAt(rounded, index), grams: Number((units * step).toPrecision(12)) };
    });
  }
  return { lines: rounded, totalGrams: totalOf(rounded), exactTotalGrams: totalOf(lines) };
}

/**
 * Scales a solved formula, grams throughout. All weights grow by the same factor, so a weight that is kept back grows
 * with them; solving again with the returned `yield` leaves it as written.
 */
export function scaleTo(solved: SolvedFormula, target: ScaleTarget): ScaleResult {
  const { flourGrams, doughGrams, yieldDoughGrams } = solved;
  const wanted = wantedGrams(solved, target);
  if (typeof wanted !== 'number') return { ok: false, failure: wanted.failure };
  const now = presentGrams(solved, target);
  if (typeof now !== 'number') return { ok: false, failure: now.failure };
  if (doughGrams === undefined || flourGrams === undefined || yieldDoughGrams === undefined) {
    return { ok: false, failure: 'weight-unknown' };
  }
  const factor = wanted / now;
  if (!(factor > 0) || !Number.isFinite(factor * doughGrams))
    return { ok: false, failure: 'impossible-target' };
  return {
    ok: true,
    factor,
    doughGrams: doughGrams * factor,
    flourGrams: flourGrams * factor,
    yield: yieldFor(solved, target, factor * yieldDoughGrams),
  };
}

/**
 * Parts a dough (grams, weighed) into the fewest equal batches, none above the bowl's most and none below its least.
 */
export function bowlBatches(doughGrams: number, bowl: BowlCapacity): BowlBatches {
  const { leastGrams, mostGrams } = bowl;
  const isWeight = doughGrams > 0 && mostGrams > 0 && leastGrams >= 0 && leastGrams <= mostGrams;
  if (!isWeight || !Number.isFinite(doughGrams / mostGrams))
    return { ok: false, failure: 'impossible-weight' };
  // A millionth above a full bowl is rounding, as that of a yield written in kilograms, and not another batch.
  const batches = Math.max(1, Math.ceil((doughGrams / mostGrams) * (1 - 1e-6)));
  const gramsEach = doughGrams / batches;
  if (gramsEach >= leastGrams * (1 - 1e-9)) return { ok: true, batches, gramsEach };
  if (batches === 1) return { ok: false, failure: 'below-least', nearestAboveGrams: leastGrams };
  return {
    ok: false,
    failure: 'gap',
    nearestBelowGrams: (batches - 1) * mostGrams,
    nearestAboveGrams: batches * leastGrams,
  };
}

/**
 * Conversion factor: dough weight per percent of the formula's sum of percentages (100 % of flour and all the rest), in
 * the dough's unit. Source: Hamelman, *Bread*, as worked at thefreshloaf.com node/60712. Undefined unless both are positive.
 */
export function conversionFactor(dough: number, sumPercent: number): number | undefined {
  const factor = dough / sumPercent;
  return dough > 0 && sumPercent > 0 && Number.isFinite(factor) ? factor : undefined;
}

/** The trade's rule that a conversion factor is rounded up, to a multiple of `step`, so the dough never falls short. */
export function roundFactorUp(factor: number, step: number): number | undefined {
  if (!(step > 0) || !Number.isFinite(factor / step)) return undefined;
  return Number((Math.ceil(factor / step - 1e-9) * step).toPrecision(12));
}

type Failure = { readonly failure: ScaleFailure };

function wantedGrams(solved: SolvedFormula, target: ScaleTarget): number | Failure {
  if (target.kind !== 'pieces')
    return isWeight(target.grams) ? target.grams : { failure: 'impossible-target' };
  const each = target.pieceGrams ?? (target.baked ? solved.bakedPieceGrams : solved.pieceGrams);
  if (each === undefined) return { failure: 'weight-unknown' };
  const grams = target.count * each;
  return isWeight(target.count) && isWeight(grams) ? grams : { failure: 'impossible-target' };
}

function presentGrams(solved: SolvedFormula, target: ScaleTarget): number | Failure {
  const now = weightOf(solved, target);
  if (typeof now === 'number') return isWeight(now) ? now : { failure: 'weight-unknown' };
  return { failure: now ?? 'weight-unknown' };
}

function weightOf(solved: SolvedFormula, target: ScaleTarget): number | ScaleFailure | undefined {
  switch (target.kind) {
    case 'pieces':
      return target.baked ? solved.bakedGrams : solved.yieldDoughGrams;
    case 'dough':
      return solved.yieldDoughGrams;
    case 'baked':
      return solved.bakedGrams;
    case 'flour':
      return solved.flourGrams;
    case 'ingredient': {
      const ingredient = solved.overall.find((row) => row.key === target.key);
      if (ingredient) return ingredient.grams;
      const part = solved.sections.find((section) => section.id === target.key);
      return part ? part.totalGrams : 'not-in-formula';
    }
  }
}

function yieldFor(solved: SolvedFormula, target: ScaleTarget, yieldDoughGrams: number): YieldInput {
  if (target.kind === 'flour' || target.kind === 'baked') return { kind: target.kind, grams: target.grams };
  if (target.kind !== 'pieces') return { kind: 'dough', grams: yieldDoughGrams };
  const baked = target.baked === true;
  const pieceGrams = target.pieceGrams ?? (baked ? solved.bakedPieceGrams : solved.pieceGrams);
  return { kind: 'pieces', count: target.count, baked, ...(pieceGrams === undefined ? {} : { pieceGrams }) };
}

function isWeight(grams: number): boolean {
  return grams > 0 && Number.isFinite(grams);
}

/** How many times ten the step has to be divided by, for the line to be ten steps or more. */
function finerPower(grams: number, stepGrams: number): number {
  if (grams === 0) return 0;
  let power = 0;
  while (grams < (10 * stepGrams) / 10 ** power && power < 12) power++;
  return power;
}

/**
 * Returns what the group is too light by, after rounding with what was carried into it. Each weight goes to its nearest step, so that
 * equal weights stay equal; what is left over goes to the heaviest line, where nobody notices it. Where lines weigh the same, one
 * that has no twin takes it; where all have, the heaviest twins share it in equal whole steps, or leave it.
 */
function roundGroup(
  group: readonly { readonly index: number; readonly grams: number }[],
  step: number,
  carriedGrams: number,
  takesRest: boolean,
  set: (index: number, units: number) => void,
): number {
  // A hair below the half is the half: 21.499999999 g of arithmetic are 21.5 g on paper.
  const parts = group.map(({ index, grams }) => ({ index, grams, units: Math.round(grams / step + 1e-9) }));
  const left = parts.reduce((sum, { grams, units }) => sum + grams / step - units, carriedGrams / step);
  const takers = takesRest ? takersOf(parts) : [];
  const [first] = takers;
  // Never below nothing: a light line cannot make up for all that others gained.
  const more = first === undefined ? 0 : Math.max(-first.units, Math.round(left / takers.length));
  for (const part of parts) set(part.index, part.units + (takers.includes(part) ? more : 0));
  return (left - more * takers.length) * step;
}

/** The heaviest line that no other equals, else all that equal the heaviest; none where nothing weighs anything. */
function takersOf<Part extends { readonly grams: number }>(parts: readonly Part[]): readonly Part[] {
  const heaviest = parts.filter(({ grams }) => grams > 0).sort((one, other) => other.grams - one.grams);
  const twins = (of: Part): readonly Part[] =>
    heaviest.filter(({ grams }) => Math.abs(grams - of.grams) <= 1e-9 * Math.max(1, of.grams));
  const alone = heaviest.find((part) => twins(part).length === 1);
  if (alone !== undefined) return [alone];
  return heaviest[0] === undefined ? [] : twins(heaviest[0]);
}

function totalOf(lines: readonly LineWeight[]): number {
  let sum = 0;
  for (const { grams } of lines) if (grams !== undefined && Number.isFinite(grams)) sum += grams;
  return sum;
}
