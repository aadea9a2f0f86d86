import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The one format of fixtures, of which each family of tests uses what it wants. A file begins with words to the reader. `=== title`
 * begins a case, and `--- head` a part of it; what stands above the first of those is a part without a head. A part is either
 *
 * - a file that is given: `--- file NAME`, with `crlf` or `bom` behind the name where wanted; a part without a head is the only file, or
 *   the first. `‸` in it is the cursor, and a second one ends a selection. Or
 * - an answer that is expected of all files together, its head being the question.
 *
 * Where what is expected stands between the lines of a given file, each line of the file begins with `| `, or with `! ` and escapes
 * (`\r`, `\t`, `\u{2066}`, `\x00`), and all other lines are expected of the line above them, with `^^^` under the columns that they
 * are about. A file without such lines is given as it stands. `<<5000*a>>` in a file stands for five thousand letters.
 */
export interface FixtureFile {
  readonly path: string;
  /** The file’s name without its ending. */
  readonly name: string;
  readonly head: string;
  readonly cases: readonly FixtureCase[];
}

export interface FixtureCase {
  readonly title: string;
  readonly parts: readonly FixturePart[];
}

export interface FixturePart {
  /** Empty above the first head. */
  readonly head: string;
  readonly body: string;
}

/** Every fixture of a folder, by name. */
export function readFixtures(folder: string): FixtureFile[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.txt'))
    .sort()
    .map((name) => readFixture(join(folder, name)));
}

export function readFixture(path: string): FixtureFile {
  const [head = '', ...cases] = readFileSync(path, 'utf8').split(/^=== /m);
  const name = path.slice(path.lastIndexOf('/') + 1).replace('.txt', '');
  return { path, name, head: head.trim(), cases: cases.map(caseOf) };
}

function caseOf(written: string): FixtureCase {
  const [first = '', ...others] = written.split(/^--- /m);
  const [title, body] = cutLine(first);
  const parts = others.map((part) => {
    const [head, text] = cutLine(part);
    return { head, body: text };
  });
  return { title, parts: body === '' ? parts : [{ head: '', body }, ...parts] };
}

/** The first line, and the lines below it without the blank ones at their end. */
function cutLine(text: string): [string, string] {
  const end = text.indexOf('\n');
  return end < 0 ? [text.trim(), ''] : [text.slice(0, end).trim(), text.slice(end + 1).replace(/\n+$/, '')];
}

/** Writes a file anew with these cases. */
export function writeFixture(
  { path, head }: Pick<FixtureFile, 'path' | 'head'>,
  cases: readonly FixtureCase[],
): void {
  const written = cases.map(
    ({ title, parts }) =>
      `=== ${title}\n${parts.map((part) => `${part.head === '' ? '' : `--- ${part.head}\n`}${part.body}\n`).join('')}`,
  );
  writeFileSync(path, [...(head === '' ? [] : [`${head}\n`]), ...written].join('\n'));
}

const isMarked = (line: string): boolean => /^[|!](?: |$)/.test(line);

/** Whether a part is a file that is given. */
export const isFile = ({ head }: FixturePart): boolean => head === '' || head.startsWith('file ');

/** The marked lines of a given file, with their marks. */
export function givenLines(body: string): string[] {
  return body.split('\n').filter(isMarked);
}

/** The lines of a given file, each with what stands under it as expected. */
export function linesOf(body: string): { readonly text: string; readonly expected: readonly string[] }[] {
  const lines: { text: string; expected: string[] }[] = [];
  const all = body.split('\n');
  const hasMarks = all.some(isMarked);
  for (const line of all) {
    if (!hasMarks || isMarked(line)) lines.push({ text: plainOf(line, hasMarks), expected: [] });
    else lines.at(-1)?.expected.push(line);
  }
  return lines;
}

/** The text of a given file, with the cursor in it where it has one. */
export function textOf({ head, body }: FixturePart): string {
  const { crlf, bom } = fileOf(head);
  const text = linesOf(body)
    .map((line) => line.text)
    .join(crlf ? '\r\n' : '\n');
  return bom ? `\uFEFF${text}` : text;
}

/** What the head of a given file says. */
export function fileOf(head: string): {
  readonly name: string;
  readonly crlf: boolean;
  readonly bom: boolean;
} {
  const [, name = 'test.dough', ...options] = head.split(/\s+/);
  return { name, crlf: options.includes('crlf'), bom: options.includes('bom') };
}

/** A given file with what is expected of its lines; without marks where nothing is, and no blank line at its end needs them. */
export function bodyOf(
  lines: readonly { readonly text: string; readonly expected: readonly string[] }[],
): string {
  const isPlain =
    lines.every(({ expected }) => expected.length === 0) &&
    !/^\n|\n$/.test(lines.map(({ text }) => text).join('\n'));
  return lines
    .flatMap(({ text, expected }) => [isPlain ? text : `| ${text}`.trimEnd(), ...expected])
    .join('\n');
}

/** A line of a given file without its mark, and with what stands for letters written out. */
export function plainOf(line: string, hasMark = true): string {
  const text = hasMark ? line.slice(2) : line;
  const written = text.replace(/<<(\d+)\*(.+?)>>/g, (_, count: string, some: string) =>
    some.repeat(Number(count)),
  );
  if (!hasMark || !line.startsWith('!')) return written;
  return written.replace(
    /\\(?:u\{([0-9A-F]+)\}|x([0-9A-F]{2})|(.))/gi,
    (_, long: string, short: string, plain: string) => {
      if (long ?? short) return String.fromCodePoint(Number.parseInt(long ?? short, 16));
      return { t: '\t', r: '\r' }[plain] ?? plain;
    },
  );
}
