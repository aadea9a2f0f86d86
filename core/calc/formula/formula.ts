import { hasShareOfAllFlour, solveByAllFlour } from './formula-all-flour.ts';
import type { FormulaStructure, Masses } from './formula-facts.ts';
import { doughOf, type FormulaInput } from './formula-input.ts';
import { massesOf } from './formula-masses.ts';
import { impossibleBase, impossibleCooking, impossibleKeepBack, impossibleLine } from './formula-negative.ts';
import { solvedFormula } from './formula-report.ts';
import type { FormulaProblem, FormulaSolution } from './formula-result.ts';
import { openRemainder, type Scale, scaleOf } from './formula-scale.ts';
import { structureOf } from './formula-structure.ts';

/**
 * Solves a formula: every line in percent of flour and in grams, the overall formula, and what is left to weigh into
 * the final mix. All of it is linear in the flour weights of the sections, and exact to
 * rounding. What cannot be known is absent with a reason, each cause gives one problem, and an amount of
 * kind `unknown` gives none. Never throws.
 */
export function solveFormula(input: FormulaInput): FormulaSolution {
  return hasShareOfAllFlour(input) ? solveByAllFlour(input, solveLinear) : solveLinear(input);
}

function solveLinear(input: FormulaInput): FormulaSolution {
  if (input.sections.length === 0) return { solved: undefined, problems: [] };
  const structure = structureOf(input);
  const problems = [...structure.problems];
  if (doughOf(input).lines.length === 0) return { solved: undefined, problems };

  // What comes out negative is reported, left out, and the rest solved again without it.
  for (;;) {
    const state = settle(structure);
    const unscaled =
      impossibleBase(state.masses, state.scale) ??
      impossibleKeepBack(state.masses, state.scale) ??
      impossibleCooking(state.masses, state.scale);
    if (unscaled) {
      problems.push(unscaled);
      continue;
    }
    const open = openRemainder(state.scale);
    if (open) {
      problems.push(open.problem);
      open.line.amount = { kind: 'unknown', unsolved: open.unsolved };
      continue;
    }
    const impossible = impossibleLine(state.masses, state.scale, problems);
    if (impossible) {
      if (impossible.problem) problems.push(impossible.problem);
      impossible.line.amount = { kind: 'none', unsolved: impossible.unsolved };
      continue;
    }
    problems.push(...state.problems);
    const solved = solvedFormula(state.masses, state.scale, problems);
    return { solved, problems };
  }
}

interface State {
  readonly masses: Masses;
  readonly scale: Scale;
  readonly problems: readonly FormulaProblem[];
}

const mostRounds = 60;

/** One round is exact unless a part mixes grams and percent; then its composition settles over a few rounds. */
function settle(structure: FormulaStructure): State {
  let guess: readonly (number | undefined)[] = [];
  for (let round = 1; ; round++) {
    const masses = massesOf(structure, guess);
    const problems: FormulaProblem[] = [];
    const scale = scaleOf(masses, problems);
    if (!masses.approximate || round === mostRounds || isSettled(guess, scale.values)) {
      return { masses, scale, problems };
    }
    guess = scale.values;
  }
}

function isSettled(before: readonly (number | undefined)[], after: readonly (number | undefined)[]): boolean {
  if (before.length !== after.length) return false;
  return after.every((value, i) => {
    const last = before[i];
    if (value === undefined || last === undefined) return value === last;
    return Math.abs(value - last) <= 1e-13 * Math.abs(value);
  });
}
