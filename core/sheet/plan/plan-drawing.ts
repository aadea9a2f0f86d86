import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { type Frame, inBothWidths } from '../charts/frame.ts';
import { filledWith, type Hatching, hatchingDefinitions } from '../charts/hatching.ts';
import { linear, minuteStep, multiples } from '../charts/scale.ts';
import { drawing, label, line, stroked, tag, textSize } from '../charts/svg.ts';
import { fitted, isolated, textWidth } from '../charts/text-fit.ts';
import type { PlanBar, PlanLane, PlanView } from './plan-view.ts';

/** The lanes of a plan against the clock, drawn for a narrow column and for a wide one, and told in a sentence. */
export interface PlanDrawing {
  readonly title: string;
  readonly description: string;
  readonly narrow: string;
  readonly wide: string;
}

/** `undefined` for a plan that has nothing to draw. */
export function planDrawing(view: PlanView, speaker: Speaker): PlanDrawing | undefined {
  const bars = view.lanes.flatMap((lane) => lane.bars);
  if (bars.length === 0) return undefined;
  const title = speaker.say(message('plan.lanes'));
  const late = [...new Set(bars.filter((bar) => bar.late).map(({ name }) => name))];
  const told = message('plan.lanes-told', { names: view.lanes.map(({ name }) => name) });
  const description = [told, ...(late.length === 0 ? [] : [message('plan.lanes-late', { names: late })])]
    .map(speaker.say)
    .join(' ');
  const texts = { title, description };
  return { ...texts, ...inBothWidths('plan', speaker, (frame) => lanesDrawn(view, bars, frame, texts)) };
}

const hatchingOf: Readonly<Record<PlanLane['kind'], Hatching>> = {
  parts: 'dots',
  mixer: 'rising',
  bench: 'empty',
  oven: 'crossed',
  person: 'level',
};
const barHeight = 14;
const rowHeight = 38;
const gap = 10;

function lanesDrawn(
  view: PlanView,
  bars: readonly PlanBar[],
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const { width, name, speaker } = frame;
  const first = Math.min(...bars.map(({ startMinutes }) => startMinutes));
  const last = Math.max(...bars.map(({ endMinutes }) => endMinutes));
  const right = width - 6;
  const x = linear(first, Math.max(last, first + 1), 6, right);
  const parts: string[] = [hatchingDefinitions(Object.values(hatchingOf), name)];
  let y = 0;
  for (const lane of view.lanes) {
    y += textSize + 4;
    parts.push(label(fitted(isolated(lane.name), width), { x: 0, y }, 'start', { 'font-weight': 600 }));
    for (const row of rowsOf(lane.bars.map((bar) => placed(bar, x, right)))) {
      for (const one of row)
        parts.push(...barDrawn(one, one.empty ? 'empty' : hatchingOf[lane.kind], y, name));
      y += rowHeight;
    }
    y += gap;
    parts.push(line({ x: 0, y }, { x: width, y }, { opacity: 0.35 }));
    y += gap;
  }
  const clock = (minutes: number): string =>
    speaker.say(message('time.clock', { minutes: ((minutes % 1440) + 1440) % 1440 }));
  const widest = textWidth('00:00') + 12;
  const step = minuteStep(last - first, (one) => ((right - 6) * one) / Math.max(1, last - first) >= widest);
  for (const minutes of multiples(first, last, step)) {
    const at = x(minutes);
    parts.push(line({ x: at, y: 0 }, { x: at, y: y - gap }, { opacity: 0.2 }));
    const half = textWidth('00:00') / 2;
    parts.push(
      label(clock(minutes), { x: Math.min(Math.max(at, half), width - half), y: y + textSize }, 'middle'),
    );
  }
  return drawing(texts, { width, height: y + textSize + 8 }, 'plan', ...parts);
}

/** A bar and its name where they go, in units of the drawing. */
interface PlacedBar {
  readonly left: number;
  readonly width: number;
  readonly words: string;
  readonly wordsLeft: number;
  readonly late: boolean;
  readonly empty: boolean;
}

/** The name begins where the bar does, or as far before it as it takes to end within the drawing; a late one has a mark. */
function placed(
  { name, startMinutes, endMinutes, late, empty }: PlanBar,
  x: (minutes: number) => number,
  right: number,
): PlacedBar {
  const left = x(startMinutes);
  const words = fitted(`${late ? '! ' : ''}${isolated(name)}`, right);
  const wordsLeft = Math.max(0, Math.min(left, right - textWidth(words)));
  return { left, width: Math.max(2, x(endMinutes) - left), words, wordsLeft, late, empty: empty === true };
}

/** Bars that would overlap, by themselves or with their names, stand below each other: each in the first row with room. */
function rowsOf(bars: readonly PlacedBar[]): PlacedBar[][] {
  const rows: { readonly bars: PlacedBar[]; end: number }[] = [];
  for (const bar of bars) {
    const start = Math.min(bar.left, bar.wordsLeft);
    const end = Math.max(bar.left + bar.width, bar.wordsLeft + textWidth(bar.words) + gap);
    const row = rows.find((one) => one.end <= start + 0.01);
    if (row === undefined) rows.push({ bars: [bar], end });
    else {
      row.bars.push(bar);
      row.end = end;
    }
  }
  return rows.map((row) => row.bars);
}

/** A bar with its name below it; a late one has a thick frame. */
function barDrawn(
  { left, width, words, wordsLeft, late }: PlacedBar,
  hatching: Hatching,
  y: number,
  of: string,
): string[] {
  const box = { x: left, y: y + 4, width, height: barHeight };
  const frame = late ? { 'stroke-width': 2.5 } : {};
  return [
    tag('rect', { ...stroked, ...box, fill: filledWith(hatching, of), ...frame }),
    label(words, { x: wordsLeft, y: y + 4 + barHeight + textSize - 1 }),
  ];
}
