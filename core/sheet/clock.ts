import type { ClockRequest } from './asked.ts';
import type { SheetClock } from './view.ts';

const daySeconds = 24 * 60 * 60;

/** Turns seconds from the start of mixing into times of day. */
export type ClockOf = (seconds: number) => SheetClock;

/** The clock of a timeline that ends at `endSeconds`; undefined when no time, or none of a day, is asked for. */
export function clockOf(asked: ClockRequest | undefined, endSeconds: number): ClockOf | undefined {
  if (asked === undefined || !(asked.minutes >= 0) || !(asked.minutes < 24 * 60)) return undefined;
  const zero = asked.minutes * 60 - (asked.by === 'ready' ? endSeconds : 0);
  return (seconds) => timeOfDay(zero + seconds);
}

function timeOfDay(seconds: number): SheetClock {
  const rounded = Math.round(seconds / 60) * 60;
  const day = Math.floor(rounded / daySeconds);
  const minutes = (rounded - day * daySeconds) / 60;
  const hour = Math.floor(minutes / 60);
  const time = `${twoDigits(hour)}:${twoDigits(minutes % 60)}`;
  return { time, day, words: day === 0 ? time : `${dayWords(day, hour)}, ${time}` };
}

function dayWords(day: number, hour: number): string {
  if (day === -1) return `the ${partOfDay(hour)} before`;
  if (day < 0) return `${-day} days before`;
  return day === 1 ? 'the next day' : `${day} days later`;
}

function partOfDay(hour: number): string {
  if (hour < 12) return 'morning';
  return hour < 17 ? 'afternoon' : 'evening';
}

function twoDigits(figure: number): string {
  return String(figure).padStart(2, '0');
}
