import { roundToStep } from '../../calc/formula/scaling.ts';
import { mostShownGrams, weighedPlaces } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { SheetBlock, SheetFigure, SheetRow } from './view.ts';

/** A row before it is rounded to the scale. */
export interface Weight {
  readonly name: string;
  readonly line: number;
  readonly grams: number | undefined;
  readonly percent?: string;
  readonly note?: string;
}

/** What a scale reads, and by how much that is too light. */
export interface Reading {
  readonly readsGrams: number;
  readonly shortGrams: number;
}

/** How rows are weighed: on a scale of this step, for so many batches, written by the speaker. */
export interface Weighing {
  readonly step: number;
  readonly times: number;
  readonly speaker: Speaker;
}

type Rows = Pick<SheetBlock, 'rows' | 'total' | 'times' | 'totalOfAll'> & { readonly reading: Reading };

/**
 * Rounds rows to the scale's step and adds the running reading of one scale. The total is within half a step, together
 * with what stands on the scale already. Rows and total are those of one batch, and of all of them where there are several.
 */
export function rowsOf(
  weights: readonly Weight[],
  { step, times, speaker }: Weighing,
  before: Reading = { readsGrams: 0, shortGrams: 0 },
): Rows {
  const rounded = roundToStep(
    weights.map((weight, index) => ({
      lineId: String(index),
      ...(weight.grams === undefined ? {} : { grams: weight.grams }),
    })),
    step,
    before.shortGrams,
  );
  const isHeavy = before.readsGrams + rounded.totalGrams > mostShownGrams;
  const scaled = rounded.lines.map(({ grams, stepGrams }) =>
    grams === undefined ? undefined : asShown(grams, stepGrams ?? step, isHeavy),
  );
  const lacking = scaled.indexOf(undefined);
  const firstUnknown = lacking < 0 ? weights.length : lacking;
  const total = asShown(rounded.totalGrams, step, isHeavy);
  const all = allOf(scaled, firstUnknown < weights.length ? undefined : total, times);
  let reads = before.readsGrams;
  const rows = weights.map((weight, index): SheetRow => {
    const { grams } = rounded.lines[index]!;
    const shown = scaled[index];
    const finer = grams !== undefined && isBetweenSteps(grams, step) ? onFinerScale(speaker) : undefined;
    const notes = [weight.note, finer].filter((note) => note !== undefined);
    const base = {
      name: weight.name,
      line: weight.line,
      ...(weight.percent === undefined ? {} : { percent: weight.percent }),
      ...(notes.length === 0 ? {} : { note: notes.join(', ') }),
    };
    if (grams === undefined || shown === undefined)
      return { ...base, missing: speaker.say(message('sheet.not-known-yet')) };
    reads += grams;
    const exact = weight.grams ?? grams;
    const scale = asShown(Math.round(reads / step) * step, step, isHeavy);
    return {
      ...base,
      weigh: figureOf(exact, shown, speaker),
      ...(index < firstUnknown ? { scaleReads: figureOf(reads, scale, speaker) } : {}),
      ...(all === undefined ? {} : { all: figureOf(exact * times, all(shown), speaker) }),
    };
  });
  const exactTotal = rounded.exactTotalGrams;
  return {
    times,
    rows,
    ...(firstUnknown < weights.length
      ? {}
      : {
          total: figureOf(exactTotal, total, speaker),
          ...(all === undefined ? {} : { totalOfAll: figureOf(exactTotal * times, all(total), speaker) }),
        }),
    reading: {
      readsGrams: reads,
      shortGrams: before.shortGrams + exactTotal - rounded.totalGrams,
    },
  };
}

/** A weight as a scale shows it: in grams with the places of its step, or among the heavy ones. */
interface Shown {
  readonly grams: number;
  readonly stepGrams: number;
  readonly isHeavy: boolean;
}

/** A weight below the gram is weighed on a scale of its own, and stays in grams among kilograms. */
function asShown(grams: number, stepGrams: number, isHeavy: boolean): Shown {
  return { grams, stepGrams, isHeavy: isHeavy && stepGrams >= 1 };
}

function figureOf(exactGrams: number, { grams, stepGrams, isHeavy }: Shown, speaker: Speaker): SheetFigure {
  const shown = isHeavy ? speaker.weighedHeavy(grams) : speaker.weighed(grams, stepGrams);
  return { grams: exactGrams, ...shown };
}

/** What makes of a weight that of all batches: as it is weighed, the rounded figure counts. Undefined for one batch. */
function allOf(
  rows: readonly (Shown | undefined)[],
  total: Shown | undefined,
  times: number,
): ((one: Shown) => Shown) | undefined {
  if (times === 1) return undefined;
  const all = [...rows, total].map((one) => (one === undefined ? 0 : inFigures(one).grams * times));
  const isHeavy = Math.max(...all) > mostShownGrams;
  return (one) => {
    const { grams, places } = inFigures(one);
    return asShown(grams * times, 10 ** -places, isHeavy);
  };
}

/** The grams that the figure of a weight shows, and how many places of a gram it has. */
function inFigures({ grams, stepGrams, isHeavy }: Shown): { grams: number; places: number } {
  const { unit, places } = weighedPlaces(grams, stepGrams);
  const isInKilograms = isHeavy || unit === 'kg';
  return isInKilograms
    ? { grams: Number((grams / 1000).toFixed(3)) * 1000, places: 0 }
    : { grams: Number(grams.toFixed(places)), places };
}

/** Whether the scale of a bakery cannot show a weight. */
function isBetweenSteps(grams: number, step: number): boolean {
  return step > 0 && Math.abs(grams / step - Math.round(grams / step)) > 1e-6;
}

function onFinerScale(speaker: Speaker): string {
  return speaker.say(message('sheet.finer-scale'));
}
