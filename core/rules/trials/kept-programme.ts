import type { Analysis } from '../../analysis/analysis.ts';
import { doughMixOf } from '../../analysis/trial-programme.ts';
import { type TrialAnalysis, trialsOf } from '../../analysis/trials.ts';
import { findSpeed } from '../../calc/mixing/mixer.ts';
import { formulaOf, type MixModel, type TrialModel } from '../../model/formula-model.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import type { Said } from '../../model/properties.ts';
import type { Scope } from '../../model/scope.ts';
import { wholeOf } from '../../model/variant.ts';
import { parseFile } from '../../syntax/file.ts';
import { parseLine } from '../../syntax/line.ts';
import { printLine } from '../../syntax/print.ts';
import type { Block } from '../../syntax/tree.ts';
import { programmeWords } from '../../syntax/vocabulary.ts';
import { elementAt } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { message } from '../../words/message.ts';
import type { RuleContext, RuleEdit, RuleFinding, RuleFix } from '../engine/rule.ts';

/** Readings so little past the end of a programme are of its end, minutes. */
export const pastEndMinutes = 0.1;

/**
 * The formula’s programme as it is now, as a trial keeps it: where it is mixed (`mixer` where that is another, `by hand` for
 * hands), then its lines in canonical form. Empty where there is none, where a line is not finished, and where nobody knows the mixer.
 */
export function presentProgramme(analysis: Analysis, mixer?: string): readonly string[] {
  if (mixer !== undefined) return programmeOf(analysis, mixer);
  const before = known.get(analysis);
  if (before !== undefined) return before;
  const made = programmeOf(analysis);
  known.set(analysis, made);
  return made;
}

const known = new WeakMap<Analysis, readonly string[]>();

function programmeOf(analysis: Analysis, mixer?: string): readonly string[] {
  const mix = doughMixOf(analysis.resolved);
  if (mix?.mixer === undefined || !isFinished(mix.phases)) return [];
  const { block } = analysis.resolved.model;
  const { header } = elementAt(analysis.resolved.model.mixes, mix.index);
  const own = header.mixer ?? analysis.resolved.bakery.defaultMixer;
  const isByHand = mixer === undefined ? header.byHand === true || own === undefined : mixer === 'by hand';
  const where = isByHand ? '  mixed by hand' : mixedIn(mixer ?? own!.text);
  return [where, ...mix.phases.map((phase) => written(block, phase))];
}

/** A trial that keeps no programme although it read a thermometer at the mixer: its readings hang on a programme that may change. */
export function keepsNothing({ mix, readings }: TrialAnalysis): boolean {
  return mix.known && !mix.value.isKept && readings.length > 0;
}

/** Those of them that can have run the programme as it is now: all its readings lie within it, and its mixer has the speeds. */
export function trialsToKeep(analysis: Analysis, scope: Scope): readonly TrialModel[] {
  const mix = doughMixOf(analysis.resolved);
  if (mix === undefined || presentProgramme(analysis).length === 0) return [];
  return trialsOf(analysis, scope)
    .filter(keepsNothing)
    .filter(({ mix: ran, readings }) => {
      if (!ran.known || !hasSpeeds(ran.value.mixer, mix.phases)) return false;
      return readings.every(({ minutes }) => minutes <= ran.value.programmeMinutes + pastEndMinutes);
    })
    .map(({ model }) => model);
}

/** Lines to be written below a line of the block. */
export interface Written {
  readonly below: number;
  readonly lines: readonly string[];
}

/** What to write so that these trials keep the programme as it is now. A trial that says its mixer keeps that word. */
export function programmeInto(analysis: Analysis, trials: readonly TrialModel[]): Written[] {
  const lines = presentProgramme(analysis);
  if (lines.length === 0) return [];
  return trials.map((trial) => {
    const saysMixer = trial.said.has('mixed') || trial.said.has('mixer');
    return { below: lastCondition(trial), lines: saysMixer ? lines.slice(1) : lines };
  });
}

/** The same as edits of the block. */
export function programmeEdits(analysis: Analysis, trials: readonly TrialModel[]): RuleEdit[] {
  const { block } = analysis.resolved.model;
  return programmeInto(analysis, trials).map(({ below, lines }) => {
    const end = elementAt(block.lines, below).text.length;
    return { line: below, start: end, end, insert: lines.map((line) => `\n${line}`).join('') };
  });
}

/**
 * A finding whose fixes, where they change the programme that mixes the dough, first write it as it was into the trials that
 * were run on it and do not keep it. So no fix changes what a trial says.
 */
export function keepingTrials(context: RuleContext, finding: RuleFinding): RuleFinding {
  if (finding.fixes === undefined || finding.fixes.length === 0) return finding;
  return { ...finding, fixes: finding.fixes.map((fix) => keeping(context, fix)) };
}

function keeping({ analysis, block, scope }: RuleContext, fix: RuleFix): RuleFix {
  const mix = analysis === undefined ? undefined : doughMixOf(analysis.resolved);
  if (analysis === undefined || mix === undefined) return fix;
  const { headerLine, endLine } = elementAt(analysis.resolved.model.mixes, mix.index);
  const touches = fix.edits.some((edit) => edit.line < endLine && (edit.endLine ?? edit.line) >= headerLine);
  if (!touches) return fix;
  const trials = trialsToKeep(analysis, scope);
  if (trials.length === 0 || !changesProgramme(block, mix.index, fix.edits)) return fix;
  const count = trials.length;
  const title = message('kept-programme.title', { title: fix.title, count });
  return { ...fix, title, edits: [...fix.edits, ...programmeEdits(analysis, trials)] };
}

/** Whether edits change what is run: the mixer, the order, a time, a speed, what goes in. */
function changesProgramme(block: Block, index: number, edits: readonly RuleEdit[]): boolean {
  // Lines of a base stand in no order that could be read again; a programme written where there was none is another.
  if (wholeOf(block) !== undefined) return true;
  const after = parseFile(textAfter(block, edits)).blocks.find((one) => one.block.top?.kind === 'formula');
  const now = after === undefined ? undefined : formulaOf(after.block)?.mixes[index];
  const before = formulaOf(block)?.mixes[index];
  return before !== undefined && (now === undefined || whatRuns(before) !== whatRuns(now));
}

function textAfter({ lines }: Block, edits: readonly RuleEdit[]): string {
  const starts: number[] = [];
  let length = 0;
  for (const { text } of lines) {
    starts.push(length);
    length += text.length + 1;
  }
  const text = lines.map((line) => line.text).join('\n');
  return [...edits]
    .sort((one, other) => other.line - one.line || other.start - one.start)
    .reduce(
      (now, { line, endLine, start, end, insert }) =>
        now.slice(0, elementAt(starts, line) + start) +
        insert +
        now.slice(elementAt(starts, endLine ?? line) + end),
      text,
    );
}

function whatRuns({ header, phases }: MixModel): string {
  const said = [header.byHand, header.mixer?.folded, ...phases.map(({ statement }) => statement)];
  const isPlace = new Set(['start', 'end', 'keyword', 'valueSpan', 'text']);
  return JSON.stringify(said, (key, value: unknown) => (isPlace.has(key) ? undefined : value));
}

function isFinished(phases: readonly Said[]): boolean {
  return phases.length > 0 && phases.every(({ statement }) => statement.value !== undefined);
}

/** Whether a mixer can have run a programme: it has all its speeds, and hands have none. */
function hasSpeeds({ data }: Mixer, phases: readonly Said[]): boolean {
  return phases.every(({ statement: { value } }) => {
    if (value?.form !== 'mixSpeed') return true;
    return data.kind !== 'hand' && findSpeed(data, value.number).known;
  });
}

/** `mixed in NAME`, in quotes where the name would else be read as something other than a name. */
export function mixedIn(text: string): string {
  const plain = `  mixed in ${text}`;
  const { statement, problems } = parseLine(plain, { context: 'trial', afterBlank: false });
  const value = statement.kind === 'property' ? statement.value : undefined;
  const isRead = value?.form === 'mixedIn' && value.name?.folded === foldName(text);
  return problems.length === 0 && isRead ? plain : `  mixed in "${text.replaceAll('"', '')}"`;
}

function written(block: Block, { line, statement: { keyword, valueSpan } }: Said): string {
  const text = `  ${elementAt(block.lines, line).text.slice(keyword.start, valueSpan.end)}`;
  return printLine(parseLine(text, { context: 'trial', afterBlank: false }), 'trial');
}

/** The lines of a trial that come before its readings: what the day was like, and what was run. */
const conditions: ReadonlySet<string> = new Set([
  ...['room', 'flour', 'water', 'part temperature', 'mixer', 'mixed'],
  ...programmeWords,
]);

/** Whether a line of a trial comes before its readings. */
export function isCondition({ statement }: Said): boolean {
  return conditions.has(statement.property);
}

/** The last line that tells of the day, of those above the first reading; the header where none does. */
function lastCondition({ said, headerLine }: TrialModel): number {
  const all = [...said.values()].flat().sort((one, other) => one.line - other.line);
  const first = all.findIndex(({ statement }) => statement.property === 'at' || statement.property === 'end');
  return all.slice(0, Math.max(0, first)).findLast(isCondition)?.line ?? headerLine;
}
