import fc from 'fast-check';
import { det, lusolve, type Matrix, matrix } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { addEquation, linearSystem, solution } from '../../core/calc/formula/solve-linear.ts';

const row = (...terms: number[]) => terms;

describe('linear equations', () => {
  it('are solved as soon as they can be', () => {
    const system = linearSystem(2);
    expect(addEquation(system, row(1, 1, -10)).kind).toBe('added');
    expect(solution(system)).toEqual([undefined, undefined]);
    expect(addEquation(system, row(1, -1, -2)).kind).toBe('added');
    expect(solution(system)).toEqual([6, 4]);
  });

  it('that say the same again are redundant, that say otherwise contradict', () => {
    const system = linearSystem(2);
    addEquation(system, row(0.1, 0.2, -0.3));
    expect(addEquation(system, row(0.3, 0.6, -0.9)).kind).toBe('redundant');
    const outcome = addEquation(system, row(0.3, 0.6, -1.8));
    expect(outcome).toEqual({ kind: 'contradiction', relative: expect.closeTo(0.5, 9) });
    expect(system.rows).toHaveLength(1);
  });

  it('determine some unknowns and leave others open', () => {
    const system = linearSystem(3);
    addEquation(system, row(1, 0, 0, -5));
    addEquation(system, row(0, 1, 1, -5));
    expect(solution(system)).toEqual([5, undefined, undefined]);
  });

  it('without any unknown are judged by the size of their terms', () => {
    const system = linearSystem(0);
    expect(addEquation(system, row(1e-12), 1000).kind).toBe('redundant');
    expect(addEquation(system, row(1), 1000)).toEqual({ kind: 'contradiction', relative: 0.001 });
    expect(addEquation(system, row(Number.NaN)).kind).toBe('redundant');
  });

  it('give back the numbers they were made from', () => {
    const coefficient = fc.integer({ min: -9, max: 9 });
    const unknowns = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(
        unknowns,
        fc.array(fc.array(coefficient, { minLength: 3, maxLength: 3 }), { maxLength: 6 }),
        (x, rows) => {
          const system = linearSystem(3);
          for (const terms of rows) {
            const sum = terms.reduce((total, term, i) => total + term * x[i]!, 0);
            expect(addEquation(system, row(...terms, -sum), 9000).kind).not.toBe('contradiction');
          }
          for (const [i, value] of solution(system).entries()) {
            if (value !== undefined) expect(value).toBeCloseTo(x[i]!, 6);
          }
        },
      ),
    );
  });

  it('come out as a second solver has them', () => {
    const size = 5;
    const coefficient = fc.integer({ min: -20, max: 20 });
    const terms = fc.array(coefficient, { minLength: size, maxLength: size });
    fc.assert(
      fc.property(fc.array(terms, { minLength: size, maxLength: size }), terms, (rows, right) => {
        fc.pre(Math.abs(det(matrix(rows))) > 1);
        const system = linearSystem(size);
        for (const [index, one] of rows.entries()) addEquation(system, row(...one, -right[index]!));
        const theirs = (lusolve(matrix(rows), matrix(right)) as Matrix).toArray().flat() as number[];
        const largest = Math.max(1, ...theirs.map(Math.abs));
        for (const [index, value] of solution(system).entries())
          expect(Math.abs(value! - theirs[index]!) / largest).toBeLessThan(1e-9);
      }),
    );
  });
});
