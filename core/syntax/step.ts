import type { IToken } from 'chevrotain';
import type { LineRead } from './amount.ts';
import { nameBetween, nameOf } from './names.ts';
import { insertFix, problem, replaceFix } from './problem.ts';
import * as t from './tokens.ts';
import type { StepStatement, SyntaxProblem } from './tree.ts';
import { stepWords } from './vocabulary.ts';

/**
 * Reads a step of a process: words, then a time, then a temperature, then remarks after commas, all but the words
 * optional. A remark may say when to fold.
 */
export function readStep(line: string, tokens: readonly IToken[]): LineRead {
  const commas = tokens.flatMap((token, index) => (token.tokenType === t.Comma ? [index] : []));
  const head = tokens.slice(0, commas[0] ?? tokens.length);
  let words = head.length;
  let seconds: number | undefined;
  let celsius: number | undefined;
  const problems: SyntaxProblem[] = [];
  const tail = head[words - 1];
  const temperature = tail === undefined ? undefined : t.quantityOf(tail);
  if (temperature?.kind === 'temperature') {
    celsius = temperature.celsius;
    words -= head[words - 2]?.tokenType === t.At ? 2 : 1;
  }
  const before = head[words - 1];
  const duration = before === undefined ? undefined : t.quantityOf(before);
  if (duration?.kind === 'duration') {
    seconds = duration.seconds;
    words -= head[words - 2]?.tokenType === t.For ? 2 : 1;
  } else if (duration?.kind === 'range') {
    const span = { start: duration.start, end: duration.end };
    const fixes = [
      replaceFix(`Write ${duration.low}`, span, duration.low),
      replaceFix(`Write ${duration.high}`, span, duration.high),
    ];
    problems.push(
      problem(
        'range',
        `“${before!.image}” is a range; one value is needed. Choose one end and keep the other in a remark.`,
        span,
        ...fixes,
      ),
    );
    words -= 1;
  } else if (duration?.kind === 'bare' && celsius === undefined && words > 1) {
    const span = { start: duration.start, end: duration.end };
    const known = (stepWords as readonly string[]).includes(head[0]!.image.toLowerCase());
    if (known && words === 2) {
      const fixes = [' min', ' h'].map((unit, index) =>
        insertFix(`Write ${duration.number}${unit}`, duration.end, unit, index === 0),
      );
      problems.push(
        problem(
          'missing-unit',
          `“${duration.number}” of what? Write a unit: ${duration.number} min`,
          span,
          ...fixes,
        ),
      );
      words -= 1;
    }
  }
  const name = nameOf(line, head.slice(0, words));
  if (name === undefined) {
    const at = tokens[0]!;
    const span = { start: at.startOffset, end: t.endOf(at) };
    return {
      statement: { kind: 'unreadable' },
      problems: [problem('missing-name', 'What is done? A step starts with its word: rest 15 min', span)],
    };
  }
  const first = head[0]!.image.toLowerCase();
  const statement: StepStatement = {
    kind: 'step',
    words: name,
    foldSeconds: foldTimes(tokens.slice(commas[0] ?? tokens.length)),
    remarks: remarksOf(line, tokens, commas),
    ...((stepWords as readonly string[]).includes(first) ? { known: first } : {}),
    ...(seconds === undefined ? {} : { seconds }),
    ...(celsius === undefined ? {} : { celsius }),
  };
  return { statement, problems };
}

function remarksOf(line: string, tokens: readonly IToken[], commas: readonly number[]): string[] {
  return commas.flatMap((comma, index) => {
    const part = tokens.slice(comma + 1, commas[index + 1] ?? tokens.length);
    const [first, last] = [part[0], part[part.length - 1]];
    return first === undefined || last === undefined
      ? []
      : [nameBetween(line, first.startOffset, t.endOf(last)).text];
  });
}

/** Every time in a remark that speaks of folding: `fold at 45 min and 90 min`. */
function foldTimes(tokens: readonly IToken[]): number[] {
  const times: number[] = [];
  let folding = false;
  for (const token of tokens) {
    const word = token.image.toLowerCase();
    if (word === 'fold' || word === 'folds') folding = true;
    const quantity = t.quantityOf(token);
    if (folding && quantity?.kind === 'duration') times.push(quantity.seconds);
  }
  return times;
}
