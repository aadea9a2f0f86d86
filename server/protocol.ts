/**
 * What the client and the server say to each other beyond the Language Server Protocol. The client imports the types
 * of this file and nothing else of the server.
 */
import type { WorkspaceEdit } from 'vscode-languageserver';
import type { ComparisonPage } from '../core/compare/comparison-page.ts';
import type { FormulaTemplate } from '../core/features/completion/templates.ts';
import type { OverviewEntry } from '../core/features/outline/overview.ts';
import type { HistoryPage } from '../core/history/history-page.ts';
import type { ExperimentBench } from '../core/sheet/experiment/experiment-bench.ts';
import type { ExperimentPageOptions } from '../core/sheet/experiment/experiment-page.ts';
import type { Page as TablesPage } from '../core/sheet/write/tables.ts';
import type { ReadingOfExperiment } from '../core/workspace/tested-edits.ts';

export type { Change, ChangeGroup } from '../core/compare/comparison.ts';
export type { ComparedBlock, ComparisonPage } from '../core/compare/comparison-page.ts';
export type { ReadingToLog } from '../core/features/actions/log-reading.ts';
export type { FormulaTemplate } from '../core/features/completion/templates.ts';
export type { OverviewEntry, OverviewKind } from '../core/features/outline/overview.ts';
export type { HistoryPage, HistoryPageChart, HistoryPageRow } from '../core/history/history-page.ts';
export type { ImportedTable, TableNote } from '../core/import/import-table.ts';
export type { BenchDough, ExperimentBench } from '../core/sheet/experiment/experiment-bench.ts';
export type { ExperimentPageOptions } from '../core/sheet/experiment/experiment-page.ts';
export type { Page as TablesPage, Table as TablesPageTable } from '../core/sheet/write/tables.ts';
export type { PanelChange } from '../core/workspace/panel-edits.ts';
export type { ReadingOfExperiment } from '../core/workspace/tested-edits.ts';

import type { MapRequest } from '../core/facts/gap-map.ts';
import type { SheetOrigin } from '../core/sheet/build/origin.ts';
import type { SheetDocument } from '../core/sheet/build/sheet-document.ts';
import type {
  ClockRequest,
  SizeRequest,
  TodayConditions,
  WhatIf,
} from '../core/sheet/build/sheet-options.ts';
import type { SheetFormat } from '../core/sheet/write/write-sheets.ts';
import type { Display } from '../core/text/display.ts';
import type { PanelChange } from '../core/workspace/panel-edits.ts';

export type { SheetOrigin } from '../core/sheet/build/origin.ts';
export type {
  Cell,
  ChartSection,
  Column,
  ColumnKey,
  Fact,
  FactsSection,
  NotesSection,
  Row,
  Section,
  SheetDocument,
  SheetFinding,
  SheetNode,
  SheetSize,
  Step,
  StepsSection,
  TableSection,
  WorkMoment,
} from '../core/sheet/build/sheet-document.ts';
export type { SheetLabels } from '../core/sheet/build/sheet-labels.ts';
export type {
  ClockRequest,
  SheetOptions,
  SizeRequest,
  TodayConditions,
  WhatIf,
} from '../core/sheet/build/sheet-options.ts';
export type { SheetFormat } from '../core/sheet/write/write-sheets.ts';
export type { Display } from '../core/text/display.ts';

/** Request `doughwright/sheet`: the batch sheet of the formula at a line, or `null` when no formula stands there. */
export interface SheetParams {
  readonly textDocument: { readonly uri: string };
  /** Zero-based line of the cursor. */
  readonly line: number;
  /** Follow this formula by name instead of the line, when it is still in the file. */
  readonly formula?: string;
  /** What is tried on this sheet alone: absent is as the file has it. */
  readonly size?: SizeRequest;
  readonly today?: TodayConditions;
  readonly clock?: ClockRequest;
  readonly whatIf?: WhatIf;
  /** The map of the gap that is shown too. */
  readonly map?: MapRequest;
}
/** A sheet, and in which units its figures are written: those that fields beside it are to be typed in. */
export type ShownSheet = SheetDocument & { readonly shownIn?: Display };
export type SheetResult = ShownSheet | null;

/** Request `doughwright/sheetText`: the same sheet written for paper, a file or another program. */
export interface SheetTextParams extends SheetParams {
  readonly format: SheetFormat;
  /** What is said of its origin; git and the clock are the client's. */
  readonly origin: SheetOrigin;
}
export type SheetTextResult = { readonly formula: string; readonly text: string } | null;

/** Request `doughwright/status`: what the status bar says of the formula at a line. */
export interface StatusParams {
  readonly textDocument: { readonly uri: string };
  readonly line: number;
}
export interface StatusResult {
  readonly formula: string;
  /** `Harbour Tin: 69 % · 21.4 kg`. */
  readonly text: string;
  readonly tooltip: string;
}

/** Notification `doughwright/changed`: the numbers of these documents may have changed; panels ask again. */
export interface ChangedParams {
  readonly uris: readonly string[];
}

/** Request `doughwright/overview`: what all files of the workspace define, and what a new formula may begin as. */
export interface OverviewResult {
  readonly entries: readonly OverviewEntry[];
  readonly templates: readonly FormulaTemplate[];
}

/** Request `doughwright/newFormula`: the text of a new file with one formula in it. */
export interface NewFormulaParams {
  readonly name: string;
  readonly template: string;
}
export interface NewFormulaResult {
  readonly text: string;
}

/** Request `doughwright/importTable`: formulas made of a pasted table, an `ImportedTable`. */
export interface ImportTableParams {
  /** Where names are looked up from; no such file need be there. */
  readonly textDocument: { readonly uri: string };
  readonly table: string;
}

/** Request `doughwright/edit`: the edit that a panel asks for, computed by the core and made by the editor. */
export interface EditParams {
  readonly textDocument: { readonly uri: string };
  readonly line: number;
  readonly formula?: string;
  readonly change: PanelChange;
}
/** The edit for the editor to make, or one sentence that says why there is none. */
export type EditResult = { readonly edit: WorkspaceEdit } | { readonly cannot: string };

/** Request `doughwright/compare`: what changed in a file from another text of it to the present one. */
export interface CompareParams {
  readonly textDocument: { readonly uri: string };
  readonly before: string;
}
/** All of it in words, or `null` where the file is not known. */
export type CompareResult = ComparisonPage | null;

/** Request `doughwright/history`: what became of the figures of a formula over the revisions of git. */
export interface HistoryParams {
  readonly textDocument: { readonly uri: string };
  readonly line: number;
  readonly formula?: string;
}
/** All of it in words, a sentence that says why there is none, or `null` where the file or its formula is not known. */
export type HistoryResult = { readonly page: HistoryPage } | { readonly cannot: string } | null;

/** Request `doughwright/plan`: the production run at a line, or of that name, in words and as a page to print. */
export interface PlanParams {
  readonly textDocument: { readonly uri: string };
  readonly line: number;
  readonly plan?: string;
}
/** A sentence says why there is none; `null` where the file is not known. */
export type PlanResult =
  | { readonly page: TablesPage; readonly html: string }
  | { readonly cannot: string }
  | null;

/** Request `doughwright/experiment`: the experiment at a line, or of that name, as its sheet, as a page to print and for the bench. */
export interface ExperimentParams {
  readonly textDocument: { readonly uri: string };
  readonly line: number;
  readonly experiment?: string;
  /** Only where the line stands in one. */
  readonly here?: true;
  readonly sheet?: ExperimentPageOptions;
}
/** A sentence says why there is none; `null` where the file is not known. */
export type ExperimentResult =
  | {
      readonly page: TablesPage;
      readonly html: string;
      readonly bench: ExperimentBench;
      readonly shownIn?: Display;
    }
  | { readonly cannot: string }
  | null;

/** Request `doughwright/logTested`: the edit that logs a reading of a dough of an experiment. */
export interface LogTestedParams extends ReadingOfExperiment {
  readonly textDocument: { readonly uri: string };
}

/** Request `doughwright/overlay`: formulas, and other texts of their files, laid over each other. */
export interface OverlayParams {
  readonly formulas: readonly {
    readonly uri: string;
    readonly formula: string;
    /** As a revision has the file: its text, and what that revision is called. */
    readonly other?: { readonly text: string; readonly revision: string };
  }[];
}
/** A sentence says why there is none. */
export type OverlayResult =
  | { readonly page: TablesPage; readonly html: string }
  | { readonly cannot: string }
  | null;

/** Request `doughwright/since`: since which revision the figure that a line is about is as it is, in a sentence; `null` where none is. */
export interface SinceParams {
  readonly textDocument: { readonly uri: string };
  readonly line: number;
}
export type SinceResult = { readonly text: string } | null;

/** The names on the wire. They are types so that a side that only knows this file's types still cannot misspell them. */
export type SheetRequest = 'doughwright/sheet';
export type SheetTextRequest = 'doughwright/sheetText';
export type StatusRequest = 'doughwright/status';
export type ChangedNotification = 'doughwright/changed';
export type OverviewRequest = 'doughwright/overview';
export type NewFormulaRequest = 'doughwright/newFormula';
export type ImportTableRequest = 'doughwright/importTable';
export type EditRequest = 'doughwright/edit';
export type CompareRequest = 'doughwright/compare';
export type HistoryRequest = 'doughwright/history';
export type SinceRequest = 'doughwright/since';
export type PlanRequest = 'doughwright/plan';
export type ExperimentRequest = 'doughwright/experiment';
export type LogTestedRequest = 'doughwright/logTested';
export type OverlayRequest = 'doughwright/overlay';
