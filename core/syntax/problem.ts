import type { LineEdit, Span } from '../text/span.ts';
import { type Message, message } from '../words/message.ts';
import type { LineFix, SyntaxProblem } from './syntax-problem.ts';

/**
 * What is wrong with a line, at columns of it, with what helps. The fix that is preferred is the one that an editor offers
 * unasked.
 */
export function problem(
  code: string,
  said: Message,
  span: Span,
  ...fixes: readonly LineFix[]
): SyntaxProblem {
  return { code, message: said, span, fixes };
}

/** A fix that writes something in the place of a stretch of the line. */
export function replaceFix(title: Message, span: Span, insert: string, preferred = false): LineFix {
  const edits: LineEdit[] = [{ start: span.start, end: span.end, insert }];
  return preferred ? { title, edits, preferred: true } : { title, edits };
}

/** A fix that is called by what it writes. */
export function writeFix(span: Span, meant: string, preferred = false): LineFix {
  return replaceFix(message('fix.write', { meant }), span, meant, preferred);
}

/** A fix that writes something at a column. */
export function insertFix(title: Message, at: number, insert: string, preferred = false): LineFix {
  return replaceFix(title, { start: at, end: at }, insert, preferred);
}

/**
 * Fixes that put one of several units behind a number, in place of what stands there for one (`200 degrees`); which of them is preferred, if
 * any.
 */
export function unitFixes(
  number: string,
  units: readonly string[],
  { start, end }: Span,
  preferred = 0,
): readonly LineFix[] {
  const behind = { start: Math.min(start + number.length, end), end };
  return units.map((unit, index) =>
    replaceFix(message('fix.write', { meant: `${number}${unit}` }), behind, unit, index === preferred),
  );
}

/** A fix that takes a colon out, or puts something in its place. */
export function colonOutFix(span: Span, insert = ''): LineFix {
  return replaceFix(message('fix.take-colon-out'), span, insert, true);
}
