import type { Finding } from '../../../core/index.ts';

/** A finding with its file, ready to be written; lines and columns count from zero, columns in UTF-16 units. */
export interface ReportedFinding extends Finding {
  /** The path as it is shown. */
  readonly file: string;
  readonly uri: string;
  /** The text of its line. */
  readonly source: string;
  /** The same as the formatter writes it. */
  readonly canonical: string;
}

/** A file or folder that could not be checked. */
export interface Trouble {
  readonly path: string;
  readonly message: string;
}

/** All that a check found, for a writer of some format. */
export interface Report {
  readonly findings: readonly ReportedFinding[];
  /** Found in all, with those above the most that are told. */
  readonly found: number;
  /** The same by level, those of information and hints together, and the files that have any. */
  readonly counts: {
    readonly error: number;
    readonly warning: number;
    readonly less: number;
    readonly files: number;
  };
  /** The paths of all files that were checked, in order. */
  readonly files: readonly string[];
  readonly troubles: readonly Trouble[];
  /** The path of the repository that the check runs in, for those who show findings beside its files. */
  readonly repository?: string;
  /** The path to show for any file that a finding points to. */
  shown(uri: string): string;
}

/** How many findings there are of which level, and in how many files. */
export function countsOf(findings: readonly ReportedFinding[]): Report['counts'] {
  const of = (...levels: readonly string[]): number =>
    findings.filter(({ level }) => levels.includes(level)).length;
  const files = new Set(findings.map(({ file }) => file)).size;
  return { error: of('error'), warning: of('warning'), less: of('info', 'hint'), files };
}

/**
 * What stays the same of a finding when lines above it come and go, when its line is laid out anew, and when figures in its
 * message change: its rule and the words of its line in their canonical form.
 */
export function fingerprint({ code, canonical }: Pick<ReportedFinding, 'code' | 'canonical'>): string {
  return `${code}: ${canonical.trim().replace(/\s+/g, ' ').slice(0, 200)}`;
}

/** As `fingerprint`, each of several alike in one file with its number, so that no two are one. */
export function distinctFingerprints(findings: readonly ReportedFinding[]): string[] {
  const counts = new Map<string, number>();
  return findings.map((finding) => {
    const print = fingerprint(finding);
    const key = `${finding.uri} ${print}`;
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return count === 1 ? print : `${print} (${count})`;
  });
}
