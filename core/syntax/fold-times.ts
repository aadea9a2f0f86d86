import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import { message } from '../words/message.ts';
import { problem, unitFixes } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import { units } from './units.ts';

export interface FoldTimes {
  /** Seconds from the start of the step, in the order they are written. */
  readonly seconds: readonly number[];
  readonly problems: readonly SyntaxProblem[];
}

/** More folds than anyone gives a dough; what says more is a slip of the pen. */
const mostFolds = 60;

const counts: Readonly<Record<string, number>> = {
  once: 1,
  twice: 2,
  thrice: 3,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
};

/**
 * Every time in remarks that speak of folding: `fold at 45 min and 90 min`, `fold at 30, 60, 90 min` whose last number
 * gives the unit of all, `folds every 40 min`, and `fold 3 times` or `3 folds`, which are spread evenly over the step, or over `the first 2 h` of it. Where a
 * number cannot be told from the line, that is a problem and never a guess.
 */
export function readFoldTimes(tokens: readonly IToken[], stepSeconds: number | undefined): FoldTimes {
  // `knock back at 1 h` is the same to a clock.
  const folding = tokens.findIndex(
    ({ image }, index) =>
      /^fold(?:s|ed|ing)?$/i.test(image) ||
      (/^(?:back|down)$/i.test(image) && /^(?:knock|punch)$/i.test(tokens[index - 1]?.image ?? '')),
  );
  if (folding < 0) return { seconds: [], problems: [] };
  const told = toldTimes(tokens, folding, stepSeconds);
  const past = told.seconds.filter((one) => one > (stepSeconds ?? Number.POSITIVE_INFINITY) + 1e-6);
  if (past.length === 0 || stepSeconds === undefined) return told;
  const span = {
    start: elementAt(tokens, folding).startOffset,
    end: t.endOf(elementAt(tokens, folding + ofFolding(tokens.slice(folding + 1)).length)),
  };
  const facts = { seconds: Math.max(...past), otherSeconds: stepSeconds };
  const found = problem('fold-past-end', message('fold-past-end.later', facts), span);
  return {
    seconds: told.seconds.filter((one) => !past.includes(one)),
    problems: [...told.problems, found].slice(0, 1),
  };
}

/** What is said of folding: up to a comma behind which no further time stands, `fold at 30, 60 min, then 12 h in the fridge`. */
export function ofFolding(said: readonly IToken[]): readonly IToken[] {
  const end = said.findIndex((token, index) => {
    if (token.tokenType !== t.Comma) return false;
    const next = said
      .slice(index + 1)
      .find(({ image }) => !/^(?:and|at|after|x|×|&|fold(?:s|ed|ing)?)$/i.test(image));
    return next !== undefined && t.quantityOf(next) === undefined && countOf(next) === undefined;
  });
  return end < 0 ? said : said.slice(0, end);
}

function toldTimes(tokens: readonly IToken[], folding: number, stepSeconds: number | undefined): FoldTimes {
  const said = ofFolding(tokens.slice(folding + 1));
  const slashed = slashedTimes(said);
  if (slashed.length > 0) return { seconds: slashed, problems: [] };
  // `3 folds`, and `4 sets of coil folds`, whose number begins the remark.
  const comma = tokens.slice(0, folding).findLastIndex(({ tokenType }) => tokenType === t.Comma);
  const numbers = [tokens[folding - 1], folding - comma > 2 ? tokens[comma + 1] : undefined];
  const before = numbers.find((token) => token !== undefined && countOf(token) !== undefined);
  const counted = before === undefined ? undefined : countOf(before);
  const paced = countedEvery(counted, said);
  if (paced !== undefined) return paced;
  const limit = stretchOf(said, stepSeconds);
  if (counted !== undefined) return spread(counted, before!, stepSeconds, limit);
  const seconds: number[] = [];
  const problems: SyntaxProblem[] = [];
  let bare: IToken[] = [];
  for (const [index, token] of said.entries()) {
    const word = token.image.toLowerCase();
    const quantity = t.quantityOf(token);
    const next = said[index + 1];
    if (word === 'every' || word === 'each') {
      const every = next === undefined ? undefined : t.quantityOf(next);
      if (next !== undefined && every?.kind === 'bare') return { seconds: [], problems: [withoutUnit(next)] };
      if (next === undefined || every?.kind !== 'duration') continue;
      return repeated(every.seconds, next, limitOf(said.slice(index + 2)), stepSeconds);
    }
    const times =
      quantity?.kind === 'times' ? quantity.factor : quantity === undefined ? counts[word] : undefined;
    if (times !== undefined && (quantity?.kind === 'times' || next === undefined || isTimes(next, word)))
      return spread(times, token, stepSeconds, limit);
    if (quantity?.kind === 'bare') bare.push(token);
    if (quantity?.kind !== 'duration') continue;
    const unit = units.get(quantity.unit)?.factor ?? 60;
    for (const one of bare) seconds.push((t.quantityOf(one) as { value: number }).value * unit);
    bare = [];
    seconds.push(quantity.seconds);
  }
  // Numbers behind the last time have lost their unit.
  const last = bare.at(-1);
  if (last !== undefined) problems.push(last === said[0] ? withoutTimes(last) : withoutUnit(last));
  return { seconds, problems: problems.slice(0, 1) };
}

/** `at 30/60/90 min`: signs between the times, whose last has the unit of all; `1/2 h` is half an hour. */
function slashedTimes(said: readonly IToken[]): readonly number[] {
  for (const [at, { image }] of said.entries()) {
    const [, figures, own] = /^(\d{1,3}(?:\/\d{1,3})+)\s*([a-z]*)$/i.exec(image) ?? [];
    if (figures === undefined) continue;
    const unit = units.get((own === '' ? (said[at + 1]?.image ?? '') : (own ?? '')).toLowerCase());
    const times = figures.split('/').map(Number);
    if (unit?.measure !== 'duration' || (times.length === 2 && elementAt(times, 0) < 5)) return [];
    return times.map((time) => time * unit.factor);
  }
  return [];
}

/** A step that is nothing but folds, and what can be said of its time. */
export interface FoldsAlone {
  /** How many tokens are its words. */
  readonly words: number;
  readonly seconds?: number;
  readonly foldSeconds: readonly number[];
  readonly problems: readonly SyntaxProblem[];
}

/**
 * `stretch and fold x3 every 20 min` takes an hour; `fold at 60 and 120 min` and `fold every 30 min` take none of their own: they
 * are of the step above. `head` is what stands before the first comma of a step that folds.
 */
export function readFoldsAlone(head: readonly IToken[]): FoldsAlone | undefined {
  const at = head.findIndex(({ image }, index) => index > 0 && /^(?:every|each|at|after)$/i.test(image));
  const word = head[at]?.image.toLowerCase();
  if (word === undefined || head.slice(at).some((token) => t.quantityOf(token)?.kind === 'temperature'))
    return undefined;
  const times = head.slice(at).filter((token) => t.quantityOf(token)?.kind === 'duration');
  const [first] = times;
  const time = first === undefined ? undefined : t.quantityOf(first);
  if (first === undefined || time?.kind !== 'duration') return undefined;
  // `fold every 30 min for 2 h` says how long it goes on.
  if (times.length > 1 && head.slice(at).some(({ image }) => /^(?:for|until|till|over)$/i.test(image)))
    return undefined;
  if (word === 'every' || word === 'each') {
    const count = head.slice(0, at).flatMap((token) => timesOf(token) ?? [])[0];
    if (count !== undefined) {
      const folds = Array.from({ length: count }, (_, index) => time.seconds * (index + 1));
      const words = head.findIndex((token) => timesOf(token) !== undefined);
      return { words, seconds: time.seconds * count, foldSeconds: folds, problems: [] };
    }
  }
  const span = { start: elementAt(head, at).startOffset, end: t.endOf(elementAt(head, head.length - 1)) };
  const said = message('fold-times.alone', { example: 'bulk 3 h, fold at 60 min' });
  return {
    words: at,
    foldSeconds: [],
    problems: [{ ...problem('fold-times', said, span), joinsAbove: elementAt(head, 0).startOffset }],
  };
}

/** `x3`, `3x`, `3 times` before `every`. */
function timesOf(token: IToken): number | undefined {
  const written = /^(?:[x×](\d{1,2})|(\d{1,2})[x×])$/i.exec(token.image);
  const quantity = t.quantityOf(token);
  const count =
    written !== null
      ? Number(written[1] ?? written[2])
      : quantity?.kind === 'times'
        ? quantity.factor
        : (countOf(token) ?? 0);
  return Number.isInteger(count) && count > 0 && count <= mostFolds ? count : undefined;
}

function isTimes(next: IToken, word: string): boolean {
  return (
    next.tokenType === t.Comma ||
    /^times?$/i.test(next.image) ||
    word === 'once' ||
    word === 'twice' ||
    word === 'thrice'
  );
}

/** `3` in `3 folds`, `three` in `three folds`. */
function countOf(token: IToken): number | undefined {
  const quantity = t.quantityOf(token);
  if (quantity?.kind === 'bare') return quantity.value;
  return quantity === undefined ? counts[token.image.toLowerCase()] : undefined;
}

/** `for 2 h` and `until 2 h` behind `every 30 min`. */
function limitOf(tokens: readonly IToken[]): number | undefined {
  const [word, time] = tokens.filter(({ image }) => !/^(?:the|first)$/i.test(image));
  const quantity = time === undefined ? undefined : t.quantityOf(time);
  const isLimit = word !== undefined && /^(?:for|until|till|to|in|over|within|during)$/i.test(word.image);
  return isLimit && quantity?.kind === 'duration' ? quantity.seconds : undefined;
}

/**
 * `4 folds every 30 min`, `fold every 30 min x 4`, `fold 4 times every 30 min`: so many, each so long behind the one before.
 */
function countedEvery(counted: number | undefined, said: readonly IToken[]): FoldTimes | undefined {
  const at = said.findIndex(({ image }) => /^(?:every|each)$/i.test(image));
  const gap = said[at + 1] === undefined ? undefined : t.quantityOf(elementAt(said, at + 1));
  if (at < 0 || gap?.kind !== 'duration' || !(gap.seconds > 0)) return undefined;
  // `x 4` is a sign and a number; a bare number alone may be anything.
  const times =
    counted ??
    said.flatMap((token, index) => {
      const isSigned = /^[x×]$/i.test(said[index - 1]?.image ?? '') || isTimesWord(said[index + 1]);
      const isCount = t.quantityOf(token)?.kind !== 'bare' || isSigned;
      return isCount && index !== at + 1 ? (timesOf(token) ?? []) : [];
    })[0];
  if (times === undefined || !(times >= 1) || times > mostFolds || !Number.isInteger(times)) return undefined;
  return { seconds: Array.from({ length: times }, (_, index) => gap.seconds * (index + 1)), problems: [] };
}

const isTimesWord = (token: IToken | undefined): boolean =>
  token !== undefined && /^(?:times?|x|×)$/i.test(token.image);

/** `in the first 2 h`, `over 90 min`, `in the first half`: how long folds that are counted go on, where that is not the whole step. */
function stretchOf(said: readonly IToken[], stepSeconds: number | undefined): number | undefined {
  for (const [index, { image }] of said.entries()) {
    if (!/^(?:in|over|within|during|for)$/i.test(image)) continue;
    const [time] = said.slice(index + 1).filter((token) => !/^(?:the|first)$/i.test(token.image));
    const quantity = time === undefined ? undefined : t.quantityOf(time);
    const isHalf = time?.image.toLowerCase() === 'half' && stepSeconds !== undefined;
    const seconds = quantity?.kind === 'duration' ? quantity.seconds : isHalf ? stepSeconds / 2 : undefined;
    if (seconds !== undefined) return seconds === stepSeconds ? undefined : seconds;
  }
  return undefined;
}

/** So many folds, evenly over the step; within a stretch of it the last is at its end. */
function spread(
  times: number,
  at: IToken,
  stepSeconds: number | undefined,
  limit: number | undefined,
): FoldTimes {
  if (!(times >= 1) || times > mostFolds || !Number.isInteger(times)) return { seconds: [], problems: [] };
  if (stepSeconds === undefined && limit === undefined)
    return { seconds: [], problems: [withoutStepTime(at)] };
  const gap = limit === undefined ? (stepSeconds ?? 0) / (times + 1) : limit / times;
  return { seconds: Array.from({ length: times }, (_, index) => gap * (index + 1)), problems: [] };
}

function repeated(
  gap: number,
  at: IToken,
  limit: number | undefined,
  stepSeconds: number | undefined,
): FoldTimes {
  if (!(gap > 0)) return { seconds: [], problems: [] };
  if (limit === undefined && stepSeconds === undefined)
    return { seconds: [], problems: [withoutStepTime(at)] };
  const seconds: number[] = [];
  // At the very end of a step a fold is the next step; at the end of the limit it is the last.
  for (let now = gap; seconds.length < mostFolds; now += gap) {
    if (now > (limit ?? Number.POSITIVE_INFINITY) + 1e-6) break;
    if (now >= (stepSeconds ?? Number.POSITIVE_INFINITY) - 1e-6) break;
    seconds.push(now);
  }
  return { seconds, problems: [] };
}

function withoutUnit(token: IToken): SyntaxProblem {
  const span = { start: token.startOffset, end: t.endOf(token) };
  const said = message('missing-unit.other', { written: token.image, example: `${token.image} min` });
  return problem('missing-unit', said, span, ...unitFixes(token.image, [' min', ' h'], span));
}

/** `fold 3`: how often, more likely than when. */
function withoutTimes(token: IToken): SyntaxProblem {
  const span = { start: token.startOffset, end: t.endOf(token) };
  const said = message('missing-unit.times', { written: token.image, example: `fold ${token.image} times` });
  return problem('missing-unit', said, span, ...unitFixes(token.image, [' times'], span));
}

function withoutStepTime(token: IToken): SyntaxProblem {
  const span = { start: token.startOffset, end: t.endOf(token) };
  return problem(
    'fold-times',
    message('fold-times.no-step-time', { example: 'bulk 2 h, fold 3 times' }),
    span,
  );
}
