import type { IToken } from 'chevrotain';
import { stepWords } from './vocabulary.ts';

type StepWord = (typeof stepWords)[number];

/** What other bakers call a step, and the step it is; the words stay as they are written. Common practice, no source. */
const otherWords: Readonly<Record<string, StepWord>> = {
  ...called(
    'bulk',
    'first rise|first prove|first proof|bulk ferment|bulk fermentation|primary fermentation|floor time',
  ),
  ...called(
    'proof',
    'prove|proving|proofing|final proof|final prove|final rise|second rise|second prove|second proof|last prove',
  ),
  ...called('fold', 'knock back|knock down|punch|punch down|stretch and fold|degas'),
  ...called('rest', 'autolyse|autolyze|autolysis|bench rest|intermediate proof'),
  ...called('shape', 'preshape|pre-shape|mould|mold|round|final shape'),
  ...called('divide', 'scale|weigh off|portion'),
  ...called('score', 'slash|cut the tops'),
  ...called('sheet', 'laminate'),
  ...called('boil', 'fry|simmer'),
};

/** Words that begin a step and may also stand within another: none of them tells a second step on a line. Common practice, no source. */
const otherBeginnings: Readonly<Record<string, StepWord>> = {
  ...called('bulk', 'rise|let rise|1st rise|first fermentation|bulk rise|bulk proof|pointage'),
  ...called(
    'proof',
    '2nd rise|2nd proof|last rise|rise again|let rise again|final fermentation|second fermentation|apprêt',
  ),
  ...called('fold', 'stretch and folds|stretch & fold|coil fold|coil folds|turn and fold|fold the dough'),
  ...called('rest', 'bench|relax|stand|leave|let rest|let stand|cover and rest|intermediate rest'),
  ...called('shape', 'ball|ball up|braid|plait|roll up|flatten|dimple|mould up|round up|pan|tin'),
  ...called('sheet', 'roll out|lamination|pin out'),
  ...called('retard', 'fridge|refrigerate|chill|cold proof|cold retard|cold ferment|cold rest|overnight'),
  ...called('bake', 'oven|bake off'),
  ...called('cool', 'cool down|leave to cool|let cool'),
};

function called(step: StepWord, names: string): Record<string, StepWord> {
  return Object.fromEntries(names.split('|').map((name) => [name, step]));
}

/** All that a step with a meaning may be called, in the notation’s word and in other bakers’. */
export const allStepWords: readonly string[] = [...stepWords, ...Object.keys(otherWords)];

const mostWords = 3;

export interface KnownStep {
  readonly step: StepWord;
  /** How many tokens its words take. */
  readonly length: number;
}

/**
 * The step with a meaning that a line begins with, in the notation’s word or another baker’s; `isSure` leaves out words that may
 * stand within another step.
 */
export function knownStep(tokens: readonly IToken[], isSure = false): KnownStep | undefined {
  for (let length = Math.min(mostWords, tokens.length); length > 0; length--) {
    const words = tokens
      .slice(0, length)
      .map(({ image }) => image.toLowerCase())
      .join(' ');
    if (length === 1) {
      const own = stepWords.find((word) => word === words);
      if (own !== undefined) return { step: own, length };
    }
    const other =
      (Object.hasOwn(otherWords, words) ? otherWords[words] : undefined) ??
      (!isSure && Object.hasOwn(otherBeginnings, words) ? otherBeginnings[words] : undefined);
    if (other !== undefined) return { step: other, length };
  }
  return undefined;
}
