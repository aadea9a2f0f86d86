import { dirname, resolve } from 'node:path';
import { type Message, message } from '../../core/index.ts';
import { readBytes } from '../host/disk.ts';
import { wayTo } from '../host/paths.ts';
import { fingerprint, type ReportedFinding } from './report/report.ts';
import { cureOf } from './shown-path.ts';
import { replaceFile } from './write-out.ts';

/**
 * Findings that were there when the checker was taken up, so that only new ones are told. Each is known by its file, its
 * rule and the words of its line, never by its number, so it holds while lines come and go around it.
 */
export interface Baseline {
  readonly version: 1;
  /** By path from the folder of the baseline: each fingerprint and how often it was there. */
  readonly files: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

/** Reads a baseline, or says why it cannot be used. */
export async function readBaseline(path: string): Promise<Baseline | { readonly message: Message }> {
  const option = `--write-baseline ${path}`;
  const { bytes, why } = await readBytes(path);
  if (why === 'missing') return { message: message('command-check.no-baseline', { option }) };
  if (bytes === undefined) return { message: cureOf(why) };
  try {
    const read: unknown = JSON.parse(bytes.toString('utf8'));
    if (isBaseline(read)) return read;
  } catch {
    // Told below.
  }
  return { message: message('command-check.other-baseline', { option }) };
}

/** The findings that the baseline does not know. */
export function newFindings(
  path: string,
  baseline: Baseline,
  findings: readonly ReportedFinding[],
): ReportedFinding[] {
  const left = new Map<string, number>();
  return findings.filter((finding) => {
    const file = fileIn(path, finding.file);
    const known = Object.hasOwn(baseline.files, file) ? baseline.files[file]! : {};
    const [now, former] = [fingerprint(finding), fingerprint({ ...finding, canonical: finding.source })];
    // A baseline of an older version knows a line as it was laid out then.
    const print = Object.hasOwn(known, now) ? now : former;
    const key = JSON.stringify([file, print]);
    const count = left.get(key) ?? (Object.hasOwn(known, print) ? known[print]! : 0);
    left.set(key, count - 1);
    return count <= 0;
  });
}

/** Writes the findings as a baseline, whole or not at all. */
export async function writeBaseline(path: string, findings: readonly ReportedFinding[]): Promise<void> {
  const files = new Map<string, Map<string, number>>();
  for (const finding of findings) {
    const file = fileIn(path, finding.file);
    const prints = files.get(file) ?? new Map<string, number>();
    files.set(file, prints.set(fingerprint(finding), (prints.get(fingerprint(finding)) ?? 0) + 1));
  }
  const sorted = <T>(entries: Iterable<[string, T]>): Record<string, T> =>
    Object.fromEntries([...entries].sort(([one], [other]) => (one < other ? -1 : 1)));
  const baseline: Baseline = {
    version: 1,
    files: sorted([...files].map(([file, prints]) => [file, sorted(prints)])),
  };
  await replaceFile(path, `${JSON.stringify(baseline, null, 2)}\n`);
}

function fileIn(baseline: string, shown: string): string {
  return wayTo(resolve(shown), dirname(resolve(baseline)));
}

function isBaseline(value: unknown): value is Baseline {
  if (typeof value !== 'object' || value === null) return false;
  const { version, files } = value as Record<string, unknown>;
  if (version !== 1 || typeof files !== 'object' || files === null) return false;
  return Object.values(files).every(
    (prints) =>
      typeof prints === 'object' &&
      prints !== null &&
      Object.values(prints).every((count) => Number.isInteger(count)),
  );
}
