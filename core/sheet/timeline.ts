import type { Analysis } from '../analysis/analysis.ts';
import type { FormulaModel, ProcessModel, SectionModel } from '../model/formula-model.ts';
import { saidValue } from '../model/properties.ts';
import type { StepStatement } from '../syntax/tree.ts';
import { degrees, duration } from '../text/figures.ts';
import type { ClockRequest } from './asked.ts';
import { type ClockOf, clockOf } from './clock.ts';
import type { SheetMoment, SheetTimeline } from './view.ts';

/** The timeline as it is shown, and its clock for whatever else has a time. */
export interface Timeline {
  readonly view: SheetTimeline;
  readonly clock: ClockOf | undefined;
}

/**
 * All moments of the work in the order of time, counted in seconds from the start of the first mixing: what is made
 * before ends when it is needed, the batches are mixed one after another, the steps follow the last of them. Only times
 * that the file writes count; what lacks one is named in the notes.
 */
export function timelineOf(
  analysis: Analysis,
  batches: number,
  firstLine: number,
  asked: ClockRequest | undefined,
): Timeline {
  const { model } = analysis.resolved;
  const notes: string[] = [];
  const mixSeconds = programmeSeconds(analysis, undefined);
  const firstSteps = doughSteps(model);
  const after = stepMoments(firstSteps, mixSeconds, firstLine, notes);
  const later = (batches - 1) * mixSeconds;
  const endSeconds = after.endSeconds + later;
  const moments: SheetMoment[] = [
    ...beforeMoments(analysis, firstLine),
    ...mixMoments(analysis, batches, mixSeconds, firstLine),
    ...after.moments,
  ];
  if (batches > 1 && mixSeconds > 0)
    notes.push(
      `The steps are timed for the first of ${batches} batches; each further one follows ${duration(mixSeconds)} later at the soonest.`,
    );
  if (firstSteps.length > 0)
    moments.push({ kind: 'ready', line: firstLine, text: 'ready', startSeconds: endSeconds });
  moments.sort((one, other) => one.startSeconds - other.startSeconds);
  const clock = clockOf(asked, endSeconds);
  if (clock === undefined || asked === undefined)
    return { view: { moments, endSeconds, notes }, clock: undefined };
  const clocked = moments.map((one) => ({ ...one, clock: clock(one.startSeconds) }));
  return { view: { asked, moments: clocked, endSeconds, readyClock: clock(endSeconds), notes }, clock };
}

/** A step as it is read aloud: `bulk 1 h 30 min at 25 °C, fold at 45 min`. */
export function stepText(step: StepStatement): string {
  const parts = [step.words.text];
  if (step.seconds !== undefined) parts.push(duration(step.seconds));
  if (step.celsius !== undefined) parts.push(`at ${degrees(step.celsius)}`);
  return [parts.join(' '), ...step.remarks].join(', ');
}

/** Seconds of the programme that mixes a part, or the dough where no part is named; nothing where there is none. */
function programmeSeconds(analysis: Analysis, sectionId: string | undefined): number {
  const wanted = sectionId ?? analysis.resolved.input.sections[0]!.id;
  const mix = analysis.resolved.mixes.find((one) => one.sectionId === wanted);
  return mix === undefined ? 0 : secondsBefore(analysis, mix.index, undefined);
}

function secondsBefore(analysis: Analysis, mix: number, line: number | undefined): number {
  let seconds = 0;
  for (const phase of analysis.resolved.model.mixes[mix]?.phases ?? []) {
    if (line !== undefined && phase.line >= line) break;
    const value = phase.statement.value;
    if (value?.form === 'mixSpeed' || value?.form === 'duration') seconds += Math.max(0, value.seconds);
  }
  return seconds;
}

function doughSteps(model: FormulaModel): ProcessModel['steps'][number][] {
  return model.processes.filter(({ header }) => isDough(model, header.part?.folded)).flatMap((p) => p.steps);
}

function isDough(model: FormulaModel, part: string | undefined): boolean {
  return part === undefined || part === model.name.folded;
}

function stepMoments(
  steps: readonly { readonly line: number; readonly step: StepStatement }[],
  startSeconds: number,
  firstLine: number,
  notes: string[],
): { readonly moments: SheetMoment[]; readonly endSeconds: number } {
  const moments: SheetMoment[] = [];
  const untimed: string[] = [];
  let now = startSeconds;
  for (const { line, step } of steps) {
    const at = firstLine + line;
    moments.push({
      kind: 'step',
      line: at,
      text: stepText(step),
      startSeconds: now,
      ...(step.seconds === undefined ? {} : { seconds: step.seconds }),
      ...(step.celsius === undefined ? {} : { celsius: step.celsius }),
    });
    for (const fold of step.foldSeconds)
      moments.push({ kind: 'fold', line: at, text: 'fold', startSeconds: now + fold });
    if (step.seconds === undefined && step.known !== 'enclose') untimed.push(step.words.text);
    now += step.seconds ?? 0;
  }
  if (untimed.length > 0)
    notes.push(`No time is written for: ${[...new Set(untimed)].join(', ')}. Allow for it.`);
  return { moments, endSeconds: now };
}

function mixMoments(
  analysis: Analysis,
  batches: number,
  mixSeconds: number,
  firstLine: number,
): SheetMoment[] {
  const dough = analysis.resolved.input.sections[0]!.id;
  const mix = analysis.resolved.mixes.find((one) => one.sectionId === dough);
  const line = firstLine + (mix === undefined ? 0 : analysis.resolved.model.mixes[mix.index]!.headerLine);
  return Array.from({ length: batches }, (_, index): SheetMoment => {
    const text = batches === 1 ? 'mix' : `mix batch ${index + 1} of ${batches}`;
    const seconds = mixSeconds > 0 ? { seconds: mixSeconds } : {};
    return { kind: 'mix', line, text, startSeconds: index * mixSeconds, ...seconds };
  });
}

/** Parts that are made before, each so early that it is done when something takes it. */
function beforeMoments(analysis: Analysis, firstLine: number): SheetMoment[] {
  const sections = analysis.resolved.model.sections.slice(1);
  const starts = new Map<string, number>();
  const startOf = (section: SectionModel, path: readonly string[]): number => {
    const known = starts.get(section.id);
    if (known !== undefined) return known;
    const takers = sections.filter(
      (other) =>
        other !== section &&
        !path.includes(other.id) &&
        other.lines.some((line) => line.statement.name.folded === section.name?.folded),
    );
    const needed = Math.min(
      ...takers.map((taker) => startOf(taker, [...path, section.id])),
      ...neededAt(analysis, section),
    );
    const start = (Number.isFinite(needed) ? needed : 0) - leadSeconds(analysis, section);
    starts.set(section.id, start);
    return start;
  };
  return sections.flatMap((section): SheetMoment[] => {
    const startSeconds = startOf(section, []);
    const seconds = leadSeconds(analysis, section);
    if (seconds === 0) return [];
    const held = heldOf(section);
    const celsius = held.find((one) => one.celsius !== undefined)?.celsius;
    const text = [section.name?.text ?? section.kind, ...held.map((one) => one.text)].join(', ');
    return [
      {
        kind: 'before',
        line: firstLine + section.headerLine,
        text,
        startSeconds,
        seconds,
        ...(celsius === undefined ? {} : { celsius }),
      },
    ];
  });
}

/** When the dough takes a part: at the line that loads it, at the step that encloses it, else as mixing begins. */
function neededAt(analysis: Analysis, section: SectionModel): number[] {
  const { resolved } = analysis;
  const dough = resolved.input.sections[0]!.id;
  const mix = resolved.mixes.find((one) => one.sectionId === dough);
  const load = mix?.loads.find((one) => one.keys.includes(section.id));
  if (mix !== undefined && load !== undefined) return [secondsBefore(analysis, mix.index, load.line)];
  let now = programmeSeconds(analysis, undefined);
  for (const { step } of doughSteps(resolved.model)) {
    if (step.known === 'enclose' && step.words.folded === `enclose ${section.name?.folded}`) return [now];
    now += step.seconds ?? 0;
  }
  const isTaken = resolved.input.sections.some(
    (other) => other.id !== dough && other.lines.some((line) => line.key === section.id),
  );
  return isTaken ? [] : [0];
}

/** How long a part takes from its first touch until it is ready. */
function leadSeconds(analysis: Analysis, section: SectionModel): number {
  const { model } = analysis.resolved;
  const steps = model.processes
    .filter(({ header }) => header.part !== undefined && header.part.folded === section.name?.folded)
    .flatMap((process) => process.steps);
  return (
    programmeSeconds(analysis, section.id) +
    heldOf(section).reduce((sum, one) => sum + one.seconds, 0) +
    steps.reduce((sum, { step }) => sum + (step.seconds ?? 0), 0)
  );
}

/** What is written of a part's time, in the order in which it passes. */
export function heldOf(
  section: SectionModel,
): { readonly text: string; readonly seconds: number; readonly celsius?: number }[] {
  return ['soak', 'ferment', 'hold'].flatMap((word) => {
    const held = saidValue(section.said, word, 'duration');
    if (held === undefined) return [];
    const at = held.celsius === undefined ? '' : ` at ${degrees(held.celsius)}`;
    return [
      {
        text: `${word} ${duration(held.seconds)}${at}`,
        seconds: Math.max(0, held.seconds),
        ...(held.celsius === undefined ? {} : { celsius: held.celsius }),
      },
    ];
  });
}
