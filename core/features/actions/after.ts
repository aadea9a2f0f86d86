import { analyseText } from '../../analysis/analyse.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import type { OverallIngredient, SolvedFormula } from '../../calc/formula/formula-result.ts';
import type { FileEdit } from '../../text/edits.ts';
import type { ActionContext } from './action.ts';
import type { LineChanges } from './line-changes.ts';

/** What two overall formulas may differ by: of the flour. */
const tolerance = 1e-9;

/** A formula of which every weight is known: what rewrites it can tell whether it stays the same. */
export interface WholeFormula {
  readonly analysis: Analysis;
  readonly solved: SolvedFormula;
}

/** The formula at the cursor, if every weight of it is known and it has flour. */
export function wholeFormula(context: ActionContext): WholeFormula | undefined {
  const analysis = context.analysis();
  const solved = analysis?.solved;
  if (analysis === undefined || solved === undefined || !(solved.flourGrams! > 0)) return undefined;
  const isWhole =
    solved.overall.every(({ grams }) => grams !== undefined) &&
    doughOf(solved).lines.every(({ grams }) => grams !== undefined);
  return isWhole ? { analysis, solved } : undefined;
}

/**
 * The edits of changes, if they leave the overall formula as it was and nothing new is wrong with it. What is written is
 * read and solved again, so that whatever an action did not think of makes it refuse and never spoil a formula.
 */
export function editsKeeping(
  context: ActionContext,
  changes: LineChanges,
  isKept: (before: SolvedFormula, after: SolvedFormula) => boolean = isSameOverall,
): readonly FileEdit[] | undefined {
  const before = context.analysis();
  const after = analysisAfter(context, changes);
  if (before?.solved === undefined || after?.solved === undefined) return undefined;
  if (problemCount(after) > problemCount(before)) return undefined;
  return isKept(before.solved, after.solved) ? changes.edits() : undefined;
}

/** The formula as it would be with the changes, seen from where its file stands. */
export function analysisAfter(context: ActionContext, changes: LineChanges): Analysis | undefined {
  const text = changes.textOfLines(context.block.lines.length);
  return analyseText(context.variant?.alone(text) ?? text, context.scope)?.analysis;
}

/** Whether all that goes into the bowl is the same, in percent of flour and, where a scale is fixed, in grams. */
export function isSameOverall(before: SolvedFormula, after: SolvedFormula): boolean {
  const rows = new Map(present(after).map((row) => [row.key, row]));
  const some = present(before);
  return (
    rows.size === some.length &&
    some.every((row) => {
      const now = rows.get(row.key);
      return (
        now !== undefined &&
        isNear(row.fraction, now.fraction, 1) &&
        (before.assumedScale || isNear(row.grams, now.grams, before.flourGrams ?? 0))
      );
    })
  );
}

function present({ overall }: SolvedFormula): OverallIngredient[] {
  return overall.filter(({ grams }) => grams === undefined || grams > tolerance);
}

/** Whether two figures are the same but for rounding, beside something of this size; two that are not known are the same. */
export function isNear(one: number | undefined, other: number | undefined, size: number): boolean {
  if (one === undefined || other === undefined) return one === other;
  return Math.abs(one - other) <= tolerance * size;
}

/** Ways of writing that are hinted at, and nothing that is wrong. */
const hints = new Set(['added-by-part']);

function problemCount({ problems, resolved }: Analysis): number {
  // A trial stays the record of what it loaded, whatever the formula has become since.
  const named = resolved.problems.filter((one) => one.kind !== 'not-in-dough' || one.tried !== true);
  return problems.filter(({ kind }) => !hints.has(kind)).length + named.length;
}
