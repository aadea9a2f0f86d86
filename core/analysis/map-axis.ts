import type { MixingOutcome } from '../calc/mixing/mixing.ts';
import type { Message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import type { MixAnalysis } from './mix-analysis.ts';

/** What the rows of a map of the gap stand for. */
export const mapAxes = ['water', 'flour', 'speed'] as const;
export type MapAxis = (typeof mapAxes)[number];

/** One row: the dough of a formula that differs from the one at hand in one thing, mixed by the same programme. */
export interface AxisRow {
  /** Hydration of the formula, or share of the second flour of the two, as a fraction; or the number of a speed. */
  readonly value: number;
  readonly outcome: MixingOutcome;
  /** The formula at hand itself. */
  readonly isOwn: boolean;
}

/** The rows of a map from the lowest value up. */
export interface AxisRows {
  readonly rows: readonly AxisRow[];
  /** The two flours, of which `value` is the share of the second. */
  readonly flours?: readonly [from: string, to: string];
  /** What has to be said of the rows. */
  readonly notes: readonly Message[];
}

/** The formula that rows are made from, with the programme that mixes its dough. */
export interface AxisBase {
  readonly analysis: Analysis;
  readonly mix: MixAnalysis;
}

/** The row of a formula that was changed; undefined where it cannot be made or its dough not be mixed. */
export function rowOf(own: Analysis, changed: Analysis, value: number): AxisRow | undefined {
  if (changed.problems.length > own.problems.length || !changed.doughMix.known) return undefined;
  return { value, outcome: changed.doughMix.value.outcome, isOwn: false };
}
