import type { MapRequest } from '../../facts/gap-map.ts';

/**
 * What a sheet is asked for: a size, the conditions of the day and a clock time. All of it is tried for this sheet alone
 * and changes nothing in the file. What is absent is as the file has it; what cannot be used is left out and said so.
 */
export interface SheetOptions {
  readonly size?: SizeRequest;
  readonly today?: TodayConditions;
  readonly clock?: ClockRequest;
  readonly whatIf?: WhatIf;
  /** The map of the gap is shown too, asked for so. */
  readonly map?: MapRequest;
}

/** What is tried of the formula itself: everything else of it stays as it is written. */
export interface WhatIf {
  /** How long lines of the programme that mixes the dough last. */
  readonly lines?: readonly WhatIfLine[];
  /** Of the dough's main line of water, as that line has it: a fraction, of flour or as the hydration it brings the dough to, or grams. */
  readonly water?: number;
  /** A flour of the formula, and the one that takes its place wherever it stands. */
  readonly flour?: {
    readonly from: string;
    readonly to: string;
    /** The water of the dough changes with it, for the same feel, where none is asked for. */
    readonly sameFeel?: boolean;
  };
}

export interface WhatIfLine {
  /** Which of the lines that take time, counted from 0. */
  readonly index: number;
  /** Above 0 and up to 600. */
  readonly minutes: number;
  /** How long it lasted when this was tried; where the file has it otherwise by now, it is left out and said so. */
  readonly from?: number;
}

export type SizeRequest =
  | { readonly by: 'file' }
  | { readonly by: 'pieces'; readonly pieces: number }
  /** Dough at the divider, after the loss in bowl and on bench. */
  | { readonly by: 'dough'; readonly grams: number }
  | { readonly by: 'baked'; readonly grams: number }
  /** All flour, that of the preferments included. */
  | { readonly by: 'flour'; readonly grams: number }
  /** So many bowls of the mixer, each with the most dough it takes. */
  | { readonly by: 'bowl'; readonly batches: number }
  /** All that is on hand of one ingredient, by a name of `SheetSize.ingredients`. */
  | { readonly by: 'onHand'; readonly ingredient: string; readonly grams: number };

/** Today's conditions where they differ from those of the bakery. */
export interface TodayConditions {
  readonly roomCelsius?: number;
  readonly flourCelsius?: number;
  readonly tapCelsius?: number;
  readonly scaleStepGrams?: number;
  /** A name of `SheetView.mixers`; it mixes the dough in place of the file's. */
  readonly mixer?: string;
}

/** A clock time to hang the work on. The core has no clock: whoever asks gives the time. */
export interface ClockRequest {
  /** `start`: the mixing of the dough begins then; `ready`: the last step of the last batch ends then. */
  readonly by: 'start' | 'ready';
  /** Minutes after midnight, 0 to 1439. */
  readonly minutes: number;
}
