import type { IToken } from 'chevrotain';
import { elementAt, firstOf } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { knownStep } from './known-step.ts';
import { groupedProblem, rangeProblem } from './number-problems.ts';
import { problem, unitFixes, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import { units } from './units.ts';

/** What stands before the first comma of a step, by what it says. */
export interface StepHead {
  /** How many tokens are the words of the step: all before its time and temperature. */
  readonly words: number;
  readonly seconds?: number;
  readonly celsius?: number;
  /** What stands between time and temperature and behind both, `in the fridge`, `falling to 210 °C`: indices, in runs. */
  readonly asides: readonly (readonly number[])[];
  /** The first token of a second time, which is no part of the first. */
  readonly secondTime?: number;
  readonly problems: readonly SyntaxProblem[];
}

/** A time behind one of these is a part of the step or counted within it. */
const withinStep: ReadonlySet<string> = new Set(
  'for after before first last every each within until till in of at from about'.split(' '),
);

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

type Measure = 'time' | 'temperature';
/** What each token, by its index, was taken for. */
type Taken = ReadonlyMap<number, Measure>;

/**
 * Time and temperature of a step, wherever they stand: `bake 45 min at 230 °C`, `bake at 230 °C for 45 min`, `proof 1 h in the
 * fridge`. The first of each counts. One that cannot be read is told, and left out.
 */
export function readStepHead(head: readonly IToken[]): StepHead {
  const taken = new Map<number, Measure>();
  const has = (measure: Measure): boolean => [...taken.values()].includes(measure);
  const problems: SyntaxProblem[] = [];
  const read: { seconds?: number; celsius?: number; secondTime?: number } = {};
  for (const [at, token] of head.entries()) {
    const measure = measureOf(token);
    const before = head[at - 1]?.image ?? '';
    if (measure === 'time' && /^(?:every|each)$/i.test(before)) continue;
    // `bake to 96 °C core` is no oven.
    if (measure === 'temperature' && /^(?:core|internal|inside)$/i.test(head[at + 1]?.image ?? '')) continue;
    const bare = measure === undefined && at > 0 ? bareNumber(head, at, taken) : undefined;
    if (bare !== undefined) {
      // It goes on with the time before it, which is then not known either.
      if (bare.measure === 'time') delete read.seconds;
      taken.set(at, bare.measure);
      problems.push(bare.problem);
      if (bare.problem.code === 'range') taken.set(at + 1, 'time').set(at + 2, 'time');
    } else if (measure !== undefined && !has(measure)) {
      taken.set(at, measure);
      const quantity = t.quantityOf(token);
      if (quantity?.kind === 'duration') read.seconds = quantity.seconds;
      else if (quantity?.kind === 'temperature') read.celsius = quantity.celsius;
      else problems.push(...unreadable(token));
    } else if (measure === 'time' && !taken.has(at) && !withinStep.has(before.toLowerCase())) {
      read.secondTime ??= at;
    }
  }
  return { ...layOut(head, taken), ...read, problems };
}

/** Whether a part between commas is but a time or a temperature, `24 °C`, `for 3 h`, and `head` has none. */
export function isAlone(part: readonly IToken[], head: readonly IToken[]): boolean {
  const [first, second] = part;
  const isLed = first?.tokenType === t.At || first?.tokenType === t.For;
  if (part.length !== (isLed ? 2 : 1)) return false;
  const token = isLed ? second : first;
  const measure = token === undefined ? undefined : measureOf(token);
  return measure !== undefined && !head.some((one) => measureOf(one) === measure);
}

/** Words before what was taken, and runs of what was not. */
function layOut(head: readonly IToken[], taken: Taken): Pick<StepHead, 'words' | 'asides'> {
  const used = new Set(taken.keys());
  for (const at of taken.keys()) {
    const type = head[at - 1]?.tokenType;
    if (type === t.At || type === t.For) used.add(at - 1);
  }
  const words = used.size === 0 ? head.length : Math.min(...used);
  const asides: number[][] = [];
  for (let at = words; at < head.length; at++) {
    if (used.has(at)) continue;
    if (at === words || used.has(at - 1)) asides.push([]);
    asides[asides.length - 1]?.push(at);
  }
  return { words, asides };
}

const runTogether = /^(\d+)h([0-5]\d)$/i;
/** `40'`: minutes, as they are written on a card. */
const stroked = /^(\d+)['’]$/;

/** Whether a token is a time or a temperature, or would be one if it were written in one way. */
function measureOf(token: IToken): Measure | undefined {
  if (runTogether.test(token.image) || stroked.test(token.image)) return 'time';
  const quantity = t.quantityOf(token);
  if (quantity === undefined) return undefined;
  if (quantity.kind === 'duration') return 'time';
  if (quantity.kind === 'temperature') return 'temperature';
  if (quantity.kind !== 'range' && quantity.kind !== 'grouped') return undefined;
  const measure = units.get(quantity.unit)?.measure;
  if (measure === 'duration') return 'time';
  return measure === 'temperature' ? 'temperature' : undefined;
}

/** `1h30`, a range, or a number in groups of three where a time or a temperature should stand. */
function unreadable(token: IToken): readonly SyntaxProblem[] {
  const clocked = runTogether.exec(token.image);
  if (clocked !== null) return [hoursAndMinutes(token, clocked)];
  const minutes = stroked.exec(token.image)?.[1];
  if (minutes !== undefined) {
    const span = { start: token.startOffset, end: t.endOf(token) };
    const meant = `${minutes} min`;
    const said = message('missing-unit.minutes', { written: token.image, meant });
    return [problem('missing-unit', said, span, writeFix(span, meant, true))];
  }
  const quantity = t.quantityOf(token);
  if (quantity?.kind === 'range') return [rangeProblem(quantity, token.image)];
  return quantity?.kind === 'grouped' ? [groupedProblem(quantity, token.image)] : [];
}

interface BareNumber {
  readonly measure: Measure;
  readonly problem: SyntaxProblem;
}

/** A number that has lost its unit, where a time or a temperature should stand; behind another word it may be anything. */
function bareNumber(head: readonly IToken[], at: number, taken: Taken): BareNumber | undefined {
  const [before, token, next] = [elementAt(head, at - 1), elementAt(head, at), head[at + 1]];
  const quantity = t.quantityOf(token);
  if (quantity?.kind === 'clock') return clockedTime(head, at, taken);
  if (quantity?.kind !== 'bare') return undefined;
  const wanting = (measure: Measure, ...choices: string[]): BareNumber => ({
    measure,
    problem: missingUnit(quantity.number, quantity, choices),
  });
  const warm = (): BareNumber => {
    const { units, preferred } = degreesOf(quantity.value, knownStep(head)?.step);
    return { measure: 'temperature', problem: missingUnit(quantity.number, quantity, units, preferred) };
  };
  if (taken.get(at - 1) === 'time' && next?.tokenType !== t.For) return wanting('time', 'min', 's');
  // `with folds at 30, 60 and 90 min`
  if (head.slice(0, at).some(({ image }) => /^fold(?:s|ed|ing)?$/i.test(image))) return undefined;
  const measures = [...taken.values()];
  const isTimed = timed.has(firstOf(head).image.toLowerCase());
  if (before.tokenType === t.At && !measures.includes('temperature') && (isTimed || next === undefined))
    return warm();
  if (measures.includes('time') || !isTimed) return undefined;
  const behind = head[at + 2];
  if (next !== undefined && /^(?:to|or)$/i.test(next.image) && behind !== undefined && isDuration(behind))
    return { measure: 'time', problem: wordedRange(token, next, behind) };
  if (at !== 1 && !(at === 2 && before.tokenType === t.For)) return undefined;
  const isLast = next === undefined || next.tokenType === t.At || taken.has(at + 1);
  return isLast || t.quantityOf(next)?.kind === 'temperature' ? wanting('time', 'min', 'h') : undefined;
}

/** `bulk 3:30`: hours and minutes as on a clock, behind a step that is told by its time. */
function clockedTime(head: readonly IToken[], at: number, taken: Taken): BareNumber | undefined {
  const token = elementAt(head, at);
  const [hours, minutes] = token.image.split(':').map(Number);
  const isBehind = at === 1 || (at === 2 && head[1]?.tokenType === t.For);
  const isTimed =
    timed.has(firstOf(head).image.toLowerCase()) && [...taken.values()].every((one) => one !== 'time');
  if (!isBehind || !isTimed || hours === undefined || hours > 12) return undefined;
  const span = { start: token.startOffset, end: t.endOf(token) };
  const meant = `${hours} h ${minutes} min`;
  const said = message('missing-unit.minutes', { written: token.image, meant });
  return { measure: 'time', problem: problem('missing-unit', said, span, writeFix(span, meant)) };
}

function isDuration(token: IToken): boolean {
  return t.quantityOf(token)?.kind === 'duration';
}

/** `45 to 55 min`: a range in words. */
function wordedRange(low: IToken, joint: IToken, high: IToken): SyntaxProblem {
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

/** In which degrees a step is more likely meant, first, and whether that is plain. Common practice, no source. */
function degreesOf(
  value: number,
  step: string | undefined,
): { readonly units: readonly string[]; readonly preferred: number } {
  const [warmest, coolest] = step === undefined ? [45, 45] : (degrees[step] ?? [45, 50]);
  const isFahrenheit = value >= coolest;
  return {
    units: isFahrenheit ? ['°F', '°C'] : ['°C', '°F'],
    preferred: value <= warmest || (isFahrenheit && step !== 'bake') ? 0 : -1,
  };
}

/** The warmest in degrees Celsius, and the coolest in degrees Fahrenheit: an oven at 350 may be either, for pizza is baked at 430 °C. */
const degrees: Readonly<Record<string, readonly [celsius: number, fahrenheit: number]>> = {
  bake: [290, 291],
  boil: [105, 180],
  retard: [15, 28],
};

function missingUnit(number: string, span: Span, wanted: readonly string[], preferred = 0): SyntaxProblem {
  const units = wanted.map((unit) => ` ${unit}`);
  const fixes = unitFixes(number, units, span, preferred);
  const said = message('missing-unit.other', { written: number, example: `${number}${units[0]}` });
  return problem('missing-unit', said, { start: span.start, end: span.end }, ...fixes);
}
