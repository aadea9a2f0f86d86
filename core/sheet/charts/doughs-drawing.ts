import { stageMessage } from '../../analysis/mix-analysis.ts';
import { type MixingStage, mixingStages } from '../../calc/mixing/development.ts';
import type { CurvePoint } from '../../facts/dough-curve.ts';
import type { Message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { type Frame, inBothWidths, rowHeight } from './frame.ts';
import { filledWith, hatchingDefinitions } from './hatching.ts';
import { marker } from './markers.ts';
import { minuteAxis } from './minute-axis.ts';
import { stageHatchings } from './mixing-development.ts';
import { linear, type Scale, ticks } from './scale.ts';
import { drawing, escaped, label, line, type Point, pointsOf, stroked, tag, textSize } from './svg.ts';
import { fitted, isolated, textWidth } from './text-fit.ts';

/** A dough as it is drawn beside others. Minutes run from the start of mixing. */
export interface DrawnDough {
  readonly name: string;
  /** What is expected all along its programme; empty where nothing is. */
  readonly curve: readonly CurvePoint[];
  /** Where its band is drawn. */
  readonly readings: readonly {
    readonly minutes: number;
    readonly celsius?: number;
    readonly bandCelsius?: number;
  }[];
  /** A temperature is drawn at the line of the dough, what was seen or felt above its stages. */
  readonly measured: readonly {
    readonly minutes: number;
    readonly measuredCelsius?: number;
    readonly seen?: string;
  }[];
}

/** Doughs laid over each other in one chart: temperature over minutes with what was measured, and the stages of each below. */
export interface DoughsDrawing {
  readonly title: string;
  readonly description: string;
  readonly narrow: string;
  readonly wide: string;
}

/** `undefined` where nothing of them can be predicted. */
export function doughsDrawing(
  doughs: readonly DrawnDough[],
  said: { readonly title: Message; readonly description: (names: readonly string[]) => Message },
  speaker: Speaker,
): DoughsDrawing | undefined {
  const drawn = doughs.filter(({ curve }) => curve.length > 1);
  if (drawn.length === 0) return undefined;
  const texts = {
    title: speaker.say(said.title),
    description: speaker.say(said.description(drawn.map(({ name }) => name))),
  };
  return { ...texts, ...inBothWidths('experiment', speaker, (frame) => drawnIn(drawn, frame, texts)) };
}

/** A line for each dough, told apart by its dashes and by the sign of its readings. */
const dashes = [undefined, '9 4', '2 3', '10 3 2 3', '5 3', '1 4'];
const plotHeight = 190;
const stripHeight = 16;
/** To either side of a sign. */
const signRoom = 9;

interface Plot {
  readonly frame: Frame;
  readonly x: Scale;
  readonly y: Scale;
}

function drawnIn(
  doughs: readonly DrawnDough[],
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const { width, name, speaker } = frame;
  const warmths = doughs.flatMap(({ curve, measured }) => [
    ...curve.flatMap(({ celsius, bandCelsius }) => [celsius - bandCelsius, celsius + bandCelsius]),
    ...measured.flatMap(({ measuredCelsius }) => measuredCelsius ?? []),
  ]);
  const [low, high] = [Math.floor(Math.min(...warmths)), Math.ceil(Math.max(...warmths))];
  const lastMinute = Math.max(
    ...doughs.flatMap(({ curve, measured }) => [...curve, ...measured].map(({ minutes }) => minutes)),
  );
  const [left, right] = [54, width - 8];
  const plot: Plot = {
    frame,
    x: linear(0, lastMinute, left, right),
    y: linear(low, high, plotHeight, 12),
  };
  const grid = ticks(low, high, 6, 1).map(
    (celsius) =>
      line({ x: left, y: plot.y(celsius) }, { x: right, y: plot.y(celsius) }, { opacity: 0.25 }) +
      label(speaker.celsius(celsius), { x: left - 6, y: plot.y(celsius) + 5 }, 'end', { 'font-size': 13 }),
  );
  const lines = doughs.map((dough, index) => lineOf(dough, index, plot));
  let y = plotHeight + 12;
  const keys = doughs.map((dough, index) => {
    y += rowHeight;
    const words = fitted(isolated(dough.name), width - 64);
    return (
      line({ x: 4, y: y - 5 }, { x: 44, y: y - 5 }, { 'stroke-width': 2.2, ...dashOf(index) }) +
      (dough.measured.some((one) => one.measuredCelsius !== undefined || one.seen !== undefined)
        ? marker(index, { x: 24, y: y - 5 })
        : '') +
      label(words, { x: 54, y })
    );
  });
  y += 12;
  const strips = doughs.map((dough, index) => {
    const seen = seenOf(dough, index, y + textSize + 4, plot);
    const strip = stripOf(dough, y, y + textSize + 4 + seen.height, plot);
    y += textSize + seen.height + stripHeight + rowHeight + 8;
    return strip + seen.svg;
  });
  const axis = minuteAxis({ x: plot.x, left, right, lastMinute, end: right, frame }, y);
  const used = [...new Set(doughs.flatMap(({ curve }) => curve.flatMap(({ stage }) => stage ?? [])))];
  return drawing(
    texts,
    { width, height: y + axis.height },
    'experiment',
    hatchingDefinitions(
      used.flatMap((stage) => (isStage(stage) ? [stageHatchings[stage]] : [])),
      name,
    ),
    ...grid,
    ...lines,
    ...keys,
    ...strips,
    axis.svg,
  );
}

function dashOf(index: number): { 'stroke-dasharray'?: string } {
  const dash = dashes[index % dashes.length];
  return dash === undefined ? {} : { 'stroke-dasharray': dash };
}

/** How warm a dough gets, with its band at each planned reading and its measured ones as signs. */
function lineOf({ curve, readings, measured }: DrawnDough, index: number, { x, y }: Plot): string {
  const points = curve.map(({ minutes, celsius }): Point => ({ x: x(minutes), y: y(celsius) }));
  const bands = readings.flatMap(({ minutes, celsius, bandCelsius }) =>
    celsius === undefined || bandCelsius === undefined
      ? []
      : [
          line(
            { x: x(minutes), y: y(celsius - bandCelsius) },
            { x: x(minutes), y: y(celsius + bandCelsius) },
            { 'stroke-width': 4, opacity: 0.35 },
          ),
        ],
  );
  return [
    ...bands,
    tag('polyline', { ...stroked, points: pointsOf(points), 'stroke-width': 2.2, ...dashOf(index) }),
    ...measured.flatMap(({ minutes, measuredCelsius }) =>
      measuredCelsius === undefined ? [] : marker(index, { x: x(minutes), y: y(measuredCelsius) }),
    ),
  ].join('');
}

/** What was seen and felt of a dough, each at its minute above the stages that were expected, with its words where they fit. */
function seenOf(
  { measured }: DrawnDough,
  index: number,
  top: number,
  { x, frame }: Plot,
): { readonly svg: string; readonly height: number } {
  const seen = measured.flatMap((one) => (one.seen === undefined ? [] : [{ ...one, seen: one.seen }]));
  if (seen.length === 0) return { svg: '', height: 0 };
  const y = top + rowHeight / 2;
  const taken = seen.map(({ minutes }) => ({ left: x(minutes) - signRoom, right: x(minutes) + signRoom }));
  const drawn = seen.map(({ minutes, seen: words }) => {
    const sign = x(minutes);
    const width = textWidth(words);
    const place = [sign + signRoom, sign - signRoom - width]
      .map((left) => ({ left, right: left + width }))
      .find(
        ({ left, right }) =>
          left >= 0 && right <= frame.width && !taken.some((one) => left < one.right && one.left < right),
      );
    if (place !== undefined) taken.push(place);
    return (
      tag('g', {}, tag('title', {}, escaped(words)), marker(index, { x: sign, y })) +
      (place === undefined ? '' : label(words, { x: place.left, y: y + 5 }))
    );
  });
  return { svg: drawn.join(''), height: rowHeight };
}

/** The stages a dough goes through, one ground after another with their words where they fit. */
function stripOf({ name, curve }: DrawnDough, top: number, y: number, { x, frame }: Plot): string {
  const { width, speaker } = frame;
  const stretches: { stage: string; from: number; to: number }[] = [];
  for (const { minutes, stage } of curve) {
    const last = stretches.at(-1);
    if (stage === undefined) continue;
    if (last !== undefined) last.to = minutes;
    if (last?.stage !== stage) stretches.push({ stage, from: minutes, to: minutes });
  }
  const named = wordsThatFit(
    stretches.map(({ stage, from, to }) => ({
      words: speaker.say(stageMessage(stage)),
      left: x(from),
      right: x(to),
    })),
    width,
  );
  const drawn = stretches.map(({ stage, from, to }, index) => {
    const box = { x: x(from), y, width: Math.max(1, x(to) - x(from)), height: stripHeight };
    const fill = isStage(stage) ? filledWith(stageHatchings[stage], frame.name) : 'none';
    const words = named[index];
    return (
      tag('rect', { ...stroked, ...box, fill }) +
      (words === undefined ? '' : label(words.text, { x: words.left, y: y + stripHeight + textSize }))
    );
  });
  return (
    label(fitted(isolated(name), width), { x: 0, y: top + textSize - 2 }, 'start', { 'font-weight': 600 }) +
    drawn.join('')
  );
}

/** The words of the longest stretches first, each below its own where none before it stands in the way. */
function wordsThatFit(
  stretches: readonly { readonly words: string; readonly left: number; readonly right: number }[],
  width: number,
): ({ readonly text: string; readonly left: number } | undefined)[] {
  const taken: { readonly left: number; readonly right: number }[] = [];
  const places: ({ readonly text: string; readonly left: number } | undefined)[] = stretches.map(
    () => undefined,
  );
  const longest = stretches
    .map((stretch, index) => ({ ...stretch, index }))
    .sort((one, other) => other.right - other.left - (one.right - one.left));
  for (const { words, left: from, index } of longest) {
    const left = Math.min(from, width - textWidth(words));
    const right = left + textWidth(words);
    if (taken.some((one) => left < one.right + 8 && one.left < right + 8)) continue;
    taken.push({ left, right });
    places[index] = { text: words, left };
  }
  return places;
}

function isStage(stage: string): stage is MixingStage {
  return (mixingStages as readonly string[]).includes(stage);
}
