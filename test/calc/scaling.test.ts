import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import {
  bowlBatches,
  conversionFactor,
  roundFactorUp,
  roundToStep,
  scaleTo,
} from '../../core/calc/formula/scaling.ts';
import { dough, finalGrams, flour, formula, pct, pieces, salt, water, yeast } from './formula-builder.ts';

const loaf = (yields?: Parameters<typeof formula>[1], bakeLossFraction?: number) =>
  solveFormula(
    formula([dough(flour('flour', pct(100)), water(pct(65)), salt(pct(2)), yeast(pct(1.5)))], yields, {
      lossFraction: 0.01,
      ...(bakeLossFraction === undefined ? {} : { bakeLossFraction }),
    }),
  ).solved!;

describe('scaling as published', () => {
  // bread-bakers.com digest v105.n006, message 4: 1685 g at 168.5 % are 1000 / 650 / 20 / 15 g.
  it('1685 g of dough at 168.5 %', () => {
    const { solved } = solveFormula(
      formula([dough(flour('flour', pct(100)), water(pct(65)), salt(pct(2)), yeast(pct(1.5)))], {
        kind: 'dough',
        grams: 1685,
      }),
    );
    const grams = finalGrams(solved);
    for (const [name, expected] of Object.entries({ flour: 1000, water: 650, salt: 20, yeast: 15 })) {
      expect(grams[name], name).toBeCloseTo(expected, 3);
    }
  });

  // Baker's-percent article, 150 lb of French bread (blog copy at lobimm.blogg.se 2023/09): 0.8915, used as 0.9.
  it('150 lb at 168.25 %, the factor rounded up as the trade does', () => {
    const factor = conversionFactor(150, 168.25)!;
    expect(factor).toBeCloseTo(0.8915, 3);
    expect(roundFactorUp(factor, 0.1)).toBe(0.9);
  });

  // Hamelman, Bread, p. 105, at thefreshloaf.com node/60712: 600 g / 170.4 % is 3.52.
  it('600 g at 170.4 %', () => {
    expect(conversionFactor(600, 170.4)).toBeCloseTo(3.52, 2);
    expect(roundFactorUp(3.52, 0.01)).toBe(3.52);
    expect(conversionFactor(600, 0)).toBeUndefined();
    expect(roundFactorUp(3.52, 0)).toBeUndefined();
  });
});

describe('scaleTo', () => {
  it('pieces, dough, baked weight, flour, and an ingredient on hand', () => {
    const solved = loaf(pieces(10, 500), 0.12);
    const factor = (target: Parameters<typeof scaleTo>[1]) => {
      const result = scaleTo(solved, target);
      return result.ok ? result.factor : result.failure;
    };
    expect(factor({ kind: 'pieces', count: 25 })).toBeCloseTo(2.5, 12);
    expect(factor({ kind: 'pieces', count: 10, pieceGrams: 250 })).toBeCloseTo(0.5, 12);
    expect(factor({ kind: 'pieces', count: 10, pieceGrams: 440, baked: true })).toBeCloseTo(1, 12);
    expect(factor({ kind: 'dough', grams: 10_000 })).toBeCloseTo(2, 12);
    expect(factor({ kind: 'baked', grams: 2200 })).toBeCloseTo(0.5, 12);
    expect(factor({ kind: 'flour', grams: solved.flourGrams! * 3 })).toBeCloseTo(3, 12);
    const saltGrams = finalGrams(solved).salt!;
    expect(factor({ kind: 'ingredient', key: 'salt', grams: saltGrams / 4 })).toBeCloseTo(0.25, 12);
    expect(factor({ kind: 'ingredient', key: 'sugar', grams: 5 })).toBe('not-in-formula');
    expect(factor({ kind: 'pieces', count: 0 })).toBe('impossible-target');
    expect(factor({ kind: 'dough', grams: Number.NaN })).toBe('impossible-target');
  });

  it('says what is not known', () => {
    expect(scaleTo(loaf(), { kind: 'baked', grams: 100 })).toEqual({ ok: false, failure: 'weight-unknown' });
    expect(scaleTo(loaf(), { kind: 'pieces', count: 3 })).toEqual({ ok: false, failure: 'weight-unknown' });
  });

  it('gives the yield that solves to the same weights', () => {
    const solved = loaf(pieces(10, 500), 0.12);
    for (const target of [
      { kind: 'pieces', count: 7 },
      { kind: 'pieces', count: 7, pieceGrams: 400, baked: true },
      { kind: 'flour', grams: 1234 },
      { kind: 'ingredient', key: 'water', grams: 777 },
    ] as const) {
      const result = scaleTo(solved, target);
      if (!result.ok) throw new Error(result.failure);
      expect(loaf(result.yield, 0.12).doughGrams).toBeCloseTo(result.doughGrams, 6);
      expect(loaf(result.yield, 0.12).flourGrams).toBeCloseTo(result.flourGrams, 6);
    }
  });
});

describe('bowlBatches', () => {
  const bowl = { leastGrams: 12_000, mostGrams: 60_000 };
  it('makes the fewest equal batches', () => {
    expect(bowlBatches(60_000, bowl)).toEqual({ ok: true, batches: 1, gramsEach: 60_000 });
    expect(bowlBatches(61_000, bowl)).toEqual({ ok: true, batches: 2, gramsEach: 30_500 });
    expect(bowlBatches(150_000, bowl)).toEqual({ ok: true, batches: 3, gramsEach: 50_000 });
  });
  it('says when the bowl cannot take it', () => {
    expect(bowlBatches(5000, bowl)).toEqual({ ok: false, failure: 'below-least', nearestAboveGrams: 12_000 });
    expect(bowlBatches(70_000, { leastGrams: 40_000, mostGrams: 60_000 })).toEqual({
      ok: false,
      failure: 'gap',
      nearestBelowGrams: 60_000,
      nearestAboveGrams: 80_000,
    });
    expect(bowlBatches(Number.NaN, bowl)).toEqual({ ok: false, failure: 'impossible-weight' });
    expect(bowlBatches(5000, { leastGrams: 9, mostGrams: 0 })).toEqual({
      ok: false,
      failure: 'impossible-weight',
    });
  });
  it('never over- or underfills, and loses no dough', () => {
    const weight = fc.double({ min: 1, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(weight, weight, weight, (grams, a, b) => {
        const capacity = { leastGrams: Math.min(a, b), mostGrams: Math.max(a, b) };
        const result = bowlBatches(grams, capacity);
        if (!result.ok) return;
        expect(result.batches * result.gramsEach).toBeCloseTo(grams, 4);
        expect(result.gramsEach).toBeLessThanOrEqual(capacity.mostGrams * (1 + 1e-5));
        expect(result.gramsEach).toBeGreaterThanOrEqual(capacity.leastGrams * (1 - 1e-8));
      }),
    );
  });
});

describe('roundToStep', () => {
  const weights = (...grams: number[]) => grams.map((value, i) => ({ lineId: `line ${i}`, grams: value }));

  it('rounds to the step and keeps the batch', () => {
    const batch = roundToStep(weights(1003.3, 652.4, 102.3), 5);
    expect(batch.lines.map((row) => row.grams)).toEqual([1010, 650, 100]);
    expect(batch.totalGrams).toBe(1760);
    expect(batch.exactTotalGrams).toBeCloseTo(1758, 9);
    expect(batch.lines.every((row) => !row.finer && row.stepGrams === 5)).toBe(true);
  });

  it('weighs yeast and salt on a finer scale, and says so', () => {
    const batch = roundToStep(weights(1000, 20.13, 0.374), 5);
    expect(batch.lines).toEqual([
      { lineId: 'line 0', grams: 1000, stepGrams: 5, finer: false },
      { lineId: 'line 1', grams: 20, stepGrams: 0.5, finer: true },
      { lineId: 'line 2', grams: 0.375, stepGrams: 0.005, finer: true },
    ]);
  });

  it('leaves alone what it cannot round', () => {
    expect(roundToStep([{ lineId: 'a' }, ...weights(7)], 0).lines).toEqual([
      { lineId: 'a', finer: false },
      { lineId: 'line 0', grams: 7, finer: false },
    ]);
    expect(roundToStep([{ lineId: 'a' }, ...weights(0)], 5).lines).toEqual([
      { lineId: 'a', finer: false },
      { lineId: 'line 0', grams: 0, stepGrams: 5, finer: false },
    ]);
  });

  it('weighs equal shares equal, and leaves the remainder to the heaviest line', () => {
    const batch = roundToStep(weights(1074.4, 21.5, 21.5, 21.5, 10.6, 10.6), 1);
    const [flour, ...rest] = batch.lines.map((row) => row.grams);
    expect(rest).toEqual([22, 22, 22, 11, 11]);
    expect(flour).toBe(1072);
    // Two flours of one weight stay alike; what is left goes to the next.
    const twins = roundToStep(weights(500.3, 500.3, 330.3, 26.6), 1);
    expect(twins.lines.map((row) => row.grams)).toEqual([500, 500, 331, 27]);
  });

  it('stays within half a step of the batch, within half a step on all lines but one, and never rounds one away', () => {
    const grams = fc.oneof(
      fc.double({ min: 0.001, max: 50, noNaN: true }),
      fc.double({ min: 0, max: 1e5, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.uniqueArray(grams, { maxLength: 25, selector: (one) => one.toPrecision(6) }),
        fc.constantFrom(0.1, 1, 2, 5, 10, 100),
        (list, step) => {
          const batch = roundToStep(weights(...list), step);
          expect(Math.abs(batch.totalGrams - batch.exactTotalGrams)).toBeLessThanOrEqual(step / 2 + 1e-6);
          const off = batch.lines.filter(
            (row, i) => Math.abs(row.grams! - list[i]!) > (row.stepGrams! / 2) * (1 + 1e-6) + 1e-9,
          );
          expect(off.length).toBeLessThanOrEqual(1);
          for (const [i, row] of batch.lines.entries()) {
            // The one that takes the remainder is off by no more than all others gained.
            expect(Math.abs(row.grams! - list[i]!)).toBeLessThanOrEqual(
              ((list.length + 2) / 2) * step * (1 + 1e-6),
            );
            if (list[i]! > 1e-9) expect(row.grams!).toBeGreaterThan(0);
            expect(Number.isFinite(row.grams!)).toBe(true);
          }
        },
      ),
    );
  });

  it('weighs equal weights equal where every line has a twin, half a step off for each of them at most', () => {
    expect(roundToStep(weights(500.4, 500.4), 1).lines.map((row) => row.grams)).toEqual([500, 500]);
    // Four light ones rise by 1.6 g together, which the two heavy ones make up for.
    const pairs = roundToStep(weights(500, 500, 20.6, 20.6, 20.6, 20.6), 1);
    expect(pairs.lines.map((row) => row.grams)).toEqual([499, 499, 21, 21, 21, 21]);
    const grams = fc.double({ min: 1, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(grams, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 2, max: 4 }),
        fc.constantFrom(0.1, 1, 5, 100),
        (list, times, step) => {
          const all = Array.from({ length: times }, () => list).flat();
          const batch = roundToStep(weights(...all), step);
          for (const [i, row] of batch.lines.entries())
            expect(row.grams).toBe(batch.lines[i % list.length]!.grams);
          // Weights that differ by less than a billionth of themselves count as equal.
          const heaviest = Math.max(...list);
          const twins = all.filter((one) => heaviest - one <= 2e-9 * heaviest).length;
          expect(Math.abs(batch.totalGrams - batch.exactTotalGrams)).toBeLessThanOrEqual(
            (step * twins) / 2 + 1e-3,
          );
        },
      ),
    );
  });
});
