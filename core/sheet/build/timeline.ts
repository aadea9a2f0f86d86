import type { Analysis } from '../../analysis/analysis.ts';
import type { FormulaModel, ProcessModel, SectionModel } from '../../model/formula-model.ts';
import { saidValue } from '../../model/properties.ts';
import type { StepStatement } from '../../syntax/tree.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { type ClockOf, clockOf } from './clock.ts';
import type { ClockRequest } from './sheet-options.ts';
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
  speaker: Speaker,
): Timeline {
  const { model } = analysis.resolved;
  const notes: Message[] = [];
  const mixSeconds = programmeSeconds(analysis, undefined);
  const firstSteps = doughSteps(model);
  const after = stepMoments(firstSteps, mixSeconds, firstLine, notes, speaker);
  const later = (batches - 1) * mixSeconds;
  const endSeconds = after.endSeconds + later;
  const moments: SheetMoment[] = [
    ...beforeMoments(analysis, firstLine, speaker),
    ...mixMoments(analysis, batches, mixSeconds, firstLine, speaker),
    ...after.moments,
  ];
  if (batches > 1 && mixSeconds > 0)
    notes.push(message('sheet.further-batches', { count: batches, seconds: mixSeconds }));
  if (firstSteps.length > 0)
    moments.push({
      kind: 'ready',
      line: firstLine,
      text: speaker.say(message('moment.ready')),
      startSeconds: endSeconds,
    });
  moments.sort((one, other) => one.startSeconds - other.startSeconds);
  const said = notes.map(speaker.say);
  const clock = clockOf(asked, endSeconds, speaker);
  if (clock === undefined || asked === undefined)
    return { view: { moments, endSeconds, notes: said }, clock: undefined };
  const clocked = moments.map((one) => ({ ...one, clock: clock(one.startSeconds) }));
  return { view: { asked, moments: clocked, endSeconds, readyClock: clock(endSeconds), notes: said }, clock };
}

/** A step as it is read aloud: `bulk 1 h 30 min at 25 °C, fold at 45 min`. */
export function stepText(step: StepStatement, speaker: Speaker): string {
  return [standing(step, speaker), ...step.remarks].join(', ');
}

function standing({ words, seconds, celsius }: StepStatement, speaker: Speaker): string {
  const written = words.text;
  if (seconds === undefined)
    return celsius === undefined ? written : speaker.say(message('step.at', { written, celsius }));
  return speaker.say(
    celsius === undefined
      ? message('step.lasts', { written, seconds })
      : message('step.lasts-at', { written, seconds, celsius }),
  );
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
  notes: Message[],
  speaker: Speaker,
): { readonly moments: SheetMoment[]; readonly endSeconds: number } {
  const moments: SheetMoment[] = [];
  const untimed: string[] = [];
  let now = startSeconds;
  for (const { line, step } of steps) {
    const at = firstLine + line;
    moments.push({
      kind: 'step',
      line: at,
      text: stepText(step, speaker),
      startSeconds: now,
      ...(step.seconds === undefined ? {} : { seconds: step.seconds }),
      ...(step.celsius === undefined ? {} : { celsius: step.celsius }),
    });
    for (const fold of step.foldSeconds)
      moments.push({
        kind: 'fold',
        line: at,
        text: speaker.say(message('moment.fold')),
        startSeconds: now + fold,
      });
    if (step.seconds === undefined && step.known !== 'enclose') untimed.push(step.words.text);
    now += step.seconds ?? 0;
  }
  if (untimed.length > 0) notes.push(message('sheet.untimed', { names: [...new Set(untimed)] }));
  return { moments, endSeconds: now };
}

function mixMoments(
  analysis: Analysis,
  batches: number,
  mixSeconds: number,
  firstLine: number,
  speaker: Speaker,
): SheetMoment[] {
  const dough = analysis.resolved.input.sections[0]!.id;
  const mix = analysis.resolved.mixes.find((one) => one.sectionId === dough);
  const line = firstLine + (mix === undefined ? 0 : analysis.resolved.model.mixes[mix.index]!.headerLine);
  return Array.from({ length: batches }, (_, index): SheetMoment => {
    const said =
      batches === 1
        ? message('moment.mix')
        : message('moment.mix-batch', { number: index + 1, count: batches });
    const text = speaker.say(said);
    const seconds = mixSeconds > 0 ? { seconds: mixSeconds } : {};
    return { kind: 'mix', line, text, startSeconds: index * mixSeconds, ...seconds };
  });
}

/** Parts that are made before, each so early that it is done when something takes it. */
function beforeMoments(analysis: Analysis, firstLine: number, speaker: Speaker): SheetMoment[] {
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
    const text = [section.name?.text ?? section.kind, ...held.map((one) => speaker.say(one.words))].join(
      ', ',
    );
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
): { readonly words: Message; readonly seconds: number; readonly celsius?: number }[] {
  return (['soak', 'ferment', 'hold'] as const).flatMap((word) => {
    const held = saidValue(section.said, word, 'duration');
    if (held === undefined) return [];
    const { seconds, celsius } = held;
    return [
      {
        words:
          celsius === undefined
            ? message(`held.${word}`, { seconds })
            : message(`held.${word}-at`, { seconds, celsius }),
        seconds: Math.max(0, seconds),
        ...(celsius === undefined ? {} : { celsius }),
      },
    ];
  });
}
