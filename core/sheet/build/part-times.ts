import type { Analysis } from '../../analysis/analysis.ts';
import type { FormulaModel, ProcessModel, SectionModel } from '../../model/formula-model.ts';
import { saidValue } from '../../model/properties.ts';
import { type Message, message } from '../../words/message.ts';

/** Seconds of the programme that mixes a part, or the dough where no part is named; nothing where there is none. */
export function programmeSeconds(analysis: Analysis, sectionId: string | undefined): number {
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

export function doughSteps(model: FormulaModel): ProcessModel['steps'][number][] {
  return model.processes.filter(({ header }) => isDough(model, header.part?.folded)).flatMap((p) => p.steps);
}

function isDough(model: FormulaModel, part: string | undefined): boolean {
  return part === undefined || part === model.name.folded;
}

/** When each part is begun so that it is done when something takes it, seconds from the start of mixing, by its id. */
export function startsOfParts(analysis: Analysis): ReadonlyMap<string, number> {
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
  for (const section of sections) startOf(section, []);
  return starts;
}

export function partSteps(model: FormulaModel, section: SectionModel): ProcessModel['steps'][number][] {
  return model.processes
    .filter(({ header }) => header.part !== undefined && header.part.folded === section.name?.folded)
    .flatMap((process) => process.steps);
}

export function heldSeconds(section: SectionModel): number {
  return heldOf(section).reduce((sum, one) => sum + one.seconds, 0);
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
export function leadSeconds(analysis: Analysis, section: SectionModel): number {
  const steps = partSteps(analysis.resolved.model, section);
  return (
    programmeSeconds(analysis, section.id) +
    heldSeconds(section) +
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
