import { comparePortraits } from '../compare/compare.ts';
import type { Comparison } from '../compare/comparison.ts';
import { type FilePortrait, portraitOf } from '../compare/portrait.ts';
import { plainSpeaker } from '../words/speak.ts';
import { BlockAnswers } from './answer.ts';
import type { Files } from './files.ts';
import { findingsInFile } from './findings.ts';
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
      return findingsInFile(uri, alone, (one) => answers.findingsOf(uri, one), files, settings, plainSpeaker);
    },
  });
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
): Comparison {
  const portray = (text: string): FilePortrait[] => {
    const forked = files.fork();
    forked.setText(uri, text);
    const portrait = portraitIn(forked, new BlockAnswers(forked), settings, uri, uri);
    return portrait === undefined ? [] : [portrait];
  };
  return comparePortraits(portray(before), portray(after));
}
