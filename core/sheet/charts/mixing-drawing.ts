import type { ProgrammeCurve } from '../../facts/programme-curve.ts';
import { message } from '../../words/message.ts';
import { type KeyItem, keyOf, type Piece, paragraph, sampleWidth } from './chart-key.ts';
import { programmeRows } from './chart-programme.ts';
import { bandMessage, noTemperature } from './chart-words.ts';
import type { Frame } from './frame.ts';
import { hatchingDefinitions } from './hatching.ts';
import { span } from './markers.ts';
import { type Axis, minuteAxis } from './minute-axis.ts';
import { stageHatchings, stageRows } from './mixing-development.ts';
import { degreeTicksOf, temperaturePlot } from './mixing-temperature.ts';
import { linear } from './scale.ts';
import { drawing, line } from './svg.ts';
import { textWidth } from './text-fit.ts';

/** How far past the end of the programme the axis may go to show what is near. */
const mostBeyond = 1.4;

/** Temperature above, the programme and the development below it, over the same minutes. */
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
  const x = linear(0, lastMinute, left, right);
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
  const programme = programmeRows(curve.phases, axis, y);
  add(programme);
  key.push(...programme.key);
  const stages = stageRows(curve, axis, y);
  add(stages);
  key.push(...stages.key);
  const bandsFrom = y;
  for (const band of curve.bands) {
    add(paragraph(speaker.say(bandMessage(band)), frame, y));
    const { lowMinutes, expectedMinutes, highMinutes } = band;
    const at = { from: x(lowMinutes), middle: x(expectedMinutes), to: x(highMinutes), edge: right };
    add({ svg: span(at, y + 7), height: 16 });
  }
  if (curve.bands.length === 0) y = bandsFrom;
  add(minuteAxis(axis, y + 4));
  add({ svg: '', height: 8 });
  key.push({
    width: sampleWidth,
    sample: ({ x: middle, y: row }) =>
      line({ x: middle, y: row - 7 }, { x: middle, y: row + 7 }, { 'stroke-width': 3 }),
    text: speaker.say(message('chart.mixing-ends', { seconds: curve.programmeMinutes * 60 })),
  });
  add(keyOf(key, frame, y));
  const hatchings = ['falling', ...Object.values(stageHatchings)] as const;
  return drawing(
    texts,
    { width: frame.width, height: y + 4 },
    'mixing',
    hatchingDefinitions(hatchings, frame.name),
    ...drawn,
  );
}

function lastMinuteOf({ bands, programmeMinutes }: ProgrammeCurve): number {
  const near = bands
    .flatMap(({ lowMinutes, highMinutes }) => [lowMinutes, highMinutes])
    .filter((minutes) => minutes <= programmeMinutes * mostBeyond);
  return Math.max(programmeMinutes, ...near);
}
