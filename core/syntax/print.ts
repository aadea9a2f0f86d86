import type { Span } from '../text/span.ts';
import { amountColumn, commentColumn, indent, readingColumn, upTo } from './layout.ts';
import { parseLine } from './line.ts';
import { printQuantity } from './print-quantity.ts';
import { cutLine } from './tokens.ts';
import type { Context, ParsedLine, Statement, Token } from './tree.ts';

/**
 * A line in its canonical form, which depends on the line and on the section it stands in and on nothing else. A line
 * that has a problem or that nobody reads stays exactly as it is, and so does one that would say something else.
 */
export function printLine(line: ParsedLine, context: Context): string {
  const { statement, text } = line;
  if (line.problems.length > 0 || statement.kind === 'unreadable' || statement.kind === 'silent') return text;
  if (statement.kind === 'blank') return printEmpty(line, context);
  const printed = print(line, statement);
  return printed === text || saysTheSame(line, printed, context) ? printed : text;
}

/** The lines of a file, each in its canonical form. */
export function printLines(lines: readonly ParsedLine[]): string[] {
  let context: Context = 'none';
  return lines.map((line) => {
    const printed = printLine(line, context);
    if (line.statement.kind === 'header') context = line.statement.section;
    return printed;
  });
}

/** A blank line, or a comment that has its line to itself: at the margin if it stood there, else in its section. */
function printEmpty(line: ParsedLine, context: Context): string {
  if (context === 'unknown' || !line.empty) return line.text;
  const comment = line.tokens.find((token) => token.kind === 'comment');
  if (comment === undefined) return '';
  return (comment.start === 0 || context === 'none' ? '' : indent) + trimEnd(comment.text);
}

function print(line: ParsedLine, statement: Statement): string {
  const tokens = line.tokens.filter((token) => token.kind !== 'blank' && token.kind !== 'comment');
  const comment = line.tokens.find((token) => token.kind === 'comment');
  const body =
    statement.kind === 'note'
      ? printNote(line, statement.text)
      : (statement.kind === 'header' ? '' : indent) + printTokens(tokens, statement);
  if (comment === undefined) return body;
  return upTo(body, commentColumn) + trimEnd(comment.text);
}

function printNote(line: ParsedLine, words: string): string {
  const word = line.tokens.find((token) => token.kind === 'word')!;
  return words === '' ? indent + word.text : `${indent}${word.text} ${words}`;
}

function printTokens(tokens: readonly Token[], statement: Statement): string {
  const names = nameSpans(statement);
  const column = columnIn(tokens, statement);
  let printed = '';
  let depth = 0;
  tokens.forEach((token, index) => {
    const before = tokens[index - 1];
    const name = names.find((one) => token.start >= one.start && token.end <= one.end);
    const asWritten = depth > 0 || (name !== undefined && before !== undefined && before.start >= name.start);
    if (column?.at === token) printed = upTo(indent + printed, column.column).slice(indent.length);
    else if (before !== undefined) printed += gap(before, token, asWritten, token === tokens.at(-1));
    if (token.kind === 'leftParen') depth++;
    if (token.kind === 'rightParen') depth--;
    printed +=
      token.quantity === undefined || name !== undefined
        ? wordOf(token)
        : printQuantity(token.text, token.quantity);
  });
  return printed;
}

function wordOf(token: Token): string {
  // Blanks inside a number that belongs to a name, `Rye 1 1/2`.
  return token.kind === 'quantity' ? token.text.replace(/\s+/g, ' ') : token.text;
}

/** What stands between two tokens: one blank where there was one or more, and the usual ones around commas and the last colon. */
function gap(before: Token, token: Token, asWritten: boolean, isLast: boolean): string {
  const written = token.start > before.end ? ' ' : '';
  if (asWritten) return written;
  if (token.kind === 'comma' || (token.kind === 'colon' && isLast)) return '';
  return before.kind === 'comma' ? ' ' : written;
}

/** The token that stands at a column of its own: an amount, or the temperature of a reading. */
function columnIn(
  tokens: readonly Token[],
  statement: Statement,
): { readonly at: Token; readonly column: number } | undefined {
  if (statement.kind === 'ingredient' || statement.kind === 'planned') {
    const at = tokens.find((token) => token.start >= statement.amount.start);
    return at === undefined ? undefined : { at, column: amountColumn };
  }
  if (statement.kind !== 'property') return undefined;
  const isReading = statement.value?.form === 'reading' || statement.property === 'end';
  const at = isReading ? tokens.find((token) => token.quantity?.kind === 'temperature') : undefined;
  return at === undefined ? undefined : { at, column: readingColumn };
}

/** Where names stand in a statement: what is in them is kept letter by letter. */
function nameSpans(data: object): Span[] {
  const own = 'folded' in data && 'start' in data ? [data as unknown as Span] : [];
  return [
    ...own,
    ...Object.values(data).flatMap((value) =>
      typeof value === 'object' && value !== null ? nameSpans(value) : [],
    ),
  ];
}

function saysTheSame(line: ParsedLine, printed: string, context: Context): boolean {
  const again = parseLine(printed, { context, afterBlank: false });
  if (again.problems.length > 0) return false;
  return meaning(line) === meaning(again);
}

/** What a line says, without where on the line it says it. */
export function meaning({ statement, accept, tokens }: ParsedLine): string {
  const comment = tokens.find((token) => token.kind === 'comment');
  return JSON.stringify([statement, accept, comment && trimEnd(comment.text)], (key, value: unknown) => {
    if (key === 'start' || key === 'end') return undefined;
    // Remarks and the words of a trial are free text: their blanks and the way their numbers are written are not.
    if (key === 'remarks' || key === 'words')
      return typeof value === 'string' ? loose(value) : looseAll(value);
    return value;
  });
}

function looseAll(value: unknown): unknown {
  return Array.isArray(value) ? value.map((one) => loose(String(one))) : value;
}

function loose(text: string): unknown {
  return cutLine(text).tokens.flatMap(({ kind, text: written, quantity }) => {
    if (kind === 'blank') return [];
    return [quantity === undefined ? written : { ...quantity, number: '', unit: '' }];
  });
}

// What the notation calls a blank, and no more: a line separator in a comment is a part of it.
const blank = /[ \t\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000\uFEFF]/;

function trimEnd(text: string): string {
  let end = text.length;
  while (end > 0 && blank.test(text.charAt(end - 1))) end--;
  return text.slice(0, end);
}
