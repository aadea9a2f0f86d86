/** The one door into the core: what the server and the command line may use. */

export { comparePortraits, heaviest } from './compare/compare.ts';
export type {
  Change,
  ChangeGroup,
  Comparison,
  DefinitionComparison,
  Fate,
  FormulaComparison,
  PlaceInFile,
  Told,
  Verdict,
} from './compare/comparison.ts';
export type { FilePortrait } from './compare/portrait.ts';
export type { ActionKind, OfferedAction, TextRange } from './features/actions/action.ts';
export type {
  Completion,
  CompletionKind,
  FileEdit,
  Finding,
  Fix,
  Fold,
  Hint,
  HoverAnswer,
  Level,
  Related,
  SymbolKind,
  SymbolNode,
  TextEdit,
} from './features/answers.ts';
export { costSentence, money } from './features/cost-words.ts';
export { billLines, differenceWords, heatSentences } from './features/heat-words.ts';
export {
  allergenWords,
  ingredientStretches,
  labelCaution,
  nutritionWords,
  standardWords,
} from './features/label-words.ts';
export type { ReadingToLog } from './features/log-reading.ts';
export type { OverviewEntry, OverviewKind } from './features/overview.ts';
export type { FormulaTemplate } from './features/templates.ts';
export type { FormulaTotals, TotalsLine, TotalsMixing, TotalsPart } from './features/totals.ts';
export type {
  TotalsCost,
  TotalsLabel,
} from './features/totals-product.ts';
export { rules } from './rules/catalogue.ts';
export type { Rule } from './rules/rule.ts';
export type { SheetAsked, SizeRequest, TodayConditions } from './sheet/asked.ts';
export type { SheetView } from './sheet/view.ts';
export * from './text/figures.ts';
export type { Place } from './text/span.ts';
export { createService, defaultSettings } from './workspace/create-service.ts';
export type { Service, Settings } from './workspace/service.ts';
