import { type Message, message } from '../words/message.ts';
import type { ChosenColumns } from './column-choice.ts';
import type { Columns } from './columns.ts';
import type { Notes } from './notes.ts';
import { isTwoWays, numberCell, plainNumber, type Signs } from './numbers.ts';
import { type ReadRow, readRows } from './table-rows.ts';
import { isTotalName } from './table-words.ts';

/**
 * The signs of numbers such as `1.000`, which read in two ways, settled by what else the table says: its percentages must be
 * to its weights as they are to one another, and a row of a sum must be the sum. As they were where that does not tell.
 */
export function settledSigns(
  columns: Columns,
  signs: Signs,
  choose: (signs: Signs) => ChosenColumns,
  notes: Notes,
): Signs {
  const numbers = columns.body.flatMap(({ cells }) =>
    columns.amounts.flatMap(({ at }) => numberCell(cells[at] ?? '')?.number ?? []),
  );
  const two = numbers.find(isTwoWays);
  if (two === undefined || (signs.sure && !signs.mixed)) return signs;
  const readings = (['.', ','] as const).map((decimal) => {
    const own: Signs = { decimal, sure: true };
    return { own, proof: proofOf(readRows(columns, choose(own), own)) };
  });
  const [right, more] = readings.filter(({ proof }) => proof.holds === true);
  const others = readings.filter(({ proof }) => proof.holds === false);
  if (right === undefined || more !== undefined || others.length === 0) return signs;
  notes.say(right.proof.told!({ written: two, meant: plainNumber(two, right.own) }));
  return right.own;
}

interface Proof {
  /** `undefined` where nothing in the table tells. */
  readonly holds: boolean | undefined;
  /** What holds of the table where the number is so. */
  readonly told?: (number: { readonly written: string; readonly meant: string }) => Message;
}

function proofOf(rows: readonly ReadRow[]): Proof {
  const both = rows.filter(({ name, percent, weight }) => !isTotalName(name) && percent && weight);
  if (both.length >= 2) {
    const wholes = both.map(({ percent, weight }) => weight!.value / percent!.value).filter(Number.isFinite);
    const [least, most] = [Math.min(...wholes), Math.max(...wholes)];
    if (wholes.length >= 2)
      return {
        holds: most <= 1.1 * least,
        told: (number) => message('import.read-by-shares', number),
      };
  }
  const sum = rows.find(({ name, weight }) => isTotalName(name) && weight !== undefined);
  if (sum === undefined) return { holds: undefined };
  const all = rows
    .filter((row) => row !== sum && !isTotalName(row.name))
    .reduce((grams, { weight }) => grams + (weight?.value ?? 0), 0);
  return {
    holds: Math.abs(all - sum.weight!.value) <= 0.005 * all,
    told: (number) => message('import.read-by-sum', { ...number, name: sum.name, grams: all }),
  };
}
