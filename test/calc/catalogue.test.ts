import { describe, expect, test } from 'vitest';
import { formsGlutenNetwork } from '../../core/calc/flour/flour.ts';
import { developmentRate, warmingRate } from '../../core/calc/mixing/mixer.ts';
import { allergenOf, isGlutenCereal } from '../../core/calc/product/allergens.ts';
import { catalogueIngredients, catalogueNames, findCatalogue } from '../../core/catalogue/catalogue.ts';
import { findCatalogueMixer, mixers } from '../../core/catalogue/mixers.ts';

describe('the ingredients', () => {
  // USDA National Nutrient Database SR27, abbreviated file: g per 100 g.
  test.each([
    ['bread flour', 'NDB 20083', 13.36, 11.98, 1.66, 72.53, 2.4, 0.47],
    ['plain flour', 'NDB 20081', 11.92, 10.33, 0.98, 76.31, 2.7, 0.47],
    ['dark rye', 'NDB 20063', 10.75, 15.91, 2.22, 68.63, 23.8, 2.5],
    ['medium rye', 'NDB 20064', 10.97, 10.88, 1.52, 75.43, 11.8, 1.2],
    ['light rye', 'NDB 20065', 11.4, 9.82, 1.33, 76.68, 8, 0.78],
    ['wholemeal spelt', 'NDB 20140', 11.02, 14.57, 2.43, 70.19, 10.7, 1.78],
    ['wheat gluten', 'NDB 48052', 8.2, 75.16, 1.85, 13.79, 0.6, 1],
    ['egg yolk', 'NDB 01125', 52.31, 15.86, 26.54, 3.59, 0, 1.71],
    ['butter', 'NDB 01145', 17.94, 0.85, 81.11, 0.06, 0, 0.04],
    ['fresh yeast', 'NDB 18374', 69, 8.4, 1.9, 18.1, 8.1, 1.8],
    ['honey', 'NDB 19296', 17.1, 0.3, 0, 82.4, 0.2, 0.2],
    ['sesame', 'NDB 12023', 4.69, 17.73, 49.67, 23.45, 11.8, 4.45],
  ])('%s is %s', (name, identifier, water, protein, fat, carbohydrate, fibre, ash) => {
    const found = findCatalogue(name);
    expect(found?.source.identifier).toBe(identifier);
    const { composition } = found!;
    const hundred = (value: number | undefined) => (value ?? Number.NaN) * 100;
    expect(hundred(composition.water)).toBeCloseTo(water, 6);
    expect(hundred(composition.protein)).toBeCloseTo(protein, 6);
    expect(hundred(composition.fat)).toBeCloseTo(fat, 6);
    expect(hundred(composition.carbohydrate)).toBeCloseTo(carbohydrate, 6);
    expect(hundred(composition.fibre)).toBeCloseTo(fibre, 6);
    expect(hundred(composition.ash)).toBeCloseTo(ash, 6);
  });

  test.each(catalogueIngredients.map((one) => [one.name, one] as const))('%s adds up', (name, one) => {
    const { water, protein, fat, carbohydrate, fibre, ash, sugars, saturates, alcohol } = one.composition;
    const sum = 100 * (water! + protein! + fat! + carbohydrate! + ash! + (alcohol ?? 0));
    // The published rows sum to 100 but for rounding, and but for compressed yeast and malt syrup.
    const expected = name === 'fresh yeast' ? 99.2 : name === 'malt syrup' ? 99.9 : 100;
    expect(Math.abs(sum - expected)).toBeLessThan(0.035);
    expect(fibre!).toBeLessThanOrEqual(carbohydrate!);
    expect(sugars ?? 0).toBeLessThanOrEqual(carbohydrate! + 1e-12);
    expect(saturates ?? 0).toBeLessThanOrEqual(fat!);
  });

  test('salt in salt is nearly all of it', () => {
    // Sodium 38,758 mg per 100 g (USDA 02047), times 2.5.
    expect(findCatalogue('salt')!.composition.saltFraction).toBeCloseTo(0.96895, 5);
  });

  test('no name or alias stands for two ingredients', () => {
    const names = catalogueIngredients.flatMap((one) => [one.name, ...one.aliases]);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toBe(name.toLowerCase());
  });

  test('aliases lead to their ingredient', () => {
    expect(findCatalogue('whole wheat flour')?.name).toBe('wholemeal wheat');
    expect(findCatalogue('all-purpose flour')?.name).toBe('plain flour');
    expect(findCatalogue('milk')?.name).toBe('whole milk');
    expect(findCatalogue('eggs')?.name).toBe('egg');
    expect(findCatalogue('sawdust')).toBeUndefined();
    expect(catalogueNames()).toHaveLength(catalogueIngredients.length);
  });

  test('rye, barley and oats form no gluten network, and are declared as cereals containing gluten all the same', () => {
    // Regulation (EU) 1169/2011, Annex II, 1: wheat, rye, barley, oats.
    for (const grain of ['rye', 'barley', 'oats']) {
      expect(formsGlutenNetwork(grain)).toBe(false);
      expect(isGlutenCereal(grain)).toBe(true);
    }
    const named = catalogueIngredients.filter(({ name }) => /\b(rye|barley|malt|oats?)\b/.test(name));
    expect(named.length).toBeGreaterThan(5);
    for (const { name, allergens } of named)
      expect(
        allergens.map((one) => allergenOf(one)?.eu),
        name,
      ).toContain('cereals containing gluten');
  });

  test('flours carry their grain, and the gluten cereals their allergen', () => {
    for (const one of catalogueIngredients) {
      expect(one.flour !== undefined).toBe(one.role === 'flour');
      if (one.flour === undefined) continue;
      const gluten = ['wheat', 'rye', 'spelt', 'barley', 'durum', 'khorasan'].includes(one.flour.grain);
      // Regulation (EU) 1169/2011, Annex II: cereals containing gluten, spelt and khorasan being wheat.
      expect(one.allergens.length > 0, one.name).toBe(gluten);
    }
  });
});

describe('the mixers', () => {
  test('every kind is known, with speeds that the model can use', () => {
    expect(new Set(mixers.map((one) => one.mixer.kind)).size).toBe(6);
    for (const { mixer } of mixers) {
      for (const speed of mixer.speeds) {
        expect(warmingRate(mixer, speed).known).toBe(true);
        expect(developmentRate(mixer, speed).known).toBe(true);
      }
    }
    expect(findCatalogueMixer('by hand')?.mixer.kind).toBe('hand');
    expect(findCatalogueMixer('cement mixer')).toBeUndefined();
  });
});
