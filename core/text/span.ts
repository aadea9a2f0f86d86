/** A half-open stretch of UTF-16 columns within one line. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A span together with the zero-based line it lies in. */
export interface Place extends Span {
  readonly line: number;
}

/** A replacement of one stretch of one line; `insert` may hold line breaks. */
export interface LineEdit extends Span {
  readonly insert: string;
}

/** A span together with its line, from 0. */
export function placeOf(line: number, span: Span): Place {
  return { line, start: span.start, end: span.end };
}
