import { phaseTimes } from '../calc/mixing/phase-times.ts';
import type { Handwork } from '../calc/plan/plan-job.ts';
import type { StepStatement } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';
import type { Analysis } from './analysis.ts';

/** Steps that hands do; during all others the dough stands or bakes by itself. */
const byHands: ReadonlySet<string> = new Set([
  'fold',
  'divide',
  'shape',
  'enclose',
  'sheet',
  'score',
  'boil',
]);

/** When somebody works at a dough, and the work that no time is written for. */
export interface DoughWork {
  readonly hands: readonly Handwork[];
  readonly untimed: readonly string[];
}

/** Whoever mixes stands at it while it is worked, and is free while it rests; steps that hands do take the time they state. */
export function workOf({ doughMix }: Analysis, steps: readonly StepStatement[]): DoughWork {
  const hands: Handwork[] = [];
  let now = 0;
  if (doughMix.known) {
    const { input, outcome } = doughMix.value;
    const times = phaseTimes(input.phases);
    for (const [index, phase] of input.phases.entries()) {
      const { startMinutes, endMinutes } = elementAt(times, index);
      if (phase.kind === 'rest' || !(endMinutes > startMinutes)) continue;
      const last = hands.at(-1);
      if (last !== undefined && startMinutes - (last.offset + last.minutes) < 1e-9)
        hands[hands.length - 1] = { ...last, minutes: endMinutes - last.offset };
      else hands.push({ offset: startMinutes, minutes: endMinutes - startMinutes, what: 'mix' });
    }
    now = outcome.programmeMinutes;
  }
  const untimed: string[] = [];
  for (const { known, words, seconds = 0, foldSeconds } of steps) {
    const isByHands = known !== undefined && byHands.has(known);
    const minutes = seconds / 60;
    if (isByHands && minutes > 0) hands.push({ offset: now, minutes, what: 'step', name: words.text });
    if (isByHands && !(minutes > 0)) untimed.push(words.text);
    if (foldSeconds.length > 0) untimed.push('fold');
    now += minutes;
  }
  return { hands, untimed: [...new Set(untimed)] };
}

/** The bake as the oven sees it; a key only where every step of it states time and temperature, for then two can be alike. */
export function bakeOf(bake: readonly StepStatement[]): {
  readonly bake?: string;
  readonly inCelsius?: number;
  readonly outCelsius?: number;
} {
  const hot = bake.filter(({ known }) => known === 'bake');
  const [first, last] = [hot[0], hot.at(-1)];
  const isWhole =
    hot.length > 0 && hot.every(({ seconds, celsius }) => seconds !== undefined && celsius !== undefined);
  return {
    ...(isWhole
      ? {
          bake: bake
            .map(({ known, seconds = 0, celsius, remarks }) =>
              [known, seconds, celsius, ...remarks].join(' '),
            )
            .join('; '),
        }
      : {}),
    ...(first?.celsius === undefined ? {} : { inCelsius: first.celsius }),
    ...(last?.celsius === undefined ? {} : { outCelsius: last.celsius }),
  };
}
