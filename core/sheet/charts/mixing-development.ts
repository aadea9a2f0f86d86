import { stageMessage } from '../../analysis/mix-analysis.ts';
import type { MixingStage } from '../../calc/mixing/development.ts';
import type { ProgrammeCurve } from '../../facts/programme-curve.ts';
import { callRow, type KeyItem, type Piece, paragraph } from './chart-key.ts';
import { noDevelopment } from './chart-words.ts';
import { filledWith, type Hatching } from './hatching.ts';
import type { Axis } from './minute-axis.ts';
import { stagesOf } from './mixing-stages.ts';
import { linear } from './scale.ts';
import { line, path, pointsOf, tag } from './svg.ts';

const stageHeight = 46;

export const stageHatchings: Readonly<Record<MixingStage, Hatching>> = {
  'pick-up': 'dots',
  'clean-up': 'level',
  developing: 'rising',
  developed: 'grid',
  'let-down': 'falling close',
  breakdown: 'crossed close',
};

/** How far the dough is developed, each stage with its word and its hatching. */
export function stageRows(
  curve: ProgrammeCurve,
  axis: Axis,
  top: number,
): Piece & { readonly key: readonly KeyItem[] } {
  const { frame, x, left, right } = axis;
  const stages = stagesOf(curve);
  if (stages.length === 0) {
    const said = paragraph(frame.speaker.say(noDevelopment(curve.noDevelopment)), frame, top + 2);
    return { svg: said.svg, height: said.height + 4, key: [] };
  }
  const from = top + 4;
  const bottom = from + stageHeight;
  const y = linear(0, 1, bottom, from);
  const known = curve.points.flatMap(({ minutes, development }) =>
    development === undefined ? [] : [{ minutes, development: Math.min(1, development) }],
  );
  const at = (minutes: number): number => {
    const after = known.findIndex((one) => one.minutes >= minutes);
    const [one, other] = [known[Math.max(0, after - 1)]!, known[after < 0 ? known.length - 1 : after]!];
    const width = other.minutes - one.minutes;
    const part = width > 0 ? (minutes - one.minutes) / width : 1;
    return one.development + part * (other.development - one.development);
  };
  const areas = stages.map(({ stage, from: start, to: end }) => {
    const inside = known.filter(({ minutes }) => minutes > start && minutes < end);
    const upper = [
      { minutes: start, development: at(start) },
      ...inside,
      { minutes: end, development: at(end) },
    ].map(({ minutes, development }) => ({ x: x(minutes), y: y(development) }));
    return tag('polygon', {
      points: pointsOf([{ x: x(start), y: bottom }, ...upper, { x: x(end), y: bottom }]),
      fill: filledWith(stageHatchings[stage], frame.name),
      stroke: 'currentColor',
      'stroke-width': 1.2,
      class: stage,
    });
  });
  const full = tag('path', {
    d: path`M${left},${from} H${axis.end}`,
    fill: 'none',
    stroke: 'currentColor',
    'stroke-dasharray': '2 4',
  });
  const finish = line({ x: axis.end, y: from }, { x: axis.end, y: bottom }, { 'stroke-width': 1.5 });
  const words = callRow(
    stages.map(({ stage, from: start, to: end }) => {
      const said = frame.speaker.say(stageMessage(stage));
      return { from: x(start), to: x(end), texts: [said], inFull: said };
    }),
    left - 12,
    right + 8,
    bottom,
    // Phases have numbers, additions capitals.
    (index) => String.fromCharCode(97 + index),
  );
  return {
    svg: [full, ...areas, finish, words.svg].join(''),
    height: bottom - top + words.height,
    key: [...words.key],
  };
}
