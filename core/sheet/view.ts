import type { Level } from '../features/answers.ts';

/**
 * The batch sheet of one formula as serialisable data, ordered as the hands move. Every figure comes with the words
 * it is shown in, so that a screen or a page renders and computes nothing.
 */
export interface SheetView {
  readonly formula: string;
  readonly uri: string;
  /** Zero-based line of the formula's header. */
  readonly line: number;
  /** `ready`: all is solved; `held`: something is not known yet and `heldBy` says which line and why. */
  readonly state: 'ready' | 'held' | 'empty';
  readonly heldBy?: { readonly line: number; readonly message: string };
  /** What is made: `24 pieces of 880 g`, `21.4 kg in the bowl`. */
  readonly makes: readonly string[];
  readonly facts: readonly SheetFact[];
  readonly size: SheetSize;
  readonly blocks: readonly SheetBlock[];
  readonly water?: SheetWater;
  readonly mixing?: SheetMixing;
  readonly steps: readonly SheetStep[];
  readonly findings: readonly SheetFinding[];
  readonly cautions: readonly string[];
}

/** A labelled figure of the first band: hydration, salt, prefermented flour, dough temperature. */
export interface SheetFact {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly note?: string;
  /** Lines of findings that concern it are looked up by this line when it has one. */
  readonly line?: number;
}

/** How the batch is sized: as the file says, or as asked for in the panel. */
export interface SheetSize {
  readonly asked: SizeRequest;
  /** Present when the formula can be sized that way, with the figure it now has, in the unit of the request. */
  readonly pieces?: number;
  readonly doughGrams?: number;
  readonly flourGrams?: number;
  readonly bakedGrams?: number;
}

export type SizeRequest =
  | { readonly by: 'file' }
  | { readonly by: 'pieces'; readonly pieces: number }
  | { readonly by: 'dough'; readonly grams: number }
  | { readonly by: 'flour'; readonly grams: number };

/** One moment of the work: a preferment the evening before, a soaker, what goes into the bowl, a later addition. */
export interface SheetBlock {
  readonly title: string;
  readonly when: string;
  readonly kind: 'before' | 'bowl' | 'later' | 'apart';
  readonly line: number;
  readonly rows: readonly SheetRow[];
  /** Sum of the rows; absent while the weight of one of them is not known. */
  readonly total?: SheetFigure;
  readonly note?: string;
}

export interface SheetFigure {
  /** Grams as computed, before rounding to the scale. */
  readonly grams: number;
  /** Figure and unit as weighed: `7.680` and `kg`. */
  readonly figure: string;
  readonly unit: string;
}

export interface SheetRow {
  readonly name: string;
  readonly line: number;
  readonly weigh?: SheetFigure;
  /** What one scale under one bowl reads after this row. */
  readonly scaleReads?: SheetFigure;
  /** Baker's percent, of a part's own flour, in the bowl of all flour; absent for parts and where nothing is known. */
  readonly percent?: string;
  /** `at 9 °C (1.2 kg of it ice)`. */
  readonly note?: string;
  readonly missing?: string;
}

export interface SheetWater {
  readonly line?: number;
  readonly celsius: number;
  readonly text: string;
  readonly detail: readonly string[];
}

export interface SheetMixing {
  readonly line: number;
  readonly mixer: string;
  /** `33 min`. */
  readonly total: string;
  /** In words, most important first. */
  readonly outlook: readonly string[];
  readonly phases: readonly SheetPhase[];
}

export interface SheetPhase {
  readonly line: number;
  readonly label: string;
  readonly minutes: number;
  readonly endMinute: number;
  readonly celsius?: string;
  readonly stage?: string;
}

export interface SheetStep {
  readonly line: number;
  readonly text: string;
}

export interface SheetFinding {
  readonly line: number;
  readonly level: Level;
  readonly code: string;
  readonly message: string;
}
