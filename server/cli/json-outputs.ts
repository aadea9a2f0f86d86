import type {
  Comparison,
  DegreeOfMixing,
  ExperimentView,
  ExportRow,
  FormulaTotals,
  GapCell,
  GapPoint,
  GapTrialPoint,
  HistoryData,
  Level,
  MapAxis,
  MinutesBand,
  MixingStage,
  OverlaidFormula,
  PlanView,
  RulePage,
  SheetDocument,
  SheetOrigin,
} from '../../core/index.ts';

/**
 * What the command line writes for another program, one type a command; the published schemas are made from these. Lines and columns
 * count from one. A member is absent where its figure is not known. Each output keeps its version until a member goes, is renamed or
 * gets another unit; new members may come at any time.
 */

/** `doughwright check --format json`: the findings, in the order of the files and their lines. */
export type CheckOutput = readonly CheckFinding[];

export interface CheckFinding extends CheckPlace {
  readonly endColumn: number;
  readonly level: Level;
  /** The code of the rule. */
  readonly code: string;
  /** Other places that have a part in it. */
  readonly related?: readonly CheckPlace[];
}

export interface CheckPlace {
  readonly file: string;
  readonly line: number;
  /** In UTF-16 units. */
  readonly column: number;
  /** A sentence, in the language asked for. */
  readonly message: string;
}

/** `doughwright totals --json`: each formula with what it comes to. */
export type TotalsOutput = readonly Omit<FormulaTotals, 'resolved'>[];

/** `doughwright compare --format json`: what changed. */
export type CompareOutput = Omit<Comparison, 'named'>;

/** `doughwright history --format json`: what became of the figures of a formula. */
export type HistoryOutput = HistoryData;

/** `doughwright sheet --format json`: batch sheets. */
export type SheetOutput = readonly (Omit<SheetDocument, 'uri' | 'labels'> & Omit<SheetOrigin, 'date'>)[];

/** `doughwright plan --format json`: production runs. */
export type PlanOutput = readonly (Omit<PlanView, 'uri' | 'complete' | 'doughs'> & {
  readonly file: string;
  readonly doughs: readonly (Omit<PlanView['doughs'][number], 'uri'> & { readonly file: string })[];
})[];

/** `doughwright experiment --format json`: experiments, with what is expected of each dough and what was read. */
export type ExperimentOutput = readonly (Omit<ExperimentView, 'uri' | 'complete'> & {
  readonly file: string;
})[];

/** `doughwright overlay --format json`: formulas laid over each other, each with its curve and its figures. */
export type OverlayOutput = readonly (Omit<OverlaidFormula, 'uri'> & { readonly file: string })[];

/** `doughwright export --format json`: a row for each line of each part. */
export type ExportOutput = readonly ExportRow[];

/** `doughwright rules --json`: the rules by code. */
export type RulesOutput = readonly ({ readonly code: string; readonly level: Level } & RulePage)[];

/** `doughwright blend --json`: shares of flours. */
export interface BlendOutput {
  readonly flours: readonly { readonly name: string; readonly share: number }[];
  /** Fractions, as the names say. */
  readonly proteinAt14PercentMoisture?: number;
  readonly ashOfDryMatter?: number;
  readonly pricePerKilogram?: number;
  readonly currency?: string;
}

/** `doughwright map --format json`: the map of the gap of each formula. */
export type MapOutput = readonly MapOfFormula[];

export interface MapOfFormula {
  readonly version: 1;
  readonly file: string;
  readonly formula: string;
  /** Of the header of the mix. */
  readonly line: number;
  /** Why there is no map, as a sentence; then nothing follows. */
  readonly none?: string;
  /** What the map says, a sentence each. */
  readonly sentences?: readonly string[];
  readonly mixer?: string;
  readonly against?: MapAxis;
  /** The two flours, of which the rows have the share of the second. */
  readonly flours?: readonly [from: string, to: string];
  readonly programmeMinutes?: number;
  readonly lastMinute?: number;
  readonly targetCelsius?: number;
  /** The temperature from which on a dough is too warm. */
  readonly limitCelsius?: number;
  /** The degree of mixing that the formula wishes, where it is another than an improved mix. */
  readonly wish?: DegreeOfMixing;
  /** From the lowest value up; one of them is the formula itself. */
  readonly rows?: readonly MapOutputRow[];
  /** The formula as it is written, where its programme ends. */
  readonly mark?: GapPoint & { readonly stage: MixingStage };
  /** Readings of trials. */
  readonly trials?: readonly GapTrialPoint[];
}

/** One row by minutes. What never comes, or is not known, is absent. */
export interface MapOutputRow {
  readonly value: number;
  readonly isOwn: boolean;
  readonly developed?: MinutesBand;
  readonly letDown?: MinutesBand;
  readonly breakdown?: MinutesBand;
  /** When it is developed as the formula wishes. */
  readonly wished?: MinutesBand;
  /** From this minute on it is above the limit. */
  readonly tooWarmMinutes?: number;
  /** From developed to let-down as expected, minutes of mixing without rests: the gap. */
  readonly gapMinutes?: number;
  readonly cells: readonly GapCell[];
}
