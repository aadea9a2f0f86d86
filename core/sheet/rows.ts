import { roundToStep } from '../calc/scaling.ts';
import { plainDisplay, worded } from '../text/display.ts';
import { weighedFigure } from '../text/figures.ts';
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
  return {
    ...block,
    times: count,
    rows: block.rows.map((row) => (row.weigh === undefined ? row : { ...row, all: times(row.weigh, count) })),
    ...(block.total === undefined ? {} : { totalOfAll: times(block.total, count) }),
  };
}

/** So many times what is weighed, as it is weighed: the rounded figure counts, with as many places. */
function times(weighed: SheetFigure, count: number): SheetFigure {
  const { figure, unit } = worded(weighed, plainDisplay);
  const places = unit === 'kg' ? 0 : (figure.split('.')[1]?.length ?? 0);
  const shown = Number(figure) * (unit === 'kg' ? 1000 : 1) * count;
  return { grams: weighed.grams * count, ...weighedFigure(shown, 10 ** -places) };
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
  let reads = before.readsGrams;
  let known = true;
  const rows = weights.map((weight, index): SheetRow => {
    const { grams, stepGrams } = rounded.lines[index]!;
    const base = {
      name: weight.name,
      line: weight.line,
      ...(weight.percent === undefined ? {} : { percent: weight.percent }),
      ...(weight.note === undefined ? {} : { note: weight.note }),
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

function figureOf(grams: number, shown: number, step: number): SheetFigure {
  return { grams, ...weighedFigure(shown, step) };
}
