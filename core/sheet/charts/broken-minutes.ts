import type { CurvePhase } from '../../facts/programme-curve.ts';
import type { Scale } from './scale.ts';

/** Minutes along a drawing in which long rests are shortened, so that worked minutes get the room. */
export interface BrokenMinutes {
  readonly x: Scale;
  /** The middle of each rest that is drawn shorter than it is, minutes. */
  readonly breaks: readonly number[];
}

/** No rest is drawn longer than this part of the worked minutes, nor than these minutes where little is worked. */
const longestRestPart = 0.2;
const longestRestMinutes = 2;

/** The minutes 0 to `last` of a programme from `left` to `right`. */
export function brokenMinutes(
  phases: readonly CurvePhase[],
  last: number,
  left: number,
  right: number,
): BrokenMinutes {
  const timed = phases.filter(({ startMinutes, endMinutes }) => endMinutes > startMinutes);
  const worked = timed
    .filter(({ kind }) => kind !== 'rest')
    .reduce((sum, { startMinutes, endMinutes }) => sum + endMinutes - startMinutes, 0);
  const longest = Math.max(longestRestMinutes, worked * longestRestPart);
  const turns = [{ minutes: 0, at: 0 }];
  const breaks: number[] = [];
  let at = 0;
  for (const { kind, startMinutes, endMinutes } of timed) {
    const minutes = endMinutes - startMinutes;
    const isShortened = kind === 'rest' && minutes > longest * 1.5;
    at += isShortened ? longest : minutes;
    turns.push({ minutes: endMinutes, at });
    if (isShortened) breaks.push((startMinutes + endMinutes) / 2);
  }
  const end = turns.at(-1)?.minutes ?? 0;
  if (last > end) turns.push({ minutes: last, at: at + last - end });
  const whole = Math.max(1e-9, turns.at(-1)?.at ?? 0);
  return { x: (minutes) => left + (placeOf(turns, minutes) / whole) * (right - left), breaks };
}

/** Along straight stretches between the turns, and on in the direction of the last beyond them. */
function placeOf(
  turns: readonly { readonly minutes: number; readonly at: number }[],
  minutes: number,
): number {
  const index = turns.findIndex((turn, place) => place > 0 && minutes <= turn.minutes);
  const to = turns[index < 0 ? turns.length - 1 : index];
  const from = turns[(index < 0 ? turns.length - 1 : index) - 1];
  if (from === undefined || to === undefined || to.minutes === from.minutes) return minutes;
  return from.at + ((minutes - from.minutes) / (to.minutes - from.minutes)) * (to.at - from.at);
}
