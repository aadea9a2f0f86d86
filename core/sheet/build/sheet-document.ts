import type { MapRequest } from '../../facts/gap-map.ts';
import type { Level } from '../../rules/engine/finding.ts';
import type { SheetClock } from './clock.ts';
import type { SheetLabels } from './sheet-labels.ts';
import type { ClockRequest, SizeRequest } from './sheet-options.ts';

/** Grows when a member of a sheet written as JSON goes, is renamed or gets another unit. */
export const sheetVersion = 2;

/**
 * The batch sheet of one formula as serialisable data: sections in the order in which the hands move, made of nodes. Every
 * figure comes with the words it is shown in, so that a screen or a page renders and computes nothing. All `line`s are
 * zero-based lines of the file.
 */
export interface SheetDocument {
  readonly version: typeof sheetVersion;
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
  /** Whether what one scale reads stands beside each weight. */
  readonly scaleReading: boolean;
  readonly size: SheetSize;
  readonly batches: SheetBatches;
  /** The mixers that can be asked for, the file's first. */
  readonly mixers: readonly string[];
  /** The clock time that the work hangs on, where one was asked for. */
  readonly clock?: ClockRequest;
  /** What of the formula itself can be tried, as its file has it. */
  readonly whatIf?: WhatIfFields;
  /** The map of the gap that was asked for. */
  readonly map?: MapRequest;
  readonly sections: readonly Section[];
  /** What a baker does, one thing after the other, each the node of a section. */
  readonly moments: readonly WorkMoment[];
  /** What was found at nothing that the sheet shows; it stands below the heading. */
  readonly findings: readonly SheetFinding[];
  /** The words that the panel itself has for what it shows and asks. */
  readonly labels: SheetLabels;
}

/** What a panel lets a baker step, each as the file has it. */
export interface WhatIfFields {
  /** The lines of the programme that take time, in their order. */
  readonly lines: readonly { readonly index: number; readonly name: string; readonly minutes: number }[];
  /** The dough's main line of water: a fraction, or grams where it is weighed. */
  readonly water?: {
    readonly name: string;
    readonly amount: number;
    /** As it is now, where something of the formula is tried: a flour may bring its own. */
    readonly tried?: number;
    readonly measure: 'fraction' | 'grams';
  };
  /** The flours of the dough, each with those of its kind that could take its place. */
  readonly flours: readonly { readonly name: string; readonly others: readonly string[] }[];
}

/** Whatever stands on a sheet and may have something found at it. */
export interface SheetNode {
  /**
   * Names it by what it is, never by where it stands: the section, and in it the name of the line with its occurrence
   * from the second on. It stays while lines above it are typed.
   */
  readonly id: string;
  readonly line?: number;
  /** What was found at its line, by level as the rules give it; absent where nothing was. */
  readonly findings?: readonly SheetFinding[];
}

/** What a section tells of; the same for every formula and language. */
export type SectionName =
  /** The three answers at its head. */
  | 'glance'
  | 'facts'
  | 'day'
  /** What is tried of the formula itself beside what its file has. */
  | 'before-after'
  /** What is weighed: made before, into the bowl, added later, kept apart. */
  | 'before'
  | 'bowl'
  | 'later'
  | 'apart'
  | 'mixing'
  | 'mixing-chart'
  | 'map-chart'
  | 'trial'
  | 'clock'
  | 'yield'
  /** Blanks for a pen, on paper. */
  | 'log'
  | 'composition-chart'
  | 'cost'
  | 'label'
  | 'cautions';

export type Section = FactsSection | TableSection | StepsSection | ChartSection | NotesSection;

interface SectionHead extends SheetNode {
  readonly name: SectionName;
  /** Empty for what stands below the heading of the sheet itself. */
  readonly title: string;
  /** Behind the title: the clock, the time before mixing, how often. */
  readonly when?: readonly string[];
  /** Sentences before what it shows, and those after. */
  readonly lead?: readonly Sentence[];
  readonly notes?: readonly string[];
}

/** A sentence, or stretches of one of which some are to be emphasised. */
export type Sentence = string | readonly { readonly text: string; readonly strong?: true }[];

/** Labelled figures. */
export interface FactsSection extends SectionHead {
  readonly kind: 'facts';
  readonly facts: readonly Fact[];
}

/** Where a figure comes from: the file (or computed from it alone), tried today, or assumed as no file says it. */
export type FactSource = 'file' | 'today' | 'assumed';

export interface Fact extends SheetNode {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** Beside the value: a second figure, where it comes from. */
  readonly notes: readonly string[];
  readonly source: FactSource;
  /** How it stands with it, where that can be judged. */
  readonly verdict?: Verdict;
  /** To be written in by hand: the unit behind the blank. */
  readonly blank?: string;
  /** Of a condition of the day: °C of a temperature, grams of the scale step; absent where it is not known. */
  readonly figure?: number;
  /** What the file has instead, in words, where today's is tried. */
  readonly inFile?: string;
}

/** A judgement in a sign and a word; a colour beside them may say it once more. */
export interface Verdict {
  /** `off`: not quite, or not surely; `given`: nothing is to be judged. */
  readonly level: 'good' | 'off' | 'bad' | 'given' | 'unknown';
  readonly sign: string;
  /** Empty where the value says it. */
  readonly word: string;
}

/** Rows with a name and cells. */
export interface TableSection extends SectionHead {
  readonly kind: 'table';
  /** What stands over the names. */
  readonly head: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** The sum of the rows, where they are several and all known. */
  readonly sum?: Row;
  /** How often each row is done, once a batch; absent where there is nothing to tick. */
  readonly times?: number;
  /** Of a trial whose readings miss what is computed: what writes into its mixer what its trials say. On a screen alone. */
  readonly teach?: { readonly mixer: string; readonly words: string };
}

export interface Column {
  readonly key: ColumnKey;
  readonly title: string;
  /** The unit that most of its cells have, for its heading; only a cell of another says its own. */
  readonly unit?: string;
  /** Figures stand under each other at their ends. */
  readonly figures?: true;
  /** A column whose cells stand below those of another where room is short, in words with `{0}` for the cell. */
  readonly below?: { readonly key: ColumnKey; readonly words: string };
}

export type ColumnKey =
  /** Of what is weighed: for one batch, for all of them, what one scale reads after it, baker's percent. */
  | 'weigh'
  | 'all'
  | 'reads'
  | 'percent'
  /** Of mixing: how long, until which minute, the dough then. */
  | 'lasts'
  | 'until'
  | 'celsius'
  | 'stage'
  /** Of a trial. */
  | 'measured'
  | 'computed'
  | 'off'
  | 'cost'
  /** Of what is tried: as the file has it, and as it is then. */
  | 'inFile'
  | 'tried'
  /** Of a table of nutrition, by its place. */
  | `nutrition ${number}`;

export interface Row extends SheetNode {
  readonly name: string;
  readonly cells: Readonly<Partial<Record<ColumnKey, Cell>>>;
  /** `at 9 °C`, `on a finer scale`. */
  readonly notes?: readonly string[];
  /** Why it has no figure. */
  readonly missing?: string;
}

export interface Cell {
  readonly text: string;
  /** Of what is weighed, apart from its figure; kept on its line. */
  readonly unit?: string;
  /** The figure itself, before it is rounded to be shown. */
  readonly grams?: number;
  readonly minutes?: number;
}

/** The moments of the work in the order of time. */
export interface StepsSection extends SectionHead {
  readonly kind: 'steps';
  /** Over when, what and how long. */
  readonly heads: readonly [when: string, work: string, lasts: string];
  readonly steps: readonly Step[];
}

export interface Step extends SheetNode {
  readonly of: 'before' | 'mix' | 'step' | 'fold' | 'ready';
  /** By the clock, or from the start of mixing. */
  readonly when: string;
  /** The time of day, where a clock was asked for. */
  readonly clock?: SheetClock;
  readonly text: string;
  /** The same without how long it lasts, for where that stands beside it. */
  readonly brief?: string;
  readonly lasts?: string;
  /** Where it lies along the whole work, 0 to 1; a moment that takes no time begins and ends there. */
  readonly along: { readonly from: number; readonly to: number };
  /** How warm the dough is then, and how far it grows. */
  readonly notes?: readonly string[];
  /** From the start of the first mixing; below nothing for what is made before. */
  readonly startSeconds: number;
  readonly seconds?: number;
}

/**
 * A chart, drawn and told. The drawings are SVG with classes and `currentColor` alone, so that a page in any theme and
 * paper show the same; they hold no script, no style and no link. Nothing is told by colour: each has its words, and the
 * table says the same to who cannot see it.
 */
export interface ChartSection extends SectionHead {
  readonly kind: 'chart';
  /** The chart in a sentence or two; the drawings' own description. */
  readonly description: string;
  /** SVG for a column from about 300 px wide, from about 400 px where there is one, and from about 560 px or paper; show one of them. */
  readonly narrow: string;
  readonly middle?: string;
  readonly wide: string;
  /** What the drawing shows, as a table. */
  readonly table: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

/** Sentences alone: its notes. */
export interface NotesSection extends SectionHead {
  readonly kind: 'notes';
}

/** One thing to do: something to weigh, a line of the mixing, a step after it. */
export interface WorkMoment {
  /** The node it is: a section of what is weighed, a row of the mixing, a step of the clock. */
  readonly id: string;
  readonly of: 'weigh' | 'mix' | 'step';
  readonly title: string;
  readonly when: readonly string[];
  /** What a timer of it runs; absent where the file says no time. */
  readonly seconds?: number;
  /** Of a line of the mixing: when it ends, counted from the start of mixing, and the dough then. */
  readonly ends?: {
    readonly minute: number;
    readonly celsius?: string;
    readonly stage?: string;
    readonly isLast: boolean;
  };
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
  readonly each?: Cell;
  /** `2 batches of 21.4 kg in big spiral`; absent for one batch that fits. */
  readonly text?: string;
}

export interface SheetFinding {
  readonly line: number;
  readonly level: Level;
  readonly code: string;
  readonly message: string;
}
