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
    at += line.length + endings[index]!.length;
  });
  let made = '';
  let done = 0;
  for (const { line, start, endLine, end, insert } of edits) {
    made += text.slice(done, starts[line]! + start) + insert;
    done = starts[endLine ?? line]! + end;
  }
  return made + text.slice(done);
}
