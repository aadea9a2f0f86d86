import { type DoughZone, doughZones } from '../../calc/mixing/dough-zone.ts';
import type { MinutesBand } from '../../calc/mixing/mixing.ts';
import type { GapMap, GapRow } from '../../facts/gap-map.ts';
import type { Grid } from './map-grid.ts';
import { type Point, pointsOf, tag } from './svg.ts';

/** One zone of a map: its outline, and the middle of where it is widest; absent where it is too narrow to see. */
export interface ZoneArea {
  readonly zone: DoughZone;
  readonly outline: readonly Point[];
  readonly widest?: { readonly at: Point; readonly width: number };
}

/** The moment from which a dough is in a zone. */
const starts: Readonly<Record<DoughZone, (row: GapRow) => MinutesBand | 'at once' | undefined>> = {
  'not-yet': () => 'at once',
  developed: ({ developed }) => developed,
  'let-down': ({ letDown }) => letDown,
  breakdown: ({ breakdown }) => breakdown,
};

/** The zones of a map that it shows, from left to right. */
export function zoneAreas(map: GapMap, grid: Grid): ZoneArea[] {
  return doughZones.flatMap((zone, index): ZoneArea[] => {
    const next = doughZones[index + 1];
    const from = map.rows.map((row) => startOf(row, zone, map.lastMinute));
    const to = map.rows.map((row) =>
      next === undefined ? map.lastMinute : startOf(row, next, map.lastMinute),
    );
    if (from.every((minutes, row) => (to[row] ?? 0) - minutes < 1e-6)) return [];
    const outline = [...edgeOf(map, grid, from), ...edgeOf(map, grid, to).reverse()];
    const widest = widestOf(map, grid, from, to);
    return [{ zone, outline, ...(widest === undefined ? {} : { widest }) }];
  });
}

function startOf(row: GapRow, zone: DoughZone, lastMinute: number): number {
  const start = starts[zone](row);
  if (start === 'at once') return 0;
  return Math.min(lastMinute, start?.expected ?? Number.POSITIVE_INFINITY);
}

/** A line through the rows at a minute of each, from the lowest row up. */
function edgeOf({ rows }: GapMap, { x, y, halfRow }: Grid, minutes: readonly number[]): Point[] {
  return rows.flatMap(({ value }, index): Point[] => {
    const at = { x: x(minutes[index] ?? 0), y: y(value) };
    return halfRow === 0
      ? [at]
      : [
          { ...at, y: at.y + halfRow },
          { ...at, y: at.y - halfRow },
        ];
  });
}

function widestOf(
  { rows, mark }: GapMap,
  { x, y, top, bottom, halfRow }: Grid,
  from: readonly number[],
  to: readonly number[],
): ZoneArea['widest'] {
  let found: ZoneArea['widest'];
  // Of places as wide as each other the one nearest to the middle, and none over the formula's own mark and its readings.
  const middle = (top + bottom) / 2;
  const worth = (at: Point, width: number): number =>
    width - Math.abs(at.y - middle) * 0.3 - (halfRow === 0 && Math.abs(at.y - y(mark.value)) < 22 ? 200 : 0);
  for (const [index, { value }] of rows.entries()) {
    const [left, right] = [x(from[index] ?? 0), x(to[index] ?? 0)];
    const at = { x: (left + right) / 2, y: y(value) };
    // A word in the middle of a drawing does not stand over its rim.
    if (halfRow === 0 && (at.y < top + 14 || at.y > bottom - 14)) continue;
    if (found === undefined || worth(at, right - left) > worth(found.at, found.width))
      found = { at, width: right - left };
  }
  return found;
}

const moments = ['developed', 'letDown', 'breakdown'] as const;

/** How far each moment may be off: a shade over the zones on both sides of it. */
export function doubtAreas(map: GapMap, grid: Grid): string[] {
  return moments.map((moment) => {
    const at = (end: 'low' | 'high'): number[] =>
      map.rows.map((row) => Math.min(map.lastMinute, row[moment]?.[end] ?? Number.POSITIVE_INFINITY));
    const [low, high] = [at('low'), at('high')];
    if (low.every((minutes) => minutes >= map.lastMinute)) return '';
    return tag('polygon', {
      points: pointsOf([...edgeOf(map, grid, low), ...edgeOf(map, grid, high).reverse()]),
      fill: 'currentColor',
      'fill-opacity': 0.1,
      class: 'doubt',
    });
  });
}

/** Where one zone goes over into the next, as expected. */
export function zoneEdges(map: GapMap, grid: Grid): string[] {
  return moments.flatMap((moment) =>
    momentEdges(map, grid, (row) => row[moment]?.expected, {
      'stroke-width': 1.8,
      class: `edge ${moment}`,
    }),
  );
}

/** A moment of each row as a line, drawn with `stroke`. */
export function momentEdges(
  map: GapMap,
  grid: Grid,
  momentOf: (row: GapRow) => number | undefined,
  stroke: Readonly<Record<string, string | number>>,
): string[] {
  return stretches(map, momentOf).map((stretch) => edge(map, grid, stretch, stroke));
}

/** A row at a minute. */
export interface RowMoment {
  readonly row: GapRow;
  readonly minutes: number;
}

/** The rows, one after another, that have a moment on the map; a row without it parts two stretches. */
export function stretches(
  { rows, lastMinute }: GapMap,
  momentOf: (row: GapRow) => number | undefined,
): RowMoment[][] {
  const found: RowMoment[][] = [];
  let isOpen = false;
  for (const row of rows) {
    const minutes = momentOf(row);
    const isShown = minutes !== undefined && minutes <= lastMinute;
    if (isShown && isOpen) found.at(-1)?.push({ row, minutes });
    else if (isShown) found.push([{ row, minutes }]);
    isOpen = isShown;
  }
  return found;
}

function edge(
  map: GapMap,
  grid: Grid,
  stretch: readonly RowMoment[],
  stroke: Readonly<Record<string, string | number>>,
): string {
  const rows = stretch.map(({ row }) => row);
  const points = edgeOf(
    { ...map, rows },
    grid,
    stretch.map(({ minutes }) => minutes),
  );
  return tag('polyline', {
    points: pointsOf(points),
    fill: 'none',
    stroke: 'currentColor',
    'stroke-linejoin': 'round',
    ...stroke,
  });
}
