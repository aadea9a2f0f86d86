import { elementAt } from './element.ts';
import { splitLines } from './lines.ts';
import type { Place } from './span.ts';

/** A replacement of a stretch of a text; `endLine` where it ends on a later line than it starts. */
export interface PlacedEdit extends Place {
  readonly endLine?: number;
  readonly insert: string;
}

/** The text with edits made, which are given in their order and none over another. */
export function withEdits(text: string, edits: readonly PlacedEdit[]): string {
  const { texts, endings } = splitLines(text);
  const starts: number[] = [];
  let at = 0;
  texts.forEach((line, index) => {
    starts.push(at);
    at += line.length + elementAt(endings, index).length;
  });
  let made = '';
  let done = 0;
  for (const { line, start, endLine, end, insert } of edits) {
    const from = elementAt(starts, line) + start;
    const to = elementAt(starts, endLine ?? line) + end;
    // What lies within another edit, or before one that is done, would lose or double letters without a word.
    if (!(from >= done && to >= from))
      throw new RangeError('The edits of a text overlap or are out of order.');
    made += text.slice(done, from) + insert;
    done = to;
  }
  return made + text.slice(done);
}

export interface TextEdit extends PlacedEdit {
  /** `insert` is a snippet: `${1:words}` in it stands for words that the baker types over. */
  readonly snippet?: true;
}

export interface FileEdit {
  readonly uri: string;
  readonly edits: readonly TextEdit[];
}

/** Edits in the order in which they stand in a text; those that begin at one place stay as they were given. */
export function inOrder<T extends Place>(edits: readonly T[]): T[] {
  return [...edits].sort((one, other) => one.line - other.line || one.start - other.start);
}
