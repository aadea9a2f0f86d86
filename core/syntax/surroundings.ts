import type { SyntaxProblem } from './syntax-problem.ts';
import type { Context, HeaderStatement } from './tree.ts';

/** What a line is read in: the section it stands in, and whether a blank line or the file's start is above it. */
export interface Surroundings {
  readonly context: Context;
  readonly afterBlank: boolean;
}

export interface HeaderRead {
  readonly statement: HeaderStatement | undefined;
  readonly problems: readonly SyntaxProblem[];
}
