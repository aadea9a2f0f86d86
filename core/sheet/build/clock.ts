import { clockOf as clockText } from '../../text/dates.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ClockRequest } from './sheet-options.ts';

/** A time of day. */
export interface SheetClock {
  /** `05:38`. */
  readonly time: string;
  /** Days from the day the asked clock time stands on: −1 is the day before. */
  readonly day: number;
  /** `the evening before, 17:00`; the time alone on the day itself. */
  readonly words: string;
}

const daySeconds = 24 * 60 * 60;

/** Turns seconds from the start of mixing into times of day. */
export type ClockOf = (seconds: number) => SheetClock;

/** The clock of a timeline that ends at `endSeconds`; undefined when no time, or none of a day, is asked for. */
export function clockOf(
  asked: ClockRequest | undefined,
  endSeconds: number,
  speaker: Speaker,
): ClockOf | undefined {
  if (asked === undefined || !(asked.minutes >= 0) || !(asked.minutes < 24 * 60)) return undefined;
  const zero = asked.minutes * 60 - (asked.by === 'ready' ? endSeconds : 0);
  return (seconds) => timeOfDay(zero + seconds, speaker);
}

function timeOfDay(seconds: number, speaker: Speaker): SheetClock {
  const rounded = Math.round(seconds / 60) * 60;
  const day = Math.floor(rounded / daySeconds);
  const minutes = (rounded - day * daySeconds) / 60;
  const hour = Math.floor(minutes / 60);
  const time = clockText(minutes);
  return { time, day, words: day === 0 ? time : speaker.say(onAnotherDay(day, hour, time)) };
}

function onAnotherDay(day: number, hour: number, written: string): Message {
  if (day === -1) return message(`clock.${partOfDay(hour)}-before`, { written });
  if (day < 0) return message('clock.days-before', { count: -day, written });
  return day === 1
    ? message('clock.next-day', { written })
    : message('clock.days-later', { count: day, written });
}

function partOfDay(hour: number): 'morning' | 'afternoon' | 'evening' {
  if (hour < 12) return 'morning';
  return hour < 17 ? 'afternoon' : 'evening';
}
