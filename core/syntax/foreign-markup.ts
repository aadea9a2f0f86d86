import { groupOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { problem } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';

/**
 * A line with marks of another layout in it, such as bullets, tables and printed quotes. `text` is as long as the line and
 * has blanks, or the sign of the notation, in their places, so that what is read of it stands where it does in the line.
 */
export interface MarkupLine {
  readonly text: string;
  readonly problem: SyntaxProblem;
}

const blank = String.raw`[\s\u200B]`;
const bulletPattern = new RegExp(
  String.raw`^(${blank}*)((?:[-–—−*•·●▪◦‣✓✔☐☑>]|\d{1,2}[.)]|[a-z]\)|\[[ xX]?\])(?:${blank}+\[[ xX]?\])?${blank}+)(?=\S)`,
  'u',
);
const speedBehind = /^(?:speed|gear)\s*:?\s+(?:for\s+)?\d+(?:[.,]\d+)?\s*(?:min|m\b|['’′])/i;
/** Nothing but signs of ruling, and some of them in a row: asked one after another, so that a long line costs its length. */
const rulingPattern = /^[-–—=_*|+:\s]*$/u;
const rulePattern = /[-–—]{2}|[=_*]{3}/u;
const commentPattern = /^(\s*)(\/\/+|--+|;+|\/\*+|<!--)\s*(?=\S)/;

/** Marks at the start of a line that no line of the notation begins with: they are told whatever follows. */
export function markAtStart(line: string): MarkupLine | undefined {
  const bullet = bulletPattern.exec(line);
  if (bullet === null) return undefined;
  const start = groupOf(bullet, 1).length;
  const mark = groupOf(bullet, 2).trimEnd();
  const span = { start, end: start + mark.length };
  // `1 kg` and `- 5 °C` begin with an amount, which has a finding of its own.
  if (/^[-–—−]$/u.test(mark) && /^\d/.test(line.slice(bullet[0].length))) return undefined;
  // `1. speed 5 min` names a speed; `1. speed 2 for 5 min` is a line of a list.
  if (/^[1-4]\.$/.test(mark) && speedBehind.test(line.slice(bullet[0].length))) return undefined;
  const edits = [{ start, end: bullet[0].length, insert: '' }];
  const text = line.slice(0, start) + ' '.repeat(groupOf(bullet, 2).length) + line.slice(bullet[0].length);
  return {
    text,
    problem: problem('unreadable', message('unreadable.mark', { written: mark }), span, {
      title: message('fix.take-out'),
      edits,
      preferred: true,
    }),
  };
}

/** A line that is all ruling, or a comment as other notations have them; `undefined` where it may say something. */
export function ruleOrComment(line: string): SyntaxProblem | undefined {
  const start = line.length - line.trimStart().length;
  const span = { start, end: line.trimEnd().length };
  if (rulingPattern.test(line) && rulePattern.test(line)) {
    const edits = [{ start: span.start, end: span.start, insert: '# ' }];
    const title = message('fix.make-comment');
    return problem('unreadable', message('unreadable.ruled'), span, { title, edits, preferred: true });
  }
  const comment = commentPattern.exec(line);
  if (comment === null) return undefined;
  const edits = [{ start, end: comment[0].length, insert: '# ' }];
  return problem(
    'unreadable',
    message('unreadable.comment', { written: groupOf(comment, 2) }),
    { start, end: start + groupOf(comment, 2).length },
    { title: message('fix.make-comment'), edits, preferred: true },
  );
}

interface Habit {
  readonly pattern: RegExp;
  readonly instead: (found: string) => string;
  readonly said: (written: string) => Message;
}

/** What other layouts have between and around words, each with what the notation has in its place. */
const habits: readonly Habit[] = [
  {
    pattern: /\|/g,
    instead: () => ' ',
    said: () => message('unreadable.table'),
  },
  {
    pattern: /[“”„‟«»]/gu,
    instead: () => '"',
    said: () => message('unreadable.quotes'),
  },
  {
    pattern: /[０-９％．／]/gu,
    instead: (found) => String.fromCharCode(found.charCodeAt(0) - 0xfee0),
    said: () => message('unreadable.digits'),
  },
  {
    pattern: /\*\*|__/g,
    instead: () => '  ',
    said: (written) => message('unreadable.around', { written }),
  },
  {
    pattern: /(?<=[^\s,;=]\s*)[,;=](?=\s+[\d½¼¾⅓⅔])/gu,
    instead: () => ' ',
    said: (written) => message('unreadable.between', { written }),
  },
  {
    pattern: /[.;](?=\s*(?:#|$))/g,
    instead: () => ' ',
    said: (written) => message(written === '.' ? 'unreadable.full-stop' : 'unreadable.semicolon'),
  },
];

/** The readings of a line without such marks, for one that cannot be read as it stands. */
export function* withoutMarks(line: string): Generator<MarkupLine> {
  for (const { pattern, instead, said } of habits) {
    const found = [...line.matchAll(pattern)];
    const [first, last] = [found[0], found.at(-1)];
    if (first === undefined || last === undefined) continue;
    let text = line;
    const edits = found.map((match) => {
      const start = match.index;
      const end = start + match[0].length;
      const put = instead(match[0]);
      text = text.slice(0, start) + put + text.slice(end);
      return { start, end, insert: put.trim() === '' ? between(line, start, end) : put };
    });
    const span = { start: first.index, end: last.index + last[0].length };
    const title = edits.some(({ insert }) => insert.trim() !== '')
      ? message('fix.write-plain-sign')
      : message('fix.take-sign-out', { written: first[0] });
    yield {
      text,
      problem: problem('unreadable', said(first[0]), span, { title, edits, preferred: true }),
    };
  }
}

/** A blank where none is left beside what goes. */
function between(line: string, start: number, end: number): string {
  const isOpen = (at: number): boolean => at < 0 || at >= line.length || /\s/.test(line.charAt(at));
  return isOpen(start - 1) || isOpen(end) ? '' : ' ';
}
