import type { NamedBlend } from '../analysis/named-blend.ts';
import type { BlendTarget } from '../calc/flour/blend.ts';
import type { Known } from '../calc/known.ts';
import type { Comparison } from '../compare/comparison.ts';
import type { ComparisonPage } from '../compare/comparison-page.ts';
import type { FileSummary } from '../compare/file-summary.ts';
import type { FormulaTemplate } from '../features/completion/templates.ts';
import type { FormulaMoment } from '../history/formula-figures.ts';
import type { ImportedTable } from '../import/import-table.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Editing } from './editing.ts';
import type { FileAnswers } from './file-answers.ts';
import type { Navigation } from './navigation.ts';
import type { Settings } from './settings.ts';
import type { SheetAnswers } from './sheet-answers.ts';
import type { Snapshot } from './snapshot.ts';

/** Texts of files by their URIs. */
export type TextsByUri = Iterable<readonly [uri: string, text: string]>;

/**
 * The core as a server or a command sees it. Files are known by their URI; folders come from the URI's path. Answers
 * are for the text last set; setting a text is cheap and computes nothing.
 */
export interface Service extends Navigation, Editing, FileAnswers, SheetAnswers {
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
  /** Whoever words its answers, for what is written of them. */
  speaker(): Speaker;
  templates(): readonly FormulaTemplate[];
  newFormula(name: string, template: string): string;
  /** A pasted table as formulas; names are looked up from where the file stands, which need not be there yet. */
  importTable(uri: string, table: string, name?: string): ImportedTable;
  /** The file as it is compared with another state of itself; `shown` is how the comparison shall name it. */
  summary(uri: string, shown?: string): FileSummary | undefined;
  /** A formula of a file by its name, with the figures that a history follows; `undefined` where the file has none of it. */
  moment(uri: string, formula: string, shown?: string): FormulaMoment | undefined;
  /** Which figure of which formula a line is about: `hydration`, `salt` …, or `ingredient: NAME`. */
  figureAt(uri: string, line: number): { readonly formula: string; readonly figure: string } | undefined;
  /** Goes back, or on, to a state that `snapshot` has given: of this service, at any time. */
  turnTo(snapshot: Snapshot): void;
  /**
   * What changed from one text of a file to another, or to its present text, among the other files as they are; the one before
   * among other texts of them where such are given.
   */
  compare(uri: string, before: string, after?: string, among?: TextsByUri): Comparison;
  /** The same with the words around it, for an editor to lay out. */
  comparePage(uri: string, before: string, after?: string, among?: TextsByUri): ComparisonPage;
  /** Whether a text of a file has names that mean nothing among the other files as they are. */
  lacksNames(uri: string, text: string): boolean;
  /** Shares of flours that reach a protein or keep an ash; names are looked up from where the file stands. */
  blend(uri: string, flours: readonly string[], target: BlendTarget): Known<NamedBlend, string>;
  /**
   * The files, of those asked about, whose text is as in an earlier snapshot and whose answers are not, for a definition they
   * looked up came, went or changed.
   */
  affectedSince(before: Snapshot): ReadonlySet<string>;
}
