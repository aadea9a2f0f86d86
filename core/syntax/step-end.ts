import type { IToken } from 'chevrotain';
import { elementAt, firstOf } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { groupedProblem, rangeProblem } from './number-problems.ts';
import { problem, unitFixes, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import { units } from './units.ts';

export interface StepEnd {
  /** How many tokens of the head are the words of the step. */
  readonly words: number;
  readonly seconds?: number;
  readonly celsius?: number;
  /** What stands behind time and temperature, and is a remark. */
  readonly behind?: readonly IToken[];
  readonly problems: readonly SyntaxProblem[];
}

/**
 * The time and the temperature of the head of a step; one that cannot be read is told and left out. They end it, or stand in the
 * other order or before words that are a remark: `bake 220 °C 35 min with steam`.
 */
export function readEnd(head: readonly IToken[]): StepEnd {
  const atEnd = readAtEnd(head);
  const isWhole = !head.slice(1, atEnd.words).some(isTimeOrTemperature);
  return isWhole || atEnd.problems.length > 0 ? atEnd : (readWithin(head) ?? atEnd);
}

const isTimeOrTemperature = (token: IToken): boolean => isTime(token) || isTemperature(token);
const isTime = (token: IToken): boolean => t.quantityOf(token)?.kind === 'duration';
const isTemperature = (token: IToken): boolean => t.quantityOf(token)?.kind === 'temperature';

/** Words before a figure that make it another than that of the step: `bake to 96 °C`, `turn after 20 min`. */
const ofAnother = /^(?:to|until|till|core|internal|inside|after|before|every|each|per|by)$/i;

function readWithin(head: readonly IToken[]): StepEnd | undefined {
  const first = head.findIndex(
    (token, index) =>
      index > 0 && isTimeOrTemperature(token) && !ofAnother.test(elementAt(head, index - 1).image),
  );
  if (first < 1) return undefined;
  let words = first;
  while (words > 1 && isJoint(elementAt(head, words - 1))) words--;
  let seconds: number | undefined;
  let celsius: number | undefined;
  let at = first;
  for (; at < head.length; at++) {
    const token = elementAt(head, at);
    const quantity = t.quantityOf(token);
    if (quantity?.kind === 'duration' && seconds === undefined) seconds = quantity.seconds;
    else if (quantity?.kind === 'temperature' && celsius === undefined) celsius = quantity.celsius;
    else if (!isJoint(token) || !head.slice(at + 1, at + 2).some(isTimeOrTemperature)) break;
  }
  const behind = head.slice(at);
  // `bake 250 °C falling to 200 °C 55 min`: what is not said before the words may stand behind them.
  const later = behind.findLastIndex((token, index) => {
    const isWanted = seconds === undefined ? isTime(token) : celsius === undefined && isTemperature(token);
    return isWanted && (index === 0 || !ofAnother.test(elementAt(behind, index - 1).image));
  });
  const quantity = later < 0 ? undefined : t.quantityOf(elementAt(behind, later));
  if (quantity?.kind === 'duration') seconds = quantity.seconds;
  if (quantity?.kind === 'temperature') celsius = quantity.celsius;
  const from = later > 0 && isJoint(elementAt(behind, later - 1)) ? later - 1 : later;
  return {
    words,
    ...(seconds === undefined ? {} : { seconds }),
    ...(celsius === undefined ? {} : { celsius }),
    behind: later < 0 ? behind : [...behind.slice(0, from), ...behind.slice(later + 1)],
    problems: [],
  };
}

/** Signs and words between what is done and how long or how warm. */
export const isJoint = (token: IToken): boolean =>
  token.tokenType === t.At || token.tokenType === t.For || token.tokenType === t.Colon || token.image === '/';

function readAtEnd(head: readonly IToken[]): StepEnd {
  const last = head[head.length - 1];
  const beforeLast = head[head.length - 2];
  const isAt = beforeLast?.tokenType === t.At;
  const quantity = last === undefined ? undefined : t.quantityOf(last);
  if (quantity?.kind === 'temperature') {
    const time = readTime(head.slice(0, isAt ? -2 : -1));
    return { celsius: quantity.celsius, ...time };
  }
  if (last === undefined || quantity === undefined || !isAt) return readTime(head);
  const wrong =
    quantity.kind === 'bare'
      ? missingUnit(quantity.number, quantity, ['°C', '°F'])
      : unreadableNumber(last, 'temperature');
  if (wrong === undefined) return readTime(head);
  return { ...readTime(head.slice(0, -2)), problems: [wrong] };
}

function readTime(head: readonly IToken[]): StepEnd {
  const last = head[head.length - 1];
  const quantity = last === undefined ? undefined : t.quantityOf(last);
  const clocked = last === undefined || head.length < 2 ? null : /^(\d+)h([0-5]\d)$/i.exec(last.image);
  if (clocked !== null) return { words: head.length - 1, problems: [hoursAndMinutes(last!, clocked)] };
  if (last === undefined || quantity === undefined) return { words: head.length, problems: [] };
  const words = head.length - (head[head.length - 2]?.tokenType === t.For ? 2 : 1);
  const joined = rangeInWords(head);
  if (joined !== undefined) return { words: head.length - 3, problems: [joined] };
  if (quantity.kind === 'duration') return { words, seconds: quantity.seconds, problems: [] };
  const wrong = unreadableNumber(last, 'duration');
  if (wrong !== undefined) return { words, problems: [wrong] };
  if (quantity.kind !== 'bare') return { words: head.length, problems: [] };
  const before = head[words - 1];
  if (before !== undefined && t.quantityOf(before)?.kind === 'duration')
    return { words: words - 1, problems: [missingUnit(quantity.number, quantity, ['min', 's'])] };
  // A number alone behind `rest` or `bake` is a time without its unit.
  if (words !== 1 || !timed.has(firstOf(head).image.toLowerCase()))
    return { words: head.length, problems: [] };
  return { words, problems: [missingUnit(quantity.number, quantity, ['min', 'h'])] };
}

/** The steps that are told by their time; behind another word a number may be anything. */
const timed: ReadonlySet<string> = new Set([
  'bulk',
  'rest',
  'retard',
  'proof',
  'boil',
  'bake',
  'cool',
  'prove',
  'rise',
]);

/** A range or a number in groups of three where a time or a temperature should stand. */
function unreadableNumber(token: IToken, measure: 'duration' | 'temperature'): SyntaxProblem | undefined {
  const quantity = t.quantityOf(token);
  if (quantity === undefined || units.get(quantity.unit)?.measure !== measure) return undefined;
  if (quantity.kind === 'range') return rangeProblem(quantity, token.image);
  return quantity.kind === 'grouped' ? groupedProblem(quantity, token.image) : undefined;
}

/** `45 to 55 min` at the end. */
function rangeInWords(head: readonly IToken[]): SyntaxProblem | undefined {
  const [low, joint, high] = head.slice(-3);
  if (head.length < 4 || low === undefined || joint === undefined || high === undefined) return undefined;
  if (!isTime(high) || t.quantityOf(low)?.kind !== 'bare' || !/^(?:to|or)$/i.test(joint.image))
    return undefined;
  const unit = high.image.replace(/^[\d.,]+/, '').trim();
  const span = { start: low.startOffset, end: t.endOf(high) };
  const written = `${low.image} ${joint.image} ${high.image}`;
  const fixes = [`${low.image} ${unit}`, high.image].map((meant) => writeFix(span, meant));
  return problem('range', message('range.one-value', { written }), span, ...fixes);
}

/** `1h30`: the minutes lack their unit. */
function hoursAndMinutes(token: IToken, [written, hours, minutes]: RegExpExecArray): SyntaxProblem {
  const span = { start: token.startOffset, end: t.endOf(token) };
  const meant = `${hours} h ${Number(minutes)} min`;
  const said = message('missing-unit.minutes', { written: written!, meant });
  return problem('missing-unit', said, span, writeFix(span, meant, true));
}

function missingUnit(number: string, span: Span, wanted: readonly string[]): SyntaxProblem {
  const units = wanted.map((unit) => ` ${unit}`);
  const fixes = unitFixes(number, units, span.end);
  const said = message('missing-unit.other', { written: number, example: `${number}${units[0]}` });
  return problem('missing-unit', said, { start: span.start, end: span.end }, ...fixes);
}
