import type { MixingPhase } from './mixing-programme.ts';

/** When a phase of a programme begins and ends, minutes from the start of it. */
export interface PhaseTime {
  readonly startMinutes: number;
  readonly endMinutes: number;
}

/** When each phase begins and ends, in their order. A load takes no time, and no phase less than none. */
export function phaseTimes(phases: readonly MixingPhase[]): readonly PhaseTime[] {
  let clock = 0;
  return phases.map((phase) => {
    const startMinutes = clock;
    if (!('portions' in phase)) clock += Math.max(0, phase.seconds) / 60;
    return { startMinutes, endMinutes: clock };
  });
}

/** How long a programme runs, minutes, rests included. */
export function minutesOfPhases(phases: readonly MixingPhase[]): number {
  return phaseTimes(phases).at(-1)?.endMinutes ?? 0;
}
