import type { CurvePhase } from '../../facts/programme-curve.ts';
import { message } from '../../words/message.ts';
import type { Piece } from './chart-key.ts';
import { filledWith } from './hatching.ts';
import type { Axis } from './minute-axis.ts';
import { label, line, path, stroked, tag, textSize } from './svg.ts';
import { textWidth } from './text-fit.ts';

const barHeight = 22;
const stripHeight = 5;
const besideText = 6;

/**
 * What the mixer does when, each bar with its own words in it: the fullest that have room in all of them, at the shortest the
 * numbers of the speeds behind their one word. Undefined where not even those fit. Work has a hatched foot, a rest has none.
 *
 * @param breaks the middles of rests that are drawn shorter than they are, minutes
 */
export function mixingBars(
  timed: readonly CurvePhase[],
  breaks: readonly number[],
  { x, left, end, frame }: Axis,
  top: number,
): Piece | undefined {
  const { say } = frame.speaker;
  const room = ({ startMinutes, endMinutes }: CurvePhase): number => x(endMinutes) - x(startMinutes);
  const inFull = (phase: CurvePhase): string =>
    say(
      message('chart.phase-lasts', {
        title: phase.title,
        seconds: (phase.endMinutes - phase.startMinutes) * 60,
      }),
    );
  const number = ({ speed }: CurvePhase): string | undefined =>
    speed === undefined ? undefined : String(speed);
  const speeds = say(message('chart.speed'));
  const forms: readonly { readonly of: (phase: CurvePhase) => string | undefined; readonly lead?: string }[] =
    [
      { of: inFull },
      { of: ({ title }) => say(title) },
      ...(textWidth(speeds) + besideText <= left ? [{ of: number, lead: speeds }] : []),
    ];
  const fits = (phase: CurvePhase, text: string | undefined): boolean =>
    text !== undefined && textWidth(text) + 4 <= room(phase);
  // A rest is told by its empty bar, where its word has no room.
  const form = forms.find(({ of }) =>
    timed.every((phase) => phase.kind === 'rest' || fits(phase, of(phase))),
  );
  if (form === undefined) return undefined;
  const bottom = top + 2 + barHeight;
  const bars = timed.map((phase) => {
    const [from, width] = [x(phase.startMinutes), Math.max(0.5, room(phase))];
    const isRest = phase.kind === 'rest';
    const text = [form.of(phase), say(phase.title)].find((one) => fits(phase, one));
    const outline = { stroke: 'currentColor', 'stroke-width': 1.2 };
    const box = {
      x: from,
      y: top + 2,
      width,
      height: barHeight,
      fill: 'none',
      ...outline,
      class: phase.kind,
    };
    const strip = { x: from, y: bottom - stripHeight, width, height: stripHeight, ...outline };
    return (
      tag('rect', box) +
      (isRest ? '' : tag('rect', { ...strip, fill: filledWith('rising', frame.name) })) +
      (text === undefined ? '' : label(text, { x: from + width / 2, y: top + 1 + textSize }, 'middle'))
    );
  });
  const lead =
    form.lead === undefined ? '' : label(form.lead, { x: left - besideText, y: top + 1 + textSize }, 'end');
  const finish = line({ x: end, y: top }, { x: end, y: bottom }, { 'stroke-width': 1.5 });
  return {
    svg: [...bars, ...breaks.map((at) => breakMark(x(at), bottom)), lead, finish].join(''),
    height: barHeight + 4,
  };
}

/** Two strokes across the foot of a bar: it is longer than it is drawn. */
function breakMark(x: number, bottom: number): string {
  return tag('path', {
    d: path`M${x - 5},${bottom + 4} l4,-10 M${x + 1},${bottom + 4} l4,-10`,
    ...stroked,
    'stroke-width': 2,
  });
}
