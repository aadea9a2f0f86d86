import { absorptionAt14 } from '../../calc/flour/flour.ts';
import { catalogueIngredients } from '../../catalogue/catalogue.ts';
import { findIngredient, type Ingredient } from '../../model/found-ingredient.ts';
import { foldName } from '../../text/names.ts';
import { type Message, message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { lineAt, sectionAt, solvedLines } from './action-places.ts';
import { editsKeeping, isNear, wholeFormula } from './after.ts';
import { LineEdits, rename } from './ingredient-lines.ts';
import { LineChanges } from './line-changes.ts';

/** More flours than this make a menu nobody reads. */
const mostOffers = 6;

export const changeFlour: Action = {
  id: 'change-flour',
  kind: 'rewrite',
  variants: true,
  name: 'Change one flour for another',
  explanation:
    'Offered on a flour, for those that your own files define, nearest first, then for those of the catalogue of the same grain. It ' +
    'changes every line of the flour in the formula, what is drawn of it and what is loaded, and keeps all weights: hydration and ' +
    'effective hydration stay. The title gives how much more or less water the new flour takes up, in percent of its own weight by its ' +
    'farinograph absorption or the estimate of it, and left to you.',
  example: 'formula Quay Tin:\n  ‸bread flour        100%\n  water              65%\n',
  *offers(context) {
    const line = lineAt(context);
    const section = sectionAt(context);
    if (line === undefined || section === undefined) return;
    const solved = solvedLines(context, section).get(line.id);
    const whole = solved?.isFlour === true ? wholeFormula(context) : undefined;
    const before = whole?.analysis.resolved.ingredients.get(solved?.key ?? '');
    if (whole === undefined || before === undefined) return;
    for (const after of otherFlours(context, before)) {
      yield {
        title: titleOf(line.statement.name.text, before, after),
        argument: after.key,
        edits: () => {
          const edits = new LineEdits();
          rename(edits, whole, before.key, after.name);
          const changes = new LineChanges(context);
          if (!edits.writeOwn(whole, changes)) return undefined;
          return editsKeeping(context, changes, (was, is) => {
            const rows = new Map(is.overall.map((row) => [row.key, row.fraction]));
            return (
              isNear(was.effectiveHydration, is.effectiveHydration, 1) &&
              isNear(was.hydration, is.hydration, 1) &&
              was.overall.every((row) =>
                isNear(row.fraction, rows.get(row.key === before.key ? after.key : row.key), 1),
              )
            );
          });
        },
      };
    }
  },
};

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

/** The change, and how much more or less water the new flour takes up, of its own weight. */
function titleOf(name: string, before: Ingredient, after: Ingredient): Message {
  const otherName = after.name;
  const more = uptake(before, after);
  if (more === undefined || Math.abs(more) < leastUptake)
    return message('change-flour.change', { name, otherName });
  const apartFraction = Math.abs(more);
  return message(more > 0 ? 'change-flour.takes-more' : 'change-flour.takes-less', {
    name,
    otherName,
    apartFraction,
  });
}

/** Less than this is not worth a word, as a fraction of the weight of the flour. */
export const leastUptake = 0.002;

/** How much more water one flour takes up than another, as a fraction of its weight at equal moisture; undefined where either is not known. */
export function uptake(before: Ingredient, after: Ingredient): number | undefined {
  if (before.flour === undefined || after.flour === undefined) return undefined;
  const [was, is] = [absorptionAt14(before.flour), absorptionAt14(after.flour)];
  return was.known && is.known ? is.value - was.value : undefined;
}
