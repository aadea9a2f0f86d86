import type { CurvePhase, ProgrammeCurve } from '../../facts/programme-curve.ts';
import { message } from '../../words/message.ts';
import { brokenMinutes } from './broken-minutes.ts';
import { type KeyItem, keyOf, type Piece, paragraph, sampleWidth } from './chart-key.ts';
import { programmeRows } from './chart-programme.ts';
import { noTemperature } from './chart-words.ts';
import { type Frame, rowHeight } from './frame.ts';
import { hatchingDefinitions } from './hatching.ts';
import type { Axis } from './minute-axis.ts';
import { mixingBars } from './mixing-bars.ts';
import { developmentPlot, stageHatchings } from './mixing-development.ts';
import { degreeTicksOf, temperaturePlot } from './mixing-temperature.ts';
import { drawing, label, line, type Point, path, stroked, tag, textSize } from './svg.ts';
import { spread, textWidth } from './text-fit.ts';

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
  const leads = [...degreeTicks.map(speaker.celsius), speaker.say(message('chart.speed'))];
  const left = Math.max(...leads.map((one) => textWidth(one))) + 6;
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
  const bars = mixingBars(timed, breaks, axis, y);
  if (bars !== undefined) add(bars);
  else {
    const barsFrom = y;
    const programme = programmeRows(timed, axis, y);
    add(programme);
    add({ svg: breaks.map((at) => breakMark(x(at), barsFrom + 20)).join(''), height: 0 });
    key.push(...programme.key);
  }
  const developmentFrom = y;
  const development = developmentPlot(curve, axis, y);
  add(development);
  drawn.push(stops(curve, axis, developmentFrom, development.plotBottom));
  const minutes = axisRow(curve, timed, axis, y + 2);
  add(minutes);
  key.push(...development.key, ...minutes.key);
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

const bestLine = { 'stroke-width': 2, 'stroke-dasharray': '9 3 2 3' };
const stopLine = { 'stroke-width': 3.5 };

/** Two lines through the development: where it is best stopped, and where the programme stops. The axis below names them. */
function stops(
  { bestStopMinutes }: ProgrammeCurve,
  { x, end, lastMinute }: Axis,
  top: number,
  bottom: number,
): string {
  const best =
    bestStopMinutes !== undefined && bestStopMinutes <= lastMinute
      ? line({ x: x(bestStopMinutes), y: top }, { x: x(bestStopMinutes), y: bottom }, bestLine)
      : '';
  return best + line({ x: end, y: top }, { x: end, y: bottom }, stopLine);
}

/** How far a minute may stand from its mark; what is named may stand further, with a stem. */
const nearMark = 8;
const stemHeight = 6;

/** The minutes at which to stop by their names, and those at which a line of the programme ends, as far as they have room. */
function axisRow(
  { bestStopMinutes, programmeMinutes }: ProgrammeCurve,
  timed: readonly CurvePhase[],
  { x, left, right, end, lastMinute, frame }: Axis,
  y: number,
): Piece & { readonly key: readonly KeyItem[] } {
  const { speaker } = frame;
  const ends = [...new Set([0, ...timed.map(({ endMinutes }) => endMinutes)])];
  const key: KeyItem[] = [];
  let placed: Placed[] = [];
  const place = (at: number, text: string, isNamed: boolean): boolean => {
    const one: Placed = { wanted: x(at), width: textWidth(text), text, isNamed, middle: x(at) };
    const all = [...placed, one].sort((first, other) => first.wanted - other.wanted);
    const middles = spread(
      all.map(({ wanted, width }) => ({ middle: wanted, width })),
      0,
      frame.width,
      8,
    );
    if (middles === undefined) return false;
    const next = all.map((each, index) => ({ ...each, middle: middles[index] ?? each.wanted }));
    const strays = next.some(
      ({ middle, wanted, width, isNamed: named }) =>
        !named &&
        Math.abs(middle - Math.min(Math.max(wanted, width / 2), frame.width - width / 2)) > nearMark,
    );
    if (!strays || isNamed) placed = next;
    return !strays || isNamed;
  };
  const name = (at: number, text: string, look: typeof bestLine | typeof stopLine): void => {
    if (place(at, text, true)) return;
    const sample = ({ x: middle, y: row }: Point): string =>
      line({ x: middle, y: row - 8 }, { x: middle, y: row + 8 }, look);
    key.push({ width: sampleWidth, sample, text });
  };
  name(
    programmeMinutes,
    speaker.say(message('chart.mixing-ends', { seconds: programmeMinutes * 60 })),
    stopLine,
  );
  if (bestStopMinutes !== undefined && bestStopMinutes <= lastMinute)
    name(bestStopMinutes, speaker.say(message('chart.best-stop', { minutes: bestStopMinutes })), bestLine);
  for (const at of ends.filter((one) => Math.abs(one - programmeMinutes) > 1e-6))
    place(at, speaker.say(message('programme.minutes', { minutes: at })), false);
  const texts = placed.map(
    ({ text, middle, wanted, isNamed }) =>
      (isNamed ? line({ x: wanted, y }, { x: middle, y: y + stemHeight }) : '') +
      label(text, { x: middle, y: y + stemHeight + textSize }, 'middle'),
  );
  const marks = ends.map((at) => line({ x: x(at), y }, { x: x(at), y: y + 4 }));
  const beyond = line({ x: end, y }, { x: right, y }, { 'stroke-dasharray': '5 4' });
  return {
    svg: [line({ x: left, y }, { x: end, y }), beyond, ...marks, ...texts].join(''),
    height: stemHeight + rowHeight,
    key,
  };
}

interface Placed {
  readonly wanted: number;
  readonly width: number;
  readonly text: string;
  readonly isNamed: boolean;
  readonly middle: number;
}
