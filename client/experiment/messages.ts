import type { Display, ExperimentBench, ExperimentPageOptions, TablesPage } from '../../server/protocol.ts';
import type { TakenReading } from '../preview/messages.ts';

/** Whether the page shows the sheet of the experiment, or runs it. */
export type ExperimentMode = 'sheet' | 'bench';

/** How far the mixing of one dough has come. */
export interface DoughRun {
  /** Milliseconds since the epoch, by the clock of the machine; absent while it stands still. */
  readonly startedAt?: number;
  /** Seconds that it was mixed before that. */
  readonly before: number;
  /** The water as it was drawn, °C. */
  readonly waterCelsius?: number;
  /** What is told when the next reading is due, and after how many seconds from `startedAt`. */
  readonly next?: { readonly label: string; readonly seconds: number };
}

/** How far the bench has come with an experiment. */
export interface BenchRun {
  /** The dough that is shown. */
  readonly dough?: string;
  /** By name. */
  readonly doughs: Readonly<Record<string, DoughRun>>;
}

export const noRun: BenchRun = { doughs: {} };

/** What the page of an experiment is shown. */
export type ToExperiment =
  | {
      readonly type: 'experiment';
      readonly page: TablesPage;
      readonly bench: ExperimentBench;
      readonly shownIn?: Display;
      /** How its sheet is wanted. */
      readonly sheet: ExperimentPageOptions;
      readonly run: BenchRun;
      readonly print: string;
    }
  /** There is none: what is so, and what to do. */
  | { readonly type: 'none'; readonly what: string; readonly cure: string }
  | { readonly type: 'mode'; readonly mode: ExperimentMode }
  /** What came of an edit, in one sentence. */
  | { readonly type: 'said'; readonly text: string };

export type FromExperiment =
  | { readonly type: 'ready' | 'print' }
  | { readonly type: 'mode'; readonly mode: ExperimentMode }
  | { readonly type: 'sheet'; readonly sheet: ExperimentPageOptions }
  | { readonly type: 'run'; readonly uri: string; readonly experiment: string; readonly run: BenchRun }
  /** A thermometer was read; it is to become a line of a trial of this dough. */
  | {
      readonly type: 'reading';
      readonly uri: string;
      readonly experiment: string;
      readonly dough: string;
      readonly reading: TakenReading;
    };
