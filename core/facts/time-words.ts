import { isoOf } from '../text/dates.ts';
import { type Message, message } from '../words/message.ts';

/** A time in minutes since 1 January 1970: `2026-12-05 06:30`; without a date `06:30`, and `day -1 22:00` on another day. */
export function timeMessage(minutes: number, dated: boolean): Message {
  const whole = Math.round(minutes);
  const days = Math.floor(whole / 1440);
  if (dated) return message('time.date', { written: isoOf(days), minutes: whole });
  return days === 0
    ? message('time.clock', { minutes: whole })
    : message('time.day', { number: days, minutes: whole });
}
