import { firstOf } from '../../text/element.ts';
import type { Role } from './role.ts';

export type { Role };

/** Fillings, toppings and baths never enter the bowl: they count in no hydration and no dough weight. */
export type SectionKind =
  | 'dough'
  | 'preferment'
  | 'soaker'
  | 'scald'
  | 'part'
  | 'filling'
  | 'topping'
  | 'bath';

/** One formula as plain data, resolved from whatever it was written in. */
export interface FormulaInput {
  /** The first section is the dough; the order of the others does not matter. */
  readonly sections: readonly SectionInput[];
  readonly yield?: YieldInput;
  /** Dough left in bowl and on bench, as a fraction of the weighed dough; 0 when none is given. */
  readonly lossFraction: number;
  /** Weight lost in the oven and while cooling, as a fraction of the divided dough. */
  readonly bakeLossFraction?: number;
}

/** The dough of a formula, of its input, its model or its solution: the first section. Throws a RangeError where there is none. */
export function doughOf<Section>(formula: { readonly sections: readonly (Section | undefined)[] }): Section {
  return firstOf(formula.sections);
}

export interface SectionInput {
  readonly id: string;
  readonly name: string;
  readonly kind: SectionKind;
  readonly lines: readonly LineInput[];
  /** Not empty: the section is taken out of the formula's lines instead of being added to them. */
  readonly draws: readonly DrawInput[];
  /** Culture of the section's own composition, as a fraction of its fed flour. */
  readonly ripeCultureFraction?: number;
  /** Left for the next day: made, but not used in this dough. */
  readonly keepBackGrams?: number;
  /** Water that steams away while the section is cooked, as a fraction of all that is weighed into it; below 1. */
  readonly cookingLossFraction?: number;
  /** Folded into the mixed dough before it is divided, as the butter of a laminated dough: never in the bowl, and in every piece. */
  readonly enclosed?: boolean;
}

export interface LineInput {
  readonly id: string;
  /** Folded ingredient key, or the id of the part's section when `part` is true. */
  readonly key: string;
  readonly name: string;
  readonly part: boolean;
  /** `other` for a line that names a part. */
  readonly role: Role;
  readonly isFlour: boolean;
  /** Water inside the ingredient, fraction of its mass; absent when its composition is not known. */
  readonly waterFraction?: number;
  /** False for an ingredient nobody has defined: weighed, but neither flour nor water. */
  readonly known: boolean;
  readonly amount: AmountInput;
}

/** Why an amount is not known: its line is not whole, it is no amount of a part, or it cannot be weighed. */
export type UnknownAmount =
  | 'missing'
  | 'half-typed'
  | 'unreadable'
  | 'not-planned'
  | 'not-of-part'
  | 'no-density'
  | 'no-piece-weight';

export type AmountInput =
  | { readonly kind: 'fraction'; readonly fraction: number }
  | { readonly kind: 'grams'; readonly grams: number }
  /** Of all flour in the bowl, whatever section the line stands in. */
  | { readonly kind: 'ofAllFlour'; readonly fraction: number }
  | { readonly kind: 'balance' }
  | { readonly kind: 'toHydration'; readonly fraction: number; readonly effective: boolean }
  | { readonly kind: 'perPiece'; readonly grams: number }
  /** All of a part that no other line takes; has a meaning on part lines only. */
  | { readonly kind: 'remaining' }
  /** Half-typed or broken; somebody else has told the baker already. */
  | { readonly kind: 'unknown'; readonly reason: UnknownAmount };

export interface DrawInput {
  readonly id: string;
  readonly of:
    | { readonly kind: 'ingredient'; readonly key: string }
    | { readonly kind: 'role'; readonly role: Role };
  /** Fraction of what the formula has of it; 1 for `all`. */
  readonly fraction: number;
}

/** What the formula is to yield: divided dough, after the loss in bowl and on bench, or baked weight. */
export type YieldInput =
  | {
      readonly kind: 'pieces';
      readonly count: number;
      /** Absent when only the number of pieces is written. */
      readonly pieceGrams?: number;
      readonly baked: boolean;
    }
  | { readonly kind: 'dough'; readonly grams: number }
  | { readonly kind: 'baked'; readonly grams: number }
  /** All flour in the bowl, that of the preferments included. */
  | { readonly kind: 'flour'; readonly grams: number };
