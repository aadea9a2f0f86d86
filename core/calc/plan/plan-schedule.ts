import type { Job } from './plan-job.ts';
import { clashOf, type DayLimits, giveBack, nothingTaken, type Taken, take } from './plan-taken.ts';

export interface ScheduledJob {
  readonly job: Job;
  readonly startMinutes: number;
  readonly ovenStartMinutes: number;
  readonly endMinutes: number;
  /** Above 0: ready so much too late. */
  readonly lateMinutes: number;
}

/** Up to so many orders of the jobs are all tried; beyond, a few good ones are. */
const mostOrders = 5040;

/** Work that trying orders may cost: orders by the square of the jobs, since each job may have to pass all others. */
const mostTried = 2_000_000;

/**
 * Sets every job as late as mixers and oven allow, so that bread is fresh and nobody starts sooner than needed. Where a job
 * would have to start before `beginMinutes`, the work starts there instead, and what is late for it is as little as it gets:
 * first the longest delay, then the sum. List scheduling: jobs are set one after another where there is room. Of few jobs (up to
 * seven different ones) every order is tried, of more those by time.
 */
export function schedule(
  jobs: readonly Job[],
  beginMinutes?: number,
  limits: DayLimits = {},
): readonly ScheduledJob[] {
  if (jobs.length === 0) return [];
  let best: Candidate | undefined;
  const orders = ordersOf(jobs);
  for (const order of orders)
    best = better(
      best,
      candidateOf(
        order.map((job) => [job, placeLate]),
        undefined,
        limits,
      ),
    );
  const first = Math.min(...best!.placed.map((one) => one.startMinutes));
  const firstOven = Math.min(
    ...best!.placed.flatMap(({ job, ovenStartMinutes }) => (job.ovenMinutes > 0 ? [ovenStartMinutes] : [])),
  );
  const isTooSoon = (begin: number): boolean =>
    first < begin - 1e-9 || firstOven < begin + (limits.heatMinutes ?? 0) - 1e-9;
  if (beginMinutes !== undefined && isTooSoon(beginMinutes)) {
    best = undefined;
    for (const order of orders) {
      // The last of the day is set first when going backwards, and last when going forwards.
      const forward = [...order].reverse();
      for (const place of [placeInTime, placeSoon])
        best = better(
          best,
          candidateOf(
            forward.map((job) => [job, place]),
            beginMinutes,
            limits,
          ),
        );
    }
    best = { ...best!, placed: heldBack(best!.placed, beginMinutes, limits) };
  }
  return [...best!.placed].sort(
    (one, other) => one.startMinutes - other.startMinutes || one.endMinutes - other.endMinutes,
  );
}

interface Candidate {
  readonly placed: readonly ScheduledJob[];
  readonly mostLate: number;
  readonly sumLate: number;
  readonly firstStart: number;
  readonly sumStart: number;
}

type Place = (job: Job, taken: Taken, beginMinutes: number) => number;

function candidateOf(
  order: readonly (readonly [Job, Place])[],
  beginMinutes: number | undefined,
  limits: DayLimits,
): Candidate {
  const taken = nothingTaken(limits, beginMinutes);
  const placed = order.map(([job, place]): ScheduledJob => {
    const start = place(job, taken, beginMinutes ?? Number.NEGATIVE_INFINITY);
    const ovenStart = start + job.mixMinutes + job.betweenMinutes;
    const end = ovenStart + job.ovenMinutes + job.afterMinutes;
    take(job, start, taken);
    return {
      job,
      startMinutes: start,
      ovenStartMinutes: ovenStart,
      endMinutes: end,
      lateMinutes: Math.max(0, end - job.readyMinutes),
    };
  });
  return {
    placed,
    mostLate: Math.max(...placed.map((one) => one.lateMinutes)),
    sumLate: placed.reduce((sum, one) => sum + one.lateMinutes, 0),
    firstStart: Math.min(...placed.map((one) => one.startMinutes)),
    sumStart: placed.reduce((sum, one) => sum + one.startMinutes, 0),
  };
}

/** Less late, then a later first start, then later starts in all. */
function better(one: Candidate | undefined, other: Candidate): Candidate {
  if (one === undefined) return other;
  const differences = [
    one.mostLate - other.mostLate,
    one.sumLate - other.sumLate,
    other.firstStart - one.firstStart,
    other.sumStart - one.sumStart,
  ];
  const decisive = differences.find((difference) => Math.abs(difference) > 1e-9) ?? 0;
  return decisive > 0 ? other : one;
}

const placeLate: Place = (job, taken) => {
  let start = job.readyMinutes - lengthOf(job);
  for (;;) {
    const clash = clashOf(job, start, taken);
    if (clash === undefined) return start;
    start = clash.ifEarlier;
  }
};

/** As late as fits in time; where nothing fits any more, as soon as there is room. */
const placeInTime: Place = (job, taken, beginMinutes) => {
  let start = Math.max(job.readyMinutes - lengthOf(job), beginMinutes);
  while (start >= beginMinutes - 1e-9) {
    const clash = clashOf(job, start, taken);
    if (clash === undefined) return start;
    start = clash.ifEarlier;
  }
  return placeSoon(job, taken, beginMinutes);
};

const placeSoon: Place = (job, taken, beginMinutes) => {
  let start = beginMinutes;
  for (;;) {
    const clash = clashOf(job, start, taken);
    if (clash === undefined) return start;
    start = clash.ifLater;
  }
};

/** The same day with nobody sooner than needed: from the last to the first, each as late as keeps it no later ready. */
function heldBack(
  placed: readonly ScheduledJob[],
  beginMinutes: number,
  limits: DayLimits,
): readonly ScheduledJob[] {
  const sorted = [...placed].sort((one, other) => other.endMinutes - one.endMinutes);
  const taken = nothingTaken(limits, beginMinutes);
  for (const { job, startMinutes } of sorted) take(job, startMinutes, taken);
  for (const [index, one] of sorted.entries()) {
    const { job } = one;
    giveBack(job, one.startMinutes, taken);
    const readyMinutes = Math.max(job.readyMinutes, one.endMinutes);
    const startMinutes = placeLate({ ...job, readyMinutes }, taken, Number.NEGATIVE_INFINITY);
    take(job, startMinutes, taken);
    const shift = startMinutes - one.startMinutes;
    sorted[index] = {
      ...one,
      startMinutes,
      ovenStartMinutes: one.ovenStartMinutes + shift,
      endMinutes: one.endMinutes + shift,
    };
  }
  return sorted;
}

function lengthOf(job: Job): number {
  return job.mixMinutes + job.betweenMinutes + job.ovenMinutes + job.afterMinutes;
}

/** Orders to set the jobs in, the latest of the day first. Alike batches are not exchanged with each other. */
function ordersOf(jobs: readonly Job[]): readonly (readonly Job[])[] {
  const kinds = new Map<string, Job[]>();
  for (const job of jobs) {
    const { id: _id, ...alike } = job;
    const key = JSON.stringify(alike);
    const group = kinds.get(key);
    if (group === undefined) kinds.set(key, [job]);
    else group.push(job);
  }
  const groups = [...kinds.values()];
  const orders = countOrders(groups.map((group) => group.length));
  if (orders === 1 || orders <= Math.min(mostOrders, mostTried / jobs.length ** 2))
    return permutations(groups);
  const by = (figure: (job: Job) => number): Job[] =>
    [...jobs].sort((one, other) => figure(other) - figure(one));
  return [
    by((job) => job.readyMinutes),
    by((job) => job.readyMinutes - job.afterMinutes),
    by((job) => job.readyMinutes - job.afterMinutes - job.ovenMinutes),
    by((job) => job.readyMinutes - lengthOf(job)),
    by((job) => job.ovenMinutes),
  ];
}

function countOrders(sizes: readonly number[]): number {
  let orders = 1;
  let placed = 0;
  for (const size of sizes) {
    for (let i = 1; i <= size; i++) orders = (orders * ++placed) / i;
    if (orders > mostOrders) return orders;
  }
  return orders;
}

function permutations(groups: readonly (readonly Job[])[]): Job[][] {
  const all: Job[][] = [];
  const left = groups.map((group) => [...group].reverse());
  const order: Job[] = [];
  const size = groups.reduce((sum, group) => sum + group.length, 0);
  const extend = (): void => {
    if (order.length === size) {
      all.push([...order]);
      return;
    }
    for (const group of left) {
      const job = group.pop();
      if (job === undefined) continue;
      order.push(job);
      extend();
      order.pop();
      group.push(job);
    }
  };
  extend();
  return all;
}
