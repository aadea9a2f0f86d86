import type { MixingStage } from './development.ts';
import type { MixingOutcome } from './mixing.ts';
import { celsiusAt } from './mixing.ts';
import { celsiusInStep } from './mixing-course.ts';

/** What decides whether to mix on: the stages of mixing, those before developed as one. */
export const doughZones = ['not-yet', 'developed', 'let-down', 'breakdown'] as const;
export type DoughZone = (typeof doughZones)[number];

/** The zone that a stage belongs to. */
export function zoneOf(stage: MixingStage): DoughZone {
  return stage === 'developed' || stage === 'let-down' || stage === 'breakdown' ? stage : 'not-yet';
}

/**
 * The zone of the dough at a minute of its programme, as expected; past the end as if the last speed went on. Undefined where
 * nothing is known of its development.
 */
export function zoneAt(outcome: MixingOutcome, minutes: number): DoughZone | undefined {
  if (!outcome.development.known) return undefined;
  const isPast = (moment: MixingOutcome['developedAfter']): boolean =>
    moment.known && moment.value.expected <= minutes;
  if (isPast(outcome.breakdownAfter)) return 'breakdown';
  if (isPast(outcome.letDownAfter)) return 'let-down';
  return isPast(outcome.developedAfter) ? 'developed' : 'not-yet';
}

/**
 * The temperature of the dough at a minute of its programme, °C, past the end as if the last speed went on; undefined where it is
 * not known or would be hotter than any dough.
 */
export function celsiusGoingOn(outcome: MixingOutcome, minutes: number): number | undefined {
  const { programmeMinutes, goingOn } = outcome;
  if (minutes > programmeMinutes)
    return goingOn === undefined ? undefined : celsiusInStep(goingOn, minutes - programmeMinutes);
  const celsius = celsiusAt(outcome, minutes);
  return celsius.known ? celsius.value : undefined;
}
