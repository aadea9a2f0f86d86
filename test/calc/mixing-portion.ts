import type { HeatItem } from '../../core/calc/heat/heat-content.ts';
import type { MixPortion } from '../../core/calc/mixing/mixing-programme.ts';

/** A portion with what its composition and its use say it brings; soaked seeds and preferments are told by the caller. */
export function portionOf(
  item: HeatItem,
  use: 'flour' | 'salt' | 'sugar' | 'other',
  held: { readonly heldWaterGrams?: number } = {},
): MixPortion {
  const { composition, grams } = item;
  const isFlour = use === 'flour';
  const sugars = composition.sugars ?? (use === 'sugar' ? composition.carbohydrate : undefined) ?? 0;
  return {
    ...item,
    flourGrams: isFlour ? grams : 0,
    freeWaterGrams: isFlour ? 0 : Math.max(0, (composition.water ?? 0) * grams - (held.heldWaterGrams ?? 0)),
    fatGrams: isFlour ? 0 : (composition.fat ?? 0) * grams,
    sugarGrams: isFlour ? 0 : sugars * grams,
    saltGrams: use === 'salt' ? grams : isFlour ? 0 : (composition.saltFraction ?? 0) * grams,
  };
}
