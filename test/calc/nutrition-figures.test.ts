import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Nutrient } from '../../core/calc/product/nutrition-figures.ts';
import { labelFigure } from '../../core/calc/product/nutrition-figures.ts';

describe('figures of the United States', () => {
  // FDA Food Labeling Guide, Appendix H, and 21 CFR 101.9(c).
  test.each<[Parameters<typeof labelFigure>[0], number, string]>([
    ['kilocalories', 364, '360'],
    ['kilocalories', 47, '45'],
    ['kilocalories', 4.9, '0'],
    ['kilocalories', 52, '50'],
    ['fat', 0.4, '0'],
    ['fat', 0.98, '1'],
    ['fat', 4.7, '4.5'],
    ['fat', 5.2, '5'],
    ['sodium', 4, '0'],
    ['sodium', 137, '135'],
    ['sodium', 486, '490'],
    ['cholesterol', 3, 'less than 5 mg'],
    ['cholesterol', 12, '10'],
    ['fibre', 0.7, 'less than 1 g'],
    ['carbohydrate', 2.4, '2'],
  ])('%s of %d is printed %s', (nutrient, amount, printed) => {
    expect(labelFigure(nutrient, amount, 'US')).toBe(printed);
  });

  // The steps meet at their borders: 21 CFR 101.9(c).
  test.each<[Nutrient, number, string]>([
    ['kilocalories', 50, '50'],
    ['kilocalories', 55, '60'],
    ['fat', 0.5, '0.5'],
    ['fat', 5, '5'],
    ['sodium', 5, '5'],
    ['sodium', 140, '140'],
    ['protein', 0.49, '0'],
    ['sugars', 1, '1'],
  ])('%s at the border %d is %s', (nutrient, amount, printed) => {
    expect(labelFigure(nutrient, amount, 'US')).toBe(printed);
  });
});

describe('figures of the EU', () => {
  // European Commission, guidance on tolerances, December 2012, table 4: from memory.
  test.each<[Nutrient, number, string]>([
    ['kilojoules', 1012.6, '1013'],
    ['fat', 10.4, '10'],
    ['fat', 9.94, '9.9'],
    ['fat', 0.5, '< 0.5'],
    ['fat', 0, '0'],
    ['saturates', 0.1, '< 0.1'],
    ['saturates', 0.14, '0.1'],
    ['sugars', 0.51, '0.5'],
    ['salt', 1.25, '1.3'],
    ['salt', 0.987, '0.99'],
    ['salt', 0.0125, '< 0.01'],
  ])('%s of %d is printed %s', (nutrient, amount, printed) => {
    expect(labelFigure(nutrient, amount, 'EU')).toBe(printed);
  });
});

test('no figure is made of what is no amount', () => {
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, -1])
    for (const regime of ['EU', 'US'] as const) expect(labelFigure('fat', bad, regime)).toBeUndefined();
});

test('more is never printed as less', () => {
  const value = (text: string): number => (/^(<|less)/.test(text) ? 0.001 : Number(text));
  const amount = fc.double({ min: 0, max: 3000, noNaN: true });
  const nutrient = fc.constantFrom<Nutrient>('kilocalories', 'fat', 'saturates', 'protein', 'salt', 'sodium');
  fc.assert(
    fc.property(
      amount,
      amount,
      nutrient,
      fc.constantFrom('EU' as const, 'US' as const),
      (a, b, one, regime) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        const [first, second] = [labelFigure(one, less, regime)!, labelFigure(one, more, regime)!];
        expect(value(first)).toBeLessThanOrEqual(value(second));
      },
    ),
  );
});
