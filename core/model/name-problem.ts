import type { Name } from '../syntax/tree.ts';
import type { Definition } from './scope.ts';

/** A name, or an amount that hangs on what a name stands for, that came to nothing. Lines are counted in the block. */
export type NameProblem =
  | { readonly kind: 'unknown-ingredient'; readonly line: number; readonly name: Name }
  | {
      readonly kind: 'several';
      readonly line: number;
      readonly name: Name;
      readonly definitions: readonly Definition[];
    }
  | { readonly kind: 'unknown-mixer'; readonly line: number; readonly name: Name }
  | { readonly kind: 'unknown-part'; readonly line: number; readonly name: Name }
  | {
      readonly kind: 'not-in-dough';
      readonly line: number;
      readonly name: Name;
      /** A trial loaded it: the dough of that day may have had it. */
      readonly tried?: true;
    }
  | { readonly kind: 'no-density'; readonly line: number; readonly name: Name }
  | { readonly kind: 'no-piece-weight'; readonly line: number; readonly name: Name }
  /** A variant is of a formula that nobody defines, be it its own base (`name`) or a base of that. */
  | { readonly kind: 'base-unknown'; readonly line: number; readonly name: Name; readonly wanted: Name }
  /** A variant is of itself, by way of these. */
  | {
      readonly kind: 'base-loop';
      readonly line: number;
      readonly name: Name;
      readonly names: readonly string[];
    }
  | { readonly kind: 'loop-of-formulas'; readonly line: number; readonly name: Name };
