import { figureAt } from '../../text/element.ts';
/**
 * A system of linear equations that takes one equation at a time, so that the equation which contradicts
 * the earlier ones is known by name. Equations are kept fully reduced (Gauss–Jordan, the largest
 * coefficient as pivot): at any moment every unknown that is determined can be read off.
 */
export interface LinearSystem {
  readonly unknowns: number;
  /** Reduced equations: `unknowns` coefficients and the constant, 1 at the pivot. */
  readonly rows: number[][];
  readonly pivots: number[];
}

export type EquationOutcome =
  | { readonly kind: 'added' }
  /** Says what the others say already: residual is rounding only. */
  | { readonly kind: 'redundant' }
  /** Cannot hold beside the others; `relative` is the size of the disagreement, 0 to 1. */
  | { readonly kind: 'contradiction'; readonly relative: number };

const added: EquationOutcome = { kind: 'added' };
const redundant: EquationOutcome = { kind: 'redundant' };

/** Coefficients smaller than this share of the terms they are the difference of are rounding, not slope. */
const roundingShare = 1e-11;

/** A system without equations, of so many unknowns. */
export function linearSystem(unknowns: number): LinearSystem {
  return { unknowns, rows: [], pivots: [] };
}

/**
 * Adds the equation Σ coefficients[i]·x[i] + coefficients[unknowns] = 0. A contradictory or redundant
 * equation leaves the system as it was. Coefficients that are not finite count as redundant. `size` is the size of the
 * terms whose sum the constant is, where that is more than the constant itself.
 */
export function addEquation(
  system: LinearSystem,
  coefficients: readonly number[],
  size = 0,
): EquationOutcome {
  const n = system.unknowns;
  const row = coefficients.slice();
  const terms = new Array<number>(n + 1).fill(0);
  for (let i = 0; i <= n; i++) {
    const term = Math.abs(figureAt(row, i));
    if (!Number.isFinite(term)) return redundant;
    terms[i] = term;
  }
  terms[n] = Math.max(figureAt(terms, n), size);
  for (const [r, other] of system.rows.entries()) subtractMultiple(row, terms, other, pivotOf(system, r));

  let pivot = -1;
  let largest = 0;
  for (let i = 0; i < n; i++) {
    const size = Math.abs(figureAt(row, i));
    if (size <= figureAt(terms, i) * roundingShare) row[i] = 0;
    else if (size > largest) {
      largest = size;
      pivot = i;
    }
  }
  if (pivot < 0) {
    const all = figureAt(terms, n);
    const relative = all === 0 ? 0 : Math.abs(figureAt(row, n)) / all;
    return relative <= 1e-9 ? redundant : { kind: 'contradiction', relative };
  }

  const slope = figureAt(row, pivot);
  for (let i = 0; i <= n; i++) row[i] = figureAt(row, i) / slope;
  for (const other of system.rows) subtractMultiple(other, undefined, row, pivot);
  system.rows.push(row);
  system.pivots.push(pivot);
  return added;
}

/** The value of each unknown that the equations determine, and undefined for the others. */
export function solution(system: LinearSystem): (number | undefined)[] {
  const n = system.unknowns;
  const values: (number | undefined)[] = new Array(n).fill(undefined);
  for (const [r, row] of system.rows.entries()) {
    const pivot = pivotOf(system, r);
    let alone = true;
    for (let i = 0; i < n; i++) if (i !== pivot && row[i] !== 0) alone = false;
    if (alone) values[pivot] = -figureAt(row, n) + 0;
  }
  return values;
}

/** The unknown that an equation is solved for. Throws a RangeError where the system has fewer equations. */
function pivotOf({ pivots }: LinearSystem, equation: number): number {
  return figureAt(pivots, equation);
}

function subtractMultiple(
  row: number[],
  terms: number[] | undefined,
  from: readonly number[],
  pivot: number,
): void {
  const factor = figureAt(row, pivot);
  if (factor === 0) return;
  for (let i = 0; i < row.length; i++) {
    const term = factor * from[i]!;
    if (term === 0) continue;
    const before = row[i]!;
    const after = before - term;
    if (terms) terms[i] = Math.max(terms[i]!, Math.abs(term));
    row[i] = Math.abs(after) <= Math.max(Math.abs(before), Math.abs(term)) * 1e-15 ? 0 : after;
  }
  row[pivot] = 0;
}
