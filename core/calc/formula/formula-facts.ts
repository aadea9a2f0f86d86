import { elementAt } from '../../text/element.ts';
import type { DrawInput, FormulaInput, LineInput, SectionInput } from './formula-input.ts';
import type { FormulaProblem, Unsolved } from './formula-result.ts';

/** What can be told of a formula before anything is solved: who uses whom, and what 100 % means where. */
export interface FormulaStructure {
  readonly input: FormulaInput;
  readonly sections: readonly SectionFacts[];
  /** Indexes of the sections, parts before those that use them, the dough last. */
  readonly order: readonly number[];
  /** Number of sections whose 100 % has to be solved for. */
  readonly unknowns: number;
  readonly keys: ReadonlyMap<string, number>;
  /** One line for each key, for its name and role. */
  readonly keyLines: readonly LineFacts[];
  /** By index of key: 1 where a line of the dough names the ingredient itself. */
  readonly inDough: Uint8Array;
  readonly problems: readonly FormulaProblem[];
}

export interface SectionFacts {
  readonly index: number;
  readonly input: SectionInput;
  readonly inBowl: boolean;
  readonly lines: readonly LineFacts[];
  readonly uses: LineFacts[];
  draws: readonly DrawInput[];
  keepBackGrams: number;
  /** Of all that goes in, what steams away while it is cooked. */
  cookingLoss: number;
  base: Base;
}

/** The weight of 100 %: to be solved for, fixed by flour in grams, or not to be had. */
export type Base =
  | { readonly kind: 'column'; readonly column: number }
  | { readonly kind: 'fixed'; readonly grams: number }
  | { readonly kind: 'none'; readonly unsolved: Unsolved };

export interface LineFacts {
  readonly input: LineInput;
  readonly section: SectionFacts;
  /** Index among the lines of its section. */
  readonly position: number;
  /** Index of the part's section, -1 on an ingredient. */
  child: number;
  /** Index of the ingredient's key, -1 on a part. */
  readonly keyIndex: number;
  readonly flour: boolean;
  amount: LineAmount;
}

export type LineAmount =
  /** perBase · (100 % of the section) + grams. */
  | { readonly kind: 'linear'; readonly perBase: number; readonly grams: number }
  | { readonly kind: 'balance' }
  | { readonly kind: 'toHydration'; readonly fraction: number; readonly effective: boolean }
  | { readonly kind: 'remaining' }
  | { readonly kind: 'unknown'; readonly unsolved: Unsolved }
  /** Reported: its own amount is absent, and the rest is computed without it. */
  | { readonly kind: 'none'; readonly unsolved: Unsolved };

/** What one gram of a part consists of, in grams. */
export interface PerGram {
  readonly flour: number;
  readonly water: number;
  readonly effectiveWater: number;
  /** Flour that stands in preferments. */
  readonly preferment: number;
  /** By index of the ingredient's key. */
  readonly byKey: readonly number[];
  /** False where the composition depends on how much is made. */
  readonly exact: boolean;
}

/**
 * A mass that is linear in the weights of 100 % of the sections: terms[column] · base + terms[last], in grams. One
 * that contains something not known says why, and its terms mean nothing.
 */
export interface Mass {
  readonly terms: number[];
  unsolved: Unsolved | undefined;
}

export interface SectionMasses {
  readonly lines: Mass[];
  /** What 100 % weighs. */
  readonly base: Mass;
  /** Made in all, with the culture; of the dough: everything in the bowl. */
  readonly made: Mass;
  readonly flour: Mass;
  /** Flour without that of the culture. */
  readonly fedFlour: Mass;
  readonly water: Mass;
  readonly effectiveWater: Mass;
  readonly preferment: Mass;
  readonly culture: Mass | undefined;
  /** What steams away of a cooked section. */
  readonly steam: Mass | undefined;
  /** Made less kept back. */
  readonly used: Mass;
  /** Composition of one gram, or why it is not known. */
  readonly perGram: PerGram | Unsolved;
}

export interface Masses {
  readonly structure: FormulaStructure;
  readonly sections: (SectionMasses | undefined)[];
  /** Composition of a part depends on its size, so these masses hold near the guess only. */
  approximate: boolean;
}

/** The section at an index, a part that a line takes of say. Throws a RangeError where the formula has none. */
export function sectionAt({ sections }: FormulaStructure, index: number): SectionFacts {
  return elementAt(sections, index);
}

/** The line that stands for an ingredient. Throws a RangeError for an index that no key has. */
export function keyLineAt({ keyLines }: FormulaStructure, keyIndex: number): LineFacts {
  return elementAt(keyLines, keyIndex);
}

/** The masses of a section. Throws a RangeError before they are worked out: parts come before those that use them. */
export function massesAt({ sections }: Masses, index: number): SectionMasses {
  return elementAt(sections, index);
}

/** What a line weighs. Throws as `massesAt`. */
export function massOf(masses: Masses, { section, position }: LineFacts): Mass {
  return elementAt(massesAt(masses, section.index).lines, position);
}

export interface Sums {
  readonly fed: Mass;
  readonly flour: Mass;
  readonly ownFlour: Mass;
  readonly water: Mass;
  readonly effectiveWater: Mass;
  readonly preferment: Mass;
}
