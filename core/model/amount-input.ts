import type { AmountInput } from '../calc/formula/formula-input.ts';
import type { Amount, IngredientStatement } from '../syntax/tree.ts';
import { customaryCupMillilitres, units } from '../syntax/units.ts';
import type { Bakery } from './bakery.ts';
import type { FormulaModel } from './formula-model.ts';
import type { Ingredient } from './found-ingredient.ts';

/** An amount that needs nothing but its own line to be weighed by. */
export function plainAmount(amount: Amount): AmountInput {
  switch (amount.kind) {
    case 'fraction':
      return { kind: 'fraction', fraction: amount.fraction };
    case 'mass':
      return { kind: amount.aPiece ? 'perPiece' : 'grams', grams: amount.grams };
    case 'ofAllFlour':
      return { kind: 'ofAllFlour', fraction: amount.fraction };
    case 'balance':
      return { kind: 'balance' };
    case 'remaining':
      return { kind: 'remaining' };
    case 'hydration':
      return { kind: 'toHydration', fraction: amount.fraction, effective: amount.effective };
    case 'volume':
    case 'count':
      return { kind: 'unknown', reason: 'not-of-part' };
    case 'unknown':
      return { kind: 'unknown', reason: amount.reason };
  }
}

/** Where a formula weighs in ounces and no bakery tells the size of its cup, a cup is that of the United States. */
export function cupsOf(model: FormulaModel, bakery: Bakery): Bakery {
  if (bakery.cupSaid === true) return bakery;
  const inOunces = model.sections.some(({ lines }) =>
    lines.some(({ parsed }) =>
      parsed.tokens.some(
        ({ quantity }) =>
          quantity?.kind === 'mass' && ouncesAndPounds.has(units.get(quantity.unit)?.canonical ?? ''),
      ),
    ),
  );
  return inOunces ? { ...bakery, cupMillilitres: customaryCupMillilitres } : bakery;
}

const ouncesAndPounds: ReadonlySet<string> = new Set(['oz', 'lb']);

/**
 * The amount of a line of an ingredient, volumes and counts turned into grams. Where the density or the weight of a
 * piece is not known, that is told and the amount stays unknown.
 */
export function weighed(
  statement: IngredientStatement,
  ingredient: Ingredient,
  bakery: Bakery,
  tell: (missing: 'no-density' | 'no-piece-weight') => void,
): AmountInput {
  const { amount } = statement;
  if (amount.kind === 'volume') {
    const millilitres = amount.cups === undefined ? amount.millilitres : amount.cups * bakery.cupMillilitres;
    if (ingredient.densityGramsPerMillilitre === undefined) {
      tell('no-density');
      return { kind: 'unknown', reason: 'no-density' };
    }
    const grams = millilitres * ingredient.densityGramsPerMillilitre;
    return { kind: amount.aPiece ? 'perPiece' : 'grams', grams };
  }
  if (amount.kind === 'count') {
    if (ingredient.pieceGrams === undefined) {
      tell('no-piece-weight');
      return { kind: 'unknown', reason: 'no-piece-weight' };
    }
    return { kind: amount.aPiece ? 'perPiece' : 'grams', grams: amount.count * ingredient.pieceGrams };
  }
  return plainAmount(amount);
}
