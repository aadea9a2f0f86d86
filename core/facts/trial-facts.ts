import type { Analysis } from '../analysis/analysis.ts';
import { comparedReadings, lackingOf, missesOf, type TrialAnalysis, trialsOf } from '../analysis/trials.ts';
import type { Known } from '../calc/known.ts';
import { saidValue } from '../model/properties.ts';
import type { Scope } from '../model/scope.ts';
import type { Message } from '../words/message.ts';

/** One trial beside its programme as plain data, for the sheet. What is not known is absent. */
export interface TrialFacts {
  /** Date and words of its header. */
  readonly title: string;
  /** Line of its header, counted in the block of the formula. */
  readonly line: number;
  readonly readings: readonly TrialReadingFacts[];
  /** Measured at the end of mixing, also where nobody says how long it was mixed; absent where it was not noted. */
  readonly endCelsius?: number;
  /** Root of the mean square of what the readings miss the prediction by, °C. */
  readonly spreadCelsius?: number;
  /** Why there is nothing to set beside the readings. */
  readonly noPrediction?: Message;
  readonly frictionCelsius?: number;
  readonly loss?: {
    readonly lostGrams: number;
    readonly pouredGrams: number;
    /** Of what is gone, dough left in bowl, on table and hands by the formula’s own `loss`, grams; absent where it has none. */
    readonly stuckGrams?: number;
    readonly hydrationBefore: number;
    /** The rest read as water. */
    readonly hydrationAfter: number;
    /** All of it read as water: the least the hydration can be. */
    readonly hydrationIfWater: number;
  };
}

export interface TrialReadingFacts {
  /** Counted in the block of the formula. */
  readonly line: number;
  readonly minutes: number;
  readonly isEnd: boolean;
  /** Absent where nobody took it. */
  readonly measuredCelsius?: number;
  readonly measuredStage?: string;
  /** How it felt, in the words of the notation. */
  readonly measuredFeel?: readonly string[];
  readonly predictedCelsius?: number;
  readonly predictedStage?: string;
}

/** The trials of a formula in the order of the file. Runs each programme. */
export function trialFactsOf(analysis: Analysis, scope: Scope): TrialFacts[] {
  return trialsOf(analysis, scope).map(trialFacts);
}

function trialFacts(trial: TrialAnalysis): TrialFacts {
  const compared = comparedReadings(trial);
  const misses = missesOf(compared);
  const lacking = lackingOf(compared);
  const friction = trial.friction();
  const { header, headerLine, said } = trial.model;
  const end = saidValue(said, 'end', 'temperature')?.celsius;
  return {
    title: [header.date, header.words].filter((one) => one !== undefined).join(', '),
    line: headerLine,
    readings: compared.map(
      ({
        line,
        minutes,
        isEnd,
        celsius,
        stage,
        feel,
        predictedCelsius,
        predictedStage,
      }): TrialReadingFacts => ({
        line,
        minutes,
        isEnd,
        ...(celsius === undefined ? {} : { measuredCelsius: celsius }),
        ...(stage === undefined ? {} : { measuredStage: stage }),
        ...(feel === undefined ? {} : { measuredFeel: feel }),
        ...(predictedCelsius.known ? { predictedCelsius: predictedCelsius.value } : {}),
        ...(predictedStage === undefined ? {} : { predictedStage }),
      }),
    ),
    ...(end === undefined ? {} : { endCelsius: end }),
    ...(misses.length === 0
      ? {}
      : { spreadCelsius: Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length) }),
    ...(lacking === undefined ? {} : { noPrediction: lacking }),
    ...present('frictionCelsius', friction),
    ...present('loss', trial.loss),
  };
}

function present<K extends string, T>(key: K, value: Known<T, Message>): { [P in K]?: T } {
  return (value.known ? { [key]: value.value } : {}) as { [P in K]?: T };
}
