import type { Finding } from '../../rules/engine/finding.ts';
import { isWritingError } from '../../rules/notation/syntax-rows.ts';
import { blockAt } from '../../syntax/line-place.ts';
import type { SourceFile } from '../../syntax/tree.ts';
import { type FileEdit, inOrder, type TextEdit, withEdits } from '../../text/edits.ts';

/** A file as it reads, and all that is found in it. */
export interface Examined {
  readonly source: SourceFile;
  readonly findings: readonly Pick<Finding, 'code' | 'level' | 'place'>[];
}

/** What a fix or an action is for. */
export type Meant = Pick<Finding, 'code' | 'place'>;

/** What a file would be changed into. */
export type FileChange = readonly [uri: string, changed: (text: string) => string];

/** The file asked about as it is, and as it would be once some files are changed; `undefined` where that changes none. */
export interface Examine {
  (): Examined;
  (changes: readonly FileChange[]): Examined | undefined;
}

/**
 * Whether edits of a file do what they are for: each finding meant is gone, and no error is new. What stands below a header that
 * could not be read was not looked at before, so what is found there once it can be is not new.
 */
export function areSound(
  uri: string,
  files: readonly FileEdit[],
  meant: readonly Meant[],
  examine: Examine,
): boolean {
  const before = examine();
  const after = examine(
    files.map(({ uri: file, edits }) => [
      file,
      (text) => withEdits(text, inOrder(edits).map(withoutPlaceholders)),
    ]),
  );
  if (after === undefined) return false;
  const edits = inOrder(files.flatMap((one) => (one.uri === uri ? one.edits : [])));
  const uncovered = uncoveredLines(edits, meant, after.source);
  const now = after.findings.filter(({ place }) => !uncovered.has(place.line));
  for (const [code, mended] of countedByCode(meant))
    if (countOf(now, code) > countOf(before.findings, code) - mended) return false;
  const errors = before.findings.filter(isError);
  for (const [code, count] of countedByCode(now.filter(isError)))
    if (count > countOf(errors, code)) return false;
  return true;
}

const isError = ({ level }: Pick<Finding, 'level'>): boolean => level === 'error';

function countOf(findings: readonly Pick<Finding, 'code'>[], code: string): number {
  return findings.filter((one) => one.code === code).length;
}

function countedByCode(findings: readonly Pick<Finding, 'code'>[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}

/** The lines of the changed text that stand below a header which is mended, up to the end of what it heads. */
function uncoveredLines(
  edits: readonly TextEdit[],
  meant: readonly Meant[],
  after: SourceFile,
): ReadonlySet<number> {
  const lines = new Set<number>();
  let moved = 0;
  for (const { line, endLine = line, insert } of edits) {
    const at = line + moved;
    moved += insert.split(/\r\n|\r|\n/).length - 1 - (endLine - line);
    const isMended = meant.some(({ code, place }) => place.line === line && isWritingError(code));
    if (!isMended || after.lines[at]?.statement.kind !== 'header') continue;
    const found = blockAt(after, at);
    if (found === undefined) continue;
    const { block, firstLine } = found;
    const sub = block.subs.find(({ headerLine }) => headerLine + firstLine === at);
    const end = firstLine + (sub?.endLine ?? block.lines.length);
    for (let below = at + 1; below < end; below++) lines.add(below);
  }
  return lines;
}

/** The words of a snippet to type over, as they stand when nobody types. */
function withoutPlaceholders(edit: TextEdit): TextEdit {
  if (edit.snippet !== true) return edit;
  const insert = edit.insert
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}|\$\d+/g, (_, words: string | undefined) => words ?? '')
    .replace(/\\([$}\\])/g, '$1');
  return { ...edit, insert };
}
