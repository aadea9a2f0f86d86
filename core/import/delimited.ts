import { dsvFormat } from 'd3-dsv';
import { parseLine } from '../syntax/line.ts';
import { scanQuantity } from '../syntax/quantity.ts';
import { splitLines } from '../text/lines.ts';

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
    .map((cells, index) => ({ number: index + 1, cells: cells.map(trim) }))
    .filter(({ cells }) => cells.some((cell) => cell !== '' && !/^:?-{3,}:?$/.test(cell)));
  return { delimiter, rows };
}

function cut(text: string, delimiter: Delimiter): string[][] {
  if (delimiter === 'blanks') return splitLines(text).texts.map((line) => line.trim().split(/[ \u00A0]{2,}/));
  if (delimiter === 'none') return splitLines(text).texts.map(nameAndAmount);
  return dsvFormat(signs[delimiter]).parseRows(text);
}

const trim = (cell: string): string => cell.replace(/[\s\u00A0\u202F]+/g, ' ').trim();

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

/** A line in which nothing parts the name from the amount: `strong white 1000 g`, or the amount first. */
function nameAndAmount(bulleted: string): string[] {
  const line = bulleted.replace(/^\s*(?:[-–—•*·▪◦]|\d{1,2}[.)])\s+(?=\S)/, '');
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
