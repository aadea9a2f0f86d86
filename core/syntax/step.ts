import type { IToken } from 'chevrotain';
import { elementAt, firstOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { coldWithoutDegrees, usualColdStoreCelsius } from './cold-step.ts';
import { readFoldsAlone, readFoldTimes } from './fold-times.ts';
import { knownStep } from './known-step.ts';
import { nameOf } from './name-reading.ts';
import { problem } from './problem.ts';
import { isJoint, readEnd, type StepEnd } from './step-end.ts';
import { secondStep, secondTime, stepInRemark, withoutTime } from './steps-in-line.ts';
import * as t from './tokens.ts';
import type { LineRead, StepStatement } from './tree.ts';

/**
 * Reads a step of a process: words, then a time and a temperature, then remarks behind them or after commas, all but the words
 * optional. A remark may say when to fold; one that is a time or a temperature and nothing else is that of the step.
 */
export function readStep(line: string, tokens: readonly IToken[]): LineRead {
  const commas = tokens.flatMap((token, index) => (isComma(token) ? [index] : []));
  const head = nameFirst(tokens.slice(0, commas[0] ?? tokens.length));
  const known = knownStep(head);
  const alone = known?.step === 'fold' ? readFoldsAlone(head) : undefined;
  const end =
    alone === undefined
      ? readEnd(head)
      : { ...alone, behind: head.slice(alone.words), problems: alone.problems };
  const words = head.slice(0, end.words);
  const name = nameOf(line, words.at(-1)?.tokenType === t.Colon ? words.slice(0, -1) : words);
  if (name === undefined || name.folded === '') {
    const at = firstOf(tokens);
    const span = { start: at.startOffset, end: t.endOf(at) };
    return {
      statement: { kind: 'unreadable' },
      problems: [problem('missing-name', message('missing-name.step'), span)],
    };
  }
  const { seconds, celsius, said } = withRemarks(end, remarksIn(tokens, commas));
  const behind = end.behind ?? [];
  const folds =
    alone === undefined
      ? readFoldTimes([...behind, ...tokens.slice(commas[0] ?? tokens.length)], seconds)
      : { seconds: alone.foldSeconds, problems: [] };
  const second =
    secondStep(words, known) ??
    (seconds === undefined || alone !== undefined
      ? undefined
      : secondTime(tokens, words, seconds, [behind, ...said])) ??
    stepInRemark(tokens, said, known) ??
    (seconds === undefined ? withoutTime(tokens, celsius) : undefined);
  const cold = celsius === undefined && seconds !== undefined ? coldWithoutDegrees(tokens, known) : undefined;
  const kept = cold === undefined ? celsius : usualColdStoreCelsius;
  const statement: StepStatement = {
    kind: 'step',
    words: name,
    foldSeconds: folds.seconds,
    remarks: [behind, ...said].flatMap((part) => nameOf(line, part)?.text ?? []),
    ...(known === undefined ? {} : { known: known.step }),
    ...(seconds === undefined ? {} : { seconds }),
    ...(kept === undefined ? {} : { celsius: kept }),
  };
  const problems = [second, ...end.problems, ...folds.problems, cold].filter((one) => one !== undefined);
  return { statement, problems: problems.slice(0, 1) };
}

/** `20 min rest`: what is done stands before its time. */
function nameFirst(head: readonly IToken[]): readonly IToken[] {
  const [first, ...others] = head;
  const isTime = first !== undefined && t.quantityOf(first)?.kind === 'duration';
  return isTime && knownStep(others) !== undefined ? [...others, first] : head;
}

/** `bulk 3 h; fold at 90 min`: in a step both signs set remarks off. */
const isComma = (token: IToken): boolean => token.tokenType === t.Comma || token.image === ';';

/** The time and the temperature of a step, also where a remark begins with what the step lacks: `oven: 250 °C, 20 min, steam`. */
function withRemarks(
  end: StepEnd,
  remarks: readonly (readonly IToken[])[],
): Pick<StepEnd, 'seconds' | 'celsius'> & { readonly said: (readonly IToken[])[] } {
  let { seconds, celsius } = end;
  const said = remarks.flatMap((remark): (readonly IToken[])[] => {
    let at = 0;
    for (; at < remark.length; at++) {
      const token = elementAt(remark, at);
      const quantity = t.quantityOf(token);
      if (quantity?.kind === 'duration' && seconds === undefined) seconds = quantity.seconds;
      else if (quantity?.kind === 'temperature' && celsius === undefined) celsius = quantity.celsius;
      else if (!isJoint(token) && !isComma(token)) break;
    }
    // `at the bench` begins with a word that may stand before a figure.
    return !remark.slice(0, at).some((token) => t.quantityOf(token) !== undefined)
      ? [remark]
      : at === remark.length
        ? []
        : [remark.slice(at)];
  });
  return {
    ...(seconds === undefined ? {} : { seconds }),
    ...(celsius === undefined ? {} : { celsius }),
    said,
  };
}

/** What stands between commas; numbers alone go on with the remark before them: `fold at 30, 60, 90 min` is one. */
function remarksIn(tokens: readonly IToken[], all: readonly number[]): (readonly IToken[])[] {
  const commas = all.filter((comma, index) => {
    const part = tokens.slice(comma + 1, all[index + 1] ?? tokens.length);
    return index === 0 || part.length === 0 || part.some((token) => t.quantityOf(token) === undefined);
  });
  return commas.map((comma, index) => tokens.slice(comma + 1, commas[index + 1] ?? tokens.length));
}
