import { type Message, message } from '../words/message.ts';
import type { ChosenColumns } from './column-choice.ts';
import type { AmountColumn, Columns } from './columns.ts';
import type { CellTable } from './delimited.ts';
import { atMost, type Notes } from './notes.ts';
import { isTwoWays, numberCell, plainNumber, type Signs } from './numbers.ts';

/** Tells what was taken for what. */
export function tellColumns(
  { delimiter }: CellTable,
  { body, headings, title, name, part, formula, temperature, remark }: Columns,
  { percent, weight, guessed, isFraction, leftOut }: ChosenColumns,
  notes: Notes,
): void {
  const titleOf = (at: number): Message => columnMessage({ at, title: headings?.[at] ?? '' });
  const code = headings === undefined ? 'import.table' : 'import.table-with-heading';
  notes.say(message(code, { count: body.length, title: message(`import.between-${delimiter}`) }));
  if (title !== undefined) notes.say(message('import.title', { name: title }));
  const parts: Message[] = [message('import.names-in', { title: titleOf(name) })];
  if (percent !== undefined) parts.push(message('import.percentages-in', { title: titleOf(percent.at) }));
  if (weight !== undefined) parts.push(message('import.weights-in', { title: titleOf(weight.at) }));
  if (part !== undefined) parts.push(message('import.parts-in', { title: titleOf(part) }));
  if (formula !== undefined) parts.push(message('import.formulas-in', { title: titleOf(formula) }));
  if (temperature !== undefined)
    parts.push(message('import.temperatures-in', { title: titleOf(temperature) }));
  if (remark !== undefined) parts.push(message('import.remarks-in', { title: titleOf(remark) }));
  notes.say(message('import.columns', { parts }));
  if (guessed.percent && percent)
    notes.say(
      message('import.percent-guessed', { title: titleOf(percent.at), number: isFraction ? 1 : 100 }),
    );
  else if (isFraction && percent) notes.say(message('import.shares-of-one', { title: titleOf(percent.at) }));
  if (guessed.grams && weight) notes.doubt(message('import.grams-guessed', { title: titleOf(weight.at) }));
  const isAgain = ({ title: one }: AmountColumn): boolean =>
    one !== '' && (one === percent?.title || one === weight?.title);
  tellLeftOut(
    leftOut.filter((column) => !isAgain(column)),
    (told) => notes.say(message('import.left-out', { parts: told })),
  );
  tellLeftOut(leftOut.filter(isAgain), (told) =>
    notes.doubt(message('import.columns-again', { parts: told })),
  );
}

/** A column by its heading, else by its number as people count. */
function columnMessage({ at, title }: Pick<AmountColumn, 'at' | 'title'>): Message {
  return title === ''
    ? message('import.column', { number: at + 1 })
    : message('import.quoted', { name: title });
}

/** Tells of some columns, if there are any. */
function tellLeftOut(columns: readonly AmountColumn[], tell: (columns: Message[]) => void): void {
  if (columns.length > 0) tell(atMost(columns.map(columnMessage)));
}

/** Tells how numbers were read that can be read in two ways. */
export function tellNumbers(columns: Columns, chosen: ChosenColumns, signs: Signs, notes: Notes): void {
  const taken = [chosen.percent, chosen.weight].flatMap((column) =>
    column === undefined ? [] : [column.at],
  );
  const numbers = columns.body.flatMap(({ cells }) =>
    taken.flatMap((at) => numberCell(cells[at] ?? '')?.number ?? []),
  );
  if (signs.mixed) notes.doubt(message('import.signs-mixed'));
  else if (signs.decimal === ',' && numbers.some((number) => number.includes(',')))
    notes.say(message('import.decimal-comma'));
  const two = numbers.find(isTwoWays);
  if (two === undefined || (signs.sure && !signs.mixed)) return;
  notes.doubt(message('import.read-as', { written: two, meant: plainNumber(two, signs) }));
}
