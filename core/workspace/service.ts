import type { NamedBlend } from '../analysis/named-blend.ts';
import type { BlendTarget } from '../calc/flour/blend.ts';
import type { Known } from '../calc/known.ts';
import type { Comparison } from '../compare/comparison.ts';
import type { ComparisonPage } from '../compare/comparison-page.ts';
import type { FileSummary } from '../compare/file-summary.ts';
import type { FormulaTotals } from '../facts/totals.ts';
import type { ActionKind, OfferedAction, TextRange } from '../features/actions/action.ts';
import type { LineRange } from '../features/actions/format.ts';
import type { Completion, Fold, Hint, HoverAnswer, SymbolNode } from '../features/answers.ts';
import type { FormulaTemplate } from '../features/completion/templates.ts';
import type { OverviewEntry } from '../features/outline/overview.ts';
import type { FormulaMoment } from '../history/formula-figures.ts';
import type { ImportedTable } from '../import/import-table.ts';
import type { Finding } from '../rules/engine/finding.ts';
import type { SheetOptions } from '../sheet/build/sheet-options.ts';
import type { SheetView } from '../sheet/build/view.ts';
import type { PlanView } from '../sheet/plan/plan-view.ts';
import type { FileEdit, TextEdit } from '../text/edits.ts';
import type { Steps } from '../text/steps.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Editing } from './editing.ts';
import type { Navigation } from './navigation.ts';
import type { PanelChange } from './panel-edits.ts';
import type { Settings } from './settings.ts';
import type { Snapshot } from './snapshot.ts';

/**
 * The core as a server or a command sees it. Files are known by their URI; folders come from the URI's path. Answers
 * are for the text last set; setting a text is cheap and computes nothing.
 */
export interface Service extends Navigation, Editing {
  /** All that answers hang on now; what comes later makes another. */
  readonly snapshot: Snapshot;
  setText(uri: string, text: string): void;
  remove(uri: string): void;
  /** The roots of the workspace; names are looked for from a file's folder up to its root. */
  setRoots(uris: readonly string[]): void;
  setSettings(settings: Partial<Settings>): void;
  has(uri: string): boolean;
  uris(): readonly string[];
  /** The lines of a file as it is now, without their endings. */
  lines(uri: string): readonly string[];
  findings(uri: string): readonly Finding[];
  /** The findings that a range touches. */
  findingsAt(uri: string, range: TextRange): readonly Finding[];
  hover(uri: string, line: number, column: number): HoverAnswer | undefined;
  hints(uri: string, firstLine: number, lastLine: number): readonly Hint[];
  symbols(uri: string): readonly SymbolNode[];
  completions(uri: string, line: number, column: number): readonly Completion[];
  folds(uri: string): readonly Fold[];
  /** What can be done at a range of a file, of the kinds asked for; what it writes is told by `actionEdits`. */
  actions(uri: string, range: TextRange, only?: readonly ActionKind[]): readonly OfferedAction[];
  /** What an action offered at the same range of the same text writes; `undefined` when it cannot be done. */
  actionEdits(uri: string, range: TextRange, id: string, argument?: string): readonly FileEdit[] | undefined;
  /** What brings a file, or some of its lines, into the canonical form; in order, none over another. */
  format(uri: string, range?: LineRange): readonly TextEdit[];
  /** What is put right behind somebody who types: `typed` is a line break or a colon, just before the column. */
  formatTyped(uri: string, line: number, column: number, typed: string): readonly TextEdit[];
  /** Whoever words its answers, for what is written of them. */
  speaker(): Speaker;
  /** The batch sheet of the formula at a line, or of that name; what is asked for is tried and changes nothing. */
  sheet(uri: string, line: number, asked: SheetOptions, formula?: string): SheetView | undefined;
  status(uri: string, line: number): { formula: string; text: string; tooltip: string } | undefined;
  /** Bakeries, formulas, flours, mixers and plans of all files. */
  overview(): readonly OverviewEntry[];
  /** The same, a file at a time. */
  overviewInSteps(): Steps<readonly OverviewEntry[]>;
  /** The edits that a batch sheet asks for, or a sentence that says why there are none. */
  panelEdits(uri: string, line: number, change: PanelChange, formula?: string): readonly FileEdit[] | string;
  templates(): readonly FormulaTemplate[];
  newFormula(name: string, template: string): string;
  totals(uri: string): readonly FormulaTotals[];
  /** A pasted table as formulas; names are looked up from where the file stands, which need not be there yet. */
  importTable(uri: string, table: string, name?: string): ImportedTable;
  /** The file as it is compared with another state of itself; `shown` is how the comparison shall name it. */
  summary(uri: string, shown?: string): FileSummary | undefined;
  /** A formula of a file by its name, with the figures that a history follows; `undefined` where the file has none of it. */
  moment(uri: string, formula: string, shown?: string): FormulaMoment | undefined;
  /** Goes back, or on, to a state that `snapshot` has given: of this service, at any time. */
  turnTo(snapshot: Snapshot): void;
  /** What changed from one text of a file to another, or to its present text, among the other files as they are. */
  compare(uri: string, before: string, after?: string): Comparison;
  /** The same with the words around it, for an editor to lay out. */
  comparePage(uri: string, before: string, after?: string): ComparisonPage;
  /** Shares of flours that reach a protein or keep an ash; names are looked up from where the file stands. */
  blend(uri: string, flours: readonly string[], target: BlendTarget): Known<NamedBlend, string>;
  /** The production runs of the file's plans, worked out. */
  plans(uri: string): readonly PlanView[];
  /**
   * The files, of those asked about, whose text is as in an earlier snapshot and whose answers are not, for a definition they
   * looked up came, went or changed.
   */
  affectedSince(before: Snapshot): ReadonlySet<string>;
}
