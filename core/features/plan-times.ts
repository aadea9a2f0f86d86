import type { PlanAnalysis } from '../analysis/plan.ts';
import { clockOf, timeWords } from '../text/dates.ts';
import { message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

/** When a plan comes to what, in minutes since 1 January 1970, or since the day of `ready` where that has no date. */
export interface PlanTimes {
  readonly dated: boolean;
  readonly readyMinutes?: number;
  readonly firstWorkMinutes?: number;
  readonly firstMixMinutes?: number;
  /** Absent where all is ready in time. */
  readonly lateMinutes?: number;
}

/** The times of a plan; what is not known is absent. */
export function planTimes({ dated, readyMinutes, day }: PlanAnalysis): PlanTimes {
  const starts = day.doughs.flatMap(({ batches }) => batches.map((batch) => batch.startMinutes));
  const firstMix = starts.length === 0 ? undefined : Math.min(...starts);
  const firstWork =
    firstMix === undefined ? undefined : Math.min(firstMix, day.parts[0]?.startMinutes ?? firstMix);
  const late = Math.max(0, ...day.doughs.map((dough) => dough.lateMinutes));
  return {
    dated,
    ...(readyMinutes === undefined ? {} : { readyMinutes }),
    ...(firstWork === undefined ? {} : { firstWorkMinutes: firstWork }),
    ...(firstMix === undefined ? {} : { firstMixMinutes: firstMix }),
    ...(late > 0.5 ? { lateMinutes: Math.ceil(late) } : {}),
  };
}

/** A time of a plan: `2026-12-05 06:30`; without a date `06:30`, and `day −1 22:00` on another day than that of `ready`. */
export function planTimeWords(minutes: number, dated: boolean, speaker: Speaker): string {
  const days = Math.floor(Math.round(minutes) / 1440);
  if (dated || days === 0) return timeWords(minutes, dated);
  return speaker.say(message('plan-time.on-day', { number: days, written: clockOf(minutes) }));
}
