import type { Analysis } from '../analysis/analysis.ts';
import { type TrialFacts, type TrialReadingFacts, trialFactsOf } from '../features/trial-facts.ts';
import { lossMessage } from '../features/trial-words.ts';
import type { Scope } from '../model/scope.ts';
import { degrees, degreesApart, figure } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import { message } from '../words/message.ts';

/** What a trial measured, beside what is worked out for the same minute, in words. */
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
export function trialsOfSheet(analysis: Analysis, scope: Scope, firstLine: number): SheetTrial[] {
  return trialFactsOf(analysis, scope).map((facts) => ({
    title: facts.title,
    line: firstLine + facts.line,
    readings: facts.readings.map((reading) => readingOf(reading, firstLine)),
    notes: notesOf(facts),
  }));
}

function readingOf(reading: TrialReadingFacts, firstLine: number): SheetReading {
  const { minutes, isEnd, line, measuredCelsius, measuredStage, predictedCelsius, predictedStage } = reading;
  return {
    line: firstLine + line,
    when: isEnd ? 'end' : `${figure(minutes, 1)} min`,
    measured: degrees(measuredCelsius),
    ...(predictedCelsius === undefined
      ? {}
      : { workedOut: degrees(predictedCelsius), difference: missWords(measuredCelsius - predictedCelsius) }),
    ...(measuredStage === undefined ? {} : { stage: measuredStage }),
    ...(predictedStage === undefined ? {} : { stageWorkedOut: predictedStage }),
  };
}

function missWords(celsius: number): string {
  if (Math.abs(celsius) < 0.05) return 'as worked out';
  return `${degreesApart(Math.abs(celsius))} ${celsius > 0 ? 'warmer' : 'colder'}`;
}

function notesOf({ spreadCelsius, noPrediction, loss }: TrialFacts): string[] {
  return [
    ...(spreadCelsius === undefined
      ? noPrediction === undefined
        ? []
        : [inMarks(message('readings.alone', { reason: noPrediction }))]
      : [inMarks(message('readings.miss', { apartCelsius: spreadCelsius }))]),
    ...(loss === undefined ? [] : [inMarks(lossMessage(loss))]),
  ];
}
