import { type Analysis, solutionOf } from '../../analysis/analysis.ts';
import type { FormulaProblemKind, SolvedLine } from '../../calc/formula/formula-result.ts';
import type { Role } from '../../calc/formula/role.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { trimmed } from '../../text/figures.ts';
import { writeFix } from './fixes.ts';
import { formulaOf, type RuleContext, type RuleFix } from './rule.ts';
import { amountPlace, type BlockPlace, headerPlace } from './rule-places.ts';

/** What may be amiss without touching the sums. */
const harmless: ReadonlySet<FormulaProblemKind> = new Set([
  'added-by-part',
  'unused-part',
  'bake-loss-unknown',
  'no-pieces',
]);

/** Whether the sums of a formula can be judged: they stand, all is known, and flour is there. */
export function canBeJudged(analysis: Analysis): boolean {
  if (analysis.problems.some((problem) => !harmless.has(problem.kind))) return false;
  if (linesFarTooMuch(analysis).length > 0) return false;
  const isWhole = analysis.resolved.input.sections.every((section) =>
    section.lines.every((line) => line.known && line.amount.kind !== 'unknown'),
  );
  return isWhole && (analysis.solved?.overall ?? []).some((line) => line.isFlour && (line.grams ?? 0) > 0);
}

const tenfold = 10;

/** Ingredients of which more than ten times the flour is written: slips of the keyboard, which no range is to judge. */
export function linesFarTooMuch({
  resolved,
}: Analysis): readonly { readonly id: string; readonly name: string; readonly fraction: number }[] {
  return resolved.input.sections.flatMap(({ lines }) => {
    if (!lines.some((line) => line.isFlour)) return [];
    return lines.flatMap(({ id, name, isFlour, amount }) => {
      const isSlip = !isFlour && amount.kind === 'fraction' && amount.fraction > tenfold;
      return isSlip && resolved.statements.has(id) ? [{ id, name, fraction: amount.fraction }] : [];
    });
  });
}

/** Whether a dough is to rise: yeast in it, or a preferment. */
export function isLeavened(analysis: Analysis): boolean {
  const { fractionByRole, sections } = solutionOf(analysis);
  return (fractionByRole.yeast ?? 0) > 0 || sections.some((section) => section.kind === 'preferment');
}

/** The line with most of a role in a section, the dough first; the header where there is none. */
export function heaviestPlace(
  context: RuleContext,
  role: Role,
  sectionIndex = 0,
): BlockPlace & { readonly line: number; readonly solved?: SolvedLine } {
  const section = solutionOf(formulaOf(context)).sections[sectionIndex];
  const lines = (section?.lines ?? []).filter((line) => line.role === role && !line.id.startsWith('F'));
  const solved = [...lines].sort((one, other) => (other.grams ?? 0) - (one.grams ?? 0))[0];
  if (solved === undefined)
    return headerPlace(context.block, sectionIndex === 0 ? 0 : lineOfId(section?.id ?? ''));
  const { line, span } = amountPlace(context, solved.id);
  return { line, span, solved };
}

/** `20%` that was meant to be `2%`: a tenth (or another part) of what is written, in percent or weight, where that is usual. */
export function tenthFix(
  context: RuleContext,
  solved: SolvedLine | undefined,
  least: number,
  most: number,
  divisor = 10,
): RuleFix[] {
  if (solved === undefined) return [];
  const { line, span, amount } = amountPlace(context, solved.id);
  if (amount?.kind !== 'fraction' && amount?.kind !== 'mass') return [];
  const tenth = (amount.kind === 'fraction' ? amount.fraction : (solved.fraction ?? Number.NaN)) / divisor;
  if (!(tenth >= least - 1e-9 && tenth <= most + 1e-9)) return [];
  const quantity = context.block.lines[line]?.tokens.find(({ start }) => start === span.start)?.quantity;
  if (amount.kind === 'fraction') return [writeFix(line, span, `${trimmed(tenth * 100, 4)}%`, true)];
  if (quantity?.kind !== 'mass') return [];
  const number = Number(quantity.number) / divisor;
  return Number.isFinite(number)
    ? [writeFix(line, span, `${trimmed(number, 6)} ${quantity.unit}`, true)]
    : [];
}
