import { elementAt, firstOf } from '../../text/element.ts';
import type { Handwork } from './plan-job.ts';
import type { ScheduledJob } from './plan-schedule.ts';
import type { DayLimits } from './plan-taken.ts';

/** One person at one piece of work. */
export interface PersonWork {
  /** Id of the job. */
  readonly job: string;
  readonly what: Handwork['what'];
  readonly name?: string;
  readonly startMinutes: number;
  readonly endMinutes: number;
  /** From 0: whoever is free takes what begins, the first of them. */
  readonly person: number;
}

/** The oven between loads: heated up before the first, or brought to another temperature. */
export interface OvenTurn {
  readonly kind: 'heat' | 'change';
  readonly startMinutes: number;
  readonly endMinutes: number;
  /** Where its load states it. */
  readonly toCelsius?: number;
}

/** What of a day is not a batch: who works when, how the oven is turned, and which doughs share a load. */
export interface DayWork {
  readonly people: readonly PersonWork[];
  /** The most that work at once, and when that is first so; 0 where nobody is known to. */
  readonly mostPeople: number;
  readonly mostAtMinutes?: number;
  readonly ovenTurns: readonly OvenTurn[];
  /** Ids of the jobs of each load that several share. */
  readonly sharedLoads: readonly { readonly startMinutes: number; readonly jobs: readonly string[] }[];
}

/** Reads from a scheduled day who works when and what the oven does between its loads. */
export function dayWork(scheduled: readonly ScheduledJob[], limits: DayLimits): DayWork {
  const people = handedOut(scheduled);
  const mostPeople = Math.max(0, ...people.map(({ person }) => person + 1));
  const most = people.find(({ person }) => person + 1 === mostPeople);
  return {
    people,
    mostPeople,
    ...(most === undefined ? {} : { mostAtMinutes: most.startMinutes }),
    ovenTurns: turnsOf(scheduled, limits),
    sharedLoads: loadsOf(scheduled)
      .filter((load) => load.length > 1)
      .map((load) => ({
        startMinutes: firstOf(load).ovenStartMinutes,
        jobs: load.map(({ job }) => job.id),
      })),
  };
}

const tiny = 1e-6;

/** In the order of their beginnings each piece of work goes to the first who is free: so it takes no more than work at once. */
function handedOut(scheduled: readonly ScheduledJob[]): PersonWork[] {
  const all = scheduled
    .flatMap(({ job, startMinutes }) =>
      (job.hands ?? []).map(({ offset, minutes, what, name }) => ({
        job: job.id,
        what,
        ...(name === undefined ? {} : { name }),
        startMinutes: startMinutes + offset,
        endMinutes: startMinutes + offset + minutes,
      })),
    )
    .sort((one, other) => one.startMinutes - other.startMinutes || one.endMinutes - other.endMinutes);
  const freeFrom: number[] = [];
  return all.map((work): PersonWork => {
    const free = freeFrom.findIndex((moment) => moment <= work.startMinutes + tiny);
    const person = free < 0 ? freeFrom.length : free;
    freeFrom[person] = work.endMinutes;
    return { ...work, person };
  });
}

/** What goes into the oven together, by time. */
function loadsOf(scheduled: readonly ScheduledJob[]): ScheduledJob[][] {
  const baked = scheduled
    .filter(({ job }) => job.ovenMinutes > 0)
    .sort((one, other) => one.ovenStartMinutes - other.ovenStartMinutes);
  const loads: ScheduledJob[][] = [];
  for (const one of baked) {
    const last = loads.at(-1);
    if (last !== undefined && Math.abs(firstOf(last).ovenStartMinutes - one.ovenStartMinutes) < tiny)
      last.push(one);
    else loads.push([one]);
  }
  return loads;
}

function turnsOf(scheduled: readonly ScheduledJob[], { heatMinutes, changeMinutes }: DayLimits): OvenTurn[] {
  const loads = loadsOf(scheduled).map(firstOf);
  const turns: OvenTurn[] = [];
  for (const [index, load] of loads.entries()) {
    const { inCelsius } = load.job;
    const to = inCelsius === undefined ? {} : { toCelsius: inCelsius };
    const endMinutes = load.ovenStartMinutes;
    if (index === 0) {
      if (heatMinutes !== undefined && heatMinutes > 0)
        turns.push({ kind: 'heat', startMinutes: endMinutes - heatMinutes, endMinutes, ...to });
      continue;
    }
    const { outCelsius } = elementAt(loads, index - 1).job;
    if (changeMinutes === undefined || changeMinutes <= 0) continue;
    if (outCelsius === undefined || inCelsius === undefined || Math.abs(outCelsius - inCelsius) <= 0.5)
      continue;
    turns.push({ kind: 'change', startMinutes: endMinutes - changeMinutes, endMinutes, ...to });
  }
  return turns;
}
