import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import { message } from '../words/message.ts';
import { knownStepOfRemark } from './known-step.ts';
import { problem, replaceFix } from './problem.ts';
import type { StepHead } from './step-head.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';

const joint = /^(?:then|and|plus|another|[&+/,])$/i;

/**
 * The finding for a second time in a step, which would be lost to the clock, with the fix that makes a step of it. `words` says how
 * many tokens are the words of the step, `from` where the second begins, `at` which token is its time.
 */
export function secondTime(
  tokens: readonly IToken[],
  words: number,
  from: number,
  at: number,
): SyntaxProblem {
  const isJoint = (index: number): boolean =>
    joint.test(elementAt(tokens, index).image) || turned.test(elementAt(tokens, index).image);
  let [end, start] = [from, from];
  while (isJoint(start)) start++;
  while (isJoint(end - 1)) end--;
  const step = tokens.slice(0, words).map(({ image }) => image);
  // What was kept cold goes on warm.
  const name = step[0]?.toLowerCase() === 'retard' ? 'proof' : step.join(' ');
  const time = elementAt(tokens, at);
  return problem(
    'two-steps',
    message('two-steps.time', { written: time.image, example: 'steam for 10 min' }),
    { start: time.startOffset, end: t.endOf(time) },
    replaceFix(
      message('fix.put-on-own-line'),
      { start: t.endOf(elementAt(tokens, end - 1)), end: elementAt(tokens, start).startOffset },
      `\n  ${name} `,
      true,
    ),
  );
}

interface BegunTime {
  readonly from: number;
  readonly at: number;
  readonly seconds: number;
  /** Whether its remark says a temperature. */
  readonly isWarm: boolean;
}

/** `then drop to 210 °C for 30 min` */
const turned =
  /^(?:then|at|to|reduce|reduced|lower|lowered|drop|dropped|turn|turned|down|heat|oven|the|again)$/i;
const nearly = /^(?:about|around|approximately|approx|roughly|circa|ca)$/i;

/** The times that remarks begin with. */
function timesBegun(tokens: readonly IToken[]): readonly BegunTime[] {
  const begun: BegunTime[] = [];
  for (let from = 0; from < tokens.length; from++) {
    if (elementAt(tokens, from).tokenType !== t.Comma) continue;
    let at = from + 1;
    while (at < tokens.length && joint.test(elementAt(tokens, at).image)) at++;
    let [warm, begins] = [at, from + 1];
    while (warm < tokens.length && turned.test(elementAt(tokens, warm).image)) warm++;
    if (kindOf(tokens[warm]) === 'temperature') {
      begins = warm;
      at = warm + 1;
      if (tokens[at]?.tokenType === t.For) at++;
    }
    while (at < tokens.length && nearly.test(elementAt(tokens, at).image)) at++;
    const quantity = tokens[at] === undefined ? undefined : t.quantityOf(elementAt(tokens, at));
    if (quantity?.kind !== 'duration') continue;
    const end = tokens.findIndex(({ tokenType }, index) => index > from && tokenType === t.Comma);
    const remark = tokens.slice(from, end < 0 ? tokens.length : end);
    const isWarm = remark.some((token) => kindOf(token) === 'temperature');
    begun.push({ from: begins, at, seconds: quantity.seconds, isWarm });
  }
  return begun;
}

/** What the times that remarks begin with come to, seconds, where there are any: `bake at 230 °C, 30 min with lid, 15 min without`. */
export function secondsOfRemarks(tokens: readonly IToken[]): number | undefined {
  const begun = timesBegun(tokens);
  return begun.length === 0 ? undefined : begun.reduce((all, { seconds }) => all + seconds, 0);
}

/**
 * A time that a remark begins with, `bake 15 min with lid, 30 min without`. Silent where the times of several remarks come to that of the
 * step, which they then break down: `bake 45 min, 20 min with lid, 25 min without`. Two times at temperatures of their own are two
 * steps, however long: `bake 20 min at 250 °C, 20 min at 230 °C`. `after` is the last token that says of other times what they are.
 */
export function secondTimeInRemarks(
  tokens: readonly IToken[],
  head: readonly IToken[],
  { words, seconds: stepSeconds, celsius }: Pick<StepHead, 'words' | 'seconds' | 'celsius'>,
  after = 0,
): readonly SyntaxProblem[] {
  // `bake, 45 min, 20 min with lid`: the first is the step’s own.
  const begun = timesBegun(tokens).filter(({ at }) => at > after && !head.includes(elementAt(tokens, at)));
  const [first] = begun;
  const sum = begun.reduce((all, { seconds }) => all + seconds, 0);
  const isBrokenDown =
    stepSeconds !== undefined &&
    Math.abs(sum - stepSeconds) < 1 &&
    begun.length > 1 &&
    !(celsius !== undefined && begun.every(({ isWarm }) => isWarm));
  return stepSeconds === undefined || first === undefined || isBrokenDown
    ? []
    : [secondTime(tokens, words, first.from, first.at)];
}

/** Steps that take their time; folding goes on within another. */
const lasting: ReadonlySet<string> = new Set(['bulk', 'rest', 'retard', 'proof', 'boil', 'bake', 'cool']);
const within = /^(?:after|before|between|each|every|until|till)$/i;

/** A step with a time of its own among the remarks of another, `rest 20 min, fold, rest 20 min`. */
export function secondStepInRemarks(tokens: readonly IToken[], words: number): readonly SyntaxProblem[] {
  for (const [comma, { tokenType }] of tokens.entries()) {
    if (tokenType !== t.Comma) continue;
    let start = comma + 1;
    while (start < tokens.length && joint.test(elementAt(tokens, start).image)) start++;
    const end = tokens.findIndex((token, index) => index > start && token.tokenType === t.Comma);
    const part = tokens.slice(start, end < 0 ? tokens.length : end);
    const step = knownStepOfRemark(part);
    if (step === undefined || !lasting.has(step.step)) continue;
    const isTimed = part.some((token) => kindOf(token) === 'duration');
    if (isTimed && !part.some(({ image }) => within.test(image)))
      return [anotherStep(tokens, words, comma, start, step.length)];
  }
  return [];
}

function anotherStep(
  tokens: readonly IToken[],
  words: number,
  comma: number,
  start: number,
  length: number,
): SyntaxProblem {
  const imagesOf = (some: readonly IToken[]): string => some.map(({ image }) => image).join(' ');
  const otherWritten = imagesOf(tokens.slice(start, start + length));
  const span = {
    start: elementAt(tokens, start).startOffset,
    end: t.endOf(elementAt(tokens, start + length - 1)),
  };
  const gap = { start: t.endOf(elementAt(tokens, comma - 1)), end: span.start };
  return problem(
    'two-steps',
    message('two-steps.two', { written: imagesOf(tokens.slice(0, words)), otherWritten }),
    span,
    replaceFix(message('fix.put-on-own-line'), gap, '\n  ', true),
  );
}

function kindOf(token: IToken | undefined): string | undefined {
  return token === undefined ? undefined : t.quantityOf(token)?.kind;
}
