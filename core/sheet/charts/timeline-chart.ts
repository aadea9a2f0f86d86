import type { FermentationStep, FermentationTimeline } from '../../facts/fermentation-timeline.ts';
import { riseMessage } from '../../facts/fermentation-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import type { TimelineMoment, WorkTimeline } from '../build/timeline.ts';
import { chartNamed, inBothWidths } from './frame.ts';
import { elapsed, timelineDrawing, type WorkRow } from './timeline-drawing.ts';

/** The work from the first preferment to ready; undefined where fewer than two of its stretches have a time. */
export function timelineChart(
  timeline: WorkTimeline,
  fermentation: FermentationTimeline | undefined,
  firstLine: number,
  speaker: Speaker,
): ChartSection | undefined {
  const { moments } = timeline;
  if (moments.filter(({ seconds }) => (seconds ?? 0) > 0).length < 2) return undefined;
  const rows = moments
    .filter(({ kind, ofPart }) => kind !== 'fold' && ofPart !== true)
    .map((moment) => rowOf(moment, moments, fermentation, firstLine, speaker));
  const title = speaker.say(message('chart.timeline'));
  const description = descriptionOf(timeline, rows, speaker);
  const texts = { title, description };
  return {
    ...chartNamed('timeline-chart'),
    title,
    description,
    ...inBothWidths('timeline', speaker, (frame) => timelineDrawing(rows, timeline, frame, texts)),
    table: tableOf(rows, speaker),
  };
}

function rowOf(
  moment: TimelineMoment,
  moments: readonly TimelineMoment[],
  fermentation: FermentationTimeline | undefined,
  firstLine: number,
  speaker: Speaker,
): WorkRow {
  const { kind, line, text, startSeconds, seconds = 0, celsius } = moment;
  const step = kind === 'step' ? fermentation?.steps.find((one) => one.line + firstLine === line) : undefined;
  return {
    when: moment.clock?.words ?? elapsed(startSeconds, speaker),
    text:
      kind === 'mix' && seconds > 0
        ? speaker.say(message('chart.mix-lasts', { written: text, seconds }))
        : text,
    startSeconds,
    seconds,
    folds: moments.flatMap((one) => (one.kind === 'fold' && one.line === line ? [one.startSeconds] : [])),
    ...(celsius === undefined ? {} : { aroundCelsius: celsius }),
    ...(step === undefined || fermentation === undefined
      ? {}
      : growthOf(step, fermentation.band, startSeconds, speaker)),
  };
}

/** Stretches in which a dough is left to rise; in a short rest between the hand does more than the yeast. */
const rising = /^(bulk|proof|retard)\b/;

function growthOf(
  step: FermentationStep,
  band: number,
  startSeconds: number,
  speaker: Speaker,
): Pick<WorkRow, 'doubled' | 'growth' | 'dough'> {
  const { startCelsius, endCelsius, rise } = step;
  const dough =
    Math.abs(endCelsius - startCelsius) < 0.5
      ? speaker.celsius(endCelsius)
      : speaker.say(message('chart.from-to', { lowCelsius: startCelsius, highCelsius: endCelsius }));
  if (!rising.test(step.words.toLowerCase())) return { dough };
  const middle = doubledAfter(step, 1);
  const from = doubledAfter(step, band);
  const to = doubledAfter(step, 1 / band);
  // What had doubled before it began tells nothing of when.
  if (from === undefined || (middle ?? 0) < 0)
    return { dough, growth: speaker.say(riseMessage(rise.expected, band)) };
  const place = (minutes: number | undefined): number =>
    minutes === undefined ? Number.POSITIVE_INFINITY : startSeconds + minutes * 60;
  return {
    dough,
    doubled: { from: place(from), middle: place(middle), to: place(to) },
    growth: speaker.say(doubledMessage(from, middle, to)),
  };
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

function descriptionOf(
  { readyClock, endSeconds }: WorkTimeline,
  rows: readonly WorkRow[],
  speaker: Speaker,
): string {
  const { text, when } = rows[0]!;
  const first = { written: text, otherWritten: when };
  const course = speaker.say(
    readyClock === undefined
      ? message('chart.begins-ends', { ...first, seconds: endSeconds })
      : message('chart.begins-ready', { ...first, meant: readyClock.words }),
  );
  const growths = rows.flatMap((row) => (row.growth === undefined ? [] : [`${row.text}: ${row.growth}`]));
  return [course, ...growths].join(' ');
}

function tableOf(rows: readonly WorkRow[], speaker: Speaker): ChartSection['table'] {
  return {
    heads: [
      message('chart.when'),
      message('chart.what'),
      message('sheet.lasts'),
      message('chart.temperature'),
      message('sheet.dough'),
      message('chart.rise'),
    ].map(speaker.say),
    rows: rows.map(({ when, text, seconds, aroundCelsius, dough, growth }) => [
      when,
      text,
      seconds > 0 ? speaker.duration(seconds) : '',
      aroundCelsius === undefined ? '' : speaker.celsius(aroundCelsius),
      dough ?? '',
      growth ?? '',
    ]),
  };
}
