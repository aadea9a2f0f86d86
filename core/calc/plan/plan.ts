import { elementAt, entryOf } from '../../text/element.ts';
import { type BatchRemark, type DoughBatch, type DoughToMake, doughBatches } from './plan-batches.ts';
import { type Job, type ScheduledJob, schedule } from './plan-schedule.ts';

/** A dough of a plan, all its orders together. */
export interface PlannedDough extends DoughToMake {
  readonly key: string;
  readonly name: string;
  readonly mixer?: string;
  readonly mixMinutes: number;
  readonly betweenMinutes: number;
  /** Of one load. */
  readonly bakeMinutes: number;
  readonly afterMinutes: number;
  readonly parts: readonly PlannedPart[];
}

/** A preferment, soaker or other part that is made before the dough that takes it. */
export interface PlannedPart {
  /** The same in every dough that shares it. */
  readonly key: string;
  readonly name: string;
  /** For the whole of its dough, what is kept back with it. */
  readonly grams: number;
  /** How long it stands from being made to being taken. */
  readonly standsMinutes: number;
  /** Key of the part that takes it; absent where the dough does. */
  readonly takenBy?: string;
}

export interface DayPlan {
  readonly doughs: readonly DoughPlan[];
  readonly parts: readonly PartPlan[];
}

export interface DoughPlan {
  readonly dough: PlannedDough;
  readonly batches: readonly BatchPlan[];
  readonly remarks: readonly BatchRemark[];
  readonly lateMinutes: number;
}

export interface BatchPlan extends DoughBatch {
  readonly startMinutes: number;
  readonly ovenStartMinutes: number;
  readonly ovenMinutes: number;
  readonly endMinutes: number;
  readonly lateMinutes: number;
}

/** A part as it is made once for all that take it. */
export interface PartPlan {
  readonly key: string;
  readonly name: string;
  readonly grams: number;
  readonly startMinutes: number;
  /** When the first that takes it needs it. */
  readonly neededMinutes: number;
  /** When the last that takes it does. */
  readonly lastNeededMinutes: number;
  /** Names of the doughs it is for. */
  readonly doughs: readonly string[];
}

/**
 * The day of a plan: doughs parted into batches that fit bowl and oven, each set as late as mixers and oven allow, and the
 * parts started backwards from the mixing of what takes them. All times in minutes on one clock. A part that several take
 * is made once, for the first of them.
 */
export function planDay(doughs: readonly PlannedDough[], beginMinutes?: number): DayPlan {
  const parted = doughs.map((dough) => ({ dough, ...doughBatches(dough) }));
  const jobs: Job[] = [];
  const batchOf = new Map<string, DoughBatch>();
  const doughOf = new Map<string, number>();
  for (const [index, { dough, batches }] of parted.entries()) {
    for (const [number, batch] of batches.entries()) {
      const id = `${index}/${number}`;
      batchOf.set(id, batch);
      doughOf.set(id, index);
      jobs.push({
        id,
        mixMinutes: dough.mixMinutes,
        betweenMinutes: dough.betweenMinutes,
        ovenMinutes: dough.bakeMinutes * batch.ovenLoads,
        afterMinutes: dough.afterMinutes,
        readyMinutes: batch.readyMinutes,
        ...(dough.mixer === undefined ? {} : { mixer: dough.mixer }),
      });
    }
  }
  const scheduled = schedule(jobs, beginMinutes);
  const ofDough = parted.map((): ScheduledJob[] => []);
  for (const one of scheduled) elementAt(ofDough, entryOf(doughOf, one.job.id)).push(one);
  const plans = parted.map(({ dough, remarks }, index): DoughPlan => {
    const own = elementAt(ofDough, index);
    const batches = own.map((one) => batchPlan(one, entryOf(batchOf, one.job.id)));
    return {
      dough,
      remarks,
      batches,
      lateMinutes: Math.max(0, ...batches.map((batch) => batch.lateMinutes)),
    };
  });
  return { doughs: plans, parts: partsOf(plans) };
}

function batchPlan(scheduled: ScheduledJob, batch: DoughBatch): BatchPlan {
  const { job, startMinutes, ovenStartMinutes, endMinutes, lateMinutes } = scheduled;
  return { ...batch, startMinutes, ovenStartMinutes, endMinutes, lateMinutes, ovenMinutes: job.ovenMinutes };
}

function partsOf(plans: readonly DoughPlan[]): PartPlan[] {
  const made = new Map<string, PartPlan>();
  for (const { dough, batches } of plans) {
    const starts = batches.map((batch) => batch.startMinutes);
    if (starts.length === 0) continue;
    const [first, last] = [Math.min(...starts), Math.max(...starts)];
    const startOf = (part: PlannedPart, seen: ReadonlySet<string>): number =>
      neededOf(part, seen) - part.standsMinutes;
    const neededOf = (part: PlannedPart, seen: ReadonlySet<string>): number => {
      const taker = dough.parts.find((one) => one.key === part.takenBy && !seen.has(one.key));
      return taker === undefined ? first : startOf(taker, new Set(seen).add(part.key));
    };
    for (const part of dough.parts) {
      const needed = neededOf(part, new Set([part.key]));
      const lastNeeded = needed + (last - first);
      const before = made.get(part.key);
      const neededFirst = Math.min(before?.neededMinutes ?? needed, needed);
      made.set(part.key, {
        key: part.key,
        name: part.name,
        grams: (before?.grams ?? 0) + part.grams,
        startMinutes: neededFirst - part.standsMinutes,
        neededMinutes: neededFirst,
        lastNeededMinutes: Math.max(before?.lastNeededMinutes ?? lastNeeded, lastNeeded),
        doughs: [...new Set([...(before?.doughs ?? []), dough.name])],
      });
    }
  }
  return [...made.values()].sort((one, other) => one.startMinutes - other.startMinutes);
}
