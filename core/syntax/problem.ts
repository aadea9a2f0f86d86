import type { LineEdit, Span } from '../text/span.ts';
import type { LineFix, SyntaxProblem } from './tree.ts';

export function problem(
  code: string,
  message: string,
  span: Span,
  ...fixes: readonly LineFix[]
): SyntaxProblem {
  return { code, message, span, fixes };
}

export function replaceFix(title: string, span: Span, insert: string, preferred = false): LineFix {
  const edits: LineEdit[] = [{ start: span.start, end: span.end, insert }];
  return preferred ? { title, edits, preferred: true } : { title, edits };
}

export function insertFix(title: string, at: number, insert: string, preferred = false): LineFix {
  return replaceFix(title, { start: at, end: at }, insert, preferred);
}
