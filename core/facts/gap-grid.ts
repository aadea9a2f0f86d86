import { celsiusGoingOn, type DoughZone, zoneAt } from '../calc/mixing/dough-zone.ts';
import type { GapMap, GapRow } from './gap-map.ts';

/** Columns of a grid. */
const columnCount = 80;

/** One point of the grid of a map. */
export interface GapCell {
  readonly minutes: number;
  readonly zone?: DoughZone;
  readonly celsius?: number;
  readonly isTooWarm: boolean;
}

/** The grid of a map: each of its rows at as many minutes, the first behind the start and the last at its end. */
export function gridOf({ lastMinute, limitCelsius }: GapMap, row: GapRow, columns = columnCount): GapCell[] {
  return Array.from({ length: columns }, (_, index) => {
    const minutes = ((index + 1) * lastMinute) / columns;
    return { minutes, ...stateAt(row, minutes, limitCelsius) };
  });
}

/** What the dough of a row is at a minute. */
export function stateAt(row: GapRow, minutes: number, limitCelsius: number): Omit<GapCell, 'minutes'> {
  const zone = zoneAt(row.outcome, minutes);
  const celsius = celsiusGoingOn(row.outcome, minutes);
  // Hotter than any dough is too warm as well, and has no figure.
  const isTooWarm =
    celsius === undefined
      ? row.tooWarmMinutes !== undefined && minutes >= row.tooWarmMinutes
      : celsius > limitCelsius;
  return {
    ...(zone === undefined ? {} : { zone }),
    ...(celsius === undefined ? {} : { celsius }),
    isTooWarm,
  };
}
