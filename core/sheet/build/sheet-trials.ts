import type { Analysis } from '../../analysis/analysis.ts';
import { stageMessage } from '../../analysis/mix-analysis.ts';
import { type TrialFacts, type TrialReadingFacts, trialFactsOf } from '../../facts/trial-facts.ts';
import { lossMessage } from '../../facts/trial-words.ts';
import type { Scope } from '../../model/scope.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

/** What a trial measured, beside what is computed for the same minute, in words. */
export interface SheetTrial {
  /** Date and words of its header. */
  readonly title: string;
  readonly line: number;
  readonly readings: readonly SheetReading[];
  /** How far the readings miss the prediction; what its dough weighed less than what went in. */
  readonly notes: readonly string[];
}

export interface SheetReading {
  readonly line: number;
  /** `3 min`, `end`. */
  readonly when: string;
  readonly measured: string;
  readonly workedOut?: string;
  /** `0.4 °C warmer`. */
  readonly difference?: string;
  readonly stage?: string;
  readonly stageWorkedOut?: string;
}

/** The trials of a formula for its sheet, with lines of the file. Runs each programme. */
export function trialsOfSheet(
  analysis: Analysis,
  scope: Scope,
  firstLine: number,
  speaker: Speaker,
): SheetTrial[] {
  return trialFactsOf(analysis, scope).map((facts) => ({
    title: facts.title,
    line: firstLine + facts.line,
    readings: facts.readings.map((reading) => readingOf(reading, firstLine, speaker)),
    notes: notesOf(facts).map(speaker.say),
  }));
}

function readingOf(reading: TrialReadingFacts, firstLine: number, speaker: Speaker): SheetReading {
  const { minutes, isEnd, line, measuredCelsius, measuredStage, predictedCelsius, predictedStage } = reading;
  const stage = (word: string): string => speaker.say(stageMessage(word));
  return {
    line: firstLine + line,
    when: speaker.say(isEnd ? message('readings.end') : message('programme.minutes', { minutes })),
    measured: speaker.celsius(measuredCelsius),
    ...(predictedCelsius === undefined
      ? {}
      : {
          workedOut: speaker.celsius(predictedCelsius),
          difference: speaker.say(missMessage(measuredCelsius - predictedCelsius)),
        }),
    ...(measuredStage === undefined ? {} : { stage: stage(measuredStage) }),
    ...(predictedStage === undefined ? {} : { stageWorkedOut: stage(predictedStage) }),
  };
}

function missMessage(celsius: number): Message {
  const apartCelsius = Math.abs(celsius);
  if (apartCelsius < 0.05) return message('sheet.as-computed');
  return message(celsius > 0 ? 'sheet.warmer' : 'sheet.colder', { apartCelsius });
}

function notesOf({ spreadCelsius, noPrediction, loss }: TrialFacts): Message[] {
  return [
    ...(spreadCelsius === undefined
      ? noPrediction === undefined
        ? []
        : [message('readings.alone', { reason: noPrediction })]
      : [message('readings.miss', { apartCelsius: spreadCelsius })]),
    ...(loss === undefined ? [] : [lossMessage(loss)]),
  ];
}
