import type { IToken } from 'chevrotain';
import { firstOf } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { readFoldTimes } from './fold-times.ts';
import { knownStep, secondStep } from './known-step.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { groupedProblem, rangeProblem } from './number-problems.ts';
import { problem, unitFixes, writeFix } from './problem.ts';
import * as t from './tokens.ts';
import type { LineRead, StepStatement, SyntaxProblem } from './tree.ts';
import { units } from './units.ts';

/**
 * Reads a step of a process: words, then a time, then a temperature, then remarks after commas, all but the words
 * optional. A remark may say when to fold.
 */
export function readStep(line: string, tokens: readonly IToken[]): LineRead {
  const commas = tokens.flatMap((token, index) => (token.tokenType === t.Comma ? [index] : []));
  const head = tokens.slice(0, commas[0] ?? tokens.length);
  const { words, seconds, celsius, problems } = readEnd(head);
  const name = nameOf(line, head.slice(0, words));
  if (name === undefined) {
    const at = firstOf(tokens);
    const span = { start: at.startOffset, end: t.endOf(at) };
    return {
      statement: { kind: 'unreadable' },
      problems: [problem('missing-name', message('missing-name.step'), span)],
    };
  }
  const known = knownStep(head);
  const folds = readFoldTimes(tokens.slice(commas[0] ?? tokens.length), seconds);
  const second = secondStep(head.slice(0, words), known);
  const statement: StepStatement = {
    kind: 'step',
    words: name,
    foldSeconds: folds.seconds,
    remarks: remarksOf(line, tokens, commas),
    ...(known === undefined ? {} : { known: known.step }),
    ...(seconds === undefined ? {} : { seconds }),
    ...(celsius === undefined ? {} : { celsius }),
  };
  return {
    statement,
    problems: [...(second === undefined ? [] : [second]), ...problems, ...folds.problems].slice(0, 1),
  };
}

interface StepEnd {
  /** How many tokens of the head are the words of the step. */
  readonly words: number;
  readonly seconds?: number;
  readonly celsius?: number;
  readonly problems: readonly SyntaxProblem[];
}

/** The time and the temperature that the head of a step ends in; one that cannot be read is told and left out. */
function readEnd(head: readonly IToken[]): StepEnd {
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

/** Words between commas; numbers alone go on with the remark before them: `fold at 30, 60, 90 min` is one. */
function remarksOf(line: string, tokens: readonly IToken[], all: readonly number[]): string[] {
  const commas = all.filter((comma, index) => {
    const part = tokens.slice(comma + 1, all[index + 1] ?? tokens.length);
    return index === 0 || part.length === 0 || part.some((token) => t.quantityOf(token) === undefined);
  });
  return commas.flatMap((comma, index) => {
    const part = tokens.slice(comma + 1, commas[index + 1] ?? tokens.length);
    const [first, last] = [part[0], part[part.length - 1]];
    return first === undefined || last === undefined
      ? []
      : [nameBetween(line, first.startOffset, t.endOf(last)).text];
  });
}
