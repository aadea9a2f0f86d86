import type { Analysis } from '../analysis/analysis.ts';
import { planOf } from '../analysis/plan.ts';
import { comparePortraits } from '../compare/compare.ts';
import type { Comparison } from '../compare/comparison.ts';
import { type FilePortrait, portraitOf, type WorkTimes } from '../compare/portrait.ts';
import { planView } from '../sheet/plan-sheet.ts';
import { timelineOf } from '../sheet/timeline.ts';
import { type Display, plainDisplay } from '../text/display.ts';
import { plainSpeaker } from '../words/speak.ts';
import type { Speaker } from '../words/speaker.ts';
import { BlockAnswers } from './answer.ts';
import type { Files } from './files.ts';
import { findingsInFile } from './findings.ts';
import type { Settings } from './service.ts';

/**
 * The portrait of a file among the others, under the name it shall be shown by; `undefined` where there is none. Its findings
 * are in plain English unless they are for one reader alone: a portrait is kept and compared.
 */
export function portraitIn(
  files: Files,
  answers: BlockAnswers,
  settings: Settings,
  uri: string,
  shown: string,
  speaker: Speaker = plainSpeaker,
  display: Display = plainDisplay,
): FilePortrait | undefined {
  const file = files.get(uri);
  if (file === undefined) return undefined;
  files.readAll();
  return portraitOf(shown, files.read(file), {
    analysisOf: (block) => answers.analysisOf(uri, block),
    findingsOf: (block, firstLine) => {
      const alone = { lines: [], endings: [], blocks: [{ block, firstLine }] };
      return findingsInFile(uri, alone, (one) => answers.findingsOf(uri, one), files, settings, speaker);
    },
    workOf,
    planTimesOf: (block) => {
      const plan = planOf(block, files.scopeOf(uri));
      if (plan === undefined) return undefined;
      const { ready, firstWork, firstMix, lateMinutes } = planView(uri, 0, plan);
      return {
        ...(ready === undefined ? {} : { ready }),
        ...(firstWork === undefined ? {} : { firstWork }),
        ...(firstMix === undefined ? {} : { firstMix }),
        ...(lateMinutes === undefined ? {} : { lateMinutes }),
      };
    },
    display,
    speaker,
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
    const portrait = portraitIn(
      forked,
      new BlockAnswers(forked),
      settings,
      uri,
      uri,
      speaker,
      settings.display,
    );
    return portrait === undefined ? [] : [portrait];
  };
  return comparePortraits(portray(before), portray(after), speaker);
}
