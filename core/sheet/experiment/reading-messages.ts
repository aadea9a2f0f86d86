import { stageMessage } from '../../analysis/mix-analysis.ts';
import { expectedMessage, expectedStages } from '../../facts/experiment-words.ts';
import { feelFacts } from '../../facts/trial-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { DrawnDough } from '../charts/doughs-drawing.ts';
import type {
  ExperimentDoughView,
  ExperimentView,
  MeasuredReadingView,
  PlannedReadingView,
} from './experiment-view.ts';

/** Why a dough cannot be predicted, at all or from one of its readings on. */
export function unknownSentences({
  name,
  reason,
  readings,
  programmeMinutes = 0,
}: ExperimentDoughView): readonly Message[] {
  if (reason !== undefined) return [message('experiment.not-predicted', { name, sentence: reason })];
  const first = readings.find((one) => one.reason !== undefined && one.minutes <= programmeMinutes + 1e-6);
  if (first?.reason === undefined) return [];
  return [message('experiment.not-predicted-at', { name, minutes: first.minutes, sentence: first.reason })];
}

/** Which doughs are done before the last reading, one sentence for those that are done at the same minute. */
export function doneSentences({ doughs, readMinutes }: ExperimentView): readonly Message[] {
  const last = readMinutes.at(-1) ?? 0;
  const done = new Map<number, string[]>();
  for (const { name, programmeMinutes: minutes } of doughs)
    if (minutes !== undefined && minutes + 1e-6 < last)
      done.set(minutes, [...(done.get(minutes) ?? []), name]);
  return [...done]
    .toSorted(([one], [other]) => one - other)
    .map(([minutes, names]) => message('experiment.done-before', { minutes, names }));
}

/** What is expected at a reading, in words. */
export function cellOf(reading: PlannedReadingView, say: Speaker['say']): string {
  const said = expectedMessage(reading);
  return said === undefined ? '–' : say(said);
}

/** What was measured at a reading, in words. */
export function measuredMessage(reading: MeasuredReadingView): Message {
  const [facts, celsius] = [seenFacts(reading), reading.measuredCelsius];
  return celsius === undefined
    ? message('experiment.seen', { facts })
    : message('experiment.measured-seen', { celsius, facts });
}

/** The stage and the words of feel of a reading. */
export function seenFacts({ measuredStage, measuredFeel = [] }: MeasuredReadingView): readonly Message[] {
  return [...(measuredStage === undefined ? [] : [stageMessage(measuredStage)]), ...feelFacts(measuredFeel)];
}

/** What was expected, as finely as a thermometer reads, so that the difference beside it is that of the two figures. */
export function besideMessage(reading: MeasuredReadingView): Message | undefined {
  const { celsius, bandCelsius: apartCelsius } = reading;
  if (celsius === undefined || apartCelsius === undefined) return undefined;
  const stage = expectedStages(reading);
  return stage === undefined
    ? message('experiment.beside-plain', { celsius, apartCelsius })
    : message('experiment.beside', { celsius, apartCelsius, stage });
}

/** How far measured and expected lie apart, and whether the stage agrees, in words; empty where neither can be compared. */
export function apartOf(
  { apartCelsius, within, stageBeside }: MeasuredReadingView,
  say: Speaker['say'],
): string {
  if (apartCelsius === undefined)
    return stageBeside === undefined ? '' : say(message(`experiment.seen-${stageBeside}`));
  const size = Math.abs(apartCelsius);
  const difference =
    size < 0.05
      ? message('reading.as-computed')
      : message(apartCelsius > 0 ? 'reading.warmer' : 'reading.colder', { apartCelsius: size });
  const beside = message(within === true ? 'experiment.within' : 'experiment.outside', { difference });
  return say(
    stageBeside === undefined ? beside : message(`experiment.stage-${stageBeside}`, { difference: beside }),
  );
}

/** The reading as the chart of the doughs draws it. */
export function drawnReading(
  reading: MeasuredReadingView,
  say: Speaker['say'],
): DrawnDough['measured'][number] {
  const facts = seenFacts(reading);
  return { ...reading, ...(facts.length === 0 ? {} : { seen: say(message('experiment.seen', { facts })) }) };
}
