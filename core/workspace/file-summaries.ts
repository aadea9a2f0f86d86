import type { Analysis } from '../analysis/analysis.ts';
import { planOf } from '../analysis/plan-analysis.ts';
import { compareSummaries, withNamesCounted } from '../compare/compare.ts';
import type { Comparison } from '../compare/comparison.ts';
import { type FileSummary, isLackingNames, summaryOf, type WorkTimes } from '../compare/file-summary.ts';
import { renamesBetween } from '../compare/renames.ts';
import { planTimes } from '../facts/plan-times.ts';
import { timelineOf } from '../sheet/build/timeline.ts';
import { plainSpeaker } from '../words/speak.ts';
import type { Speaker } from '../words/speaker.ts';
import { placedInFile } from './file-findings.ts';
import { type NamingSide, underNewNamesOf } from './new-names.ts';
import type { Service, TextsByUri } from './service.ts';
import type { View } from './snapshot-view.ts';

/** The summary of a file among the others, under the name it shall be shown by; `undefined` where there is none. */
export function summaryIn(view: View, uri: string, shown: string): FileSummary | undefined {
  const found = view.read(uri);
  if (found === undefined) return undefined;
  return summaryOf(shown, found.source, {
    analysisOf: (block) => view.analysisOf(uri, block),
    findingsOf: (block, firstLine) => {
      const alone = { lines: [], endings: [], blocks: [{ block, firstLine }] };
      return placedInFile(uri, alone, (one) => view.findingsOf(uri, one), view);
    },
    workOf,
    planTimesOf: (block) => {
      const plan = planOf(block, view.scopeOf(uri));
      return plan === undefined ? undefined : planTimes(plan);
    },
  });
}

function workOf(analysis: Analysis): WorkTimes {
  const { moments, endSeconds } = timelineOf(analysis, 1, 0, undefined, plainSpeaker).view;
  const first = Math.min(0, ...moments.map(({ startSeconds }) => startSeconds));
  return { totalMinutes: (endSeconds - first) / 60, fromMixMinutes: endSeconds / 60 };
}

/** Two texts of a file that are to be compared, and the texts of all files that the one before is read among. */
export interface ComparedTexts {
  readonly uri: string;
  readonly before: string;
  readonly after: string;
  /** Where these are not those of now, by their URIs. */
  readonly among?: TextsByUri;
}

/**
 * What changed from one text of a file to another. Each text is read as if it were the file, among all the others as they
 * are; the files themselves stay untouched. What got another name in the file is told once. `newService` makes an empty workspace.
 */
export function compareTexts(
  view: View,
  { uri, before, after, among }: ComparedTexts,
  speaker: Speaker,
  newService: () => Service,
): Comparison {
  const sideOf = (text: string): NamingSide => {
    const own = view.with(uri, text);
    return { files: [uri], texts: new Map([[uri, text]]), summary: () => summaryIn(own, uri, uri) };
  };
  const known = (): NamingSide => {
    const service = newService();
    service.setSettings(view.snapshot.settings);
    for (const [one, text] of among ?? textsOf(view)) service.setText(one, text);
    service.setText(uri, before);
    service.setRoots(view.snapshot.roots);
    return {
      ...sideOf(before),
      summary: () => service.summary(uri),
      known: { service, uris: new Map([[uri, uri]]) },
    };
  };
  const is = sideOf(after);
  const isPlain = among === undefined && renamesBetween(sideOf(before).texts, is.texts).length === 0;
  const was = isPlain ? sideOf(before) : underNewNamesOf(known(), is, newService);
  const [old, now] = [was, is]
    .map((side) => side.summary(uri))
    .map((one) => (one === undefined ? [] : [one]));
  return withNamesCounted(compareSummaries(old ?? [], now ?? [], speaker));
}

function* textsOf(view: View): TextsByUri {
  for (const [uri, { text }] of view.snapshot.texts.entries()) yield [uri, text];
}

/** Whether a text, read as if it were a file among all the others, has names that mean nothing. */
export function lacksNames(view: View, uri: string, text: string): boolean {
  const formulas = summaryIn(view.with(uri, text), uri, uri)?.formulas ?? [];
  return formulas.some(isLackingNames);
}
