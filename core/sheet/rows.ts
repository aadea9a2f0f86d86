import { roundToStep } from '../calc/scaling.ts';
import { plainDisplay, worded } from '../text/display.ts';
import { heavyFigure, mostShownGrams, weighedFigure } from '../text/figures.ts';
import type { SheetBlock, SheetFigure, SheetRow } from './view.ts';

/** A row before it is rounded to the scale. */
export interface Weight {
  readonly name: string;
  readonly line: number;
  readonly grams: number | undefined;
  readonly percent?: string;
  readonly note?: string;
}

/** A block that is weighed once for each batch, with its weights for all of them. */
export function forAll(block: SheetBlock, count: number): SheetBlock {
  if (count === 1) return block;
  const all = block.rows.map((row) => shownGrams(row.weigh) * count);
  const total = shownGrams(block.total) * count;
  const isHeavy = Math.max(total, ...all) > mostShownGrams;
  return {
    ...block,
    times: count,
    rows: block.rows.map((row) =>
      row.weigh === undefined ? row : { ...row, all: times(row.weigh, count, isHeavy) },
    ),
    ...(block.total === undefined ? {} : { totalOfAll: times(block.total, count, isHeavy) }),
  };
}

/** So many times what is weighed, as it is weighed: the rounded figure counts, with as many places. */
function times(weighed: SheetFigure, count: number, isHeavy: boolean): SheetFigure {
  const { figure, unit } = worded(weighed, plainDisplay);
  const places = unit === 'kg' ? 0 : (figure.split('.')[1]?.length ?? 0);
  const grams = shownGrams(weighed) * count;
  return { grams: weighed.grams * count, ...shownAs(grams, 10 ** -places, isHeavy) };
}

/** The grams that a figure shows. */
function shownGrams(weighed: SheetFigure | undefined): number {
  if (weighed === undefined) return 0;
  const { figure, unit } = worded(weighed, plainDisplay);
  return Number(figure) * (unit === 'kg' ? 1000 : 1);
}

/** A weight below the gram is weighed on a scale of its own, and stays in grams among kilograms. */
function shownAs(grams: number, step: number, isHeavy: boolean): { figure: string; unit: string } {
  return isHeavy && step >= 1 ? heavyFigure(grams) : weighedFigure(grams, step);
}

/** What a scale reads, and by how much that is too light. */
export interface Reading {
  readonly readsGrams: number;
  readonly shortGrams: number;
}

/**
 * Rounds rows to the scale's step and adds the running reading of one scale. The total is within half a step, together
 * with what stands on the scale already.
 */
export function rowsOf(
  weights: readonly Weight[],
  step: number,
  before: Reading = { readsGrams: 0, shortGrams: 0 },
): Pick<SheetBlock, 'rows' | 'total'> & { readonly reading: Reading } {
  const rounded = roundToStep(
    weights.map((weight, index) => ({
      lineId: String(index),
      ...(weight.grams === undefined ? {} : { grams: weight.grams }),
    })),
    step,
    before.shortGrams,
  );
  const isHeavy = before.readsGrams + rounded.totalGrams > mostShownGrams;
  const figureOf = (grams: number, shown: number, ofStep: number): SheetFigure => ({
    grams,
    ...shownAs(shown, ofStep, isHeavy),
  });
  let reads = before.readsGrams;
  let known = true;
  const rows = weights.map((weight, index): SheetRow => {
    const { grams, stepGrams } = rounded.lines[index]!;
    const finer = grams !== undefined && isBetweenSteps(grams, step) ? onFinerScale : undefined;
    const notes = [weight.note, finer].filter((note) => note !== undefined);
    const base = {
      name: weight.name,
      line: weight.line,
      ...(weight.percent === undefined ? {} : { percent: weight.percent }),
      ...(notes.length === 0 ? {} : { note: notes.join(', ') }),
    };
    if (grams === undefined) {
      known = false;
      return { ...base, missing: 'not known yet' };
    }
    reads += grams;
    const exact = weight.grams ?? grams;
    return {
      ...base,
      weigh: figureOf(exact, grams, stepGrams ?? step),
      ...(known ? { scaleReads: figureOf(reads, Math.round(reads / step) * step, step) } : {}),
    };
  });
  const total = figureOf(rounded.exactTotalGrams, rounded.totalGrams, step);
  const shortGrams = before.shortGrams + rounded.exactTotalGrams - rounded.totalGrams;
  return { rows, ...(known ? { total } : {}), reading: { readsGrams: reads, shortGrams } };
}

/** Whether the scale of a bakery cannot show a weight. */
function isBetweenSteps(grams: number, step: number): boolean {
  return step > 0 && Math.abs(grams / step - Math.round(grams / step)) > 1e-6;
}

const onFinerScale = 'on a finer scale';
