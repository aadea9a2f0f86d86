import type { ProgrammeCurve } from '../../facts/programme-curve.ts';
import { readingCelsius } from '../../facts/reading-celsius.ts';
import { message } from '../../words/message.ts';
import { type KeyItem, type Piece, sampleWidth } from './chart-key.ts';
import { filledWith } from './hatching.ts';
import { marker, markerCount } from './markers.ts';
import type { Axis } from './minute-axis.ts';
import { type Box, boxOf, freePlace } from './place-label.ts';
import { linear, multiples, type Scale, ticks } from './scale.ts';
import { label, line, type Point, path, pointsOf, stroked, tag, textSize } from './svg.ts';

const plotHeight = 96;
/** Apart from each other as far as their letters are high. */
const leastTickHeight = 20;

/** The temperatures that the axis names; none where no temperature is known. */
export function degreeTicksOf(curve: ProgrammeCurve): number[] {
  const { points, targetCelsius } = curve;
  const known = points.flatMap(({ celsius, celsiusLow, celsiusHigh }) =>
    celsius === undefined ? [] : [celsius, celsiusLow ?? celsius, celsiusHigh ?? celsius],
  );
  if (known.length === 0) return [];
  const all = [...known, targetCelsius, ...curve.readings.map((one) => readingCelsius(one, curve.points))];
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
  const height = Math.max(plotHeight, (degreeTicks.length - 1) * leastTickHeight);
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
  const wanted = wantedRibbon(curve, {
    ...{ x, y, left, right },
    low: degreeTicks[0]!,
    high: degreeTicks.at(-1)!,
  });
  const trials = [...new Set(curve.readings.map(({ trial }) => trial))].slice(-markerCount);
  const readings = curve.readings.flatMap((reading) => {
    const { trial, minutes } = reading;
    return trials.includes(trial) && minutes >= 0 && minutes <= lastMinute
      ? [marker(trials.indexOf(trial), at(minutes, readingCelsius(reading, curve.points)))]
      : [];
  });
  const finish = line({ x: end, y: from }, { x: end, y: from + height }, { 'stroke-width': 1.5 });
  const words = called(
    curve,
    { known, at, isBanded: hasBand, passes: wanted.passes, trials, ...{ x, y } },
    { ...{ frame, left, right, end, degreeTicks }, top: from, bottom: from + height },
  );
  return {
    svg: [...grid, wanted.ground, band, course, wanted.crossing, finish, ...readings, ...words.drawn].join(
      '',
    ),
    height: height + textSize,
    key: words.key,
  };
}

interface Course {
  readonly known: readonly { minutes: number; celsius: number; low: number; high: number }[];
  readonly at: (minutes: number, celsius: number) => Point;
  readonly x: Scale;
  readonly y: Scale;
  readonly isBanded: boolean;
  readonly passes: number | undefined;
  readonly trials: readonly string[];
}

interface PlotRoom extends Pick<Axis, 'frame' | 'left' | 'right' | 'end'> {
  readonly degreeTicks: readonly number[];
  readonly top: number;
  readonly bottom: number;
}

/** What stands in the plot, called in its place where there is room, else in the key; trials in the key alone. */
function called(
  curve: ProgrammeCurve,
  { known, at, x, y, isBanded, passes, trials }: Course,
  { frame, left, right, end, top, bottom, degreeTicks }: PlotRoom,
): { readonly drawn: readonly string[]; readonly key: readonly KeyItem[] } {
  const { speaker } = frame;
  const last = known.at(-1)!;
  const band = isBanded ? (last.high - last.low) / 2 : 0;
  const passing =
    curve.points.length > 0 && passes !== undefined ? at(passes, curve.limitCelsius) : undefined;
  const marks = curve.readings.map((reading) => at(reading.minutes, readingCelsius(reading, curve.points)));
  const boxes: Box[] = [...marks, ...(passing === undefined ? [] : [passing])].map((mark) =>
    boxAround(mark, 7),
  );
  boxes.push({ left: end - 1, right: end + 1, top, bottom });
  const target = y(curve.targetCelsius);
  boxes.push({ left, right, top: target - 1, bottom: target + 1 });
  const ground = { points: across(known, at), faint: degreeTicks.map(y) };
  const drawn: string[] = [];
  const key: KeyItem[] = [];
  const call = (text: string, near: Point, sample: KeyItem['sample'], inKey = text): void => {
    const place = freePlace(text, near, { left, right, top, bottom }, { ...ground, boxes });
    if (place === undefined) return void key.push({ width: sampleWidth, sample, text: inKey });
    drawn.push(label(text, place));
    boxes.push(boxOf(text, place));
  };
  const ends = speaker.celsiusBand(last.celsius, band);
  call(
    ends,
    at(last.minutes, last.celsius),
    ({ x: mid, y: row }) => line({ x: mid - 12, y: row }, { x: mid + 12, y: row }, { 'stroke-width': 2.5 }),
    speaker.say(message('chart.dough-end', { written: ends })),
  );
  if (passing !== undefined && passes !== undefined)
    call(
      speaker.say(message('glance.too-warm-from', { limitCelsius: curve.limitCelsius, minutes: passes })),
      passing,
      ring,
    );
  call(
    speaker.say(message('chart.wanted', { celsius: curve.targetCelsius })),
    { x: (left + x(last.minutes)) / 2, y: target },
    ({ x: mid, y: row }) => line({ x: mid - 12, y: row }, { x: mid + 12, y: row }, wantedLine),
  );
  key.push(
    ...trials.map((trial, index) => ({
      width: sampleWidth,
      sample: (middle: Point) => marker(index, middle),
      text: speaker.say(message('chart.measured', { written: trial })),
    })),
  );
  return { drawn, key };
}

function boxAround({ x, y }: Point, half: number): Box {
  return { left: x - half, right: x + half, top: y - half, bottom: y + half };
}

/** Points all over the course and its band, near enough to each other that no letter fits between. */
function across(known: Course['known'], at: Course['at']): Point[] {
  const points: Point[] = [];
  for (const [index, to] of known.entries()) {
    const from = known[index - 1] ?? to;
    const [start, end] = [at(from.minutes, 0).x, at(to.minutes, 0).x];
    const steps = Math.max(1, Math.ceil((end - start) / 6));
    for (let step = 0; step <= steps; step++) {
      const part = step / steps;
      const between = (one: number, other: number): number => one + part * (other - one);
      const minutes = between(from.minutes, to.minutes);
      const low = at(minutes, between(from.low, to.low));
      const high = at(minutes, between(from.high, to.high));
      for (let y = high.y; y < low.y + 6; y += 6) points.push({ x: low.x, y: Math.min(y, low.y) });
    }
  }
  return points;
}

const wantedLine = { 'stroke-dasharray': '7 4', 'stroke-width': 1.5 };

function ring(at: Point): string {
  return tag('path', {
    d: path`M${at.x - 5},${at.y} a5,5 0 1,0 10,0 a5,5 0 1,0 -10,0`,
    ...stroked,
    'stroke-width': 2,
  });
}

/** What is wanted as a ribbon around its temperature, and a ring where the dough leaves it at the warm side. */
function wantedRibbon(
  { targetCelsius, limitCelsius, tooWarm }: ProgrammeCurve,
  plot: { x: Scale; y: Scale; left: number; right: number; low: number; high: number },
): { readonly ground: string; readonly crossing: string; readonly passes: number | undefined } {
  const { x, y, left, right, low, high } = plot;
  const within = (celsius: number): number => y(Math.min(high, Math.max(low, celsius)));
  const top = within(limitCelsius);
  const ribbon = tag('rect', {
    x: left,
    y: top,
    width: right - left,
    height: Math.max(1, within(2 * targetCelsius - limitCelsius) - top),
    fill: 'currentColor',
    'fill-opacity': 0.1,
    class: 'wanted',
  });
  const middle = y(targetCelsius);
  const target = line({ x: left, y: middle }, { x: right, y: middle }, { ...wantedLine, class: 'target' });
  const passes = tooWarm !== undefined && !tooWarm.atLastSpeed ? tooWarm.minutes : undefined;
  const crossing = passes === undefined ? '' : ring({ x: x(passes), y: top });
  return { ground: ribbon + target, crossing, passes };
}
