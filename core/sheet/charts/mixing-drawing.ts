import type { CurvePhase, ProgrammeCurve } from '../../facts/programme-curve.ts';
import { message } from '../../words/message.ts';
import { brokenMinutes } from './broken-minutes.ts';
import { type KeyItem, keyOf, type Piece, paragraph, sampleWidth } from './chart-key.ts';
import { programmeRows } from './chart-programme.ts';
import { noTemperature } from './chart-words.ts';
import { type Frame, rowHeight } from './frame.ts';
import { hatchingDefinitions } from './hatching.ts';
import type { Axis } from './minute-axis.ts';
import { developmentPlot, stageHatchings } from './mixing-development.ts';
import { degreeTicksOf, temperaturePlot } from './mixing-temperature.ts';
import { drawing, label, line, path, stroked, tag, textSize } from './svg.ts';
import { textWidth } from './text-fit.ts';

/** How far past the end of the programme the axis goes, so that the way to letting down is a length. */
const leastBeyond = 1.1;
const mostBeyond = 1.6;

/** Temperature above, the programme and the development below it, over the same minutes, long rests shortened. */
export function mixingDrawing(
  curve: ProgrammeCurve,
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const { speaker } = frame;
  const degreeTicks = degreeTicksOf(curve);
  const left = Math.max(0, ...degreeTicks.map((one) => textWidth(speaker.celsius(one)))) + 6;
  const right = frame.width - 10;
  const lastMinute = lastMinuteOf(curve);
  const { x, breaks } = brokenMinutes(curve.phases, lastMinute, left, right);
  const axis: Axis = { frame, x, left, right, lastMinute, end: x(curve.programmeMinutes) };
  const drawn: string[] = [];
  const key: KeyItem[] = [];
  let y = 4;
  const add = ({ svg, height }: Piece): void => {
    drawn.push(svg);
    y += height;
  };
  if (degreeTicks.length === 0) add(paragraph(speaker.say(noTemperature(curve.noCelsius)), frame, y));
  else {
    const plot = temperaturePlot(curve, axis, degreeTicks, y);
    add(plot);
    key.push(...plot.key);
  }
  // What goes in when stands in words at the lines of the mixing.
  const timed = curve.phases.filter(({ startMinutes, endMinutes }) => endMinutes > startMinutes);
  const barsFrom = y;
  const programme = programmeRows(timed, axis, y);
  add(programme);
  add({ svg: breaks.map((minutes) => breakMark(x(minutes), barsFrom + 20)).join(''), height: 0 });
  key.push(...programme.key);
  const developmentFrom = y;
  const development = developmentPlot(curve, axis, y);
  add(development);
  key.push(...development.key, ...stops(curve, axis, developmentFrom, development.plotBottom, drawn));
  add(phaseTicks(timed, axis, y + 2));
  add(keyOf(key, frame, y + 6));
  const hatchings = ['falling', 'rising', ...Object.values(stageHatchings)] as const;
  return drawing(
    texts,
    { width: frame.width, height: y + 10 },
    'mixing',
    hatchingDefinitions(hatchings, frame.name),
    ...drawn,
  );
}

function lastMinuteOf({ bands, bestStopMinutes = 0, programmeMinutes }: ProgrammeCurve): number {
  const near = [
    bestStopMinutes,
    ...bands.flatMap(({ lowMinutes, highMinutes }) => [lowMinutes, highMinutes]),
  ].filter((minutes) => minutes <= programmeMinutes * mostBeyond);
  const furthest = Math.max(programmeMinutes, ...near);
  return bands.length === 0 ? programmeMinutes : Math.max(programmeMinutes * leastBeyond, furthest * 1.03);
}

/** Two strokes across a bar: it is longer than it is drawn. */
function breakMark(x: number, y: number): string {
  return tag('path', {
    d: path`M${x - 6},${y + 9} l6,-18 M${x},${y + 9} l6,-18`,
    ...stroked,
    'stroke-width': 2,
  });
}

/** Two lines through the development: where it is best stopped, and where the programme stops. */
function stops(
  { bestStopMinutes, programmeMinutes }: ProgrammeCurve,
  { x, end, lastMinute, frame }: Axis,
  top: number,
  bottom: number,
  drawn: string[],
): KeyItem[] {
  const { speaker } = frame;
  const items: KeyItem[] = [];
  const bestLine = { 'stroke-width': 2, 'stroke-dasharray': '9 3 2 3' };
  if (bestStopMinutes !== undefined && bestStopMinutes <= lastMinute) {
    drawn.push(line({ x: x(bestStopMinutes), y: top }, { x: x(bestStopMinutes), y: bottom }, bestLine));
    items.push({
      width: sampleWidth,
      sample: ({ x: at, y }) => line({ x: at, y: y - 8 }, { x: at, y: y + 8 }, bestLine),
      text: speaker.say(message('chart.best-stop', { minutes: bestStopMinutes })),
    });
  }
  drawn.push(line({ x: end, y: top }, { x: end, y: bottom }, { 'stroke-width': 3.5 }));
  items.push({
    width: sampleWidth,
    sample: ({ x: at, y }) => line({ x: at, y: y - 8 }, { x: at, y: y + 8 }, { 'stroke-width': 3.5 }),
    text: speaker.say(message('chart.mixing-ends', { seconds: programmeMinutes * 60 })),
  });
  return items;
}

/** The minutes at which a line of the programme ends, those that have room. */
function phaseTicks(timed: readonly CurvePhase[], { x, left, right, end, frame }: Axis, y: number): Piece {
  const { speaker } = frame;
  const minutes = [...new Set([0, ...timed.map(({ endMinutes }) => endMinutes)])];
  const words = (at: number): string => speaker.say(message('programme.minutes', { minutes: at }));
  const finish = minutes.at(-1) ?? 0;
  // The end is told in any case, and what comes before it as far as it has room.
  let edge = frame.width;
  const texts: string[] = [];
  for (const at of minutes.toReversed()) {
    const half = textWidth(words(at)) / 2;
    const place = Math.min(Math.max(x(at), half), frame.width - half);
    if (place + half > edge && at !== finish) continue;
    texts.push(label(words(at), { x: place, y: y + 6 + textSize }, 'middle'));
    edge = place - half - 6;
  }
  const marks = minutes.map((at) => line({ x: x(at), y }, { x: x(at), y: y + 6 }));
  const beyond = line({ x: end, y }, { x: right, y }, { 'stroke-dasharray': '5 4' });
  return {
    svg: [line({ x: left, y }, { x: end, y }), beyond, ...marks, ...texts].join(''),
    height: 6 + rowHeight,
  };
}
