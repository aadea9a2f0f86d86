import { elementAt } from '../../text/element.ts';
import type { Job } from './plan-job.ts';

/** What a day has and what it takes to change it; what nobody states hinders nothing. */
export interface DayLimits {
  /** So many work at once; absent: as many as it takes. */
  readonly people?: number;
  /** From cold until the first load can go in. */
  readonly heatMinutes?: number;
  /** Between two loads of which the second goes in at another temperature than the first came out at. */
  readonly changeMinutes?: number;
  /** Doughs of the same bake may go into one load. */
  readonly sharesLoads?: boolean;
}

/** Times at which each mixer, the oven and the hands are taken; those of a mixer and of the oven are held in their order. */
export interface Taken {
  readonly limits: DayLimits;
  /** No load goes in before. */
  readonly hotMinutes: number;
  readonly mixers: Map<string, Load[]>;
  readonly oven: Load[];
  readonly hands: Hands[];
}

interface Load {
  readonly begin: number;
  readonly end: number;
  readonly job?: Job;
}

/** A stretch within which so many pairs of hands are at work; stretches follow each other without a gap. */
interface Hands {
  readonly begin: number;
  readonly end: number;
  readonly count: number;
}

const tiny = 1e-9;
/** Starts nearer to each other than this are one, minutes. */
const same = 1e-6;

export function nothingTaken(limits: DayLimits, beginMinutes: number | undefined): Taken {
  const hotMinutes =
    beginMinutes === undefined ? Number.NEGATIVE_INFINITY : beginMinutes + (limits.heatMinutes ?? 0);
  return { limits, hotMinutes, mixers: new Map(), oven: [], hands: [] };
}

export function take(job: Job, start: number, taken: Taken): void {
  if (job.mixer !== undefined && job.mixMinutes > 0) {
    const times = taken.mixers.get(job.mixer) ?? [];
    insert(times, { begin: start, end: start + job.mixMinutes });
    taken.mixers.set(job.mixer, times);
  }
  const oven = ovenStart(job, start);
  if (job.ovenMinutes > 0) insert(taken.oven, { begin: oven, end: oven + job.ovenMinutes, job });
  if (taken.limits.people !== undefined) useHands(job, start, taken, 1);
}

/** Gives back what a job took. */
export function giveBack(job: Job, start: number, taken: Taken): void {
  const remove = (times: Load[] | undefined, begin: number, length: number, of?: Job): void => {
    if (times === undefined || length <= 0) return;
    const at = times.findIndex((one) => one.begin === begin && one.end === begin + length && one.job === of);
    if (at >= 0) times.splice(at, 1);
  };
  if (job.mixer !== undefined) remove(taken.mixers.get(job.mixer), start, job.mixMinutes);
  remove(taken.oven, ovenStart(job, start), job.ovenMinutes, job);
  if (taken.limits.people !== undefined) useHands(job, start, taken, -1);
}

/** The nearest starts before and behind what is in the way of a start. */
export interface Clash {
  readonly ifEarlier: number;
  readonly ifLater: number;
}

/** Where a start does not do, and why; `undefined` where it does. */
export function clashOf(job: Job, start: number, taken: Taken): Clash | undefined {
  return mixerClash(job, start, taken) ?? ovenClash(job, start, taken) ?? handsClash(job, start, taken);
}

function mixerClash(job: Job, start: number, taken: Taken): Clash | undefined {
  const times = job.mixer === undefined ? undefined : taken.mixers.get(job.mixer);
  if (times === undefined || job.mixMinutes <= 0) return undefined;
  const found = times[firstEndingAfter(times, start)];
  if (found === undefined || start + job.mixMinutes <= found.begin + tiny) return undefined;
  return { ifEarlier: found.begin - job.mixMinutes, ifLater: found.end };
}

function ovenClash(job: Job, start: number, { oven, limits, hotMinutes }: Taken): Clash | undefined {
  const length = job.ovenMinutes;
  if (length <= 0) return undefined;
  const from = ovenStart(job, start);
  const offset = from - start;
  if (from < hotMinutes - tiny) return { ifEarlier: Number.NEGATIVE_INFINITY, ifLater: hotMinutes - offset };
  let index = firstEndingAfter(oven, from);
  const around = (other: Load): Clash => {
    const earlier = other.begin - gapBetween(job, other.job, limits) - length;
    const later = other.end + gapBetween(other.job, job, limits);
    const isBeside = hasRoom(job, other, oven, limits) ? other.begin - from : 0;
    return {
      ifEarlier: (isBeside < -same ? other.begin : earlier) - offset,
      ifLater: (isBeside > same ? other.begin : later) - offset,
    };
  };
  const before = oven[index - 1];
  if (before !== undefined && from < before.end + gapBetween(before.job, job, limits) - tiny)
    return around(before);
  for (
    let other = oven[index];
    other !== undefined && other.begin < from + length - tiny;
    other = oven[++index]
  )
    if (Math.abs(other.begin - from) > same || !hasRoom(job, other, oven, limits)) return around(other);
  const after = oven[index];
  if (after !== undefined && from + length + gapBetween(job, after.job, limits) > after.begin + tiny)
    return around(after);
  return undefined;
}

/** Whether a dough of the same bake still fits beside all that goes in together with a load. */
function hasRoom(job: Job, load: Load, oven: readonly Load[], { sharesLoads }: DayLimits): boolean {
  if (sharesLoads !== true || job.bake === undefined || job.bake !== load.job?.bake) return false;
  let full = job.fill ?? 1;
  for (let at = firstEndingAfter(oven, load.begin); at < oven.length; at++) {
    const other = elementAt(oven, at);
    if (other.begin > load.begin + same) break;
    full += other.job?.fill ?? 1;
  }
  return full <= 1 + tiny;
}

/** How long the oven takes from one load to the next; nothing where either temperature is not stated. */
function gapBetween(first: Job | undefined, next: Job | undefined, { changeMinutes = 0 }: DayLimits): number {
  if (first?.outCelsius === undefined || next?.inCelsius === undefined) return 0;
  return Math.abs(first.outCelsius - next.inCelsius) > 0.5 ? changeMinutes : 0;
}

function handsClash(job: Job, start: number, { hands, limits }: Taken): Clash | undefined {
  const { people } = limits;
  if (people === undefined) return undefined;
  for (const { offset, minutes } of job.hands ?? []) {
    const from = start + offset;
    for (let at = firstEndingAfter(hands, from); at < hands.length; at++) {
      const other = elementAt(hands, at);
      if (other.begin >= from + minutes - tiny) break;
      if (other.count >= people)
        return { ifEarlier: other.begin - minutes - offset, ifLater: other.end - offset };
    }
  }
  return undefined;
}

function ovenStart({ mixMinutes, betweenMinutes }: Job, start: number): number {
  return start + mixMinutes + betweenMinutes;
}

function insert(times: Load[], load: Load): void {
  times.splice(firstEndingAfter(times, load.begin), 0, load);
}

function useHands(job: Job, start: number, { hands }: Taken, by: 1 | -1): void {
  for (const { offset, minutes } of job.hands ?? []) {
    cutAt(hands, start + offset);
    cutAt(hands, start + offset + minutes);
    addBetween(hands, start + offset, start + offset + minutes, by);
  }
}

/** Makes a stretch end and another begin at a moment, where one goes on over it. */
function cutAt(hands: Hands[], moment: number): void {
  const at = firstEndingAfter(hands, moment);
  const found = hands[at];
  if (found === undefined || found.begin >= moment - tiny) return;
  hands.splice(at, 1, { ...found, end: moment }, { ...found, begin: moment });
}

function addBetween(hands: Hands[], from: number, to: number, by: 1 | -1): void {
  let now = from;
  for (let at = firstEndingAfter(hands, from); now < to - tiny; at++) {
    const found = hands[at];
    if (found === undefined || found.begin > now + tiny) {
      const end = Math.min(to, found?.begin ?? to);
      hands.splice(at, 0, { begin: now, end, count: by });
      now = end;
    } else {
      hands[at] = { ...found, count: found.count + by };
      now = found.end;
    }
  }
}

/** Where the first of the times lies that ends after a moment; halving finds it. */
function firstEndingAfter(times: readonly { readonly end: number }[], moment: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (elementAt(times, middle).end > moment + tiny) high = middle;
    else low = middle + 1;
  }
  return low;
}
