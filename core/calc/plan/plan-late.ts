import type { Job } from './plan-job.ts';
import { schedule } from './plan-schedule.ts';
import type { DayLimits } from './plan-taken.ts';

/**
 * Why a batch is late: `alone` – from the beginning on its own work takes longer; else what, were there enough of it, would have
 * it ready soonest: `heating`, `people`, `change` of the oven's temperature, room in the `oven`, the `mixer`; `together` where
 * only several of them at once would.
 */
export type LateReason = 'alone' | 'heating' | 'people' | 'change' | 'oven' | 'mixer' | 'together';

/** Of more batches the day is not worked out again for each reason. */
const mostBatches = 60;
/** What it must gain, minutes. */
const worthWhile = 0.5;

/**
 * The reason of each job that is late, by its id; nothing of a day without a beginning, which is never late, nor of a very long
 * one.
 */
export function lateReasons(
  jobs: readonly Job[],
  late: ReadonlyMap<string, number>,
  beginMinutes: number | undefined,
  limits: DayLimits,
): ReadonlyMap<string, LateReason> {
  const reasons = new Map<string, LateReason>();
  if (beginMinutes === undefined || late.size === 0 || jobs.length > mostBatches) return reasons;
  const { people: _people, ...anyPeople } = limits;
  const { changeMinutes: _change, ...noChange } = limits;
  const { heatMinutes: _heat, ...hot } = limits;
  const without: readonly (readonly [LateReason, readonly Job[], DayLimits])[] = [
    ['heating', jobs, hot],
    ['people', jobs, anyPeople],
    ['change', jobs, noChange],
    ['oven', jobs.map(withOvenOfItsOwn), limits],
    ['mixer', jobs.map(({ mixer: _, ...job }) => job), limits],
  ];
  const alone = new Map(jobs.map((job) => [job.id, aloneLate(job, beginMinutes)]));
  const gains = new Map<string, number>();
  for (const [id, minutes] of late)
    reasons.set(id, (alone.get(id) ?? 0) >= minutes - worthWhile ? 'alone' : 'together');
  for (const [reason, others, otherLimits] of without) {
    if ([...reasons.values()].every((one) => one === 'alone')) break;
    const then = schedule(others, beginMinutes, otherLimits);
    for (const { job, lateMinutes } of then) {
      const gain = (late.get(job.id) ?? 0) - lateMinutes;
      if (!reasons.has(job.id) || reasons.get(job.id) === 'alone') continue;
      if (gain <= worthWhile || gain <= (gains.get(job.id) ?? 0) + worthWhile) continue;
      gains.set(job.id, gain);
      reasons.set(job.id, reason);
    }
  }
  return reasons;
}

/** As long as before, in an oven that nobody else waits for. */
function withOvenOfItsOwn(job: Job): Job {
  return { ...job, ovenMinutes: 0, afterMinutes: job.afterMinutes + job.ovenMinutes };
}

function aloneLate(job: Job, beginMinutes: number): number {
  const ready = beginMinutes + job.mixMinutes + job.betweenMinutes + job.ovenMinutes + job.afterMinutes;
  return Math.max(0, ready - job.readyMinutes);
}
