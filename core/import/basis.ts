import { trimmed } from '../text/figures.ts';
import { message } from '../words/message.ts';
import type { Notes } from './notes.ts';
import type { TablePart } from './parts.ts';
import type { CellAmount, ReadRow } from './table-rows.ts';

/** How the lines of a part are written. */
export interface WrittenPart {
  readonly amountOf: (row: ReadRow) => string;
  /** What all lines weigh, where percentages are written and weights tell how much. */
  readonly yieldGrams?: number;
  /** Grams of one hundred percent, where percentages are written and weights tell. */
  readonly wholeGrams?: number;
  readonly inPercent: boolean;
}

/** Rounding for the scale is no difference worth telling. */
const looseness = 0.005;

/**
 * Whether a part is written in percent or in weights. Percentages are taken where they are of the flour and agree with
 * the weights; else the weights, for those are what somebody weighed.
 */
export function basisOf(part: TablePart, isFlour: (name: string) => boolean, notes: Notes): WrittenPart {
  const rows = part.lines.flatMap((line) => ('row' in line ? [line.row] : []));
  const isDough = part.kind === 'dough';
  const named = { part: part.name };
  const each: WrittenPart = { amountOf: (row) => (row.percent ?? row.weight)!.text, inPercent: false };
  const weights: WrittenPart = { amountOf: (row) => (row.weight ?? row.percent)!.text, inPercent: false };
  if (rows.length === 0 || rows.every((row) => row.percent === undefined)) return weights;
  const allPercent = rows.every((row) => row.percent !== undefined);
  const allWeighed = rows.every((row) => row.weight?.quantity.kind === 'mass');
  const whole = wholeOf(rows);
  const apart = whole === undefined ? [] : rows.filter((row) => differs(row, whole, rows));
  if (apart.length > 0) {
    for (const row of apart.slice(0, 5))
      notes.doubt(
        message('import.row-differs', {
          ...{ number: row.number, name: row.name, written: row.percent!.text },
          ...{ grams: (row.percent!.value / 100) * whole!, otherWritten: row.weight!.text },
        }),
      );
    if (apart.length > 5) notes.doubt(message('import.rows-differ', { count: apart.length - 5 }));
    notes.doubt(isDough ? message('import.disagree') : message('import.disagree-part', named));
    return weights;
  }
  const flour = flourPercent(rows, isFlour);
  const all = rows.reduce((sum, row) => sum + (row.percent?.value ?? 0), 0);
  if (allPercent && flour !== 100 && Math.abs(all - 100) < 0.6) {
    if (allWeighed) {
      notes.say(isDough ? message('import.of-all') : message('import.of-all-part', named));
      return weights;
    }
    notes.doubt(
      isDough ? message('import.of-all-per-kilogram') : message('import.of-all-per-kilogram-part', named),
    );
    return { amountOf: (row) => `${trimmed(row.percent!.value * 10, 3)} g`, inPercent: false };
  }
  if (flour !== undefined && flour !== 100) {
    const fraction = flour / 100;
    if (allWeighed) {
      notes.doubt(
        isDough
          ? message('import.flours-make-weights', { fraction })
          : message('import.flours-make-weights-part', { fraction, ...named }),
      );
      return weights;
    }
    notes.doubt(
      isDough
        ? message('import.flours-make', { fraction })
        : message('import.flours-make-part', { fraction, ...named }),
    );
  }
  if (!allPercent) return allWeighed ? weights : each;
  if (!allWeighed) return { ...each, inPercent: true };
  notes.say(isDough ? message('import.agree') : message('import.agree-part', named));
  const yieldGrams = rows.reduce((sum, row) => sum + row.weight!.value, 0);
  return { ...each, yieldGrams, ...(whole === undefined ? {} : { wholeGrams: whole }), inPercent: true };
}

/** What the flours come to: 100 where they do within rounding; absent where nothing is known to be flour. */
function flourPercent(rows: readonly ReadRow[], isFlour: (name: string) => boolean): number | undefined {
  const flours = rows.filter((row) => row.percent !== undefined && isFlour(row.name));
  if (flours.length === 0) return rows.some((row) => row.percent?.value === 100) ? 100 : undefined;
  const sum = flours.reduce((all, row) => all + row.percent!.value, 0);
  return Math.abs(sum - 100) < 0.25 ? 100 : sum;
}

/** Grams of one hundred percent: that of the middle row, each row counting as much as its percentage. */
function wholeOf(rows: readonly ReadRow[]): number | undefined {
  const both = rows
    .filter(
      (row) => row.weight?.quantity.kind === 'mass' && row.percent !== undefined && row.percent.value > 0,
    )
    .map((row) => ({ share: row.percent!.value, whole: (row.weight!.value / row.percent!.value) * 100 }))
    .toSorted((one, other) => one.whole - other.whole);
  let left = both.reduce((sum, { share }) => sum + share, 0) / 2;
  return both.find(({ share }) => {
    left -= share;
    return left <= 0;
  })?.whole;
}

function differs(row: ReadRow, whole: number, rows: readonly ReadRow[]): boolean {
  const { percent: share, weight } = row;
  if (share === undefined || weight?.quantity.kind !== 'mass') return false;
  const rounding =
    halfPlace(rows.map((one) => one.weight)) + (halfPlace(rows.map((one) => one.percent)) * whole) / 100;
  return Math.abs(weight.value - (share.value * whole) / 100) > rounding * 1.01 + looseness * weight.value;
}

/** Half of the last place that a column of figures shows, in grams or percent. */
function halfPlace(amounts: readonly (CellAmount | undefined)[]): number {
  const steps = amounts.flatMap((amount) => {
    if (amount === undefined || amount.value === 0) return [];
    const number = Number(amount.quantity.number);
    const places = /\.(\d+)$/.exec(amount.quantity.number)?.[1]?.length ?? 0;
    return number > 0 ? [(10 ** -places * amount.value) / number] : [];
  });
  return steps.length === 0 ? 0 : Math.min(...steps) / 2;
}
