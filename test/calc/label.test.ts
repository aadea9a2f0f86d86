import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allergenOf } from '../../core/calc/product/allergens.ts';
import {
  allergenLists,
  breadOrRoll,
  ingredientList,
  type LabelItem,
  markedName,
  meetsSolids,
} from '../../core/calc/product/label.ts';
import { catalogueIngredients } from '../../core/catalogue/catalogue.ts';

const item = (name: string, grams: number, ...allergens: string[]): LabelItem => ({ name, grams, allergens });
const shown = (name: string, allergens: readonly string[], regime: 'EU' | 'US' = 'EU'): string =>
  markedName(name, allergens, regime)
    .map((stretch) => (stretch.allergen ? stretch.text.toUpperCase() : stretch.text))
    .join('');

describe('standards of the United States', () => {
  // 21 CFR 136.110(a): not less than 62 percent total solids.
  test.each([
    [61.9, false],
    [62.0, true],
  ])('%d %% total solids: %s', (percent, meets) => {
    expect(meetsSolids(percent / 100)).toBe(meets);
  });

  // 21 CFR 136.3: half a pound, 226.796 g, after cooling.
  test.each([
    [226, 'roll or bun'],
    [227, 'bread'],
  ])('a piece of %d g is %s', (grams, kind) => {
    expect(breadOrRoll(grams)).toBe(kind);
  });
});

describe('the marked name', () => {
  // Regulation (EU) 1169/2011, article 21 and Annex II.
  test.each([
    ['strong white', ['wheat'], 'strong white (WHEAT)'],
    ['whole milk', ['milk'], 'whole MILK'],
    ['buckwheat and wheat', ['wheat'], 'buckwheat and WHEAT'],
    ['Eggs', ['egg'], 'EGGS'],
    ['brown butter', ['milk'], 'brown butter (MILK)'],
    ['praline', ['hazelnut', 'milk'], 'praline (HAZELNUT, MILK)'],
    ['milk chocolate', ['milk', 'soya'], 'MILK chocolate (SOYA)'],
    ['salt', [], 'salt'],
    ['margarine', ['none'], 'margarine'],
    ['a (b) [c.*', ['egg'], 'a (b) [c.* (EGG)'],
  ])('%s with %j', (name, allergens, expected) => {
    expect(shown(name, allergens)).toBe(expected);
  });

  test('marks what is on the list of the regime only', () => {
    expect(shown('medium rye', ['rye'])).toBe('medium RYE');
    expect(shown('medium rye', ['rye'], 'US')).toBe('medium rye');
  });

  test('says the name in full, whatever it is', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.array(fc.constantFrom('wheat', 'egg', 'milk', 'nuts')),
        (name, allergens) => {
          const text = markedName(name, allergens, 'EU')
            .map((stretch) => stretch.text)
            .join('');
          expect(text.startsWith(name)).toBe(true);
        },
      ),
    );
  });
});

describe('the lists of allergens', () => {
  test('are the entries of Annex II and of the nine', () => {
    const lists = allergenLists([
      item('strong white', 1, 'wheat'),
      item('rye', 1, 'rye'),
      { ...item('filling', 1), parts: [item('almonds', 1, 'almond'), item('tahini', 1, 'sesame', 'kiwi')] },
      { ...item('mystery', 1), allergensUnsaid: true },
    ]);
    // Annex II of Regulation (EU) 1169/2011; rye is not of the nine of the United States, sesame is since 2023.
    expect(lists.eu).toEqual(['cereals containing gluten', 'nuts', 'sesame']);
    expect(lists.us).toEqual(['wheat', 'tree nuts', 'sesame']);
    expect(lists.onNeither).toEqual(['kiwi']);
    expect(lists.notSaid).toEqual(['mystery']);
  });

  test('there are fourteen entries and nine', () => {
    const words = [
      'wheat',
      'shrimp',
      'egg',
      'fish',
      'peanuts',
      'soya',
      'milk',
      'almond',
      'celery',
      'mustard',
    ];
    const all = [...words, 'sesame', 'sulphites', 'lupin', 'molluscs'];
    const lists = allergenLists([item('all', 1, ...all)]);
    expect([lists.eu.length, lists.us.length]).toEqual([14, 9]);
  });

  test('every allergen of the catalogue is on one', () => {
    for (const one of catalogueIngredients)
      for (const word of one.allergens) expect(allergenOf(word)?.eu, `${one.name}: ${word}`).toBeDefined();
  });
});

describe('the ingredient list', () => {
  test('is in descending weight, compounds with what is in them', () => {
    const list = ingredientList(
      [
        item('salt', 20),
        item('strong white', 1000, 'wheat'),
        { ...item('filling', 300), parts: [item('sugar', 100), item('almonds', 200, 'almond')] },
        item('nothing', 0),
      ],
      'EU',
    );
    expect(list.map((entry) => entry.name)).toEqual(['strong white', 'filling', 'salt']);
    expect(list[1]!.parts!.map((entry) => entry.name)).toEqual(['almonds', 'sugar']);
  });

  test('has shares that make the whole, none smaller before a larger', () => {
    const items = fc.array(
      fc.record({ name: fc.string(), grams: fc.double({ min: 0.001, max: 1e6, noNaN: true }) }),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(items, (all) => {
        const list = ingredientList(
          all.map((one) => ({ ...one, allergens: [] })),
          'US',
        );
        expect(list.reduce((sum, entry) => sum + entry.fraction, 0)).toBeCloseTo(1, 9);
        for (let i = 1; i < list.length; i++) expect(list[i]!.grams).toBeLessThanOrEqual(list[i - 1]!.grams);
      }),
    );
  });
});
