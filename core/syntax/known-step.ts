import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import { message } from '../words/message.ts';
import { problem, replaceFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
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
  ...called('bulk', 'rise|let rise|1st rise|1st proof|first fermentation|bulk rise|bulk proof|pointage'),
  ...called(
    'proof',
    '2nd rise|2nd proof|last rise|rise again|let rise again|final fermentation|second fermentation|apprêt',
  ),
  ...called('fold', 'stretch and folds|stretch & fold|coil fold|coil folds|turn and fold|fold the dough'),
  ...called('rest', 'bench|relax|stand|leave|let rest|let stand|cover and rest|intermediate rest'),
  ...called('shape', 'ball|ball up|braid|plait|roll up|flatten|dimple|mould up|round up|pan|tin'),
  ...called('sheet', 'roll out|lamination|pin out'),
  ...called(
    'retard',
    'fridge|refrigerate|chill|cold proof|cold bulk|cold retard|cold ferment|cold rest|overnight',
  ),
  ...called('bake', 'oven|bake off'),
  ...called('cool', 'cool down|leave to cool|let cool'),
};

function called(step: StepWord, names: string): Record<string, StepWord> {
  return Object.fromEntries(names.split('|').map((name) => [name, step]));
}

/** All that a step with a meaning may be called, in the notation’s word and in other bakers’. */
export const allStepWords: readonly string[] = [...stepWords, ...Object.keys(otherWords)];

/** The step of the notation that a name stands for; undefined where it is none. */
export function knownStepOf(name: string | undefined): StepWord | undefined {
  return stepWords.find((word) => word === name);
}

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

/** What goes on by itself for a time, wherever it is said: `bulk 2 h, chill 30 min`. */
const byItself =
  /^(?:chill|refrigerate|freeze|cold (?:proof|bulk|retard|ferment|rest)|(?:let )?(?:stand|rest|rise)|relax|cover and rest)$/i;

/** The step that a remark begins with and that goes on for a time of its own. */
export function knownStepOfRemark(tokens: readonly IToken[]): KnownStep | undefined {
  const sure = knownStep(tokens, true);
  const step = sure ?? knownStep(tokens);
  return step !== undefined && (sure !== undefined || byItself.test(imagesOf(tokens.slice(0, step.length))))
    ? step
    : undefined;
}

/** Whether a text begins with a step that has a meaning, in whatever baker's words. */
export function isKnownStep(text: string): boolean {
  return knownStep(t.cutLine(text).meaning) !== undefined;
}

/** Words behind which another step is no step of this line: `rest before shaping`, `divide and shape`, `proof on sheet`. */
const joining: ReadonlySet<string> = new Set(
  'and then & or to in into on onto the a an before after until till for with without by as of no between each per'.split(
    ' ',
  ),
);

function imagesOf(tokens: readonly IToken[]): string {
  return tokens.map(({ image }) => image).join(' ');
}

/**
 * A second step on the line of a first, `divide proof 55 min`: it would be words of the first and its time lost. `words` are
 * the tokens of the step’s own words.
 */
export function secondStep(
  words: readonly IToken[],
  first: KnownStep | undefined,
): SyntaxProblem | undefined {
  if (first === undefined || first.step === 'enclose') return undefined;
  for (let at = first.length; at < words.length; at++) {
    const [before, token] = [elementAt(words, at - 1), elementAt(words, at)];
    if (joining.has(before.image.toLowerCase()) || token.tokenType === t.Quoted) continue;
    const second = knownStep(words.slice(at), true);
    if (second === undefined || second.step === first.step) continue;
    if (first.step === 'sheet' && second.step === 'fold') continue;
    const span = { start: token.startOffset, end: t.endOf(elementAt(words, at + second.length - 1)) };
    const said = message('two-steps.two', {
      written: imagesOf(words.slice(0, first.length)),
      otherWritten: imagesOf(words.slice(at, at + second.length)),
    });
    const fix = replaceFix(
      message('fix.put-on-own-line'),
      { start: t.endOf(before), end: span.start },
      '\n  ',
      true,
    );
    return problem('two-steps', said, span, fix);
  }
  return undefined;
}
