import type { SheetOptions, ShownSheet } from '../../server/protocol.ts';

/** What the page tells the extension. `uri` and `formula` name the formula it speaks of. */
export type FromPage =
  /** The page stands and can be written to; `state` is what it kept from before a reload. */
  | { readonly type: 'ready'; readonly state?: PageState }
  /** The baker tries this for today; the sheet is asked for anew and the file stays as it is. */
  | { readonly type: 'try'; readonly uri: string; readonly formula: string; readonly asked: SheetOptions }
  /** What is tried is to be written into the file. */
  | { readonly type: 'keep'; readonly uri: string; readonly formula: string }
  /** What the trial at this zero-based line says is to be written into its mixer. */
  | { readonly type: 'teach'; readonly uri: string; readonly formula: string; readonly line: number }
  /** The baker wants to see this zero-based line in the editor. */
  | { readonly type: 'reveal'; readonly uri: string; readonly line: number }
  /** Stay with this formula, or follow the cursor again. */
  | { readonly type: 'pin'; readonly pinned: boolean }
  /** What one scale reads is to stand beside the weights, or to be left out, on every sheet from now on. */
  | { readonly type: 'scaleReading'; readonly shown: boolean }
  /** How far the work has come. */
  | { readonly type: 'work'; readonly uri: string; readonly formula: string; readonly work: WorkState }
  /** A thermometer was read; it is to become a line of a trial. */
  | {
      readonly type: 'reading';
      readonly uri: string;
      readonly formula: string;
      readonly reading: TakenReading;
    };

export interface TakenReading {
  /** The day by the clock on the wall, `2026-03-14`. */
  readonly date: string;
  /** Minutes from the start of mixing; absent at its end. */
  readonly minutes?: number;
  /** Absent where nobody took it. */
  readonly celsius?: number;
  /** The same as it was read, in the unit that is set, and its stage: `75.5 °F, developed`. */
  readonly said: string;
  readonly stage?: string;
  /** How the dough felt, in words of the notation. */
  readonly feel?: readonly string[];
  /** The water of the dough as it was drawn, where it was typed. */
  readonly waterCelsius?: number;
}

/** What the extension tells the page. Sequences only grow while a page lives; a page ignores one that has been overtaken. */
export type ToPage =
  | {
      readonly type: 'sheet';
      readonly sequence: number;
      readonly sheet: ShownSheet;
      /** What is tried for this formula, and how far the work on it has come. */
      readonly asked: SheetOptions;
      readonly work: WorkState;
    }
  /** There is no sheet: what is so, and what to do. */
  | {
      readonly type: 'nothing';
      readonly sequence: number;
      readonly what: string;
      readonly cure: string;
    }
  | { readonly type: 'pinned'; readonly pinned: boolean }
  /** The cursor stands at this zero-based line of this file. */
  | { readonly type: 'cursor'; readonly uri: string; readonly line: number }
  /** Show one moment after the other, or the sheet as a whole. */
  | { readonly type: 'mode'; readonly mode: PanelMode }
  /** What came of an edit, in one sentence. */
  | { readonly type: 'said'; readonly text: string };

export type PanelMode = 'sheet' | 'working';

/** What outlives a reload in the page itself: what was shown, and how. */
export interface PageState {
  readonly uri?: string;
  readonly line?: number;
  readonly formula?: string;
  readonly pinned?: boolean;
  readonly mode?: PanelMode;
}

/** How far the work on a formula has come: where the baker is, what is weighed, which timers run. */
export interface WorkState {
  /** Key of the moment that is shown. */
  readonly moment?: string;
  readonly batch?: number;
  /** Keys of what is weighed. */
  readonly ticked: readonly string[];
  readonly timers: Readonly<Record<string, RunningTimer>>;
  /** The water as it was drawn, °C, for the readings of this dough. */
  readonly waterCelsius?: number;
}

export interface RunningTimer {
  /** `speed 1`. */
  readonly label: string;
  /** Milliseconds since the epoch, by the clock of the machine. */
  readonly startedAt: number;
  readonly seconds: number;
}

export const noWork: WorkState = { ticked: [], timers: {} };

/** Names one formula of one file. A line break can stand in neither, so two formulas never share a key. */
export function formulaKey(uri: string, formula: string): string {
  return `${uri}\n${formula}`;
}
