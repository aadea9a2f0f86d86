import type { FormulaInput } from './formula-input.ts';
import type { FormulaSolution } from './formula-result.ts';

/** Whether a line of the formula is in percent of all flour. */
export function hasShareOfAllFlour({ sections }: FormulaInput): boolean {
  return sections.some(({ lines }) => lines.some(({ amount }) => amount.kind === 'ofAllFlour'));
}

const mostRounds = 24;

/**
 * Solves a formula with lines in percent of all flour: they weigh that share of a guess, and the guess is taken anew until it is the
 * flour that comes out. That flour is linear in the guess, so a secant meets it in three rounds; where a part’s composition
 * changes with its size it takes a few more. Where no flour fits, those lines have no amount.
 */
export function solveByAllFlour(
  input: FormulaInput,
  solve: (input: FormulaInput) => FormulaSolution,
): FormulaSolution {
  const at = (grams: number): { solution: FormulaSolution; comes: number | undefined } => {
    const solution = solve(withAllFlour(input, grams));
    return { solution, comes: solution.solved?.flourGrams };
  };
  let before: { guess: number; comes: number } | undefined;
  let guess = 1000;
  for (let round = 0; round < mostRounds; round++) {
    const { solution, comes } = at(guess);
    if (comes === undefined || !Number.isFinite(comes)) return solve(input);
    if (Math.abs(comes - guess) <= 1e-11 * Math.max(comes, guess)) return solution;
    const slope = before === undefined ? 0 : (comes - before.comes) / (guess - before.guess);
    const next = slope < 1 - 1e-9 ? (comes - slope * guess) / (1 - slope) : comes;
    before = { guess, comes };
    if (!(next > 0) || !Number.isFinite(next)) return solve(input);
    guess = next;
  }
  return solve(input);
}

function withAllFlour(input: FormulaInput, flourGrams: number): FormulaInput {
  return {
    ...input,
    sections: input.sections.map((section) => ({
      ...section,
      lines: section.lines.map((line) =>
        line.amount.kind === 'ofAllFlour'
          ? { ...line, amount: { kind: 'grams', grams: line.amount.fraction * flourGrams } }
          : line,
      ),
    })),
  };
}
