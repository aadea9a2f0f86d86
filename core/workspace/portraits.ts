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
import { findingsInFile } from './findings.ts';
import type { View } from './view.ts';

/**
 * The portrait of a file among the others, under the name it shall be shown by; `undefined` where there is none. Its findings
 * are in plain English unless they are for one reader alone: a portrait is kept and compared.
 */
export function portraitIn(
  view: View,
  uri: string,
  shown: string,
  speaker: Speaker = plainSpeaker,
  display: Display = plainDisplay,
): FilePortrait | undefined {
  const found = view.read(uri);
  if (found === undefined) return undefined;
  return portraitOf(shown, found.source, {
    analysisOf: (block) => view.analysisOf(uri, block),
    findingsOf: (block, firstLine) => {
      const alone = { lines: [], endings: [], blocks: [{ block, firstLine }] };
      return findingsInFile(uri, alone, (one) => view.findingsOf(uri, one), view, speaker);
    },
    workOf,
    planTimesOf: (block) => {
      const plan = planOf(block, view.scopeOf(uri));
      if (plan === undefined) return undefined;
      const { ready, firstWork, firstMix, lateMinutes } = planView(uri, 0, plan, speaker);
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
  const portray = (text: string): FilePortrait[] => {
    const { display } = view.snapshot.settings;
    const portrait = portraitIn(view.with(uri, text), uri, uri, speaker, display);
    return portrait === undefined ? [] : [portrait];
  };
  return comparePortraits(portray(before), portray(after), speaker);
}
