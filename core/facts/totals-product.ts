import type { LabelRegime } from '../calc/product/allergens.ts';
import type { LabelEntry } from '../calc/product/label.ts';
import type { Nutrient } from '../calc/product/nutrition-figures.ts';

/** A draft of a label; what is not known is absent, never zero. The producer answers for what is printed. */
export interface TotalsLabel<Words = string> {
  regime: LabelRegime;
  bakedGrams?: number;
  bakedPieceGrams?: number;
  nutrition: TotalsNutrient[];
  /** Why there is no nutrition table. */
  nutritionUnknown?: Words;
  /** In descending weight, allergens marked. */
  ingredients: readonly LabelEntry[];
  allergens: {
    /** As written, in the singular: which nut it is, where the list says nuts. */
    words: readonly string[];
    eu: readonly string[];
    us: readonly string[];
    onNeither: readonly string[];
    notSaid: readonly string[];
  };
  /** Total solids after baking, against 21 CFR 136.110(a). */
  solidsFraction?: number;
  meetsSolids?: boolean;
  /** By 21 CFR 136.3. */
  kind?: 'bread' | 'roll or bun';
  /** What is to be said beside the figures. */
  notes: Words[];
}

/** Energy in kJ or kcal, sodium in milligrams, the others in grams. */
export interface TotalsNutrient {
  nutrient: Nutrient;
  per100Grams: TotalsNutrientAmount;
  perPiece?: TotalsNutrientAmount;
  /** Ingredients that do not tell it. */
  lacking: readonly string[];
}

/** `amount` where every ingredient tells it; else what it is between. */
export interface TotalsNutrientAmount {
  amount?: number;
  atLeast?: number;
  atMost?: number;
  /** Rounded as the regime prints it; absent where what is missing could change it. */
  figure?: string;
}

/**
 * The cost of a batch in `currency`. `batch`, `piece` and the kilograms are absent where a price is missing. Reasons are
 * messages until somebody words them.
 */
export interface TotalsCost<Words = string> {
  /** All of it in a sentence. */
  text: Words;
  currency?: string;
  lines: { name: string; grams?: number; amount?: number; reason?: Words }[];
  /** Each with all that is in it, so that parts inside parts count twice. */
  parts: TotalsCostPart[];
  batch?: number;
  piece?: number;
  doughKilogram?: number;
  bakedKilogram?: number;
  /** What the priced ingredients come to, where others lack a price. */
  atLeast?: number;
  /** Names without a usable price or weight. */
  missing: string[];
  waterNotCharged?: true;
  /** No yield is written, so the batch is the one for 1 kg of flour. */
  perKilogramOfFlour?: true;
  /** Why there is no cost at all. */
  unknown?: Words;
}

export interface TotalsCostPart {
  name: string;
  kind: string;
  amount?: number;
  atLeast?: number;
  missing: string[];
}
