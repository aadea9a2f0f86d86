import type { ProgrammeCurve } from '../../facts/programme-curve.ts';
import { message } from '../../words/message.ts';
import { type KeyItem, type Piece, sampleWidth, swatch } from './chart-key.ts';
import { filledWith } from './hatching.ts';
import { marker, markerCount } from './markers.ts';
import type { Axis } from './minute-axis.ts';
import { linear, multiples, ticks } from './scale.ts';
import { label, line, type Point, pointsOf, tag, textSize } from './svg.ts';

const plotHeight = 120;

/** The temperatures that the axis names; none where no temperature is known. */
export function degreeTicksOf({ points, readings, targetCelsius }: ProgrammeCurve): number[] {
  const known = points.flatMap(({ celsius, celsiusLow, celsiusHigh }) =>
    celsius === undefined ? [] : [celsius, celsiusLow ?? celsius, celsiusHigh ?? celsius],
  );
  if (known.length === 0) return [];
  const all = [...known, targetCelsius, ...readings.map(({ celsius }) => celsius)];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const found = ticks(low, Math.max(high, low + 2), 5, 1);
  const step = (found[1] ?? found[0]! + 1) - found[0]!;
  return found.length < 2
    ? multiples(Math.floor(low), Math.ceil(high) + 1, 1)
    : withEnds(found, step, low, high);
}

function withEnds(found: readonly number[], step: number, low: number, high: number): number[] {
  const [first, last] = [found[0]!, found.at(-1)!];
  return [...(first > low ? [first - step] : []), ...found, ...(last < high ? [last + step] : [])];
}

/** The course of the temperature with its band, what is wanted, and what trials measured. */
export function temperaturePlot(
  curve: ProgrammeCurve,
  { frame, x, left, right, lastMinute, end }: Axis,
  degreeTicks: readonly number[],
  top: number,
): Piece & { readonly key: readonly KeyItem[] } {
  const { speaker } = frame;
  const from = top + textSize / 2;
  const height = Math.max(plotHeight, (degreeTicks.length - 1) * 22);
  const y = linear(degreeTicks[0]!, degreeTicks.at(-1)!, from + height, from);
  const at = (minutes: number, celsius: number): Point => ({ x: x(minutes), y: y(celsius) });
  const grid = degreeTicks.map(
    (celsius) =>
      line({ x: left, y: y(celsius) }, { x: right, y: y(celsius) }, { 'stroke-opacity': 0.35 }) +
      label(speaker.celsius(celsius), { x: left - 6, y: y(celsius) + textSize * 0.36 }, 'end'),
  );
  const known = curve.points.flatMap(({ minutes, celsius, celsiusLow, celsiusHigh }) =>
    celsius === undefined
      ? []
      : [{ minutes, celsius, low: celsiusLow ?? celsius, high: celsiusHigh ?? celsius }],
  );
  const hatched = filledWith('falling', frame.name);
  const lows = known.map(({ minutes, low }) => at(minutes, low));
  const highs = known.map(({ minutes, high }) => at(minutes, high));
  const hasBand = known.some(({ low, high }) => high - low > 0.05);
  const band = hasBand
    ? tag('polygon', {
        points: pointsOf([...lows, ...highs.reverse()]),
        fill: hatched,
        stroke: 'currentColor',
        'stroke-width': 0.8,
        class: 'band',
      })
    : '';
  const course = tag('polyline', {
    points: pointsOf(known.map(({ minutes, celsius }) => at(minutes, celsius))),
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': 2.5,
    'stroke-linejoin': 'round',
    class: 'course',
  });
  const wantedLine = { 'stroke-dasharray': '7 4', 'stroke-width': 1.5 };
  const target = line(
    { x: left, y: y(curve.targetCelsius) },
    { x: right, y: y(curve.targetCelsius) },
    { ...wantedLine, class: 'target' },
  );
  const trials = [...new Set(curve.readings.map(({ trial }) => trial))].slice(-markerCount);
  const readings = curve.readings.flatMap(({ trial, minutes, celsius }) =>
    trials.includes(trial) && minutes >= 0 && minutes <= lastMinute
      ? [marker(trials.indexOf(trial), at(minutes, celsius))]
      : [],
  );
  const finish = line({ x: end, y: from }, { x: end, y: from + height }, { 'stroke-width': 1.5 });
  const last = known.at(-1)!;
  const key: KeyItem[] = [
    {
      width: sampleWidth,
      sample: ({ x: mid, y: row }) =>
        line({ x: mid - 12, y: row }, { x: mid + 12, y: row }, { 'stroke-width': 2.5 }),
      text: speaker.say(message('chart.dough-end', { celsius: last.celsius })),
    },
    {
      width: sampleWidth,
      sample: ({ x: mid, y: row }) => line({ x: mid - 12, y: row }, { x: mid + 12, y: row }, wantedLine),
      text: speaker.say(message('chart.wanted', { celsius: curve.targetCelsius })),
    },
    ...(hasBand ? [swatch(hatched, speaker.say(message('chart.may-lie')))] : []),
    ...trials.map((trial, index) => ({
      width: sampleWidth,
      sample: (middle: Point) => marker(index, middle),
      text: speaker.say(message('chart.measured', { written: trial })),
    })),
  ];
  return {
    svg: [...grid, band, target, course, finish, ...readings].join(''),
    height: height + textSize,
    key,
  };
}
