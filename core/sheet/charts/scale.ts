/** Turns a figure into a place of the drawing. */
export type Scale = (value: number) => number;

/** From `low`…`high` to `from`…`to`; a range of nothing stands at `from`. */
export function linear(low: number, high: number, from: number, to: number): Scale {
  const span = high - low;
  return (value) => (span === 0 ? from : from + ((value - low) / span) * (to - from));
}

/** Round figures within a range, at most so many: 1, 2 or 5 times a power of ten apart, never closer than `least`. */
export function ticks(low: number, high: number, most: number, least = 0): number[] {
  const raw = Math.max((high - low) / Math.max(1, most - 1), least, 1e-9);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((one) => one * power).find((one) => one >= raw * (1 - 1e-9))!;
  return multiples(low, high, step);
}

/**
 * The smallest step of a time axis, in minutes, of which `fits` holds: a part or a multiple of an hour. Where none does it
 * is so long that one tick is left.
 */
export function minuteStep(minutes: number, fits: (step: number) => boolean): number {
  for (const step of steps) if (fits(step)) return step;
  const days = 2 ** Math.ceil(Math.log2(Math.max(2, minutes / day)));
  return fits((days / 4) * day) ? (days / 4) * day : days * day;
}

const day = 1440;
const steps = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360, 720, day, 2 * day, 7 * day];

/** All multiples of a step within a range, both ends included; `offset` moves them all. */
export function multiples(low: number, high: number, step: number, offset = 0): number[] {
  const first = Math.ceil((low - offset) / step - 1e-9);
  const last = Math.floor((high - offset) / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * step + offset);
}
