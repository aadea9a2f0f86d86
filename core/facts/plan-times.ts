import type { PlanAnalysis } from '../analysis/plan-analysis.ts';

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
    firstMix === undefined
      ? undefined
      : Math.min(
          firstMix,
          day.parts[0]?.startMinutes ?? firstMix,
          day.work.ovenTurns[0]?.startMinutes ?? firstMix,
        );
  const late = Math.max(0, ...day.doughs.map((dough) => dough.lateMinutes));
  return {
    dated,
    ...(readyMinutes === undefined ? {} : { readyMinutes }),
    ...(firstWork === undefined ? {} : { firstWorkMinutes: firstWork }),
    ...(firstMix === undefined ? {} : { firstMixMinutes: firstMix }),
    ...(late > 0.5 ? { lateMinutes: Math.ceil(late) } : {}),
  };
}
