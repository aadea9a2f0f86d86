import type { IToken } from 'chevrotain';
import { elementAt, firstOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { coldWithoutDegrees, overnight } from './cold-step.ts';
import { type FoldsAlone, ofFolding, readFoldsAlone, readFoldTimes } from './fold-times.ts';
import { type KnownStep, knownStep, secondStep } from './known-step.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { problem, replaceFix } from './problem.ts';
import { secondStepInRemarks, secondsOfRemarks, secondTime, secondTimeInRemarks } from './second-time.ts';
import { withSpelledTimes } from './spelled-times.ts';
import { isAlone, readStepHead, type StepHead } from './step-head.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { LineRead, StepStatement } from './tree.ts';

/**
 * Reads a step of a process: words, a time, a temperature, then remarks after commas, all but the words optional. What else
 * stands before the first comma is a remark too. A remark may say when to fold.
 */
export function readStep(line: string, written: readonly IToken[]): LineRead {
  const spelled = withSpelledTimes(line, written);
  const tokens = asUsual(spelled.tokens);
  const all = tokens.flatMap((token, index) => (token.tokenType === t.Comma ? [index] : []));
  const { head, commas } = headOf(tokens, all);
  const remarked = tokens.slice(commas[0] ?? tokens.length);
  const alone = knownStep(head)?.step === 'fold' ? readFoldsAlone(head) : undefined;
  if (alone !== undefined) {
    const folded = foldsAlone(line, head, remarked, alone);
    return spelled.problem === undefined ? folded : { ...folded, problems: [spelled.problem] };
  }
  const first = readStepHead(head);
  const inRemarks =
    first.seconds === undefined && first.problems.length === 0 ? secondsOfRemarks(tokens) : undefined;
  const read = inRemarks === undefined ? first : { ...first, seconds: inRemarks };
  const name = nameOf(line, head.slice(0, read.words));
  if (name === undefined) {
    return { statement: { kind: 'unreadable' }, problems: [stepWithoutWord(line, tokens, read)] };
  }
  const known = knownStep(head);
  const asides = read.asides.map((run) => run.map((index) => elementAt(head, index)));
  // A double fold of a laminated dough is none of the times at which a bulk is folded.
  const folding = known?.step === 'sheet' ? [] : [...foldWords(head, asides.flat(), known), ...remarked];
  const folds = readFoldTimes(folding, read.seconds);
  const cold = read.celsius === undefined ? coldWithoutDegrees(head, known) : undefined;
  const celsius = cold === undefined ? read.celsius : cold.celsius;
  const statement: StepStatement = {
    kind: 'step',
    words: name,
    foldSeconds: folds.seconds,
    remarks: [...asides.map((run) => wordsOf(line, run)), ...remarksOf(line, tokens, commas)],
    ...(known === undefined ? {} : { known: known.step }),
    ...(read.seconds === undefined ? {} : { seconds: read.seconds }),
    ...(celsius === undefined ? {} : { celsius }),
  };
  const problems = spelled.problem === undefined ? [] : [spelled.problem];
  problems.push(...lostOf(tokens, head, first, known), ...read.problems, ...folds.problems);
  if (cold !== undefined) problems.push(cold.problem);
  const night = read.seconds === undefined ? overnight(tokens, read.celsius) : undefined;
  if (night !== undefined) problems.push(night);
  return { statement, problems: problems.slice(0, 1).map((one) => indentedAs(line, one)) };
}

/** The coolest oven and the warmest cold store, in degrees Celsius. Common practice, no source. */
const [coolestOven, warmestStore] = [120, 10];

/** `24 h at 4 °C`: a time and a temperature, and not what is done; what it is most likely is told and written by no fix of a whole file. */
function stepWithoutWord(
  line: string,
  tokens: readonly IToken[],
  { seconds, celsius }: StepHead,
): SyntaxProblem {
  const first = firstOf(tokens);
  const span = { start: first.startOffset, end: t.endOf(first) };
  if (seconds === undefined) return problem('missing-name', message('missing-name.step'), span);
  const isBaked = celsius !== undefined && celsius >= coolestOven;
  const isCold = celsius !== undefined && celsius <= warmestStore;
  const words = isBaked ? ['bake'] : isCold ? ['retard'] : ['rest', 'bulk', 'proof'];
  const text = line.slice(first.startOffset, t.endOf(elementAt(tokens, tokens.length - 1)));
  const fixes = words.map((word) =>
    replaceFix(
      message('fix.write', { meant: `${word} ${text}` }),
      { start: span.start, end: span.start },
      `${word} `,
    ),
  );
  return problem(
    'missing-name',
    message('missing-name.step-of', { example: `${words[0]} ${text}` }),
    span,
    ...fixes,
  );
}

/** A fix that begins a line begins it as far in as this one. */
function indentedAs(line: string, one: SyntaxProblem): SyntaxProblem {
  const [blanks = ''] = /^[ \t]*/.exec(line) ?? [];
  if (blanks === '' || blanks === '  ') return one;
  const fixes = one.fixes.map((fix) => ({
    ...fix,
    edits: fix.edits.map((edit) => ({ ...edit, insert: edit.insert.replace(/^\n {2}/, `\n${blanks}`) })),
  }));
  return { ...one, fixes };
}

/**
 * The tokens in the usual order and with the usual signs: a time before what is done stands behind it (`30 min proof`), a semicolon
 * is a comma, and a colon before a figure is none (`bench rest: 20 min`).
 */
function asUsual(written: readonly IToken[]): readonly IToken[] {
  const tokens = written
    .filter((token, at) => token.tokenType !== t.Colon || at === 0 || !isFigure(written[at + 1]))
    .map((token) => (token.image === ';' ? { ...token, tokenType: t.Comma } : token));
  const comma = tokens.findIndex((token) => token.tokenType === t.Comma);
  const [first, ...words] = comma < 0 ? tokens : tokens.slice(0, comma);
  const isFirst =
    first !== undefined && t.quantityOf(first)?.kind === 'duration' && knownStep(words) !== undefined;
  return isFirst ? [...words, first, ...(comma < 0 ? [] : tokens.slice(comma))] : tokens;
}

const isFigure = (token: IToken | undefined): boolean =>
  token !== undefined && (t.quantityOf(token) !== undefined || /^\d+h\d\d$/i.test(token.image));

/** A step that is folds and nothing else: of its own time, or of the step above. */
function foldsAlone(
  line: string,
  head: readonly IToken[],
  remarked: readonly IToken[],
  { words, seconds, foldSeconds, problems }: FoldsAlone,
): LineRead {
  const behind = [...head.slice(words), ...remarked];
  const statement: StepStatement = {
    kind: 'step',
    words: nameOf(line, head.slice(0, words)) ?? nameBetween(line, 0, 0),
    known: 'fold',
    foldSeconds,
    remarks: behind.length === 0 ? [] : [wordsOf(line, behind)],
    ...(seconds === undefined ? {} : { seconds }),
  };
  return { statement, problems };
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
  const { words, secondTime: second } = read;
  const other = secondStepInRemarks(tokens, words);
  if (other.length > 0) return other;
  if (folding > 0 && folding >= words)
    return secondTimeInRemarks(tokens, head, read, folding + ofFolding(tokens.slice(folding + 1)).length);
  if (second !== undefined) {
    const isWarm = second > words && t.quantityOf(elementAt(head, second - 1))?.kind === 'temperature';
    const from =
      isWarm && /^(?:[+&/]|then|and)$/i.test(elementAt(head, second - 2).image) ? second - 1 : second;
    return [secondTime(head, words, from, second)];
  }
  return secondTimeInRemarks(tokens, head, read);
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
