import type { IToken } from 'chevrotain';
import { elementAt, firstOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { coldWithoutDegrees, usualColdStoreCelsius } from './cold-step.ts';
import { readFoldTimes } from './fold-times.ts';
import { type KnownStep, knownStep, secondStep } from './known-step.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { problem } from './problem.ts';
import { secondStepInRemarks, secondTime, secondTimeInRemarks } from './second-time.ts';
import { isAlone, readStepHead, type StepHead } from './step-head.ts';
import * as t from './tokens.ts';
import type { LineRead, StepStatement, SyntaxProblem } from './tree.ts';

/**
 * Reads a step of a process: words, a time, a temperature, then remarks after commas, all but the words optional. What else
 * stands before the first comma is a remark too. A remark may say when to fold.
 */
export function readStep(line: string, tokens: readonly IToken[]): LineRead {
  const all = tokens.flatMap((token, index) => (token.tokenType === t.Comma ? [index] : []));
  const { head, commas } = headOf(tokens, all);
  const remarked = tokens.slice(commas[0] ?? tokens.length);
  const read = readStepHead(head);
  const name = nameOf(line, head.slice(0, read.words));
  if (name === undefined) {
    const at = firstOf(tokens);
    const span = { start: at.startOffset, end: t.endOf(at) };
    return {
      statement: { kind: 'unreadable' },
      problems: [problem('missing-name', message('missing-name.step'), span)],
    };
  }
  const known = knownStep(head);
  const asides = read.asides.map((run) => run.map((index) => elementAt(head, index)));
  const folds = readFoldTimes([...foldWords(head, asides.flat(), known), ...remarked], read.seconds);
  const cold = read.celsius === undefined ? coldWithoutDegrees(head) : undefined;
  const celsius = cold === undefined ? read.celsius : usualColdStoreCelsius;
  const statement: StepStatement = {
    kind: 'step',
    words: name,
    foldSeconds: folds.seconds,
    remarks: [...asides.map((run) => wordsOf(line, run)), ...remarksOf(line, tokens, commas)],
    ...(known === undefined ? {} : { known: known.step }),
    ...(read.seconds === undefined ? {} : { seconds: read.seconds }),
    ...(celsius === undefined ? {} : { celsius }),
  };
  const problems = [...lostOf(tokens, head, read, known), ...read.problems, ...folds.problems];
  if (cold !== undefined) problems.push(cold);
  return { statement, problems: problems.slice(0, 1) };
}

/** What stands before the first comma, with a time or a temperature that stands alone behind one: `bulk 3 h, 24 °C`. */
function headOf(
  tokens: readonly IToken[],
  commas: readonly number[],
): { readonly head: readonly IToken[]; readonly commas: readonly number[] } {
  const head = tokens.slice(0, commas[0] ?? tokens.length);
  for (const [index, comma] of commas.entries()) {
    const part = tokens.slice(comma + 1, commas[index + 1] ?? tokens.length);
    if (!isAlone(part, head)) return { head, commas: commas.slice(index) };
    head.push(...part);
  }
  return { head, commas: [] };
}

/** What stands before the comma and may speak of folding: `with folds every 30 min`, `fold every 30 min for 2 h`. */
function foldWords(
  head: readonly IToken[],
  aside: readonly IToken[],
  known: KnownStep | undefined,
): readonly IToken[] {
  const isRepeated = known?.step === 'fold' && head.some(({ image }) => /^(?:every|each)$/i.test(image));
  return isRepeated ? head : aside;
}

/** A second step or a second time, whose time would be lost. */
function lostOf(
  tokens: readonly IToken[],
  head: readonly IToken[],
  read: StepHead,
  known: KnownStep | undefined,
): readonly SyntaxProblem[] {
  const folding = tokens.findIndex(({ image }, index) => index > 0 && /^fold(?:s|ed|ing)?$/i.test(image));
  const before = read.words < head.length && folding > read.words ? head.slice(0, folding) : head;
  const step = secondStep(before, known);
  if (step !== undefined) return [step];
  const { words, seconds, secondTime: second } = read;
  const other = known === undefined ? [] : secondStepInRemarks(tokens, words);
  if (other.length > 0 || (folding > 0 && folding >= words)) return other;
  if (second !== undefined) return [secondTime(head, words, second, second)];
  return seconds === undefined ? [] : secondTimeInRemarks(tokens, words, seconds);
}

function wordsOf(line: string, tokens: readonly IToken[]): string {
  const [first, last] = [firstOf(tokens), elementAt(tokens, tokens.length - 1)];
  return nameBetween(line, first.startOffset, t.endOf(last)).text;
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
