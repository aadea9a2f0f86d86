import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cardinalRate,
  equivalentMinutes,
  gassingRate,
  type Leavening,
  referenceBulkMinutes,
  referenceMinutes,
  sourdoughLactobacilli,
  sourdoughRate,
  sourdoughYeast,
  yeastFor,
  yeastGassing,
  yeastGrowth,
} from '../../core/calc/fermentation/fermentation.ts';
import { asFreshYeast, yeastAlike } from '../../core/calc/fermentation/yeast.ts';
import { restingMinutes } from '../../core/calc/heat/dough-cooling.ts';

const plain: Leavening = {
  freshYeastFraction: 0.02,
  levainFraction: 0,
  saltFraction: 0.02,
  sugarFraction: 0,
  observedFactor: 1,
};

describe('the cardinal temperature model', () => {
  // Rosso and others 1993; cardinal temperatures of S. cerevisiae by Salvadó and others, AEM 77 (2011) 2292. Computed there from.
  test.each([
    [10, 0.135],
    [20, 0.596],
    [24, 0.788],
    [27, 0.904],
    [32.3, 1],
    [35, 0.968],
  ])('of yeast growth at %d °C: %d', (celsius, rate) => {
    expect(Math.abs(cardinalRate(yeastGrowth, celsius) - rate)).toBeLessThan(0.001);
  });

  test('is nothing at its ends and beyond, and never more than at the best', () => {
    for (const celsius of [-10, 2.8, 45.4, 60, Number.NaN])
      expect(cardinalRate(yeastGrowth, celsius)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: -50, max: 100, noNaN: true }), (celsius) => {
        const rate = cardinalRate(yeastGassing, celsius);
        expect(rate).toBeGreaterThanOrEqual(0);
        expect(rate).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });

  test('makes 72 h at 4 °C about 5 h at 27 °C', () => {
    // Common practice, no source.
    const hours = equivalentMinutes(plain, 72 * 60, 4, 27) / 60;
    expect(Math.abs(hours - 5)).toBeLessThan(0.25);
  });

  test('gasses fastest at 35 to 38 °C, and a proofer at 35 °C outruns the bench', () => {
    // The optimum of gassing is from memory, its two ends are our own choice.
    const rate = (celsius: number) => cardinalRate(yeastGassing, celsius);
    for (const celsius of [24, 27, 30, 32, 42, 45]) expect(rate(35)).toBeGreaterThan(rate(celsius));
    expect(rate(38)).toBeCloseTo(1, 12);
    expect(rate(35) / rate(27)).toBeGreaterThan(1.25);
    for (const celsius of [-3, 50, 60]) expect(rate(celsius)).toBe(0);
  });

  test('comes near the rule that the rate doubles every 17 °F', () => {
    // Forno Bravo blog: 2 h at 80 °F are 4 h at 63 °F. A rule of thumb; the model is to be within a fifth of it.
    const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
    const hours = equivalentMinutes(plain, 120, celsius(80), celsius(63)) / 60;
    expect(Math.abs(hours / 4 - 1)).toBeLessThan(0.2);
    expect(equivalentMinutes(plain, 120, celsius(80), celsius(80))).toBeCloseTo(120, 9);
  });
});

describe('sourdough', () => {
  // M. Gänzle, letter in the FAQ of rec.food.sourdough: generation times as multiples of the shortest.
  test.each([
    [20, 0.5],
    [37, 0.5],
    [15, 0.25],
    [39, 0.25],
    [4, 0],
    [41, 0],
    [32.5, 1],
  ])('lactobacilli at %d °C: %d', (celsius, rate) => {
    expect(sourdoughRate(sourdoughLactobacilli, celsius)).toBeCloseTo(rate, 9);
  });
  test.each([
    [28, 1],
    [20, 0.5],
    [32, 0.5],
    [14, 0.25],
    [34, 0.25],
    [8, 0],
    [35, 0],
  ])('yeast at %d °C: %d', (celsius, rate) => {
    expect(sourdoughRate(sourdoughYeast, celsius)).toBeCloseTo(rate, 9);
  });

  test('agrees below the optimum with the cardinal temperature model', () => {
    const lactobacilli = { leastCelsius: 4, bestCelsius: 32.5, mostCelsius: 41 };
    for (const celsius of [15, 20, 25])
      expect(
        Math.abs(sourdoughRate(sourdoughLactobacilli, celsius) - cardinalRate(lactobacilli, celsius)),
      ).toBeLessThan(0.08);
  });

  test('a fifth of the flour in levain fills a bulk in four hours at 25 °C', () => {
    // Common practice, no source.
    const levain = { ...plain, freshYeastFraction: 0, levainFraction: 0.2 };
    expect(referenceMinutes(levain, 240, () => 25)).toBeCloseTo(referenceBulkMinutes, 6);
  });
});

describe('yeast', () => {
  test('converts 1 : 0.4 : 0.33', () => {
    // Hamelman, Bread (2004), yeast conversions.
    expect(yeastAlike.get('active dry yeast')).toBe(0.4);
    expect(yeastAlike.get('instant yeast')).toBe(0.33);
    expect(asFreshYeast('fresh yeast', 0.69)).toBe(1);
    expect(asFreshYeast('instant yeast', 0.05)).toBeCloseTo(1 / 0.33, 9);
    expect(asFreshYeast('active dry yeast', 0.05)).toBeCloseTo(2.5, 9);
  });

  test('for a wanted time is the yeast that takes that time', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 900, noNaN: true }),
        fc.double({ min: 5, max: 35, noNaN: true }),
        fc.double({ min: 0, max: 0.03, noNaN: true }),
        (minutes, celsius, saltFraction) => {
          const dough = { ...plain, saltFraction };
          const yeast = yeastFor(dough, minutes, celsius)!;
          const worth = referenceMinutes({ ...dough, freshYeastFraction: yeast }, minutes, () => celsius);
          expect(worth).toBeCloseTo(referenceBulkMinutes, 6);
        },
      ),
    );
    expect(yeastFor(plain, 60, 80)).toBeUndefined();
  });

  test('works slower with more salt and sugar, faster with more yeast', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 1e-5, max: 0.08, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.05, noNaN: true }),
        (saltFraction, sugarFraction, freshYeastFraction, more) => {
          const dough = { ...plain, saltFraction, sugarFraction, freshYeastFraction };
          const rate = gassingRate(dough, 25);
          expect(gassingRate({ ...dough, saltFraction: saltFraction + more }, 25)).toBeLessThan(rate);
          expect(gassingRate({ ...dough, sugarFraction: sugarFraction + more }, 25)).toBeLessThanOrEqual(
            rate,
          );
          expect(
            gassingRate({ ...dough, freshYeastFraction: freshYeastFraction + more }, 25),
          ).toBeGreaterThan(rate);
        },
      ),
    );
  });

  test('a steady temperature is worth its minutes', () => {
    expect(referenceMinutes(plain, 67.5, () => 27)).toBeCloseTo(67.5, 9);
  });
});

describe('resting dough', () => {
  test('follows the air the slower the more of it there is', () => {
    expect(restingMinutes(1000)).toBeGreaterThan(100);
    expect(restingMinutes(1000)).toBeLessThan(240);
    for (const grams of [60, 500, 1000, 5000])
      expect(restingMinutes(4 * grams)).toBeGreaterThan(restingMinutes(grams) * 4 ** (1 / 3));
    expect(restingMinutes(0)).toBe(0);
    expect(restingMinutes(Number.NaN)).toBe(0);
  });
});
