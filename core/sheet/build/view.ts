import type { Level } from '../../rules/engine/finding.ts';
import type { SheetChart } from './chart.ts';
import type { SheetLabels } from './sheet-labels.ts';
import type { ClockRequest, SizeRequest } from './sheet-options.ts';
import type { SheetTrial } from './sheet-trials.ts';
import type { SheetCost, SheetLabel } from './view-product.ts';

/**
 * The batch sheet of one formula as serialisable data, ordered as the hands move. Every figure comes with the words
 * it is shown in, so that a screen or a page renders and computes nothing. All `line`s are zero-based lines of the file.
 */
export interface SheetView {
  readonly formula: string;
  readonly uri: string;
  /** Line of the formula's header. */
  readonly line: number;
  /** `ready`: all is solved; `held`: something is not known yet and `heldBy` says which line and why. */
  readonly state: 'ready' | 'held' | 'empty';
  readonly heldBy?: { readonly line: number; readonly message: string };
  /** Something of what was asked for is tried here and is not in the file. */
  readonly tried: boolean;
  /** What of the asking could not be done, in sentences; the rest of the sheet is as it would be without. */
  readonly notDone: readonly string[];
  /** What is made: `24 pieces of 880 g`, `21.4 kg in the bowl`. */
  readonly makes: readonly string[];
  readonly facts: readonly SheetFact[];
  readonly size: SheetSize;
  readonly batches: SheetBatches;
  /** The conditions the sheet is worked out for, each with where it comes from. */
  readonly conditions: readonly SheetCondition[];
  /** The mixers that can be asked for, the file's first. */
  readonly mixers: readonly string[];
  readonly blocks: readonly SheetBlock[];
  readonly water?: SheetWater;
  readonly mixing?: SheetMixing;
  readonly steps: readonly SheetStep[];
  readonly timeline: SheetTimeline;
  /** Before and after baking: pieces, dough, baked weight, losses. */
  readonly yields: readonly SheetFact[];
  readonly cost?: SheetCost;
  readonly label?: SheetLabel;
  /** What trials of the formula measured, in the order of the file. */
  readonly trials: readonly SheetTrial[];
  readonly charts: readonly SheetChart[];
  readonly findings: readonly SheetFinding[];
  readonly cautions: readonly string[];
  /** The words that the panel itself has for what it shows and asks. */
  readonly labels: SheetLabels;
}

/** Where a figure comes from: the file (or computed from it alone), tried today, or assumed as no file says it. */
export type FactSource = 'file' | 'today' | 'assumed';

/** A labelled figure: hydration, salt, prefermented flour, dough temperature; pieces, baked weight. */
export interface SheetFact {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly note?: string;
  readonly source: FactSource;
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
  /** The most and the least dough of the mixer's bowl; absent where no file says it. */
  readonly bowl?: { readonly mixer: string; readonly mostGrams: number; readonly leastGrams?: number };
  /** What the formula can be sized by when it is on hand, with what the sheet takes of each now. */
  readonly ingredients: readonly { readonly name: string; readonly grams: number }[];
}

/** In how many equal batches the dough is mixed, so that none is more than the bowl takes. */
export interface SheetBatches {
  readonly count: number;
  /** Dough in the bowl, one batch; absent where its weight is not known. */
  readonly each?: SheetFigure;
  /** `2 batches of 21.4 kg in big spiral`; absent for one batch that fits. */
  readonly text?: string;
  readonly line?: number;
}

/** One condition: `room`, `flour`, `tap water`, `scale step` or `mixer`. */
export interface SheetCondition {
  readonly key: 'room' | 'flour' | 'tap water' | 'scale step' | 'mixer';
  readonly label: string;
  /** In words; `not known` where nobody says it. */
  readonly value: string;
  /** °C of the temperatures, grams of the scale step; absent where it is not known, and of the mixer. */
  readonly figure?: number;
  readonly source: FactSource;
  /** What the file has instead, in words, where today's is tried. */
  readonly inFile?: string;
}

/** One moment of the work: a preferment the evening before, a soaker, what goes into the bowl, a later addition. */
export interface SheetBlock {
  readonly title: string;
  readonly when: string;
  readonly clock?: SheetClock;
  readonly kind: 'before' | 'bowl' | 'later' | 'apart';
  readonly line: number;
  /** How often it is weighed: once for what is made before, for each batch what goes into the bowl. */
  readonly times: number;
  readonly rows: readonly SheetRow[];
  /** Sum of the rows; absent while the weight of one of them is not known. */
  readonly total?: SheetFigure;
  /** The sum for all batches, where there are several. */
  readonly totalOfAll?: SheetFigure;
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
  /** For one batch. */
  readonly weigh?: SheetFigure;
  /** For all batches, where there are several. */
  readonly all?: SheetFigure;
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
  /** Of the water to draw; absent where no water makes a difference. */
  readonly celsius?: number;
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

/** One line of the programme that takes time; its timer runs `minutes`. */
export interface SheetPhase {
  readonly line: number;
  readonly label: string;
  readonly kind: 'speed' | 'rest' | 'knead' | 'fold' | 'stir';
  readonly minutes: number;
  readonly endMinute: number;
  /** What goes into the bowl right before it, by name. */
  readonly adds: readonly string[];
  readonly celsius?: string;
  readonly stage?: string;
}

export interface SheetStep {
  readonly line: number;
  readonly text: string;
  readonly seconds?: number;
  readonly clock?: SheetClock;
}

/** A time of day. */
export interface SheetClock {
  /** `05:38`. */
  readonly time: string;
  /** Days from the day the asked clock time stands on: −1 is the day before. */
  readonly day: number;
  /** `the evening before, 17:00`; the time alone on the day itself. */
  readonly words: string;
}

/** All moments of the work in the order of time, with clock times where a clock was asked for. */
export interface SheetTimeline {
  readonly asked?: ClockRequest;
  readonly moments: readonly SheetMoment[];
  /** When the last step of the last batch ends, seconds from the start of mixing. */
  readonly endSeconds: number;
  readonly readyClock?: SheetClock;
  /** What the times leave out: steps no time is written for, further batches. */
  readonly notes: readonly string[];
}

export interface SheetMoment {
  readonly kind: 'before' | 'mix' | 'step' | 'fold' | 'ready';
  readonly line: number;
  readonly text: string;
  /** From the start of the first mixing; below nothing for what is made before. */
  readonly startSeconds: number;
  readonly seconds?: number;
  readonly celsius?: number;
  readonly clock?: SheetClock;
}

export interface SheetFinding {
  readonly line: number;
  readonly level: Level;
  readonly code: string;
  readonly message: string;
}
