import type { CurvePoint } from '../../facts/dough-curve.ts';

/** An experiment as plain data: what is expected, what was measured, and what that says. Minutes run from the start of mixing. */
export interface ExperimentView {
  readonly experiment: string;
  readonly uri: string;
  /** Of its header, counted from zero. */
  readonly line: number;
  readonly date?: string;
  readonly roomCelsius: number;
  readonly flourCelsius: number;
  readonly waterCelsius: number;
  /** Nobody said how cold the tap is. */
  readonly waterAssumed: boolean;
  readonly readMinutes: readonly number[];
  readonly flours: readonly WeightView[];
  readonly waterGrams: number;
  /** As they are written. */
  readonly notes: readonly string[];
  /** Sentences: a bowl that a dough does not fit, flour that lacks. */
  readonly cautions: readonly string[];
  readonly doughs: readonly ExperimentDoughView[];
  /** The doughs as they are mixed one after another, minutes from the beginning of the first. */
  readonly order: readonly DoughTurn[];
  /** Sentences: what the readings say of mixers and flours, and what one more would settle. */
  readonly lessons: readonly string[];
  readonly next: readonly string[];
  /** Every dough can be predicted at every minute that it is worked. */
  readonly complete: boolean;
}

export interface WeightView {
  readonly name: string;
  readonly grams: number;
}

export interface ExperimentDoughView {
  /** The formula, and where it is mixed when the experiment has it twice. */
  readonly name: string;
  readonly formula: string;
  readonly line: number;
  readonly mixer?: string;
  readonly byHand: boolean;
  readonly doughGrams?: number;
  /** Of its water: as a line of its formula says, else that of the day; absent where lines say different ones. */
  readonly waterCelsius?: number;
  readonly programmeMinutes?: number;
  /** Why it cannot be predicted. */
  readonly reason?: string;
  /** What is expected all along its programme; empty where nothing is. */
  readonly curve: readonly CurvePoint[];
  readonly weights: readonly WeightView[];
  readonly readings: readonly PlannedReadingView[];
  readonly measured: readonly MeasuredReadingView[];
}

export interface PlannedReadingView {
  readonly minutes: number;
  readonly celsius?: number;
  readonly bandCelsius?: number;
  readonly stage?: string;
  /** The stages between which it may be. */
  readonly earliestStage?: string;
  readonly latestStage?: string;
  readonly reason?: string;
}

/** A reading of a trial that names the experiment, beside what its own programme and day let expect. */
export interface MeasuredReadingView extends PlannedReadingView {
  readonly trial: string;
  /** The day of the trial, ISO 8601. */
  readonly date?: string;
  /** Absent where nobody took it. */
  readonly measuredCelsius?: number;
  readonly measuredStage?: string;
  readonly measuredFeel?: readonly string[];
  /** Measured less expected, °C. */
  readonly apartCelsius?: number;
  /** Its temperature lies within the band. */
  readonly within?: boolean;
  /** The stage that was seen, or felt, beside those that it may be in: `sooner` is further on than expected. Absent where none tells. */
  readonly stageBeside?: 'as-expected' | 'sooner' | 'later';
}

export interface DoughTurn {
  readonly dough: string;
  readonly mixer: string;
  readonly beginsMinutes: number;
  readonly readsMinutes: readonly number[];
  readonly endsMinutes: number;
}
