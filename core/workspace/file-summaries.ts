import type { Analysis } from '../analysis/analysis.ts';
import { planOf } from '../analysis/plan-analysis.ts';
import { compareSummaries } from '../compare/compare.ts';
import type { Comparison } from '../compare/comparison.ts';
import { type FileSummary, summaryOf, type WorkTimes } from '../compare/file-summary.ts';
import { planTimes } from '../facts/plan-times.ts';
import { timelineOf } from '../sheet/build/timeline.ts';
import { plainSpeaker } from '../words/speak.ts';
import type { Speaker } from '../words/speaker.ts';
import { placedInFile } from './file-findings.ts';
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

/**
 * What changed from one text of a file to another. Each text is read as if it were the file, among all the others as they
 * are; the files themselves stay untouched.
 */
export function compareTexts(
  view: View,
  uri: string,
  before: string,
  after: string,
  speaker: Speaker,
): Comparison {
  const portray = (text: string): FileSummary[] => {
    const summary = summaryIn(view.with(uri, text), uri, uri);
    return summary === undefined ? [] : [summary];
  };
  return compareSummaries(portray(before), portray(after), speaker);
}
