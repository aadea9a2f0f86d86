import type { LabelRegime } from '../../calc/product/allergens.ts';

/** What the ingredients cost, in words; `rows` ingredient by ingredient, dearest as they stand in the formula. */
export interface SheetCost {
  readonly text: string;
  readonly rows: readonly { readonly name: string; readonly value: string; readonly missing?: string }[];
}

/** A draft of a label. The producer answers for what is printed. */
export interface SheetLabel {
  readonly regime: LabelRegime;
  /** The ingredient list in stretches; an allergen is to be emphasised. */
  readonly ingredients: readonly { readonly text: string; readonly allergen: boolean }[];
  /** Sentences on allergens by either list, and on ingredients nobody says it of. */
  readonly allergens: readonly string[];
  readonly nutrition: {
    /** `in 100 g`, `in 88 g`. */
    readonly heads: readonly string[];
    readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
  };
  /** What is to be said beside the figures; last, that it is a draft. */
  readonly notes: readonly string[];
  /** The same product in the other manner, where both are wanted. */
  readonly other?: SheetLabel;
}
