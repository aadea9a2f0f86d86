import { waterLever } from '../../analysis/water-axis.ts';
import { absorptionAt14, type FlourData } from '../../calc/flour/flour.ts';
import { catalogueIngredients } from '../../catalogue/catalogue.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { findIngredient, type Ingredient } from '../../model/found-ingredient.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { foldName } from '../../text/names.ts';
import type { LineEdit } from '../../text/span.ts';
import type { ActionContext } from './action.ts';
import { lineAt, sectionAt, solvedLines } from './action-places.ts';
import { type WholeFormula, wholeFormula } from './after.ts';

/** The flour that an action is asked for at, in a formula of which every weight is known. */
export interface FlourThere {
  /** As its line calls it. */
  readonly name: string;
  readonly whole: WholeFormula;
  readonly flour: Ingredient;
}

/** The flour whose line the cursor is at; undefined where it is at none, or where the weights are not all known. */
export function flourAt(context: ActionContext): FlourThere | undefined {
  const line = lineAt(context);
  const section = sectionAt(context);
  if (line === undefined || section === undefined) return undefined;
  const solved = solvedLines(context, section).get(line.id);
  const whole = solved?.isFlour === true ? wholeFormula(context) : undefined;
  const flour = whole?.analysis.resolved.ingredients.get(solved?.key ?? '');
  if (whole === undefined || flour === undefined) return undefined;
  return { name: line.statement.name.text, whole, flour };
}

/** More flours than this make a menu nobody reads. */
const mostOffers = 6;

/** Flours that the formula has not yet: defined ones, nearest first, then those of the catalogue of the same grain. */
export function otherFlours(context: ActionContext, before: Ingredient): Ingredient[] {
  const { scope } = context;
  const own = context.analysis()!.resolved.ingredients;
  const found: Ingredient[] = [];
  const take = (name: string): void => {
    if (found.length >= mostOffers) return;
    const one = findIngredient({ text: name, folded: foldName(name), start: 0, end: 0 }, scope);
    if (one.kind !== 'found' || !one.ingredient.isFlour) return;
    const { key } = one.ingredient;
    if (!own.has(key) && !found.some((other) => other.key === key)) found.push(one.ingredient);
  };
  for (const { name } of scope.names('ingredient')) take(name.text);
  for (const { name, flour } of catalogueIngredients)
    if (flour !== undefined && flour.grain === before.flour?.grain) take(name);
  return found;
}

/** Less than this is not worth a word, as a fraction of the weight of the flour. */
export const leastUptake = 0.002;

/** How much more water one flour takes up than another, as a fraction of its weight at equal moisture; undefined where either is not known. */
export function uptake(before: Ingredient, after: Ingredient): number | undefined {
  if (before.flour === undefined || after.flour === undefined) return undefined;
  const [was, is] = [absorptionAt14(before.flour), absorptionAt14(after.flour)];
  return was.known && is.known ? is.value - was.value : undefined;
}

/** The dough’s line of water with the amount that gives another flour the same feel. */
export interface WaterForFeel extends LineEdit {
  /** Counted in the block. */
  readonly line: number;
  /** The amount alone, as it is written: `66.5%`, `6650 g`. */
  readonly written: string;
  /** How far it may be off where an absorption is estimated, as a fraction of all flour; 0 where both are stated, absent for an amount in grams. */
  readonly withinFraction?: number;
}

/**
 * The water of a dough once one flour stands in the place of another: by the difference of the two absorptions times the share of
 * that flour. Undefined where either is not known, where they differ by nothing worth a word, or where the dough has no line of water to change.
 */
export function waterForFeel(
  { analysis, solved }: WholeFormula,
  before: Ingredient,
  after: Ingredient,
): WaterForFeel | undefined {
  const more = uptake(before, after);
  const lever = waterLever(analysis);
  const own = solved.hydration;
  if (before.flour === undefined || after.flour === undefined || lever === undefined || own === undefined)
    return undefined;
  if (more === undefined || Math.abs(more) < leastUptake) return undefined;
  const share = solved.overall.find(({ key }) => key === before.key)?.fraction ?? 0;
  const amount = lever.amountFor(own + more * share);
  if (!(amount > 0) || !Number.isFinite(amount)) return undefined;
  const { block } = analysis.resolved.model;
  const line = lineOfId(lever.line.id);
  const { statement, text } = elementAt(block.lines, line);
  if (statement.kind !== 'ingredient') return undefined;
  const inGrams = lever.line.amount.kind === 'grams';
  const written = inGrams ? `${trimmed(amount, 0)} g` : `${trimmed(amount * 100, 1)}%`;
  const { start, end, kind } = statement.amount;
  const insert =
    kind === 'hydration' ? text.slice(start, end).replace(/\d+(?:[.,]\d+)?\s*%/, written) : written;
  const withinFraction = Math.hypot(errorOf(before.flour), errorOf(after.flour)) * share;
  return { line, start, end, insert, written, ...(inGrams ? {} : { withinFraction }) };
}

/** Standard error of an absorption that is estimated from protein and starch damage: that of the fit (`fittedAbsorption`). */
const estimateWithin = 0.0103;

/** How far an absorption may be off, as a fraction of the flour: nothing where a file states it. */
function errorOf(flour: FlourData): number {
  if (flour.absorption !== undefined) return 0;
  return absorptionAt14(flour).known ? estimateWithin : 0;
}
