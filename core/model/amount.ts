import type { AmountInput } from '../calc/formula-input.ts';
import type { Amount, IngredientStatement } from '../syntax/tree.ts';
import type { Bakery } from './bakery.ts';
import type { Ingredient } from './ingredient.ts';

/** An amount that needs nothing but its own line to be weighed by. */
export function plainAmount(amount: Amount): AmountInput {
  switch (amount.kind) {
    case 'fraction':
      return { kind: 'fraction', fraction: amount.fraction };
    case 'mass':
      return { kind: amount.aPiece ? 'perPiece' : 'grams', grams: amount.grams };
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
