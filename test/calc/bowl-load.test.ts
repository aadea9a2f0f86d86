import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import { mostDoughGrams } from '../../core/calc/mixing/bowl-load.ts';
import { dough, flour, formula, g, water } from './formula-builder.ts';

const pound = 453.59237;

describe('what a bowl takes, as published', () => {
  test('a stiffer dough, in proportion to its water', () => {
    // Hobart HL600 Legacy mixer manual, p. 22–23 (easymanua.ls/hobart/legacy-hl600): 18.2 kg rated at 40, dough at 30.
    expect(Math.abs(mostDoughGrams(18_200, { waterToFlour: 0.3 }, 0.4) / 1000 - 13.6)).toBeLessThan(0.06);
    // Hobart HL200 mixer manual, p. 34 (manualsonline.com): 40 lb rated at 40, dough at 30.
    expect(mostDoughGrams(40 * pound, { waterToFlour: 0.3 }, 0.4) / pound).toBeCloseTo(30, 9);
  });

  test('high-gluten flour a tenth less, cold water 15 to 20 % less', () => {
    // Hobart HL200 mixer manual, p. 33: 100 lb become 90 lb.
    const rated = { waterToFlour: 0.6 };
    expect(mostDoughGrams(100 * pound, { ...rated, isHighGluten: true }) / pound).toBeCloseTo(90, 9);
    const cold = mostDoughGrams(100, { ...rated, isCold: true });
    expect(cold).toBeGreaterThanOrEqual(80);
    expect(cold).toBeLessThanOrEqual(85);
  });

  // American Eagle / Axis AX-M40 mixer manual, p. 10 (manualshive.com): absorption ratio, water to flour in lb.
  test.each([
    ['bread light or medium', 15, 25, 60],
    ['bread heavy', 11, 20, 55],
    ['thin pizza', 6, 15, 40],
    ['thick pizza', 12, 20, 60],
  ])('the absorption ratio of %s is the hydration', (_, waterLb, flourLb, percent) => {
    const { solved } = solveFormula(
      formula([dough(flour('flour', g(flourLb * pound)), water(g(waterLb * pound)))]),
    );
    expect(100 * solved!.hydration!).toBeCloseTo(percent, 9);
  });
});

test('a bowl never takes more than it is rated for, nor less of a wetter dough', () => {
  const number = fc.double({ min: 0, max: 3, noNaN: true });
  fc.assert(
    fc.property(number, number, fc.boolean(), fc.boolean(), (ratio, more, isHighGluten, isCold) => {
      const most = (waterToFlour: number): number =>
        mostDoughGrams(1000, { waterToFlour, isHighGluten, isCold });
      expect(most(ratio)).toBeLessThanOrEqual(1000);
      if (ratio > 0) expect(most(ratio + more)).toBeGreaterThanOrEqual(most(ratio));
    }),
  );
});
