import { printLines } from '../../syntax/print.ts';
import type { ParsedLine, SourceFile } from '../../syntax/tree.ts';
import type { TextEdit } from '../../text/edits.ts';
import { elementAt, firstOf } from '../../text/element.ts';

/** Lines to be formatted, both ends included; the rest of the file stays as it is. */
export interface LineRange {
  readonly firstLine: number;
  readonly lastLine: number;
}

/**
 * The edits that bring a file into its canonical form: each line by itself, at most one blank line in a row, none at
 * the start, and the last line ended. With a range only its lines are touched.
 */
export function formatEdits(source: SourceFile, range?: LineRange): TextEdit[] {
  const { lines } = source;
  const printed = printLines(lines);
  const first = lines.findIndex((line) => !isBlank(line));
  const last = lines.findLastIndex((line) => !isBlank(line));
  if (first < 0) return range === undefined ? removal(source, 0, lines.length - 1) : [];
  const edits: TextEdit[] = [];
  const from = Math.max(0, range?.firstLine ?? 0);
  const to = Math.min(last, range?.lastLine ?? last);
  for (let index = from; index <= to; index++) {
    const line = elementAt(lines, index);
    if (isBlank(line) && (index < first || isBlank(elementAt(lines, index - 1)))) {
      let end = index;
      while (end < to && isBlank(elementAt(lines, end + 1))) end++;
      edits.push(...removal(source, index, end));
      index = end;
    } else edits.push(...lineEdits(line, index, elementAt(printed, index)));
  }
  if (range === undefined) edits.push(...endEdits(source, last));
  return edits;
}

/**
 * What is put right while somebody types: the line just left when a line break was typed, and a header that has just
 * got its colon.
 */
export function formatTyped(source: SourceFile, line: number, column: number, typed: string): TextEdit[] {
  const at = typed === ':' ? line : line - 1;
  const parsed = source.lines[at];
  if (parsed === undefined) return [];
  if (typed === ':') {
    const isDone = parsed.statement.kind === 'header' && parsed.text.slice(column).trim() === '';
    if (!isDone) return [];
  }
  return lineEdits(parsed, at, elementAt(printLines(source.lines.slice(0, at + 1)), at));
}

function isBlank(line: ParsedLine): boolean {
  return line.tokens.every((token) => token.kind === 'blank');
}

function lineEdits(line: ParsedLine, index: number, printed: string): TextEdit[] {
  const bom = index === 0 && line.text.startsWith('\uFEFF') ? 1 : 0;
  // A byte order mark is no part of what the line says; a line kept as it is holds it still.
  const insert = bom > 0 && !printed.startsWith('\uFEFF') ? `\uFEFF${printed}` : printed;
  return replacement(line.text, insert, index);
}

/** The one stretch in which two texts differ, as an edit; never a cut through a character of two units. */
function replacement(before: string, after: string, line: number): TextEdit[] {
  if (before === after) return [];
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  if (isLow(before, start) || isLow(after, start)) start--;
  let tail = 0;
  while (tail < most - start && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  if (isLow(before, before.length - tail) || isLow(after, after.length - tail)) tail--;
  const end = before.length - tail;
  return [{ line, start, end, insert: after.slice(start, after.length - tail) }];
}

function isLow(text: string, at: number): boolean {
  const unit = text.charCodeAt(at);
  return unit >= 0xdc00 && unit <= 0xdfff && at > 0;
}

/** Takes whole lines out, with their endings. */
function removal({ lines }: SourceFile, from: number, to: number): TextEdit[] {
  const bom = from === 0 && firstOf(lines).text.startsWith('\uFEFF') ? 1 : 0;
  const isToEnd = to === lines.length - 1;
  const edit: TextEdit = {
    line: from,
    start: bom,
    endLine: isToEnd ? to : to + 1,
    end: isToEnd ? elementAt(lines, to).text.length : 0,
    insert: '',
  };
  return edit.endLine === edit.line && edit.start === edit.end ? [] : [edit];
}

/** Leaves one line ending behind the last line that says something. */
function endEdits(source: SourceFile, last: number): TextEdit[] {
  const { lines, endings } = source;
  if (last === lines.length - 1) {
    const { length } = elementAt(lines, last).text;
    return [{ line: last, start: length, end: length, insert: endings[last - 1] ?? '\n' }];
  }
  return last + 1 === lines.length - 1 && elementAt(lines, last + 1).text === ''
    ? []
    : removal(source, last + 1, lines.length - 1);
}
