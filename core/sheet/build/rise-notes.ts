import type { FermentationStep, FermentationTimeline } from '../../facts/fermentation-timeline.ts';
import { riseMessage } from '../../facts/fermentation-words.ts';
import { type Message, message } from '../../words/message.ts';

/** Stretches in which a dough is left to rise; in a short rest between the hand does more than the yeast. */
const rising = /^(bulk|proof|retard)\b/;

/**
 * What is expected of the dough in each step of the formula: its temperature, and when it has doubled or how far it grows.
 * By the line of the step, counted in the block.
 */
export function riseNotes(fermentation: FermentationTimeline | undefined): ReadonlyMap<number, Message[]> {
  const steps = fermentation?.steps ?? [];
  return new Map(steps.map((step) => [step.line, notesOf(step, fermentation?.band ?? 1)]));
}

function notesOf(step: FermentationStep, band: number): Message[] {
  const { startCelsius, endCelsius, rise } = step;
  const dough =
    Math.abs(endCelsius - startCelsius) < 0.5
      ? message('clock.dough-at', { celsius: endCelsius })
      : message('clock.dough-from-to', { fromCelsius: startCelsius, toCelsius: endCelsius });
  if (!rising.test(step.words.toLowerCase())) return [dough];
  const middle = doubledAfter(step, 1);
  const from = doubledAfter(step, band);
  // What had doubled before it began tells nothing of when.
  if (from === undefined || (middle ?? 0) < 0) return [dough, riseMessage(rise.expected, band)];
  return [dough, doubledMessage(from, middle, doubledAfter(step, 1 / band))];
}

function doubledMessage(from: number, middle: number | undefined, to: number | undefined): Message {
  const inFives = (minutes: number): number => Math.max(0, Math.round(minutes / 5) * 300);
  if (middle === undefined) return message('chart.may-double', { seconds: inFives(from) });
  const facts = { seconds: inFives(middle), lowSeconds: inFives(from) };
  return to === undefined
    ? message('chart.doubled-or-not', facts)
    : message('chart.doubled', { ...facts, highSeconds: inFives(to) });
}

/** Minutes into a step at which dough that rises so many times as fast has doubled; undefined within the step. */
function doubledAfter({ points, startMinutes }: FermentationStep, factor: number): number | undefined {
  const [first] = points;
  if (first === undefined) return undefined;
  if (first.rise * factor >= 1) return factor === 1 ? -1 : 0;
  for (const [index, right] of points.entries()) {
    const left = points[index - 1];
    if (left === undefined || right.rise * factor < 1) continue;
    const part = (1 / factor - left.rise) / (right.rise - left.rise);
    return left.minutes + part * (right.minutes - left.minutes) - startMinutes;
  }
  return undefined;
}
