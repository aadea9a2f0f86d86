import { dsvFormat } from 'd3-dsv';
import { parseLine } from '../syntax/line.ts';
import { scanQuantity } from '../syntax/quantity.ts';
import { groupOf } from '../text/element.ts';
import { splitLines } from '../text/lines.ts';
import { withoutPack } from './table-words.ts';

/** A table as cells, each trimmed; rows count from one as the text has them, blank ones left out. */
export interface CellTable {
  readonly delimiter: Delimiter;
  readonly rows: readonly CellRow[];
}

export interface CellRow {
  readonly number: number;
  readonly cells: readonly string[];
}

export type Delimiter = 'tab' | 'semicolon' | 'bar' | 'blanks' | 'comma' | 'none';

const signs = { tab: '\t', semicolon: ';', bar: '|', comma: ',' } as const;

/** Cuts a pasted table into cells; what parts them is found out from the text. Never throws. */
export function cellsOf(text: string): CellTable {
  const plain = text.replace(/^\uFEFF/, '').replace(/^sep=.[ \t]*(?:\r\n|\r|\n)/i, '');
  const delimiter = delimiterOf(splitLines(plain).texts.filter((line) => line.trim() !== ''));
  const rows = cut(plain, delimiter)
    .map((cells, index) => ({ number: index + 1, cells: cells.map(trim).map(plainOf) }))
    .filter(({ cells }) => cells.some((cell) => cell !== '' && !/^:?-{3,}:?$/.test(cell)));
  return { delimiter, rows };
}

function cut(text: string, delimiter: Delimiter): string[][] {
  if (delimiter === 'blanks') return splitLines(text).texts.map((line) => line.trim().split(/[ \u00A0]{2,}/));
  if (delimiter === 'none') return splitLines(text).texts.map(nameAndAmount);
  return dsvFormat(signs[delimiter]).parseRows(text);
}

const trim = (cell: string): string => cell.replace(/[\s\u00A0\u202F]+/g, ' ').trim();

/** A cell without the signs that print all of it bold or slanted in Markdown. */
function plainOf(cell: string): string {
  const found = /^(\*{1,3}|_{1,3}|`)(?=\S)(.+)(?<=\S)\1$/.exec(cell);
  return found === null ? cell : groupOf(found, 2);
}

/** The sign that most lines agree on; those that hardly stand in names and numbers come first. */
function delimiterOf(lines: readonly string[]): Delimiter {
  const share = (pattern: RegExp): number =>
    lines.filter((line) => pattern.test(line.replace(/"[^"]*"/g, '""'))).length / Math.max(1, lines.length);
  if (share(/\t/) >= 0.5) return 'tab';
  if (share(/;/) >= 0.5) return 'semicolon';
  if (share(/\|/) >= 0.5) return 'bar';
  if (share(/\S {2,}\S/) >= 0.5 && share(/,\s*\S.*,|, {2,}/) < 0.5) return 'blanks';
  // `flour 1,5 kg` has a comma in its number and none between cells.
  return share(/,(?!\d)|\D,|,.*,/) >= 0.5 ? 'comma' : 'none';
}

/** What stands in brackets at the end of a line, and the line before it. */
function bracketBehind(text: string): { readonly line: string; readonly behind: string } {
  const found = /^(.*\S)\s*\(([^()]{1,40})\)\s*$/u.exec(text);
  return found === null ? { line: text, behind: '' } : { line: groupOf(found, 1), behind: groupOf(found, 2) };
}

/** A name from which a colon or a row of points leads to its amount: `Water: 650 g`, `Water .... 650 g`. */
function ledTo(line: string): string[] | undefined {
  const found = /^\s*(\S.*?)\s*(?::\s+|\.{3,}\s*|…+\s*|_{3,}\s*)([^\s:.…_][^:…_]*)$/u.exec(line);
  if (found === null || !/\p{L}/u.test(groupOf(found, 1))) return undefined;
  const amount = groupOf(found, 2).trim();
  const quantity = scanQuantity(amount, 0, 'speed');
  const isAmount =
    quantity?.end === amount.length && ['mass', 'volume', 'fraction', 'count'].includes(quantity.kind);
  return isAmount || /^\d+(?:[.,]\d+)?$/.test(amount) ? [groupOf(found, 1), amount] : undefined;
}

/** `1 sachet dried yeast (7 g)`: counted in packs of which the brackets say what one weighs. */
function packedAmount(line: string, behind: string): string[] | undefined {
  const found = /^\s*1 +(\p{L}.*)$/u.exec(line);
  const name = found === null ? undefined : withoutPack(groupOf(found, 1));
  const quantity = scanQuantity(behind, 0, 'speed');
  if (name === undefined || quantity?.kind !== 'mass' || quantity.end !== behind.length) return undefined;
  return [name, behind];
}

/** A line in which nothing parts the name from the amount: `strong white 1000 g`, or the amount first. */
function nameAndAmount(bulleted: string): string[] {
  const unmarked = bulleted.replace(/^\s*(?:[-–—•*·▪◦]|\d{1,2}[.)])\s+(?=\S)/, '');
  // No line of a list is longer, and some patterns take a time that grows with its square.
  const { line, behind } = unmarked.length > 300 ? { line: unmarked, behind: '' } : bracketBehind(unmarked);
  if (behind !== '') {
    const packed = packedAmount(line, behind);
    if (packed !== undefined) return packed;
    const [name = '', ...amount] = nameAndAmount(line);
    return amount.length === 0 ? [unmarked] : [`${name} (${behind})`, ...amount];
  }
  const led = line.length > 300 ? undefined : ledTo(line);
  if (led !== undefined) return led;
  const { statement, problems } = parseLine(line, { context: 'formula', afterBlank: false });
  if (statement.kind === 'ingredient' && problems.length === 0) {
    const { name, amount } = statement;
    return [line.slice(name.start, name.end), line.slice(amount.start, amount.end)];
  }
  const start = line.search(/\S/);
  const first = start < 0 ? undefined : scanQuantity(line, start, 'speed');
  const rest = first === undefined ? '' : line.slice(first.end).replace(/^\s+of\s+/, '');
  if (first !== undefined && /\p{L}/u.test(rest)) return [rest, line.slice(start, first.end)];
  const text = line.trimEnd();
  let cut = text.length;
  while (cut > 0 && /[\d.,]/.test(text.charAt(cut - 1))) cut--;
  const name = text.slice(0, cut);
  const isBehindName = cut < text.length && name !== name.trimEnd() && /\p{L}/u.test(name);
  return isBehindName ? [name.trimEnd(), text.slice(cut)] : [line];
}
