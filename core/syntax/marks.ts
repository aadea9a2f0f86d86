import { problem } from './problem.ts';
import type { SyntaxProblem } from './tree.ts';

/**
 * A line with marks of another layout in it, such as bullets, tables and printed quotes. `text` is as long as the line and
 * has blanks, or the sign of the notation, in their places, so that what is read of it stands where it does in the line.
 */
export interface MarkedLine {
  readonly text: string;
  readonly problem: SyntaxProblem;
}

const blank = String.raw`[\s\u200B]`;
const bulletPattern = new RegExp(
  String.raw`^(${blank}*)((?:[-–—−*•·●▪◦‣✓✔☐☑>]|\d{1,2}[.)]|[a-z]\)|\[[ xX]?\])(?:${blank}+\[[ xX]?\])?${blank}+)(?=\S)`,
  'u',
);
/** Nothing but signs of ruling, and some of them in a row: asked one after another, so that a long line costs its length. */
const rulingPattern = /^[-–—=_*|+:\s]*$/u;
const rulePattern = /[-–—]{2}|[=_*]{3}/u;
const commentPattern = /^(\s*)(\/\/+|--+|;+|\/\*+|<!--)\s*(?=\S)/;

/** Marks at the start of a line that no line of the notation begins with: they are told whatever follows. */
export function markAtStart(line: string): MarkedLine | undefined {
  const bullet = bulletPattern.exec(line);
  if (bullet === null) return undefined;
  const start = bullet[1]!.length;
  const mark = bullet[2]!.trimEnd();
  const span = { start, end: start + mark.length };
  // `1 kg` and `- 5 °C` begin with an amount, which has a finding of its own.
  if (/^[-–—−]$/u.test(mark) && /^\d/.test(line.slice(bullet[0].length))) return undefined;
  const message = `A line needs no mark like “${mark}” before it.`;
  const edits = [{ start, end: bullet[0].length, insert: '' }];
  const text = line.slice(0, start) + ' '.repeat(bullet[2]!.length) + line.slice(bullet[0].length);
  return {
    text,
    problem: problem('unreadable', message, span, { title: 'Take it out', edits, preferred: true }),
  };
}

/** A line that is all ruling, or a comment as other notations have them; `undefined` where it may say something. */
export function ruleOrComment(line: string): SyntaxProblem | undefined {
  const start = line.length - line.trimStart().length;
  const span = { start, end: line.trimEnd().length };
  if (rulingPattern.test(line) && rulePattern.test(line)) {
    const edits = [{ start: span.start, end: span.start, insert: '# ' }];
    const message = 'A ruled line says nothing here. Leave a blank line instead, or make it a comment.';
    return problem('unreadable', message, span, { title: 'Make it a comment', edits, preferred: true });
  }
  const comment = commentPattern.exec(line);
  if (comment === null) return undefined;
  const edits = [{ start, end: comment[0].length, insert: '# ' }];
  const message = `A comment starts with #, not with “${comment[2]}”.`;
  return problem(
    'unreadable',
    message,
    { start, end: start + comment[2]!.length },
    { title: 'Make it a comment', edits, preferred: true },
  );
}

interface Habit {
  readonly pattern: RegExp;
  readonly instead: (found: string) => string;
  readonly message: (found: string) => string;
}

/** What other layouts have between and around words, each with what the notation has in its place. */
const habits: readonly Habit[] = [
  {
    pattern: /\|/g,
    instead: () => ' ',
    message: () => 'A table needs no “|” here: blanks part the columns.',
  },
  {
    pattern: /[“”„‟«»]/gu,
    instead: () => '"',
    message: () => 'A quote is written with the straight mark, as in "7-grain mix".',
  },
  {
    pattern: /[０-９％．／]/gu,
    instead: (found) => String.fromCharCode(found.charCodeAt(0) - 0xfee0),
    message: () => 'A figure is written with plain digits, as in 12.5%.',
  },
  {
    pattern: /\*\*|__/g,
    instead: () => '  ',
    message: (found) => `Words need no “${found}” around them.`,
  },
  {
    pattern: /(?<=[^\s,;=]\s*)[,;=](?=\s+[\d½¼¾⅓⅔])/gu,
    instead: () => ' ',
    message: (found) => `No “${found}” goes here: a blank is enough.`,
  },
  {
    pattern: /[.;](?=\s*(?:#|$))/g,
    instead: () => ' ',
    message: (found) => `A line ends without a ${found === '.' ? 'full stop' : 'semicolon'}.`,
  },
];

/** The readings of a line without such marks, for one that cannot be read as it stands. */
export function* withoutMarks(line: string): Generator<MarkedLine> {
  for (const { pattern, instead, message } of habits) {
    const found = [...line.matchAll(pattern)];
    if (found.length === 0) continue;
    let text = line;
    const edits = found.map((match) => {
      const start = match.index;
      const end = start + match[0].length;
      const put = instead(match[0]);
      text = text.slice(0, start) + put + text.slice(end);
      return { start, end, insert: put.trim() === '' ? between(line, start, end) : put };
    });
    const [first, last] = [found[0]!, found[found.length - 1]!];
    const span = { start: first.index, end: last.index + last[0].length };
    const title = edits.some(({ insert }) => insert.trim() !== '')
      ? 'Write the plain sign'
      : `Take “${first[0]}” out`;
    yield {
      text,
      problem: problem('unreadable', message(first[0]), span, { title, edits, preferred: true }),
    };
  }
}

/** A blank where none is left beside what goes. */
function between(line: string, start: number, end: number): string {
  const isOpen = (at: number): boolean => at < 0 || at >= line.length || /\s/.test(line[at]!);
  return isOpen(start - 1) || isOpen(end) ? '' : ' ';
}
