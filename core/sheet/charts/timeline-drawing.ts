import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { clockOf } from '../build/clock.ts';
import type { WorkTimeline } from '../build/timeline.ts';
import { boldWider, type KeyItem, keyOf, type Piece, sampleWidth } from './chart-key.ts';
import { type Frame, rowHeight } from './frame.ts';
import { filledWith, type Hatching, hatchingDefinitions } from './hatching.ts';
import { span } from './markers.ts';
import { linear, minuteStep, multiples, type Scale } from './scale.ts';
import { drawing, escaped, label, line, type Point, path, stroked, tag, textSize } from './svg.ts';
import { isolated, textWidth, wrapped } from './text-fit.ts';

/** A stretch of the work, or a moment of it that takes no time. */
export interface WorkRow {
  readonly when: string;
  readonly text: string;
  readonly startSeconds: number;
  readonly seconds: number;
  readonly folds: readonly number[];
  /** When it is taken to have doubled, seconds from the start of mixing. */
  readonly doubled?: { readonly from: number; readonly middle: number; readonly to: number };
  /** How far it grows, in a sentence. */
  readonly growth?: string;
  readonly dough?: string;
  readonly aroundCelsius?: number;
}

const barHeight = 14;
const wordsWidth = 270;

const hatched: Hatching = 'rising';

/** One row a stretch of work: in words, and as a bar along the time. */
export function timelineDrawing(
  rows: readonly WorkRow[],
  timeline: WorkTimeline,
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const low = Math.min(0, ...rows.map(({ startSeconds }) => startSeconds));
  const high = Math.max(timeline.endSeconds, ...rows.map((row) => row.startSeconds + row.seconds), low + 60);
  const left = frame.isWide ? wordsWidth + 16 : 6;
  const x = linear(low, high, left, frame.width - 10);
  const wordsTo = frame.isWide ? wordsWidth : frame.width;
  let y = 4;
  const drawn = rows.map((row) => {
    const piece = rowPiece(row, { x, wordsTo, top: y, frame });
    y += piece.height;
    return piece.svg;
  });
  const bottom = y;
  const axis = timeAxis(timeline, { low, high, x, left, y: bottom + 4, frame });
  y += axis.height + 4;
  const key = keyOf(keyItems(rows, frame), frame, y);
  const start = line({ x: x(0), y: 4 }, { x: x(0), y: bottom }, { 'stroke-dasharray': '2 4' });
  return drawing(
    texts,
    { width: frame.width, height: y + key.height + 4 },
    'timeline',
    hatchingDefinitions([hatched], frame.name),
    // Narrow, the words stand above the bars and a line through them all would run through the words.
    frame.isWide && low < 0 ? start : '',
    ...drawn,
    axis.svg,
    key.svg,
  );
}

function rowPiece(
  row: WorkRow,
  { x, wordsTo, top, frame }: { x: Scale; wordsTo: number; top: number; frame: Frame },
): Piece {
  const { when, text, startSeconds, seconds, folds, doubled, growth } = row;
  const boldExtra = textWidth(when) * (boldWider - 1);
  const words = [
    ...wrapped(`${when} · ${isolated(text)}`, wordsTo - boldExtra),
    ...wrapped(growth ?? '', wordsTo),
  ];
  const lines = words.map((one, index) => {
    const at = { x: 0, y: top + index * rowHeight + textSize };
    return index === 0 && one.startsWith(when) ? begun(one, when, at) : label(one, at);
  });
  const wordsHeight = words.length * rowHeight;
  const barTop = frame.isWide ? top + 3 : top + wordsHeight + 1;
  const from = x(startSeconds);
  const shape =
    seconds > 0
      ? tag('rect', {
          x: from,
          y: barTop,
          width: Math.max(1, x(startSeconds + seconds) - from),
          height: barHeight,
          fill: filledWith(hatched, frame.name),
          stroke: 'currentColor',
          'stroke-width': 1.2,
        })
      : tag('path', { d: path`M${from},${barTop} l6,7 l-6,7 l-6,-7 z`, ...stroked, 'stroke-width': 1.8 });
  const foldMarks = folds.map((at) =>
    tag('path', { d: path`M${x(at)},${barTop - 1} v16`, ...stroked, 'stroke-width': 4 }),
  );
  const range =
    doubled === undefined
      ? ''
      : span(
          {
            from: x(doubled.from),
            middle: x(Math.min(doubled.middle, far)),
            to: x(Math.min(doubled.to, far)),
            edge: x(startSeconds + seconds),
          },
          barTop + barHeight + 8,
        );
  const barsHeight = barHeight + 1 + (doubled === undefined ? 0 : 14);
  const height = frame.isWide ? Math.max(wordsHeight, barsHeight + 4) : wordsHeight + barsHeight;
  return { svg: [...lines, shape, ...foldMarks, range].join(''), height: height + 7 };
}

/** A line that begins with its time, in bold. */
function begun(text: string, when: string, { x, y }: Point): string {
  return tag(
    'text',
    { x, y, 'font-size': textSize, fill: 'currentColor' },
    tag('tspan', { 'font-weight': 'bold' }, escaped(when)),
    escaped(text.slice(when.length)),
  );
}

/** A time that no drawing reaches, seconds. */
const far = 1e9;

function timeAxis(
  timeline: WorkTimeline,
  {
    low,
    high,
    x,
    left,
    y,
    frame,
  }: { low: number; high: number; x: Scale; left: number; y: number; frame: Frame },
): Piece {
  const clock = clockOf(timeline.asked, timeline.endSeconds, frame.speaker);
  const right = frame.width - 10;
  // Full hours of the clock on the wall, not of the mixing.
  const offset = clock === undefined ? 0 : -secondsOfDay(clock(0).time);
  const words = (seconds: number): string =>
    clock === undefined ? elapsed(seconds, frame.speaker) : clock(seconds).time;
  const step =
    60 *
    minuteStep((high - low) / 60, (minutes) => {
      const texts = multiples(low, high, minutes * 60, offset)
        .slice(0, 40)
        .map(words);
      return x(low + minutes * 60) - x(low) >= Math.max(0, ...texts.map((text) => textWidth(text))) * 1.5 + 8;
    });
  let edge = 0;
  const marks = multiples(low, high, step, offset).map((seconds) => {
    const middle = x(seconds);
    const text = words(seconds);
    const half = textWidth(text) / 2;
    const place = Math.min(Math.max(middle, half), frame.width - half);
    const mark = line({ x: middle, y }, { x: middle, y: y + 6 });
    if (place - half < edge) return mark;
    edge = place + half + 6;
    return mark + label(text, { x: place, y: y + 6 + textSize }, 'middle');
  });
  return { svg: line({ x: left, y }, { x: right, y }) + marks.join(''), height: 6 + rowHeight };
}

function secondsOfDay(time: string): number {
  const [hours, minutes] = time.split(':').map(Number);
  return (hours! * 60 + minutes!) * 60;
}

function keyItems(rows: readonly WorkRow[], { speaker }: Frame): KeyItem[] {
  const items: KeyItem[] = [];
  if (rows.some(({ folds }) => folds.length > 0))
    items.push({
      width: sampleWidth,
      sample: ({ x, y }) => tag('path', { d: path`M${x},${y - 8} v16`, ...stroked, 'stroke-width': 4 }),
      text: speaker.say(message('moment.fold')),
    });
  if (rows.some(({ doubled }) => doubled !== undefined))
    items.push({
      width: sampleWidth,
      sample: ({ x, y }) => span({ from: x - 12, middle: x, to: x + 12, edge: x + 13 }, y),
      text: speaker.say(message('chart.doubled-key')),
    });
  return items;
}

/** A time from the start of mixing: `−12 h`, `0`, `+33 min`. */
export function elapsed(seconds: number, speaker: Speaker): string {
  if (Math.abs(seconds) < 1) return speaker.number(0, 0);
  return `${seconds < 0 ? '−' : '+'}${speaker.duration(Math.abs(seconds))}`;
}
