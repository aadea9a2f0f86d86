import { stageMessage } from '../../analysis/mix-analysis.ts';
import type { MixingStage } from '../../calc/mixing/development.ts';
import type { CurveBand, ProgrammeCurve } from '../../facts/programme-curve.ts';
import { stageDrawingSize, stageDrawings } from '../../facts/stage-drawings.ts';
import { callRow, type KeyItem, type Piece, paragraph } from './chart-key.ts';
import { noDevelopment } from './chart-words.ts';
import { rowHeight } from './frame.ts';
import { filledWith, type Hatching } from './hatching.ts';
import type { Axis } from './minute-axis.ts';
import { stagesOf } from './mixing-stages.ts';
import { linear } from './scale.ts';
import { label, line, type Point, path, pointsOf, stroked, tag, textSize } from './svg.ts';
import { spread, textWidth } from './text-fit.ts';

const plotHeight = 62;
/** So many times as developed as full development is the most that is drawn. */
const mostDevelopment = 2;

export const stageHatchings: Readonly<Record<MixingStage, Hatching>> = {
  'pick-up': 'empty',
  'clean-up': 'empty',
  developing: 'empty',
  developed: 'level',
  'let-down': 'falling close',
  breakdown: 'crossed close',
};

/** How dark the ground of each zone is, above that of the zone before. */
const shade = 0.1;

/**
 * How far the dough is developed: one curve, dashed as it would go on at the last speed, over the zones that it goes
 * through. Hatchings change where each is expected; the ground fades in over the band within which it may begin.
 */
export function developmentPlot(
  curve: ProgrammeCurve,
  axis: Axis,
  top: number,
): Piece & { readonly key: readonly KeyItem[]; readonly plotBottom: number } {
  const { frame, x, left, right, lastMinute } = axis;
  const known = curve.points.flatMap(({ minutes, development }) =>
    development === undefined ? [] : [{ minutes, development }],
  );
  if (known.length < 2) {
    const said = paragraph(frame.speaker.say(noDevelopment(curve.noDevelopment)), frame, top + 2);
    return { svg: said.svg, height: said.height + 4, key: [], plotBottom: top };
  }
  const from = top + 4;
  const bottom = from + plotHeight;
  const last = known.at(-1)!;
  const beyond = {
    minutes: lastMinute,
    development: last.development + slopeAtEnd(known) * (lastMinute - last.minutes),
  };
  const high = Math.min(mostDevelopment, Math.max(1.25, beyond.development));
  const y = linear(0, high, bottom, from + 2);
  const at = ({ minutes, development }: Developed): Point => ({
    x: x(minutes),
    y: y(Math.min(high, development)),
  });
  const zones = zonesOf(curve, lastMinute);
  const grounds = zones.map(({ stage, from: start, to }) =>
    tag('rect', {
      x: x(start),
      y: from,
      width: Math.max(0, x(to) - x(start)),
      height: plotHeight,
      fill: filledWith(stageHatchings[stage], frame.name),
      'fill-opacity': 0.5,
      class: `zone ${stage}`,
    }),
  );
  const fades = curve.bands
    .filter(({ lowMinutes }) => lowMinutes < lastMinute)
    .map((band) => fade(band, axis, from));
  const drawings = zones.map(({ stage, from: start, to }) => {
    const middle = (x(start) + x(to)) / 2;
    if (x(to) - x(start) < stageDrawingSize + 4) return '';
    return tag('path', {
      d: stageDrawings[stage],
      transform: `translate(${(middle - stageDrawingSize / 2).toFixed(1)} ${from.toFixed(1)})`,
      ...stroked,
      'stroke-width': 1.6,
      'stroke-linejoin': 'round',
    });
  });
  const full = tag('path', { d: path`M${left},${y(1)} H${right}`, ...stroked, 'stroke-dasharray': '2 4' });
  const course = tag('polyline', {
    points: pointsOf(known.map(at)),
    ...stroked,
    'stroke-width': 2.5,
    class: 'development',
  });
  const goesOn =
    beyond.minutes > last.minutes
      ? tag('polyline', {
          points: pointsOf([at(last), at(beyond)]),
          ...stroked,
          'stroke-width': 2,
          'stroke-dasharray': '5 4',
          class: 'beyond',
        })
      : '';
  const words = stageWords(zones, axis, bottom);
  return {
    svg: [...fades, ...grounds, ...drawings, full, goesOn, course, words.svg].join(''),
    height: bottom - top + words.height,
    key: [...words.key],
    plotBottom: bottom,
  };
}

/** The names of the zones in one row, else in two by turns, else letters that the key tells. */
function stageWords(
  zones: readonly Zone[],
  { x, left, right, frame }: Axis,
  y: number,
): Piece & { readonly key: readonly KeyItem[] } {
  const called = zones.map(({ stage, from, to }) => {
    const text = frame.speaker.say(stageMessage(stage));
    return { text, middle: (x(from) + x(to)) / 2, width: textWidth(text), from: x(from), to: x(to) };
  });
  const [leftmost, rightmost] = [left - 12, right + 8];
  for (const rows of [1, 2]) {
    const rowsOf = Array.from({ length: rows }, (_, row) =>
      called.filter((_one, index) => index % rows === row),
    );
    const places = rowsOf.map((row) => spread(row, leftmost, rightmost, 8));
    if (places.some((row) => row === undefined)) continue;
    const drawn = rowsOf.flatMap((row, number) =>
      row.map(({ text, middle }, index) => {
        const place = places[number]?.[index] ?? middle;
        const base = y + 7 + number * rowHeight;
        // A stem to the second row would cross the words of the first.
        const stem = number === 0 ? line({ x: middle, y: y + 1 }, { x: place, y: y + 7 }) : '';
        return stem + label(text, { x: place, y: base + textSize - 1 }, 'middle');
      }),
    );
    return { svg: drawn.join(''), height: 7 + rows * rowHeight, key: [] };
  }
  return callRow(
    called.map(({ text, from, to }) => ({ from, to, texts: [text], inFull: text })),
    leftmost,
    rightmost,
    y,
    // Phases have numbers.
    (index) => String.fromCharCode(97 + index),
  );
}

interface Developed {
  readonly minutes: number;
  readonly development: number;
}

/** What a minute more of the last work does; development grows with the work alone. */
function slopeAtEnd(known: readonly Developed[]): number {
  for (let index = known.length - 1; index > 0; index--) {
    const [one, other] = [known[index - 1]!, known[index]!];
    const minutes = other.minutes - one.minutes;
    if (minutes > 1e-6 && other.development - one.development > 1e-6)
      return (other.development - one.development) / minutes;
  }
  return 0;
}

interface Zone {
  readonly stage: MixingStage;
  readonly from: number;
  readonly to: number;
}

/** The stages of the programme, and those that the last speed would lead to. */
function zonesOf(curve: ProgrammeCurve, lastMinute: number): Zone[] {
  const inside = stagesOf(curve);
  const end = inside.at(-1)?.to ?? 0;
  const later = curve.bands
    .filter(({ expectedMinutes }) => expectedMinutes >= end && expectedMinutes < lastMinute)
    .map(({ kind, expectedMinutes }) => ({ stage: kind, at: expectedMinutes }));
  const turns = [...inside.map(({ stage, from }) => ({ stage, at: from })), ...later];
  return turns
    .map(({ stage, at }, index) => ({ stage, from: at, to: turns[index + 1]?.at ?? lastMinute }))
    .filter(({ from, to }) => to > from);
}

/** The ground of a zone, darker over the band within which it may begin. */
function fade({ kind, lowMinutes, highMinutes }: CurveBand, { x, right, frame }: Axis, top: number): string {
  const name = `${frame.name}-fade-${kind}`;
  const [low, high] = [
    Math.min(right, x(lowMinutes)),
    Math.min(right, Math.max(x(highMinutes), x(lowMinutes) + 1)),
  ];
  const stop = (offset: number, opacity: number): string =>
    tag('stop', { offset, 'stop-color': 'currentColor', 'stop-opacity': opacity });
  const gradient = tag(
    'linearGradient',
    { id: name, gradientUnits: 'userSpaceOnUse', x1: low, y1: 0, x2: high, y2: 0 },
    stop(0, 0),
    stop(1, shade),
  );
  const ground = tag('rect', {
    x: low,
    y: top,
    width: Math.max(0, right - low),
    height: plotHeight,
    fill: `url(#${name})`,
  });
  return tag('defs', {}, gradient) + ground;
}
