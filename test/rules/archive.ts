import { tellMessage } from '../words/told.ts';
import type { FileFinding, GivenFile } from './findings.ts';

/**
 * A text archive of cases. `=== fires` or `=== silent`, words of its own behind it (`crlf` turns the line ends), begins a
 * case; `--- path` begins a further file of it; findings stand under their line, carets first. `=== fixed` holds
 * the first file of the case above after the first fix.
 */
export interface Case {
  readonly title: string;
  readonly kind: 'fires' | 'silent';
  readonly files: readonly GivenFile[];
  /** As the archive writes the case, findings included. */
  readonly expected: string;
  readonly fixed: string | undefined;
}

const mark = /^\s*\^+ (error|warning|info|hint) [a-z-]+: /;
const head = /^=== (fires|silent|fixed)(.*)$/;

export function readArchive(text: string): Case[] {
  const cases: { title: string; kind: 'fires' | 'silent'; lines: string[]; fixed?: string[] }[] = [];
  let into: string[] | undefined;
  for (const line of text.replace(/\n$/, '').split('\n')) {
    const found = head.exec(line);
    if (found === null) {
      into?.push(line);
      continue;
    }
    const last = cases[cases.length - 1];
    if (found[1] === 'fixed') {
      if (last === undefined) throw new Error('“=== fixed” stands before any case');
      into = last.fixed = [];
      continue;
    }
    into = [];
    cases.push({ title: (found[1]! + found[2]!).trim(), kind: found[1] as 'fires' | 'silent', lines: into });
  }
  return cases.map(({ title, kind, lines, fixed }) => ({
    title,
    kind,
    files: filesOf(lines, /\bcrlf\b/.test(title) ? '\r\n' : '\n'),
    expected: lines.join('\n'),
    fixed: fixed?.join('\n'),
  }));
}

export function writeArchive(cases: readonly Case[]): string {
  return cases
    .map(
      ({ title, expected, fixed }) =>
        `=== ${title}\n${expected}\n${fixed === undefined ? '' : `=== fixed\n${fixed}\n`}`,
    )
    .join('');
}

/** The files of a case with the findings under their lines. */
export function marked(files: readonly GivenFile[], findings: readonly FileFinding[]): string {
  return files
    .flatMap(({ path, text }, index) => {
      const lines = text.split(/\r\n|\n/).flatMap((line, number) => {
        const here = findings.filter((one) => one.path === path && one.fileLine === number);
        return [line, ...here.map((one) => markOf(one))];
      });
      return index === 0 && path === firstPath ? lines : [`--- ${path}`, ...lines];
    })
    .join('\n');
}

const firstPath = 'test.dough';

function markOf({ span, level, code, message }: FileFinding): string {
  return `${' '.repeat(span.start)}${'^'.repeat(Math.max(1, span.end - span.start))} ${level} ${code}: ${tellMessage(message, code)}`;
}

function filesOf(lines: readonly string[], ending: string): GivenFile[] {
  const files: { path: string; lines: string[] }[] = [];
  for (const line of lines) {
    if (mark.test(line)) continue;
    if (line.startsWith('--- ')) files.push({ path: line.slice(4), lines: [] });
    else {
      if (files.length === 0) files.push({ path: firstPath, lines: [] });
      files[files.length - 1]!.lines.push(line);
    }
  }
  return files.map(({ path, lines: texts }) => ({ path, text: texts.join(ending) }));
}
