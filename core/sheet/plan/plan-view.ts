/** A production run as serialisable data. Times stand as `2026-12-05 06:30`, or `day -1 22:00` where the plan has no date. */
export interface PlanView {
  readonly plan: string;
  readonly uri: string;
  /** Zero-based line of the plan's header. */
  readonly line: number;
  /** When all is asked to be ready. */
  readonly ready?: string;
  /** When the first hand is moved: a preferment, or a mixer. */
  readonly firstWork?: string;
  /** When the first dough is mixed. */
  readonly firstMix?: string;
  /** How much too late the latest is; absent where all is ready in time. */
  readonly lateMinutes?: number;
  /** How many are stated to work at once. */
  readonly people?: number;
  /** The most that work at once and when that is first so; more where work has no time that is written. */
  readonly hands?: { readonly most: number; readonly at: string; readonly isLeast: boolean };
  readonly doughs: readonly PlanDoughView[];
  readonly parts: readonly PlanPartView[];
  readonly timeline: readonly PlanMoment[];
  /** The same against the clock: who and what is busy when. */
  readonly lanes: readonly PlanLane[];
  readonly stores: readonly PlanStore[];
  /** What the stores cost, where every price is known and in one currency. */
  readonly cost?: { readonly amount: number; readonly currency: string };
  /** What the stores with a price cost, where some have none: those are named. */
  readonly costAtLeast?: {
    readonly amount: number;
    readonly currency: string;
    readonly missing: readonly string[];
  };
  /** Sentences: what fits no bowl, what is late and by how long, what could not be planned. */
  readonly remarks: readonly string[];
  /** False where a line could not be planned. */
  readonly complete: boolean;
}

export interface PlanDoughView {
  readonly formula: string;
  readonly uri: string;
  /** Lines of the plan that ask for it, in the file. */
  readonly lines: readonly number[];
  readonly doughGrams: number;
  readonly pieces?: number;
  readonly mixer?: string;
  readonly batches: readonly PlanBatchView[];
}

export interface PlanBatchView {
  readonly number: number;
  readonly of: number;
  readonly doughGrams: number;
  readonly pieces?: number;
  readonly mixStart: string;
  readonly mixEnd: string;
  readonly ovenStart?: string;
  readonly ovenEnd?: string;
  readonly ovenLoads: number;
  readonly ready: string;
  readonly lateMinutes?: number;
}

export interface PlanPartView {
  readonly name: string;
  readonly grams: number;
  readonly start: string;
  readonly needed: string;
  /** When the last dough takes it, where that is later. */
  readonly lastNeeded?: string;
  readonly standsMinutes: number;
  readonly for: readonly string[];
}

/** What works on one thing after another, or where things stand beside each other. */
export interface PlanLane {
  readonly kind: 'parts' | 'mixer' | 'bench' | 'oven' | 'person';
  readonly name: string;
  /** By their start. */
  readonly bars: readonly PlanBar[];
}

export interface PlanBar {
  readonly name: string;
  /** Minutes on the clock of the plan. */
  readonly startMinutes: number;
  readonly endMinutes: number;
  readonly start: string;
  readonly end: string;
  /** What it belongs to is ready too late. */
  readonly late: boolean;
  /** Of an oven that is heated or brought to another temperature: nothing is in it. */
  readonly empty?: true;
}

export interface PlanMoment {
  readonly at: string;
  readonly kind: 'part' | 'mix' | 'turn' | 'oven' | 'out' | 'ready';
  readonly words: string;
}

export interface PlanStore {
  readonly name: string;
  readonly grams: number;
  readonly cost?: number;
}
