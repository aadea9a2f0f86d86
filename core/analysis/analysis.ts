import type { FormulaProblem, SolvedFormula } from '../calc/formula/formula-result.ts';
import type { Known } from '../calc/known.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import type { Message } from '../words/message.ts';
import type { MixAnalysis } from './mix-analysis.ts';

/**
 * A formula with all that is computed of it: the one thing that rules, hovers, totals and the sheet read. The mixing
 * programmes are run when somebody first asks for them, since a hover over flour need not wait for the heat of the dough.
 */
export interface Analysis {
  readonly resolved: ResolvedFormula;
  readonly solved: SolvedFormula | undefined;
  readonly problems: readonly FormulaProblem[];
  readonly mixes: readonly Known<MixAnalysis, Message>[];
  /** The programme that mixes the dough. */
  readonly doughMix: Known<MixAnalysis, Message>;
}

/** What a formula comes to that is known to be solved. Throws a RangeError where it has nothing to be solved. */
export function solutionOf({ solved }: Analysis): SolvedFormula {
  if (solved === undefined) throw new RangeError('The formula is not solved.');
  return solved;
}
