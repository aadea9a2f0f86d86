import { linear, ticks } from '../sheet/charts/scale.ts';
import { drawing, label, line, type Point, pointsOf, stroked, tag, textSize } from '../sheet/charts/svg.ts';
import { textWidth } from '../sheet/charts/text-fit.ts';
import { isoOf } from '../text/dates.ts';
import { message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { HistoryFigure } from './figure-table.ts';
import type { FormulaFigures } from './formula-figures.ts';
import type { CoursePoint, History } from './history.ts';

const size = { width: 720, height: 240 };
const top = 14;
const bottom = 44;
const secondsOfDay = 86_400;

/** How much time and which figures a chart shows. */
interface Bounds {
  readonly first: number;
  readonly last: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A figure of a formula over time, as SVG with `currentColor` alone: a step where it changed on the main line, a dot at each
 * revision that changed it; of the temperature at the end of mixing the trials too, measured as a diamond and worked out as
 * a cross. `undefined` where the figure is no number, or never known.
 */
export function historyChart(history: History, figure: HistoryFigure, speaker: Speaker): string | undefined {
  const { number } = figure;
  if (number === undefined) return undefined;
  const valueIn = (figures: FormulaFigures | undefined): number | undefined =>
    figures === undefined ? undefined : number(figures);
  const trials = figure.key === 'end-temperature' ? history.trials : [];
  const dots = history.rows.flatMap(({ seconds, figures, fate, changes }) => {
    const value = valueIn(figures);
    const isChanged = fate === 'new' || changes.some((change) => change.figure === figure.key);
    return value === undefined || !isChanged ? [] : [{ seconds, value }];
  });
  const course = history.course.map(({ seconds, figures }) => ({ seconds, value: valueIn(figures) }));
  const measured = trials.flatMap(({ seconds, measuredCelsius: value }) =>
    value === undefined ? [] : [{ seconds, value }],
  );
  const predicted = trials.flatMap(({ seconds, predictedCelsius: value }) =>
    value === undefined ? [] : [{ seconds, value }],
  );
  const bounds = boundsOf([...course, ...dots, ...measured, ...predicted], history.course);
  if (bounds === undefined) return undefined;

  const axis = ticks(bounds.low, bounds.high, 5);
  const written = (value: number): string => axisText(figure, history, value, speaker);
  const left = Math.max(...axis.map((value) => textWidth(written(value)))) + 14;
  const right = size.width - 14;
  const x = linear(bounds.first, bounds.last, left + 8, right - 8);
  const y = linear(bounds.low, bounds.high, size.height - bottom, top);
  const at = (one: { seconds: number; value: number }): Point => ({ x: x(one.seconds), y: y(one.value) });

  const grid = axis.map(
    (value) =>
      line({ x: left, y: y(value) }, { x: right, y: y(value) }, { 'stroke-opacity': 0.25 }) +
      label(written(value), { x: left - 6, y: y(value) + textSize / 3 }, 'end'),
  );
  const title = figure.name(speaker);
  const description = speaker.say(
    message('history.chart-of', { name: title, otherName: history.formula, count: dots.length }),
  );
  return drawing(
    { title, description },
    size,
    'history',
    ...grid,
    dayAxis(bounds, x, { left, right }),
    ...stepsOf(course, bounds.last, x, y),
    ...dots.map((dot) => tag('circle', { cx: at(dot).x, cy: at(dot).y, r: 3.5, fill: 'currentColor' })),
    ...measured.map((one) => diamond(at(one))),
    ...predicted.map((one) => cross(at(one))),
  );
}

function boundsOf(
  points: readonly { readonly seconds: number; readonly value?: number | undefined }[],
  course: readonly CoursePoint[],
): Bounds | undefined {
  const values = points.flatMap(({ value }) => (value === undefined ? [] : [value]));
  if (values.length === 0) return undefined;
  const times = [...points, ...course].map(({ seconds }) => seconds);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  // A figure that never changed stands in the middle.
  const room = most > least ? (most - least) * 0.08 : Math.max(Math.abs(most) * 0.05, 1e-6);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  return {
    low: least - room,
    high: most + room,
    first: first - (last > first ? 0 : secondsOfDay),
    last: last + (last > first ? 0 : secondsOfDay),
  };
}

/** A figure at the axis: as it is shown elsewhere, with as many places as tell the ticks apart. */
function axisText(figure: HistoryFigure, { rows }: History, value: number, speaker: Speaker): string {
  switch (figure.key) {
    case 'end-temperature':
    case 'water-temperature':
      return speaker.celsius(value);
    case 'mix-minutes':
      return `${speaker.number(value, 1)} min`;
    case 'cost': {
      const currency = rows.flatMap((row) => row.figures?.currency ?? []).at(-1);
      return currency === undefined ? speaker.number(value, 2) : speaker.money(value, currency);
    }
    default:
      return speaker.percent(value, 2);
  }
}

/** The line of what held: level until the next change; open where the figure is not known. */
function stepsOf(
  course: readonly { readonly seconds: number; readonly value: number | undefined }[],
  last: number,
  x: (seconds: number) => number,
  y: (value: number) => number,
): string[] {
  const lines: Point[][] = [];
  let points: Point[] = [];
  for (const [index, { seconds, value }] of course.entries()) {
    if (value === undefined) {
      if (points.length > 0) lines.push(points);
      points = [];
      continue;
    }
    points.push({ x: x(seconds), y: y(value) });
    points.push({ x: x(course[index + 1]?.seconds ?? last), y: y(value) });
  }
  if (points.length > 0) lines.push(points);
  return lines.map((one) => tag('polyline', { points: pointsOf(one), ...stroked, 'stroke-width': 1.8 }));
}

/** Days below the chart, the first and the last and as many between as there is room for. */
function dayAxis(
  { first, last }: Bounds,
  x: (seconds: number) => number,
  { left, right }: { readonly left: number; readonly right: number },
): string {
  const y = size.height - bottom;
  const wide = textWidth('2026-00-00') + 24;
  const most = Math.max(2, Math.floor((right - left) / wide));
  const [from, to] = [Math.floor(first / secondsOfDay), Math.floor(last / secondsOfDay)];
  const step = Math.max(1, Math.ceil((to - from) / (most - 1)));
  const marks: string[] = [];
  for (let day = from; day <= to; day += step) {
    const middle = Math.min(Math.max(x(day * secondsOfDay), left), right);
    const half = textWidth('2026-00-00') / 2;
    const place = Math.min(Math.max(middle, half), size.width - half);
    marks.push(line({ x: middle, y }, { x: middle, y: y + 6 }));
    marks.push(label(isoOf(day), { x: place, y: y + 8 + textSize }, 'middle'));
  }
  return line({ x: left, y }, { x: right, y }) + marks.join('');
}

function diamond({ x, y }: Point): string {
  const points = pointsOf([
    { x, y: y - 6 },
    { x: x + 6, y },
    { x, y: y + 6 },
    { x: x - 6, y },
  ]);
  return tag('polygon', { points, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.8 });
}

function cross({ x, y }: Point): string {
  const arm = { 'stroke-width': 1.8 };
  return (
    line({ x: x - 5, y: y - 5 }, { x: x + 5, y: y + 5 }, arm) +
    line({ x: x - 5, y: y + 5 }, { x: x + 5, y: y - 5 }, arm)
  );
}
