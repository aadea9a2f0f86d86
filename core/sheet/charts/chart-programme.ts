import type { CurvePhase } from '../../facts/programme-curve.ts';
import { type Message, message } from '../../words/message.ts';
import { boldWider, callRow, type KeyItem, type Piece, signed } from './chart-key.ts';
import { type Frame, rowHeight } from './frame.ts';
import { filledWith } from './hatching.ts';
import type { Axis } from './minute-axis.ts';
import { label, line, tag, textSize } from './svg.ts';
import { isolated, spread, textWidth } from './text-fit.ts';

const barHeight = 24;

/** What the mixer does when, and what goes in at which minute. */
export function programmeRows(
  phases: readonly CurvePhase[],
  { x, left, right, end, frame }: Axis,
  top: number,
): Piece & { readonly key: readonly KeyItem[] } {
  const { speaker } = frame;
  const timed = phases.filter(({ startMinutes, endMinutes }) => endMinutes > startMinutes);
  const added = additionsOf(phases);
  const letters = added.map(({ minutes }, index) => {
    const text = letterOf(index);
    return { text, middle: x(minutes), width: textWidth(text) * boldWider };
  });
  const places = spread(letters, left - 12, right + 8, 3);
  const barTop = top + (added.length > 0 ? rowHeight + 6 : 2);
  const marks = letters.map(({ text, middle }, index) => {
    const place = places?.[index];
    const stem = line({ x: middle, y: barTop - 5 }, { x: middle, y: barTop }, { 'stroke-width': 2 });
    return place === undefined
      ? stem
      : line({ x: place, y: top + textSize + 2 }, { x: middle, y: barTop - 5 }) +
          stem +
          label(text, { x: place, y: top + textSize }, 'middle', { 'font-weight': 'bold' });
  });
  const bars = timed.map(({ startMinutes, endMinutes, kind }) =>
    bar(x(startMinutes), x(endMinutes), barTop, kind, frame),
  );
  const words = callRow(
    timed.map(({ startMinutes, endMinutes, title }) => {
      const seconds = (endMinutes - startMinutes) * 60;
      const inFull = speaker.say(message('chart.phase-lasts', { title, seconds }));
      return {
        from: x(startMinutes),
        to: x(endMinutes),
        texts: [inFull, speaker.say(title)],
        inFull,
      };
    }),
    left - 12,
    right + 8,
    barTop + barHeight,
  );
  const key = added.map(({ minutes, titles }, index) => {
    const names = titles.map((title) => isolated(speaker.say(title)));
    return signed(letterOf(index), speaker.say(message('chart.added-at', { minutes, names })));
  });
  const finish = line({ x: end, y: top }, { x: end, y: barTop + barHeight }, { 'stroke-width': 1.5 });
  return {
    svg: [...marks, ...bars, finish, words.svg].join(''),
    height: barTop - top + barHeight + words.height,
    key: [...words.key, ...key],
  };
}

/** What goes in at one minute is one mark. */
function additionsOf(phases: readonly CurvePhase[]): { minutes: number; titles: Message[] }[] {
  const found: { minutes: number; titles: Message[] }[] = [];
  for (const { kind, title, startMinutes } of phases) {
    if (kind !== 'load' && kind !== 'add') continue;
    const last = found.at(-1);
    if (last?.minutes === startMinutes) last.titles.push(title);
    else found.push({ minutes: startMinutes, titles: [title] });
  }
  return found;
}

const letterOf = (index: number): string =>
  (index >= 26 ? letterOf(Math.floor(index / 26) - 1) : '') + String.fromCharCode(65 + (index % 26));

/** A rest is an empty bar, low; work stands full, and hatched closer the faster it is. */
function bar(from: number, to: number, top: number, kind: CurvePhase['kind'], frame: Frame): string {
  const outlined = { stroke: 'currentColor', 'stroke-width': 1.2 };
  const isRest = kind === 'rest';
  return tag('rect', {
    x: from,
    y: isRest ? top + barHeight / 2 : top,
    width: Math.max(0.5, to - from),
    height: isRest ? barHeight / 2 : barHeight,
    fill: isRest ? 'none' : filledWith('rising', frame.name),
    ...outlined,
    class: kind,
  });
}
