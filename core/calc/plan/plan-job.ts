/**
 * One batch with its way through the day, all times in minutes. It needs its mixer, then nothing but time, then the
 * oven, then time again; once mixed it waits for nobody.
 */
export interface Job {
  readonly id: string;
  /** Two jobs of one mixer do not run at once; absent for a dough that needs none. */
  readonly mixer?: string;
  readonly mixMinutes: number;
  /** From the end of mixing to the oven. */
  readonly betweenMinutes: number;
  readonly ovenMinutes: number;
  /** From the oven to being ready. */
  readonly afterMinutes: number;
  readonly readyMinutes: number;
  /** When somebody works at it, minutes from its start; nobody has to where it is absent. */
  readonly hands?: readonly Handwork[];
  /** The same for doughs that may be baked together, and how much of the oven it fills: absent where it is not known, then all. */
  readonly bake?: string;
  readonly fill?: number;
  /** Of the oven, as it goes in and as it comes out. */
  readonly inCelsius?: number;
  readonly outCelsius?: number;
}

/** Somebody at work: from so many minutes after the start of a job, for so long. */
export interface Handwork {
  readonly offset: number;
  readonly minutes: number;
  readonly what: 'mix' | 'step';
  /** The words of the step, as its file writes them. */
  readonly name?: string;
}
