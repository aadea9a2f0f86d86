import type { Analysis } from '../analysis/analysis.ts';
import { planOf } from '../analysis/plan.ts';
import { comparePortraits } from '../compare/compare.ts';
import type { Comparison } from '../compare/comparison.ts';
import { type FilePortrait, portraitOf, type WorkTimes } from '../compare/portrait.ts';
import { planTimes } from '../features/plan-times.ts';
import { timelineOf } from '../sheet/timeline.ts';
import type { Speaker } from '../words/speaker.ts';
import { BlockAnswers } from './answer.ts';
import type { Files } from './files.ts';
import { placedInFile } from './findings.ts';
import type { Settings } from './service.ts';

/** The portrait of a file among the others, under the name it shall be shown by; `undefined` where there is none. */
export function portraitIn(
  files: Files,
  answers: BlockAnswers,
  settings: Settings,
  uri: string,
  shown: string,
): FilePortrait | undefined {
  const file = files.get(uri);
  if (file === undefined) return undefined;
  files.readAll();
  return portraitOf(shown, files.read(file), {
    analysisOf: (block) => answers.analysisOf(uri, block),
    findingsOf: (block, firstLine) => {
      const alone = { lines: [], endings: [], blocks: [{ block, firstLine }] };
      return placedInFile(uri, alone, (one) => answers.findingsOf(uri, one), files, settings);
    },
    workOf,
    planTimesOf: (block) => {
      const plan = planOf(block, files.scopeOf(uri));
      return plan === undefined ? undefined : planTimes(plan);
    },
  });
}

function workOf(analysis: Analysis): WorkTimes {
  const { moments, endSeconds } = timelineOf(analysis, 1, 0, undefined).view;
  const first = Math.min(0, ...moments.map(({ startSeconds }) => startSeconds));
  return { totalMinutes: (endSeconds - first) / 60, fromMixMinutes: endSeconds / 60 };
}

/**
 * What changed from one text of a file to another. Each text is read as if it were the file, among all the others as they
 * are; the files themselves stay untouched.
 */
export function compareTexts(
  files: Files,
  settings: Settings,
  uri: string,
  before: string,
  after: string,
  speaker: Speaker,
): Comparison {
  const portray = (text: string): FilePortrait[] => {
    const forked = files.fork();
    forked.setText(uri, text);
    const portrait = portraitIn(forked, new BlockAnswers(forked), settings, uri, uri);
    return portrait === undefined ? [] : [portrait];
  };
  return comparePortraits(portray(before), portray(after), speaker);
}
