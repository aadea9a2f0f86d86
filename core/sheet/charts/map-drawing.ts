import type { DoughZone } from '../../calc/mixing/dough-zone.ts';
import type { GapMap } from '../../facts/gap-map.ts';
import { message } from '../../words/message.ts';
import { boldWider, type KeyItem, keyOf, paragraph, sampleWidth, swatch } from './chart-key.ts';
import { programmeRows } from './chart-programme.ts';
import type { Frame } from './frame.ts';
import { filledWith, type Hatching, hatchingDefinitions } from './hatching.ts';
import { type Grid, mapGrid } from './map-grid.ts';
import { axisMessage, rowWords, zoneMessage } from './map-words.ts';
import { doubtAreas, momentEdges, stretches, type ZoneArea, zoneAreas, zoneEdges } from './map-zones.ts';
import { marker, markerCount } from './markers.ts';
import { minuteAxis } from './minute-axis.ts';
import { drawing, label, line, type Point, path, pointsOf, tag, textSize } from './svg.ts';
import { textWidth } from './text-fit.ts';

/** The ground of each zone: that of a developed dough is clear. */
const zoneHatchings: Readonly<Record<DoughZone, Hatching>> = {
  'not-yet': 'dots',
  developed: 'empty',
  'let-down': 'falling',
  breakdown: 'crossed',
};

const wishedStroke = { 'stroke-width': 2, 'stroke-dasharray': '2 4', class: 'wished' };
const warmStroke = { 'stroke-width': 2.5, 'stroke-dasharray': '9 4', class: 'too-warm' };

/** Minutes across, rows up: zones with their words, the too-warm line, the formula as a mark, readings as points. */
export function mapDrawing(
  map: GapMap,
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const { speaker, name } = frame;
  const grid = mapGrid(map, frame);
  const { left, right, top, bottom } = grid;
  const areas = zoneAreas(map, grid);
  const words = zoneWords(areas, grid);
  const clear = `${name}-clear`;
  const whole = { x: 0, y: 0, width: frame.width, height: bottom };
  const zones = areas.map(({ zone, outline }) =>
    tag('polygon', {
      points: pointsOf(outline),
      fill: filledWith(zoneHatchings[zone], name),
      class: `zone ${zone}`,
    }),
  );
  const axis = { ...grid, lastMinute: map.lastMinute, end: grid.x(map.programmeMinutes) };
  const programme = programmeRows(map.phases, axis, bottom + 4);
  const axisTop = bottom + 4 + programme.height;
  const minutes = minuteAxis(axis, axisTop + 4);
  const keyTop = axisTop + 4 + minutes.height;
  const key = keyOf([...keyItems(map, areas, words, frame), ...programme.key], frame, keyTop);
  return drawing(
    texts,
    { width: frame.width, height: keyTop + key.height + 4 },
    'map',
    hatchingDefinitions([...Object.values(zoneHatchings), 'rising'], name),
    // A word in a zone stands on clear ground, whatever the page behind it looks like.
    tag(
      'clipPath',
      { id: clear },
      tag('path', {
        'clip-rule': 'evenodd',
        d: [whole, ...words.map(({ box }) => box)].map(around).join(' '),
      }),
    ),
    paragraph(speaker.say(axisMessage(map)), frame, 0, true).svg,
    tag(
      'g',
      { 'clip-path': `url(#${clear})` },
      ...zones,
      ...doubtAreas(map, grid),
      ...zoneEdges(map, grid),
      ...momentEdges(map, grid, ({ tooWarmMinutes }) => tooWarmMinutes, warmStroke),
      ...(map.wish === undefined
        ? []
        : momentEdges(map, grid, ({ wished }) => wished?.expected, wishedStroke)),
    ),
    tag('rect', {
      ...{ x: left, y: top, width: right - left, height: bottom - top },
      fill: 'none',
      stroke: 'currentColor',
    }),
    ...rowTicks(map, grid),
    ...words.map(({ text, box }) =>
      label(text, { x: box.x + box.width / 2, y: box.y + textSize + 1 }, 'middle', { 'font-weight': 'bold' }),
    ),
    beforeMark(map, grid),
    ...trialMarks(map, grid),
    ownMark(map, grid),
    programme.svg,
    minutes.svg,
    key.svg,
  );
}

/** A word in its place. */
interface Placed {
  readonly text: string;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

function around({ x, y, width, height }: Placed['box']): string {
  return path`M${x},${y} H${x + width} V${y + height} H${x} Z`;
}

const boxHeight = textSize + 6;

function boxAround(text: string, { x, y }: Point, { left, right }: Grid): Placed['box'] {
  const width = textWidth(text) * boldWider + 8;
  const from = Math.min(Math.max(x - width / 2, left + 1), right - width - 1);
  return { x: from, y: y - boxHeight / 2, width, height: boxHeight };
}

function isOver(one: Placed['box'], other: Placed['box']): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}

/** The words of the zones that have room for theirs; the key names the others. */
function zoneWords(areas: readonly ZoneArea[], grid: Grid): (Placed & { readonly zone: DoughZone })[] {
  const placed: (Placed & { readonly zone: DoughZone })[] = [];
  for (const { zone, widest } of areas) {
    if (widest === undefined) continue;
    const text = grid.frame.speaker.say(zoneMessage(zone));
    const box = boxAround(text, widest.at, grid);
    if (box.width <= widest.width && !placed.some((other) => isOver(other.box, box)))
      placed.push({ zone, text, box });
  }
  return placed;
}

function rowTicks(map: GapMap, { left, y, ticks, frame }: Grid): string[] {
  return ticks.flatMap((value) => [
    line({ x: left - 5, y: y(value) }, { x: left, y: y(value) }),
    label(rowWords(map, value, frame.speaker), { x: left - 8, y: y(value) + textSize * 0.36 }, 'end'),
  ]);
}

/** The formula itself where its programme ends. */
function ownMark(map: GapMap, { x, y }: Grid): string {
  const { mark } = map;
  const at = { x: x(mark.minutes), y: y(mark.value) };
  return (
    tag('circle', { cx: at.x, cy: at.y, r: 8, fill: 'none', stroke: 'currentColor', 'stroke-width': 2 }) +
    tag('circle', { cx: at.x, cy: at.y, r: 4, fill: 'currentColor', class: 'own-mark' })
  );
}

/** The formula as its file has it: a ring, broken, for it is tried otherwise. */
function beforeMark({ before, lastMinute }: GapMap, { x, y, top, bottom }: Grid): string {
  if (before === undefined || before.minutes > lastMinute) return '';
  const at = { x: x(before.minutes), y: y(before.value) };
  return at.y < top || at.y > bottom ? '' : ring(at);
}

function ring({ x, y }: Point): string {
  const stroke = { stroke: 'currentColor', 'stroke-width': 2, 'stroke-dasharray': '3 2' };
  return tag('circle', { cx: x, cy: y, r: 8, fill: 'none', ...stroke, class: 'before' });
}

function trialMarks({ trials, lastMinute }: GapMap, { x, y, top, bottom }: Grid): string[] {
  const names = namesOf(trials);
  return trials.flatMap(({ trial, minutes, value }) => {
    const at = { x: x(minutes), y: y(value) };
    const isShown = names.includes(trial) && minutes <= lastMinute && at.y >= top && at.y <= bottom;
    return isShown ? [marker(names.indexOf(trial), at)] : [];
  });
}

/** The last trials, as many as there are signs. */
function namesOf(trials: GapMap['trials']): string[] {
  return [...new Set(trials.map(({ trial }) => trial))].slice(-markerCount);
}

function keyItems(
  map: GapMap,
  areas: readonly ZoneArea[],
  words: readonly Placed[],
  { speaker, name }: Frame,
): KeyItem[] {
  const { mark, limitCelsius } = map;
  const isNamed = (text: string): boolean => words.some((one) => one.text === text);
  const zones = areas.flatMap(({ zone }) => {
    const text = speaker.say(zoneMessage(zone));
    return isNamed(text) ? [] : [swatch(filledWith(zoneHatchings[zone], name), text)];
  });
  const sample = (draw: (middle: Point) => string, text: string): KeyItem => ({
    width: sampleWidth,
    sample: draw,
    text,
  });
  const isWarm = stretches(map, ({ tooWarmMinutes }) => tooWarmMinutes).length > 0;
  return [
    sample(
      ({ x, y }) =>
        tag('circle', { cx: x, cy: y, r: 7, fill: 'none', stroke: 'currentColor', 'stroke-width': 2 }) +
        tag('circle', { cx: x, cy: y, r: 3.5, fill: 'currentColor' }),
      `${speaker.say(message('map.this-formula'))}: ${rowWords(map, mark.value, speaker)}, ${speaker.minutes(mark.minutes)}`,
    ),
    ...(map.before === undefined
      ? []
      : [
          sample(
            (middle) => ring(middle),
            `${speaker.say(message('before-after.in-file'))}: ${rowWords(map, map.before.value, speaker)}, ${speaker.minutes(map.before.minutes)}`,
          ),
        ]),
    ...(isWarm
      ? [
          sample(
            ({ x, y }) => line({ x: x - 12, y }, { x: x + 12, y }, warmStroke),
            speaker.say(message('map.above', { limitCelsius })),
          ),
        ]
      : []),
    ...(map.wish === undefined
      ? []
      : [
          sample(
            ({ x, y }) => line({ x: x - 12, y }, { x: x + 12, y }, wishedStroke),
            speaker.say(message('map.as-wished')),
          ),
        ]),
    ...zones,
    sample(
      ({ x, y }) =>
        tag('rect', {
          x: x - 12,
          y: y - 7,
          width: 24,
          height: 14,
          fill: 'currentColor',
          'fill-opacity': 0.1,
        }),
      speaker.say(message('chart.may-lie')),
    ),
    ...namesOf(map.trials).map((trial, index) =>
      sample((middle) => marker(index, middle), speaker.say(message('chart.measured', { written: trial }))),
    ),
  ];
}
