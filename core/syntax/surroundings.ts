import type { SyntaxProblem } from './syntax-problem.ts';
import type { Context, HeaderStatement } from './tree.ts';

/** What a line is read in: the section it stands in, and whether a blank line or the file's start is above it. */
export interface Surroundings {
  readonly context: Context;
  readonly afterBlank: boolean;
  /** Of a mix that says `by hand`, where there are no speeds. */
  readonly byHand?: true;
  /** Steps stand above in the same section, where none belong: those that follow are of the same process. */
  readonly stepsBegun?: true;
}

/** What the lines below a header stand in. */
export function below(header: HeaderStatement): Pick<Surroundings, 'context' | 'byHand'> {
  return { context: header.section, ...(header.byHand === true ? { byHand: true } : {}) };
}

export interface HeaderRead {
  readonly statement: HeaderStatement | undefined;
  readonly problems: readonly SyntaxProblem[];
}
