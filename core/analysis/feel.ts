import { type MixingStage, mixingStages } from '../calc/mixing/development.ts';
import { feelWords } from '../syntax/vocabulary.ts';

export type FeelWord = (typeof feelWords)[number];

/** A stretch of stages that a dough may be in, both ends included. */
export interface StageSpan {
  readonly earliest: MixingStage;
  readonly latest: MixingStage;
}

/**
 * The stages in which a dough may feel so: common practice, no source. Some words are true of a dough that is not there yet and again
 * of one that is past its best; alone they decide nothing, beside another word they may.
 */
const stagesOfFeel: Readonly<Record<FeelWord, readonly MixingStage[]>> = {
  rough: ['pick-up', 'clean-up', 'developing'],
  tears: ['pick-up', 'clean-up', 'developing'],
  'sticks to the bowl': ['pick-up', 'clean-up', 'let-down', 'breakdown'],
  sticky: ['pick-up', 'clean-up', 'developing', 'let-down', 'breakdown'],
  wet: ['pick-up', 'clean-up', 'let-down', 'breakdown'],
  'clears the bowl': ['clean-up', 'developing', 'developed'],
  smooth: ['developing', 'developed'],
  stretches: ['developing', 'developed', 'let-down'],
  shiny: ['developed', 'let-down'],
  // A window can be pulled from a rested dough that was hardly mixed, and still from one mixed far past need.
  window: mixingStages,
  slack: ['let-down', 'breakdown'],
  stringy: ['let-down', 'breakdown'],
};

/** Why words of feel tell no stage: they hold in all of them, only at both ends of mixing, or not together in any. */
export type FeelSilence = 'any' | 'both-ends' | 'contradict';

/** The stages in which all of these words may hold, or why they tell none. */
export function stagesFelt(words: readonly string[]): StageSpan | FeelSilence {
  const known = feelWords.filter((word) => words.includes(word));
  const left = mixingStages.filter((stage) => known.every((word) => stagesOfFeel[word].includes(stage)));
  const [earliest, latest] = [left[0], left.at(-1)];
  if (earliest === undefined || latest === undefined) return 'contradict';
  if (left.length === mixingStages.length) return 'any';
  const isStretch = mixingStages.indexOf(latest) - mixingStages.indexOf(earliest) === left.length - 1;
  return isStretch ? { earliest, latest } : 'both-ends';
}

/** The stages that a reading saw: the one that is written, else what the dough felt like tells; `undefined` where neither does. */
export function stagesSeen({
  stage,
  feel = [],
}: {
  readonly stage?: string;
  readonly feel?: readonly string[];
}): StageSpan | undefined {
  const written = mixingStages.find((one) => one === stage);
  if (written !== undefined) return { earliest: written, latest: written };
  if (stage !== undefined || feel.length === 0) return undefined;
  const felt = stagesFelt(feel);
  return typeof felt === 'string' ? undefined : felt;
}
