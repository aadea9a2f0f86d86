import {
  createService,
  type Display,
  type Finding,
  type LanguageTag,
  type Level,
  type Service,
  type TextEdit,
  type TextRange,
  type UsualConditions,
  withEdits,
} from '../../core/index.ts';
import type { Worded } from '../sync/language.ts';
import type { ReportedFinding } from './report/report.ts';
import type { RuleLevels } from './rule-levels.ts';
import { wordingIn } from './speaker.ts';
import { complainOf } from './terminal.ts';
import type { AskedFile } from './texts.ts';

/** A share of a check, as it is handed to a worker thread. Every share sees all texts, for names are shared across files. */
export interface Share {
  readonly texts: readonly (readonly [uri: string, text: string])[];
  readonly roots: readonly string[];
  readonly asked: readonly AskedFile[];
  readonly level: Level;
  readonly rules: RuleLevels;
  readonly usual: UsualConditions;
  /** How figures are shown to people. */
  readonly shownIn: Partial<Display>;
  readonly language: LanguageTag;
  /** Another program reads the findings. */
  readonly forPrograms: boolean;
  /** Whether the cures of the findings are wanted; they take more room than the findings. */
  readonly fixes: boolean;
}

/** Files whose findings a thread hands over at once, so that it need not hold them. */
export const handedOver = 100;

/** The findings of a share in the order of its files, worded as asked, those of some files at a time. */
export function* checkShare(
  share: Share,
  worded: Worded,
  atOnce = Number.POSITIVE_INFINITY,
): Iterable<ReportedFinding[]> {
  const { texts, roots, asked, level } = share;
  const service = createService({
    lean: true,
    failed: (what) => complainOf(`doughwright: a rule failed, and its findings are missing: ${what}\n`),
  });
  for (const [uri, text] of texts) service.setText(uri, text);
  service.setRoots(roots);
  // The core's own cap is for an editor; here the caller sets one.
  service.setSettings({
    ...{ maxFindings: Number.MAX_SAFE_INTEGER, rules: share.rules, usual: share.usual },
    ...wordingIn(worded, share.forPrograms, share.shownIn),
  });
  let found: ReportedFinding[] = [];
  for (const [index, file] of asked.entries()) {
    for (const one of findingsOf(service, file, level, share.fixes)) found.push(one);
    if ((index + 1) % atOnce !== 0) continue;
    yield found;
    found = [];
  }
  yield found;
}

const everywhere: TextRange = { line: 0, start: 0, endLine: Number.MAX_SAFE_INTEGER, end: 0 };

const seriousness: Readonly<Record<Level, number>> = { error: 3, warning: 2, info: 1, hint: 0 };

function findingsOf(
  service: Service,
  { uri, shown }: AskedFile,
  level: Level,
  withFixes: boolean,
): ReportedFinding[] {
  const all = withFixes
    ? service.findingsAt(uri, everywhere)
    : service.findings(uri).map((one) => ({ ...one, fixes: [] }));
  const findings = all
    .filter((finding) => seriousness[finding.level] >= seriousness[level])
    .toSorted((one, other) => one.place.line - other.place.line || one.place.start - other.place.start);
  if (findings.length === 0) return [];
  const lines = service.lines(uri);
  const tidied = new Map<number, TextEdit[]>();
  for (const edit of service.format(uri)) {
    if (edit.endLine !== undefined && edit.endLine !== edit.line) continue;
    tidied.set(edit.line, [...(tidied.get(edit.line) ?? []), edit]);
  }
  return findings.map((finding: Finding) => {
    const { line } = finding.place;
    const source = lines[line] ?? '';
    const edits = (tidied.get(line) ?? []).map((edit) => ({ ...edit, line: 0, endLine: 0 }));
    return { ...finding, file: shown, uri, source, canonical: withEdits(source, edits) };
  });
}
