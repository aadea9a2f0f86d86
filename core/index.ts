/** The one door into the core: what the server, the command line and users of the library may use. */

/**
 * Grows when something that was here goes or changes its meaning; what is added leaves it as it is. The package's own version
 * says the same in its first number from 1.0.0 on.
 */
export const apiVersion = 1;

export { type MapAxis, mapAxes } from './analysis/map-axis.ts';
export type { NamedBlend } from './analysis/named-blend.ts';
export type { BlendTarget } from './calc/flour/blend.ts';
export type { DegreeOfMixing, MixingStage } from './calc/mixing/development.ts';
export type { MinutesBand } from './calc/mixing/mixing.ts';
export { compareSummaries, heaviest, withNamesCounted } from './compare/compare.ts';
export type {
  Change,
  ChangeGroup,
  Comparison,
  DefinitionComparison,
  Fate,
  FormulaComparison,
  PlaceInFile,
  Renaming,
  Told,
  Verdict,
} from './compare/comparison.ts';
export {
  type ComparedBlock,
  type ComparisonPage,
  comparisonPage,
  findingChange,
} from './compare/comparison-page.ts';
export { type FileSummary, isLackingNames, isUnfinishedMerge } from './compare/file-summary.ts';
export { filesThatMayDiffer } from './compare/possible-changes.ts';
export { heldAgainst } from './compare/renames.ts';
export type { GapCell } from './facts/gap-grid.ts';
export type { GapPoint, TrialPoint as GapTrialPoint } from './facts/gap-map.ts';
export { billLines, differenceOf, heatOutlook } from './facts/heat-words.ts';
export {
  allergenWords,
  ingredientStretches,
  labelCaution,
  nutritionWords,
  standardWords,
} from './facts/label-words.ts';
export type { FormulaTotals, TotalsLine, TotalsMixing, TotalsPart } from './facts/totals.ts';
export type {
  TotalsCost,
  TotalsLabel,
} from './facts/totals-product.ts';
export type { ActionKind, OfferedAction, TextRange } from './features/actions/action.ts';
export type { ReadingToLog } from './features/actions/log-reading.ts';
export type {
  Completion,
  CompletionKind,
  Fold,
  Hint,
  HintKind,
  HoverAnswer,
  SymbolKind,
  SymbolNode,
} from './features/answers.ts';
export type { LineSignature, SignatureAnswer } from './features/completion/signatures.ts';
export type { FormulaTemplate } from './features/completion/templates.ts';
export type { HintDetail } from './features/hover/hint-detail.ts';
export type { Lens, Uses } from './features/hover/lenses.ts';
export type { GoesItem, GoesLink } from './features/names/call-hierarchy.ts';
export type { DefinitionAnswer, Destination } from './features/names/definitions.ts';
export type { RuleLink } from './features/names/links.ts';
export type { Highlight, Reference } from './features/names/references.ts';
export type { FoundSymbol } from './features/names/workspace-symbols.ts';
export type { OverviewEntry, OverviewKind } from './features/outline/overview.ts';
export type { Stretch } from './features/outline/selection.ts';
export type { SemanticToken } from './features/outline/semantic-tokens.ts';
export type { SemanticKind, SemanticModifier } from './features/outline/semantic-words.ts';
export { figureTable, type HistoryFigure, ingredientFigure } from './history/figure-table.ts';
export { formerSelf } from './history/former-self.ts';
export {
  type FormulaFigures,
  type FormulaMoment,
  figuresOf,
  type TrialPoint,
} from './history/formula-figures.ts';
export { formulaNames } from './history/formula-names.ts';
export {
  type FigureChange,
  type FormerNames,
  type History,
  type HistoryRevision,
  type HistoryRow,
  type HistoryTrial,
  historyOf,
} from './history/history.ts';
export {
  type HistoryData,
  type HistoryPage,
  historyAsCsv,
  historyAsData,
  historyAsHtml,
  historyAsText,
  historyPage,
  sinceWhen,
} from './history/history-page.ts';
export type { ImportedTable, TableNote } from './import/import-table.ts';
export { type Merged, type MergeMarks, mergeTexts, usualMarks } from './merge/merge.ts';
export type { UsualConditions } from './model/scope.ts';
export type { Finding, Fix, Level, Related } from './rules/engine/finding.ts';
export type { Rule } from './rules/engine/rule.ts';
export { rules } from './rules/engine/rule-catalogue.ts';
export { explainedRule, wordsOfRule } from './rules/engine/rule-page.ts';
export type { MapData, MapOptions, MapView } from './sheet/build/map-view.ts';
export { type AskedWords, askedFromWords } from './sheet/build/option-words.ts';
export type { SheetOrigin } from './sheet/build/origin.ts';
export { type SheetDocument, sheetVersion } from './sheet/build/sheet-document.ts';
export type { SheetOptions, SizeRequest, TodayConditions } from './sheet/build/sheet-options.ts';
export { experimentBench } from './sheet/experiment/experiment-bench.ts';
export { type ExperimentPageOptions, experimentPage } from './sheet/experiment/experiment-page.ts';
export type { ExperimentView } from './sheet/experiment/experiment-view.ts';
export { mostOverlaid, type OverlaidFormula, overlayPage } from './sheet/overlay/overlay.ts';
export { planPage } from './sheet/plan/plan-page.ts';
export type { PlanView } from './sheet/plan/plan-view.ts';
export { type ExportRow, exportRows, rowsAsCsv } from './sheet/write/export-rows.ts';
export { type MapFormat, mapFormats, writeMaps } from './sheet/write/map-page.ts';
export type { FiledSheet } from './sheet/write/sheet-json.ts';
export { pageAsCsv, pageAsHtml, pageAsMarkdown, pageAsText } from './sheet/write/tables.ts';
export { type SheetFormat, writeSheets } from './sheet/write/write-sheets.ts';
export { type Display, plainDisplay } from './text/display.ts';
export type { FileEdit, TextEdit } from './text/edits.ts';
export { withEdits } from './text/edits.ts';
export { trimmed } from './text/figures.ts';
export { foldName } from './text/names.ts';
export { nearestWord } from './text/nearest.ts';
export type { Place } from './text/span.ts';
export { finish, type Steps } from './text/steps.ts';
export { columnsOf, inColumns, padEndTo, padStartTo } from './text/text-width.ts';
export { english, type Grammar, type Language, plainGrammar } from './words/language.ts';
export { type LanguageTag, languageTagOf, languageTags, loadLanguage } from './words/languages.ts';
export { type Code, type Message, message } from './words/message.ts';
export type { Refused } from './words/refusal.ts';
export type { RulePage } from './words/rule-page-words.ts';
export { plainSpeaker, speakerOf } from './words/speak.ts';
export type { Said, Speaker } from './words/speaker.ts';
export { createService } from './workspace/create-service.ts';
export type { TokenStretch } from './workspace/editing.ts';
export { type NamingSide, underNewNamesOf } from './workspace/new-names.ts';
export type { PanelChange } from './workspace/panel-edits.ts';
export type { Service, TextsByUri } from './workspace/service.ts';
export type { Settings } from './workspace/settings.ts';
export { defaultSettings } from './workspace/settings.ts';
export type { Snapshot } from './workspace/snapshot.ts';
