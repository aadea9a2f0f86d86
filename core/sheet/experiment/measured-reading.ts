import { stageMessage } from '../../analysis/mix-analysis.ts';
import { expectedStages } from '../../facts/experiment-words.ts';
import { feelFacts } from '../../facts/trial-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { DrawnDough } from '../charts/doughs-drawing.ts';
import type { MeasuredReadingView } from './experiment-view.ts';

/** What was measured at a reading, in words. */
export function measuredMessage(reading: MeasuredReadingView): Message {
  const [facts, celsius] = [seenFacts(reading), reading.measuredCelsius];
  return celsius === undefined
    ? message('experiment.seen', { facts })
    : message('experiment.measured-seen', { celsius, facts });
}

/** The stage that was seen and the words of what was felt. */
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

/** How far a reading is from what was expected, in words; empty where nothing stands beside it. */
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
