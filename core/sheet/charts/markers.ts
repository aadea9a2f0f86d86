import { type Point, path, pointsOf, tag } from './svg.ts';

const size = 4.5;
const outlined = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.8 };

/** Signs of readings, one for each trial: told apart by their shape. */
const shapes: readonly ((at: Point) => string)[] = [
  ({ x, y }) => tag('circle', { cx: x, cy: y, r: size, ...outlined }),
  ({ x, y }) => tag('rect', { x: x - size, y: y - size, width: 2 * size, height: 2 * size, ...outlined }),
  ({ x, y }) =>
    tag('polygon', {
      points: pointsOf([
        { x, y: y - size - 1 },
        { x: x + size + 1, y: y + size },
        { x: x - size - 1, y: y + size },
      ]),
      ...outlined,
    }),
  ({ x, y }) =>
    tag('polygon', {
      points: pointsOf([
        { x, y: y - size - 2 },
        { x: x + size + 2, y },
        { x, y: y + size + 2 },
        { x: x - size - 2, y },
      ]),
      ...outlined,
    }),
];

export const markerCount = shapes.length;

export function marker(index: number, at: Point): string {
  return shapes[index % shapes.length]!(at);
}

/**
 * A span along an axis with what is expected within it: ├──●──┤. An end beyond the axis is an arrow instead, and what
 * lies beyond it as a whole is an arrow alone.
 */
export function span(
  { from, middle, to, edge }: { from: number; middle: number; to: number; edge: number },
  y: number,
): string {
  const drawn = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.5 };
  const tip = from >= edge ? edge : Math.max(edge, from + 10);
  const arrow = tag('path', { d: path`M${tip - 6},${y - 5} L${tip},${y} L${tip - 6},${y + 5}`, ...drawn });
  if (from >= edge) return tag('path', { d: path`M${edge - 18},${y} H${tip}`, ...drawn }) + arrow;
  const bar = (x: number): string => tag('path', { d: path`M${x},${y - 5} V${y + 5}`, ...drawn });
  const end = to > edge ? tip : to;
  return (
    bar(from) +
    tag('path', { d: path`M${from},${y} H${end}`, ...drawn }) +
    (to > edge ? arrow : bar(to)) +
    (middle > edge ? '' : tag('circle', { cx: middle, cy: y, r: 4, fill: 'currentColor' }))
  );
}
