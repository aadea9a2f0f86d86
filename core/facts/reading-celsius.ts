import type { CurveReading } from './programme-curve.ts';

/** A dough as far as its temperature is known at a minute. */
interface CoursePoint {
  readonly minutes: number;
  readonly celsius?: number | undefined;
}

/**
 * Where a reading stands beside the course of a programme, °C: off it by as much as it was off its own day's, whose water and room were
 * others; as it was read where nothing can be computed of its day.
 */
export function readingCelsius(
  { minutes, celsius, offCelsius }: CurveReading,
  course: readonly CoursePoint[],
): number {
  const now = offCelsius === undefined ? undefined : celsiusAt(course, minutes);
  return now === undefined || offCelsius === undefined ? celsius : now + offCelsius;
}

function celsiusAt(points: readonly CoursePoint[], minutes: number): number | undefined {
  const right = points.find((point) => point.minutes >= minutes - 1e-6);
  const left = points.findLast((point) => point.minutes <= minutes + 1e-6);
  if (left?.celsius === undefined || right?.celsius === undefined) return undefined;
  const width = right.minutes - left.minutes;
  const part = width > 0 ? (minutes - left.minutes) / width : 1;
  return left.celsius + part * (right.celsius - left.celsius);
}
