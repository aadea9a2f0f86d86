import type { Analysis } from '../../analysis/analysis.ts';
import { type FermentationStep, fermentationTimeline } from '../../facts/fermentation-timeline.ts';
import type { FormulaModel } from '../../model/formula-model.ts';
import { type Message, message } from '../../words/message.ts';
import { heldOf } from './part-times.ts';

/** Between these germs grow; local food law says it more narrowly. The caution is ours, from common practice. */
const cold = 5;
const hot = 60;
const longSeconds = 2 * 60 * 60;

/** What stands long and warm with egg or milk in it: the dough up to the oven, and each part by itself. */
export function standingCautions(analysis: Analysis): Message[] {
  const { resolved, solved } = analysis;
  if (solved === undefined) return [];
  const { model } = resolved;
  const inDough = perishable(solved.overall);
  const dough = inDough.length === 0 ? undefined : stood(doughStretches(analysis));
  const parts = model.sections.slice(1).flatMap((section) => {
    const lines = solved.sections.find(({ id }) => id === section.id)?.lines ?? [];
    const room = resolved.bakery.roomCelsius;
    const steps = model.processes
      .filter(({ header }) => header.part !== undefined && header.part.folded === section.name?.folded)
      .flatMap((process) => process.steps.map(({ step }) => step));
    const stretches = [
      ...heldOf(section).map((one) => ({ ...one, celsius: one.celsius ?? room })),
      ...beforeHeat(steps, (step) => step.known).map(({ words, seconds, celsius }) => {
        return { words: asWritten(words.text), seconds: seconds ?? 0, celsius: celsius ?? room };
      }),
    ].filter(({ celsius }) => isWarm(celsius));
    const held = perishable(lines);
    const found = held.length === 0 ? undefined : stood(stretches);
    if (found === undefined) return [];
    const part = section.name?.text ?? section.kind;
    return [message('caution.part-stands', { part, names: held, ...found })];
  });
  return [
    ...(dough === undefined ? [] : [message('caution.dough-stands', { names: inDough, ...dough })]),
    ...parts,
  ];
}

interface Stretch {
  readonly words: Message;
  readonly seconds: number;
}

function asWritten(written: string): Message {
  return message('caution.step', { written });
}

function perishable(lines: readonly { readonly name: string; readonly role: string }[]): string[] {
  return lines.filter(({ role }) => role === 'egg' || role === 'dairy').map(({ name }) => name);
}

/** The stretches together, where they come to long enough. */
function stood(stretches: readonly Stretch[]): StoodFor | undefined {
  const seconds = stretches.reduce((sum, one) => sum + one.seconds, 0);
  if (seconds < longSeconds - 1) return undefined;
  const facts = stretches.filter(
    ({ words }, index) => stretches.findIndex((one) => isSame(one.words, words)) === index,
  );
  return { seconds, celsius: cold, limitCelsius: hot, facts: facts.map(({ words }) => words) };
}

interface StoodFor {
  readonly seconds: number;
  /** Between these germs grow, °C. */
  readonly celsius: number;
  readonly limitCelsius: number;
  readonly facts: readonly Message[];
}

function isSame(one: Message, other: Message): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** The dough's own temperature counts where it is known: a piece in the cold is warm for a while. */
function doughStretches(analysis: Analysis): Stretch[] {
  const { model, bakery } = analysis.resolved;
  const known = fermentationTimeline(analysis)?.steps ?? [];
  return beforeHeat(doughSteps(model), ({ step }) => step.known).flatMap(({ line, step }) => {
    const dough = known.find((one) => one.line === line);
    const seconds =
      dough === undefined
        ? isWarm(step.celsius ?? bakery.roomCelsius)
          ? (step.seconds ?? 0)
          : 0
        : warmSeconds(dough);
    return seconds > 0 ? [{ words: asWritten(step.words.text), seconds }] : [];
  });
}

function doughSteps(model: FormulaModel) {
  return model.processes
    .filter(({ header }) => header.part === undefined || header.part.folded === model.name.folded)
    .flatMap((process) => process.steps);
}

function beforeHeat<T>(steps: readonly T[], knownOf: (step: T) => string | undefined): readonly T[] {
  const heat = steps.findIndex((step) => ['bake', 'boil'].includes(knownOf(step) ?? ''));
  return heat < 0 ? steps : steps.slice(0, heat);
}

function warmSeconds({ points }: FermentationStep): number {
  return points.reduce((sum, right, index) => {
    const left = points[index - 1];
    if (left === undefined || !isWarm((left.celsius + right.celsius) / 2)) return sum;
    return sum + (right.minutes - left.minutes) * 60;
  }, 0);
}

function isWarm(celsius: number): boolean {
  return celsius > cold && celsius < hot;
}
