import type { Analysis } from '../../analysis/analysis.ts';
import type { SectionModel } from '../../model/formula-model.ts';
import type { StepStatement } from '../../syntax/tree.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { type ClockOf, clockOf, type SheetClock } from './clock.ts';
import {
  doughSteps,
  heldOf,
  heldSeconds,
  leadSeconds,
  partSteps,
  programmeSeconds,
  startsOfParts,
} from './part-times.ts';
import type { ClockRequest } from './sheet-options.ts';

/** All moments of the work in the order of time, with clock times where a clock was asked for. */
export interface WorkTimeline {
  readonly asked?: ClockRequest;
  readonly moments: readonly TimelineMoment[];
  /** When the last step of the last batch ends, seconds from the start of mixing. */
  readonly endSeconds: number;
  readonly readyClock?: SheetClock;
  /** What the times leave out: steps no time is written for, further batches. */
  readonly notes: readonly string[];
}

export interface TimelineMoment {
  readonly kind: 'before' | 'mix' | 'step' | 'fold' | 'ready';
  readonly line: number;
  /** Names it in every language and whatever its time: the part, the words of the step. */
  readonly name: string;
  readonly text: string;
  /** The same without how long it lasts, where that is told beside it. */
  readonly brief?: string;
  /** From the start of the first mixing; below nothing for what is made before. */
  readonly startSeconds: number;
  readonly seconds?: number;
  readonly celsius?: number;
  readonly clock?: SheetClock;
  /** A step of a part, within the time that its `before` takes. */
  readonly ofPart?: true;
}

/** The timeline as it is shown, and its clock for whatever else has a time. */
export interface Timeline {
  readonly view: WorkTimeline;
  readonly clock: ClockOf | undefined;
  /** When each part is begun, seconds from the start of mixing, by the line of its header in the file. */
  readonly partStarts: ReadonlyMap<number, number>;
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
  const partStarts = startsOfParts(analysis);
  const moments: TimelineMoment[] = [
    ...beforeMoments(analysis, partStarts, firstLine, speaker),
    ...mixMoments(analysis, batches, mixSeconds, firstLine, speaker),
    ...after.moments,
  ];
  if (batches > 1 && mixSeconds > 0)
    notes.push(message('sheet.further-batches', { count: batches, seconds: mixSeconds }));
  if (firstSteps.length > 0)
    moments.push({
      kind: 'ready',
      line: firstLine,
      name: 'ready',
      text: speaker.say(message('moment.ready')),
      startSeconds: endSeconds,
    });
  moments.sort((one, other) => one.startSeconds - other.startSeconds);
  const inFile = new Map(
    analysis.resolved.model.sections.map(({ id, headerLine }) => [
      firstLine + headerLine,
      partStarts.get(id) ?? 0,
    ]),
  );
  const said = notes.map(speaker.say);
  const clock = clockOf(asked, endSeconds, speaker);
  if (clock === undefined || asked === undefined)
    return { view: { moments, endSeconds, notes: said }, clock: undefined, partStarts: inFile };
  const clocked = moments.map((one) => ({ ...one, clock: clock(one.startSeconds) }));
  const view = { asked, moments: clocked, endSeconds, readyClock: clock(endSeconds), notes: said };
  return { view, clock, partStarts: inFile };
}

/** A step as it is read aloud: `bulk 1 h 30 min at 25 °C, fold at 45 min`. */
export function stepText(step: StepStatement, speaker: Speaker): string {
  return [standing(step, speaker), ...step.remarks].join(', ');
}

/** A step whose time is told beside it: `bulk at 25 °C, fold at 45 min`. */
function briefText({ seconds: _, ...step }: StepStatement, speaker: Speaker): string {
  return stepText(step, speaker);
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

function stepMoments(
  steps: readonly { readonly line: number; readonly step: StepStatement }[],
  startSeconds: number,
  firstLine: number,
  notes: Message[],
  speaker: Speaker,
): { readonly moments: TimelineMoment[]; readonly endSeconds: number } {
  const moments: TimelineMoment[] = [];
  const untimed: string[] = [];
  let now = startSeconds;
  for (const { line, step } of steps) {
    const at = firstLine + line;
    moments.push({
      kind: 'step',
      line: at,
      name: step.words.text,
      text: stepText(step, speaker),
      startSeconds: now,
      ...(step.seconds === undefined ? {} : { seconds: step.seconds, brief: briefText(step, speaker) }),
      ...(step.celsius === undefined ? {} : { celsius: step.celsius }),
    });
    for (const fold of step.foldSeconds)
      moments.push({
        kind: 'fold',
        line: at,
        name: `${step.words.text}/fold`,
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
): TimelineMoment[] {
  const dough = analysis.resolved.input.sections[0]!.id;
  const mix = analysis.resolved.mixes.find((one) => one.sectionId === dough);
  const line = firstLine + (mix === undefined ? 0 : analysis.resolved.model.mixes[mix.index]!.headerLine);
  return Array.from({ length: batches }, (_, index): TimelineMoment => {
    const said =
      batches === 1
        ? message('moment.mix')
        : message('moment.mix-batch', { number: index + 1, count: batches });
    const text = speaker.say(said);
    const seconds = mixSeconds > 0 ? { seconds: mixSeconds } : {};
    return { kind: 'mix', line, name: 'mix', text, startSeconds: index * mixSeconds, ...seconds };
  });
}

/** Parts that are made before. */
function beforeMoments(
  analysis: Analysis,
  starts: ReadonlyMap<string, number>,
  firstLine: number,
  speaker: Speaker,
): TimelineMoment[] {
  return analysis.resolved.model.sections.slice(1).flatMap((section): TimelineMoment[] => {
    const startSeconds = starts.get(section.id) ?? 0;
    const seconds = leadSeconds(analysis, section);
    const steps = partStepMoments(analysis, section, startSeconds, firstLine, speaker);
    if (seconds === 0) return steps;
    const held = heldOf(section);
    const celsius = held.find((one) => one.celsius !== undefined)?.celsius;
    const text = [section.name?.text ?? section.kind, ...held.map((one) => speaker.say(one.words))].join(
      ', ',
    );
    return [
      {
        kind: 'before',
        line: firstLine + section.headerLine,
        name: section.name?.text ?? section.kind,
        text,
        startSeconds,
        seconds,
        ...(celsius === undefined ? {} : { celsius }),
      },
      ...steps,
    ];
  });
}

/** The steps of a part, after it is mixed and has been held. */
function partStepMoments(
  analysis: Analysis,
  section: SectionModel,
  startSeconds: number,
  firstLine: number,
  speaker: Speaker,
): TimelineMoment[] {
  const name = section.name?.text ?? section.kind;
  const from = startSeconds + programmeSeconds(analysis, section.id) + heldSeconds(section);
  return stepMoments(partSteps(analysis.resolved.model, section), from, firstLine, [], speaker).moments.map(
    (moment): TimelineMoment => ({
      ...moment,
      name: `${name}/${moment.name}`,
      text: `${name}: ${moment.text}`,
      ofPart: true,
    }),
  );
}
