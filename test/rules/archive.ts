import {
  bodyOf,
  type FixtureCase,
  type FixtureFile,
  fileOf,
  isFile,
  readFixture,
  textOf,
} from '../fixture.ts';
import { tellMessage } from '../words/told.ts';
import type { FileFinding, GivenFile } from './findings.ts';

/** A case of a rule, whose title begins with `fires` or `silent`; `--- fixed` is its first file after the first fix. */
export interface Case {
  readonly title: string;
  readonly kind: 'fires' | 'silent';
  readonly files: readonly GivenFile[];
  /** The files as the fixture writes them, findings included. */
  readonly expected: FixtureCase['parts'];
  readonly fixed: string | undefined;
}

export function readCases(path: string): { readonly file: FixtureFile; readonly cases: readonly Case[] } {
  const file = readFixture(path);
  return { file, cases: file.cases.map(caseOf) };
}

function caseOf({ title, parts }: FixtureCase): Case {
  const kind = /^(fires|silent)\b/.exec(title)?.[1];
  if (kind !== 'fires' && kind !== 'silent')
    throw new Error(`“${title}” neither fires nor is silent; what a fix makes stands under “--- fixed”`);
  const expected = parts.filter(isFile);
  return {
    title,
    kind,
    files: expected.map((part) => ({ path: fileOf(part.head).name, text: textOf(part) })),
    expected,
    fixed: parts.find(({ head }) => head === 'fixed')?.body,
  };
}

/** The case as a fixture writes it. */
export function writtenCase({ title, expected, fixed }: Case): FixtureCase {
  return { title, parts: [...expected, ...(fixed === undefined ? [] : [{ head: 'fixed', body: fixed }])] };
}

/** The files of a case with the findings under their lines. */
export function marked({ files, expected }: Case, findings: readonly FileFinding[]): Case['expected'] {
  return files.map(({ path, text }, index) => {
    const lines = text.split(/\r\n|\n/).map((line, number) => {
      const here = findings.filter((one) => one.path === path && one.fileLine === number);
      return { text: line, expected: here.map((one) => markOf(one)) };
    });
    return { head: expected[index]?.head ?? '', body: bodyOf(lines) };
  });
}

function markOf({ span, level, code, message }: FileFinding): string {
  const carets = '^'.repeat(Math.max(1, span.end - span.start));
  return `${' '.repeat(2 + span.start)}${carets} ${level} ${code}: ${tellMessage(message, code)}`;
}
