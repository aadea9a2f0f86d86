import type { BenchDough } from '../../server/protocol.ts';
import type { DoughRun } from './messages.ts';

/** How a dough runs at the bench: pure figures of its timer and of its next reading. */

/** So long before a reading the bench says to stop the mixer, seconds. */
export const leadSeconds = 10;

/** A mixer that was stopped so little before a reading was stopped for it, seconds: readings go by the half minute. */
const earlySeconds = 15;

/** Seconds that a dough has been mixed so far. */
export function mixedSeconds({ startedAt, before }: DoughRun, now: number): number {
  return before + (startedAt === undefined ? 0 : Math.max(0, (now - startedAt) / 1000));
}

/** The reading that comes next, minutes: the first that the mixer has not been stopped for yet. */
export function nextReading({ readings }: BenchDough, { before }: DoughRun): number | undefined {
  const passed = before > 0 ? before + earlySeconds : 0;
  return readings.find(({ minutes }) => minutes * 60 > passed)?.minutes;
}

/** The planned reading that is at hand, minutes: the next one while it mixes, the nearest once the mixer stands still. */
export function readingAbout(dough: BenchDough, run: DoughRun): number | undefined {
  if (run.startedAt !== undefined || run.before === 0) return nextReading(dough, run);
  const apart = ({ minutes }: { readonly minutes: number }) => Math.abs(minutes * 60 - run.before);
  return dough.readings.toSorted((one, other) => apart(one) - apart(other))[0]?.minutes;
}

/** The minute that a reading taken now is logged at: by the half minute, as readings go. */
export function minuteNow(run: DoughRun, now: number): number | undefined {
  const seconds = mixedSeconds(run, now);
  return seconds > 0 ? Math.max(0.5, Math.round(seconds / 30) / 2) : undefined;
}

/** Mixing begins, or goes on. */
export function started(run: DoughRun, now: number): DoughRun {
  return { ...run, startedAt: now };
}

/** The mixer stands still. */
export function stopped(run: DoughRun, now: number): DoughRun {
  const { startedAt: _, next: __, ...rest } = run;
  return { ...rest, before: mixedSeconds(run, now) };
}
