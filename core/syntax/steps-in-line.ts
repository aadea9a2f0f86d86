import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import { message } from '../words/message.ts';
import { usualColdStoreCelsius } from './cold-step.ts';
import { type KnownStep, knownStep } from './known-step.ts';
import { problem, replaceFix, writeFix } from './problem.ts';
import type { LineFix, SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';

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
    const span = { start: token.startOffset, end: t.endOf(elementAt(words, at + second.length - 1)) };
    const said = message('two-steps.two', {
      written: imagesOf(words.slice(0, first.length)),
      otherWritten: imagesOf(words.slice(at, at + second.length)),
    });
    const fix = ownLineFix(words, token);
    return problem('two-steps', said, span, fix);
  }
  return undefined;
}

/** What stands between one step and the next. */
const joint = /^(?:[,;+&/]|and|then)$/i;

/** What stands from a token on goes to a line of its own, behind words where it lacks them; signs that joined it go. */
function ownLineFix(tokens: readonly IToken[], from: IToken, words = ''): LineFix {
  let before = tokens.indexOf(from);
  while (before > 1 && joint.test(elementAt(tokens, before - 1).image)) before--;
  const span = { start: t.endOf(elementAt(tokens, before - 1)), end: from.startOffset };
  return replaceFix(message('fix.put-on-own-line'), span, `\n  ${words}`, true);
}

const isTime = (token: IToken): boolean => t.quantityOf(token)?.kind === 'duration';

/** `preshape, rest 20 min`: another step stands as a remark of the first, and its time would be lost. */
export function stepInRemark(
  tokens: readonly IToken[],
  remarks: readonly (readonly IToken[])[],
  first: KnownStep | undefined,
): SyntaxProblem | undefined {
  for (const remark of remarks) {
    const second = knownStep(remark, true);
    if (first === undefined || second === undefined || second.step === 'fold') continue;
    if (!remark.some(isTime) || remark.some(({ image }) => noTimeOfItsOwn.test(image))) continue;
    const begin = elementAt(remark, 0);
    const span = { start: begin.startOffset, end: t.endOf(elementAt(remark, second.length - 1)) };
    const said = message('two-steps.in-remark', { written: imagesOf(remark.slice(0, second.length)) });
    return problem('two-steps', said, span, ownLineFix(tokens, begin));
  }
  return undefined;
}

/**
 * `bake 20 min at 240 °C + 20 min at 220 °C`, `bake 20 min, 10 min without lid`: a step has one time, and the second would be
 * lost. `words` are what is done in `seconds`; the first of `remarks` stands right behind its time. Silent where such times come to
 * that of the step, which they then break down: `bake 45 min, 20 min with lid, 25 min without`.
 */
export function secondTime(
  tokens: readonly IToken[],
  words: readonly IToken[],
  seconds: number,
  remarks: readonly (readonly IToken[])[],
): SyntaxProblem | undefined {
  const [behind = [], ...others] = remarks;
  const parts = [
    behind,
    ...others.filter((remark) => isFigure(remark.find((token) => !joint.test(token.image)))),
  ];
  const timed = parts.filter(
    (part) =>
      part.some(isTime) &&
      !part.some(({ image }) => noTimeOfItsOwn.test(image)) &&
      !withinStep.test(part[part.findIndex(isTime) - 1]?.image ?? ''),
  );
  const sum = timed.reduce((all, part) => all + secondsOf(part.find(isTime)), 0);
  if (timed.length > 1 && Math.abs(sum - seconds) < 1) return undefined;
  for (const part of timed) {
    const time = part.find(isTime);
    if (time === undefined) continue;
    const first = part.find(isFigure) ?? time;
    const said = message('two-steps.two-times', { written: time.image, example: 'steam for 10 min' });
    const span = { start: time.startOffset, end: t.endOf(time) };
    // What was kept cold goes on warm.
    const step = /^retard$/i.test(imagesOf(words)) ? 'proof' : imagesOf(words);
    return problem('two-steps', said, span, ownLineFix(tokens, first, `${step} `));
  }
  return undefined;
}

function secondsOf(token: IToken | undefined): number {
  const quantity = token === undefined ? undefined : t.quantityOf(token);
  return quantity?.kind === 'duration' ? quantity.seconds : 0;
}

const isFigure = (token: IToken | undefined): boolean =>
  token !== undefined && ['duration', 'temperature'].includes(t.quantityOf(token)?.kind ?? '');

/** Words beside which a time is not one more to wait. */
const noTimeOfItsOwn = /^(?:every|each|after|before|until|of|per|folds?)$/i;

/** Words before a time that goes on within the step: `steam for 10 min`, `the first 10 min`. */
const withinStep = /^(?:at|for|first|last|within|in|from|about)$/i;

/** `retard overnight`: a night is no time that a clock can be set by. */
export function withoutTime(
  tokens: readonly IToken[],
  celsius: number | undefined,
): SyntaxProblem | undefined {
  const word = tokens.find(({ image }) => /^overnight$/i.test(image));
  if (word === undefined) return undefined;
  const own = { start: word.startOffset, end: t.endOf(word) };
  const cold = tokens.findIndex(({ image }) => /^(?:fridge|refrigerator|cold|cooler|retarder)$/i.test(image));
  const isAlone = tokens.every(
    (token) =>
      token === word || /^(?:in|the|fridge|refrigerator|cooler|retarder|rest|leave)$/i.test(token.image),
  );
  const meant = isAlone && cold >= 0 && celsius === undefined ? `retard ${night} at ${coldStore}` : night;
  const last = tokens.at(-1)!;
  const span = isAlone && cold >= 0 ? { start: tokens[0]!.startOffset, end: t.endOf(last) } : own;
  const said = message('missing-unit.overnight', { written: word.image, example: meant });
  return problem('missing-unit', said, own, writeFix(span, meant, true));
}

/** Common practice, no source. */
const night = '12 h';
const coldStore = `${usualColdStoreCelsius} °C`;
