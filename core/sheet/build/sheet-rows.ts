import { type RoundedWeight, roundToStep } from '../../calc/formula/scaling.ts';
import { mostShownGrams, weighedPlaces } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import type { Cell, Column, Row, Section } from './sheet-document.ts';

/** A row before it is rounded to the scale. */
export interface Weight {
  readonly name: string;
  /** Names it among the others of its section in every language; its name where absent. */
  readonly key?: string;
  readonly line: number;
  readonly grams: number | undefined;
  readonly percent?: string;
  readonly note?: string;
}

/** What goes onto one scale by and by: what it reads already, and the rows that go on now as they are rounded among all of them. */
export interface OnTheScale {
  readonly readsGrams: number;
  readonly rounded: readonly RoundedWeight[];
}

/** How rows are weighed: on a scale of this step, for so many batches, written by the speaker. */
export interface Weighing {
  readonly step: number;
  readonly times: number;
  readonly speaker: Speaker;
}

/** What the rows of a section of weights come to. */
export interface WeighedRows {
  readonly rows: readonly Row[];
  readonly sum?: Row;
  /** What the scale reads after the last of them. */
  readonly readsGrams: number;
}

/** The columns of what is weighed; a writer leaves out one that has nothing in it. */
export function weighColumns({ say }: Speaker): readonly Column[] {
  const inAll = { key: 'weigh', words: say(message('sheet.figure-in-all', { written: '{0}' })) } as const;
  return [
    { key: 'weigh', title: say(message('sheet.weigh')), figures: true },
    { key: 'all', title: say(message('sheet.in-all')), figures: true, below: inAll },
    { key: 'reads', title: say(message('sheet.scale-reads')), figures: true },
    { key: 'percent', title: say(message('sheet.of-flour')), figures: true },
  ];
}

/** The columns with the units of what stands in them. */
export function withUnits(columns: readonly Column[], rows: readonly Row[]): readonly Column[] {
  return columns.map((column) => {
    const units = rows.flatMap(({ cells }) => cells[column.key]?.unit ?? []);
    const counted = [...new Set(units)].map((unit) => ({
      unit,
      count: units.filter((one) => one === unit).length,
    }));
    const [most] = counted.sort((one, other) => other.count - one.count);
    return most === undefined ? column : { ...column, unit: most.unit };
  });
}

/** Rounds what goes onto one scale, at once or by and by, to its step, so that all of it together is within half a step. */
export function roundedOnScale(weights: readonly Weight[], step: number): readonly RoundedWeight[] {
  const lines = weights.map(({ grams }, index) => ({
    lineId: String(index),
    ...(grams === undefined ? {} : { grams }),
  }));
  return roundToStep(lines, step).lines;
}

/**
 * Rows as they are weighed, with the running reading of one scale. Rows and total are those of one batch, and of all of them where there
 * are several.
 *
 * @param section the id of the section that the rows stand in
 */
export function rowsOf(
  section: string,
  weights: readonly Weight[],
  { step, times, speaker }: Weighing,
  { readsGrams, rounded }: OnTheScale = { readsGrams: 0, rounded: roundedOnScale(weights, step) },
): WeighedRows {
  const totalGrams = sumOf(rounded);
  const isHeavy = readsGrams + totalGrams > mostShownGrams;
  const scaled = rounded.map(({ grams, stepGrams }) =>
    grams === undefined ? undefined : asShown(grams, stepGrams ?? step, isHeavy),
  );
  const lacking = scaled.indexOf(undefined);
  const firstUnknown = lacking < 0 ? weights.length : lacking;
  const total = asShown(totalGrams, step, isHeavy);
  const all = allOf(scaled, firstUnknown < weights.length ? undefined : total, times);
  const idOf = nodeIds();
  let reads = readsGrams;
  const rows = weights.map((weight, index): Row => {
    const { grams } = rounded[index]!;
    const shown = scaled[index];
    const finer = grams !== undefined && isBetweenSteps(grams, step) ? onFinerScale(speaker) : undefined;
    const notes = [weight.note, finer].filter((note) => note !== undefined);
    const percent = weight.percent === undefined ? {} : { percent: { text: weight.percent } };
    const base = {
      id: idOf(section, weight.key ?? weight.name),
      name: weight.name,
      line: weight.line,
      ...(notes.length === 0 ? {} : { notes: [notes.join(', ')] }),
    };
    if (grams === undefined || shown === undefined)
      return { ...base, cells: percent, missing: speaker.say(message('sheet.not-known-yet')) };
    reads += grams;
    const exact = weight.grams ?? grams;
    const scale = asShown(Math.round(reads / step) * step, step, isHeavy);
    const cells = {
      weigh: cellOf(exact, shown, speaker),
      ...(index < firstUnknown ? { reads: cellOf(reads, scale, speaker) } : {}),
      ...(all === undefined ? {} : { all: cellOf(exact * times, all(shown), speaker) }),
      ...percent,
    };
    return { ...base, cells };
  });
  const exactTotal = sumOf(weights);
  const sum: Row = {
    id: `${section}/=`,
    name: speaker.say(message('sheet.together')),
    cells: {
      weigh: cellOf(exactTotal, total, speaker),
      ...(all === undefined ? {} : { all: cellOf(exactTotal * times, all(total), speaker) }),
    },
  };
  return {
    rows,
    // The sum of a single row is that row, and without all of its rows it is no sum.
    ...(firstUnknown < weights.length || rows.length < 2 ? {} : { sum }),
    readsGrams: reads,
  };
}

function sumOf(weights: readonly { readonly grams?: number | undefined }[]): number {
  return weights.reduce((sum, { grams = 0 }) => sum + grams, 0);
}

/** A section of weights without what one scale reads after each of them. */
export function withoutReading(section: Section): Section {
  if (section.kind !== 'table' || section.columns.every(({ key }) => key !== 'reads')) return section;
  return {
    ...section,
    columns: section.columns.filter(({ key }) => key !== 'reads'),
    rows: section.rows.map((row): Row => {
      const { reads: _, ...cells } = row.cells;
      return { ...row, cells };
    }),
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

function cellOf(exactGrams: number, { grams, stepGrams, isHeavy }: Shown, speaker: Speaker): Cell {
  const { figure, unit } = isHeavy ? speaker.weighedHeavy(grams) : speaker.weighed(grams, stepGrams);
  return { text: figure, unit, grams: exactGrams };
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
