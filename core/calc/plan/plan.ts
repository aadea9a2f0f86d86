import { elementAt, entryOf } from '../../text/element.ts';
import { type BatchRemark, type DoughBatch, type DoughToMake, doughBatches, fillOf } from './plan-batches.ts';
import type { Handwork, Job } from './plan-job.ts';
import { type LateReason, lateReasons } from './plan-late.ts';
import { type ScheduledJob, schedule } from './plan-schedule.ts';
import type { DayLimits } from './plan-taken.ts';
import { type DayWork, dayWork } from './plan-work.ts';

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
  /** When somebody works at a batch of it, minutes from its start. */
  readonly hands?: readonly Handwork[];
  /** The same for doughs that may be baked together: times and temperatures of its bake; absent where it states not all of them. */
  readonly bake?: string;
  /** Of the oven, as a load goes in and as it comes out. */
  readonly inCelsius?: number;
  readonly outCelsius?: number;
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
  readonly work: DayWork;
}

export interface DoughPlan {
  readonly dough: PlannedDough;
  readonly batches: readonly BatchPlan[];
  readonly remarks: readonly BatchRemark[];
  readonly lateMinutes: number;
  /** Of its latest batch. */
  readonly lateReason?: LateReason;
}

export interface BatchPlan extends DoughBatch {
  /** As the work of the day names it. */
  readonly id: string;
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
 * is made once, for the first of them. What `limits` does not state hinders nothing.
 */
export function planDay(
  doughs: readonly PlannedDough[],
  beginMinutes?: number,
  limits: DayLimits = {},
): DayPlan {
  const parted = doughs.map((dough) => ({ dough, ...doughBatches(dough) }));
  const jobs: Job[] = [];
  const batchOf = new Map<string, DoughBatch>();
  const doughOf = new Map<string, number>();
  for (const [index, { dough, batches }] of parted.entries()) {
    for (const [number, batch] of batches.entries()) {
      const id = `${index}/${number}`;
      batchOf.set(id, batch);
      doughOf.set(id, index);
      jobs.push(jobOf(id, dough, batch, limits));
    }
  }
  const scheduled = schedule(jobs, beginMinutes, limits);
  const late = new Map(
    scheduled.flatMap(({ job, lateMinutes }) => (lateMinutes > 0.5 ? [[job.id, lateMinutes] as const] : [])),
  );
  const reasons = lateReasons(jobs, late, beginMinutes, limits);
  const ofDough = parted.map((): ScheduledJob[] => []);
  for (const one of scheduled) elementAt(ofDough, entryOf(doughOf, one.job.id)).push(one);
  const plans = parted.map(({ dough, remarks }, index): DoughPlan => {
    const own = elementAt(ofDough, index);
    const batches = own.map((one) => batchPlan(one, entryOf(batchOf, one.job.id)));
    const latest = batches.toSorted((one, other) => other.lateMinutes - one.lateMinutes)[0];
    const lateReason = latest === undefined ? undefined : reasons.get(latest.id);
    return {
      dough,
      remarks,
      batches,
      lateMinutes: latest?.lateMinutes ?? 0,
      ...(lateReason === undefined ? {} : { lateReason }),
    };
  });
  return { doughs: plans, parts: partsOf(plans), work: dayWork(scheduled, limits) };
}

function jobOf(id: string, dough: PlannedDough, batch: DoughBatch, limits: DayLimits): Job {
  const { mixer, hands, bake, inCelsius, outCelsius, bakeMinutes } = dough;
  const fill = fillOf(dough, batch);
  const isBroughtBack =
    inCelsius !== undefined && outCelsius !== undefined && Math.abs(inCelsius - outCelsius) > 0.5;
  const between = isBroughtBack ? (batch.ovenLoads - 1) * (limits.changeMinutes ?? 0) : 0;
  const ovenMinutes = bakeMinutes * batch.ovenLoads + between;
  const longer = ovenMinutes - bakeMinutes;
  const baked = dough.mixMinutes + dough.betweenMinutes + bakeMinutes;
  return {
    id,
    mixMinutes: dough.mixMinutes,
    betweenMinutes: dough.betweenMinutes,
    ovenMinutes,
    afterMinutes: dough.afterMinutes,
    readyMinutes: batch.readyMinutes,
    ...(mixer === undefined ? {} : { mixer }),
    // What is done after the bake waits for the last of its loads.
    ...(hands === undefined
      ? {}
      : {
          hands: hands.map((one) =>
            one.offset < baked - 1e-9 ? one : { ...one, offset: one.offset + longer },
          ),
        }),
    ...(bake === undefined || batch.ovenLoads > 1 ? {} : { bake }),
    ...(fill === undefined ? {} : { fill }),
    ...(inCelsius === undefined ? {} : { inCelsius }),
    ...(outCelsius === undefined ? {} : { outCelsius }),
  };
}

function batchPlan(scheduled: ScheduledJob, batch: DoughBatch): BatchPlan {
  const { job, startMinutes, ovenStartMinutes, endMinutes, lateMinutes } = scheduled;
  const { id, ovenMinutes } = job;
  return { ...batch, id, startMinutes, ovenStartMinutes, endMinutes, lateMinutes, ovenMinutes };
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
