import type { ChosenColumns } from './chosen.ts';
import type { Columns } from './columns.ts';
import type { CellTable, Delimiter } from './delimited.ts';
import { listed, type Notes } from './notes.ts';
import { isTwoWays, numberCell, plainNumber, type Signs } from './numbers.ts';

const between: Readonly<Record<Delimiter, string>> = {
  tab: 'tabs',
  semicolon: 'semicolons',
  comma: 'commas',
  bar: 'bars',
  blanks: 'several blanks',
  none: 'nothing',
};

/** Tells what was taken for what. */
export function tellColumns(table: CellTable, columns: Columns, chosen: ChosenColumns, notes: Notes): void {
  const titleOf = (at: number): string => `“${columns.headings?.[at] || `column ${at + 1}`}”`;
  const heading = columns.headings === undefined ? 'without a heading' : 'with a heading';
  notes.say(
    `A table of ${columns.body.length} rows with ${between[table.delimiter]} between its cells, ${heading}.`,
  );
  if (columns.title !== undefined)
    notes.say(`“${columns.title}” above the table is taken as the name of the formula.`);
  const found = [`names in ${titleOf(columns.name)}`];
  if (chosen.percent !== undefined) found.push(`percentages in ${titleOf(chosen.percent.at)}`);
  if (chosen.weight !== undefined) found.push(`weights in ${titleOf(chosen.weight.at)}`);
  if (columns.part !== undefined) found.push(`parts in ${titleOf(columns.part)}`);
  if (columns.formula !== undefined) found.push(`formulas in ${titleOf(columns.formula)}`);
  notes.say(`It has ${found.join(', ')}.`);
  const { percent, weight, guessed, isFraction, leftOut } = chosen;
  if (guessed.percent && percent)
    notes.say(
      `${titleOf(percent.at)} has no unit and is taken as percent: its flours come to ${isFraction ? 1 : 100}.`,
    );
  else if (isFraction && percent) notes.say(`${titleOf(percent.at)} has shares of 1, written as percent.`);
  if (guessed.grams && weight) notes.doubt(`${titleOf(weight.at)} has no unit and is taken as grams.`);
  const isAgain = (title: string): boolean => title === percent?.title || title === weight?.title;
  const again = leftOut.filter(({ title }) => isAgain(title)).map(({ title }) => title);
  const others = leftOut.filter(({ title }) => !isAgain(title)).map(({ title }) => title);
  if (others.length > 0) notes.say(`More amounts than a line can have are left out: ${listed(others)}.`);
  if (again.length > 0)
    notes.doubt(
      `Columns that come again are left out: ${listed(again)}. Where they are of another part, take that as a table of its own.`,
    );
}

/** Tells how numbers were read that can be read in two ways. */
export function tellNumbers(columns: Columns, chosen: ChosenColumns, signs: Signs, notes: Notes): void {
  const taken = [chosen.percent, chosen.weight].flatMap((column) =>
    column === undefined ? [] : [column.at],
  );
  const numbers = columns.body.flatMap(({ cells }) =>
    taken.flatMap((at) => numberCell(cells[at] ?? '')?.number ?? []),
  );
  if (signs.mixed)
    notes.doubt('Commas and points both stand before decimals in this table; each number is read by itself.');
  else if (signs.decimal === ',' && numbers.some((number) => number.includes(',')))
    notes.say('The comma is taken as the decimal sign.');
  const two = numbers.find(isTwoWays);
  if (two === undefined || (signs.sure && !signs.mixed)) return;
  notes.doubt(
    `“${two}” is read as ${plainNumber(two, signs)}, and so are others like it: look whether that is meant.`,
  );
}
