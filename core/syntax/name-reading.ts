import type { IToken } from 'chevrotain';
import { lastOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { Comma, endOf, Quoted, quantityOf } from './tokens.ts';
import type { Name } from './tree.ts';

/** The name that a run of tokens spells, as the line writes it; `undefined` for an empty run. */
export function nameOf(line: string, tokens: readonly IToken[]): Name | undefined {
  const first = tokens[0];
  if (first === undefined) return undefined;
  return nameBetween(line, first.startOffset, endOf(lastOf(tokens)));
}

/** The name that stands between two columns of a line: quotes taken off, blanks drawn together, and folded to be compared. */
export function nameBetween(line: string, start: number, end: number): Name {
  const text = line.slice(start, end).replace(/"/g, '').replace(/\s+/g, ' ').trim();
  return { text, folded: foldName(text), start, end };
}

/** Whether a token may be a word of a name that stands without quotes. */
export const wordTypes = (token: IToken): boolean =>
  token.tokenType !== Quoted && quantityOf(token) === undefined;

/** The words that a run of tokens begins with, to its first amount, quotes or comma. */
export function leadingWords(tokens: readonly IToken[]): readonly IToken[] {
  const end = tokens.findIndex((token) => token.tokenType === Comma || !wordTypes(token));
  return end < 0 ? tokens : tokens.slice(0, end);
}
