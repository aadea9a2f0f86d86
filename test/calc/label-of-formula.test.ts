import { describe, expect, test } from 'vitest';
import { createService, type FormulaTotals } from '../../core/index.ts';

function totals(...lines: readonly string[]): FormulaTotals {
  const service = createService();
  service.setText('file:///quay/a.dough', `${lines.join('\n')}\n`);
  return service.totals('file:///quay/a.dough').at(-1)!;
}
const names = (one: FormulaTotals): string[] => one.label!.ingredients.map((entry) => entry.name);

const plain = [
  'formula Quay Tin:',
  '  yield 2 pieces of 810 g',
  '  bake loss 10%',
  '  bread flour 100%',
  '  water 60%',
  '  salt 2%',
];

describe('the label of a formula', () => {
  // 1000 g flour, 600 g water, 20 g salt; 162 g of water bakes off. Rows of USDA SR27 worked by hand.
  test('is worked out on the baked weight', () => {
    const { label } = totals(...plain);
    expect(label!.bakedGrams).toBeCloseTo(1458, 6);
    expect(label!.bakedPieceGrams).toBeCloseTo(729, 6);
    const protein = label!.nutrition.find((row) => row.nutrient === 'protein')!;
    expect(protein.per100Grams.amount).toBeCloseTo(119.8 / 14.58, 6);
    expect(protein.perPiece!.amount).toBeCloseTo(119.8 / 2, 6);
    const water = 1000 * 0.1336 + 600 * 0.999 + 20 * 0.002 - 162;
    expect(label!.solidsFraction).toBeCloseTo(1 - water / 1458, 6);
    expect(label!.meetsSolids).toBe(false);
    expect(label!.kind).toBe('bread');
  });

  test('does not count dough left in the bowl, nor change by it', () => {
    const without = totals(...plain).label!;
    const withLoss = totals(...plain.toSpliced(2, 0, '  loss 2%')).label!;
    expect(withLoss.bakedGrams).toBeCloseTo(without.bakedGrams!, 6);
    for (const [index, row] of without.nutrition.entries())
      expect(withLoss.nutrition[index]!.per100Grams.amount).toBeCloseTo(row.per100Grams.amount!, 9);
  });

  test('has no nutrition without a bake loss, and says what to write', () => {
    const { label } = totals(...plain.filter((line) => !line.includes('bake loss')));
    expect(label!.nutrition).toEqual([]);
    expect(label!.nutritionUnknown).toMatch(/bake loss 12%/);
    expect(label!.ingredients.length).toBe(3);
  });

  test('refuses a bake loss beyond all the water', () => {
    const { label } = totals(...plain.map((line) => line.replace('bake loss 10%', 'bake loss 90%')));
    expect(label!.nutrition).toEqual([]);
    expect(label!.nutritionUnknown).toMatch(/more than all the water/);
  });

  // Regulation (EU) 1169/2011, Annex VII part A (from memory): added water counts by what is left of it. 21 CFR 101.4(a):
  // descending weight as used (from memory).
  test('counts water after baking in the EU and as weighed in the US', () => {
    const wet = plain.map((line) => line.replace('60%', '105%'));
    expect(names(totals('bakery Quay Lane:', '  label EU', ...wet))).toEqual([
      'bread flour',
      'water',
      'salt',
    ]);
    expect(names(totals('bakery Quay Lane:', '  label US', ...wet))).toEqual([
      'water',
      'bread flour',
      'salt',
    ]);
  });

  test('dissolves a preferment: the list is that of the formula without it', () => {
    const drawn = [
      ...plain,
      'preferment sponge:',
      '  draws 30% of bread flour',
      '  bread flour 100%',
      '  water 60%',
    ];
    const [one, two] = [totals(...plain), totals(...drawn)];
    expect(names(two)).toEqual(names(one));
    for (const [index, row] of one.label!.nutrition.entries())
      expect(two.label!.nutrition[index]!.per100Grams.amount).toBeCloseTo(row.per100Grams.amount!, 9);
  });

  test('has a filling as a compound, counted with its weight, and leaves out a bath', () => {
    const { label } = totals(
      ...plain,
      'filling heart:',
      '  almond 100 g a piece',
      '  sugar 50 g a piece',
      'bath lye:',
      '  water 1 kg',
      '  sodium hydroxide 40 g',
    );
    expect(label!.bakedGrams).toBeCloseTo(1458 + 300, 6);
    const heart = label!.ingredients.find((entry) => entry.name === 'heart')!;
    expect(heart.parts!.map((part) => part.name)).toEqual(['almond', 'sugar']);
    expect(label!.allergens.eu).toContain('nuts');
    expect(JSON.stringify(label!.ingredients)).not.toContain('hydroxide');
    expect(label!.notes.join(' ')).toMatch(/bath/);
  });

  test('names what has no composition and whose allergens nobody said', () => {
    const { label } = totals(...plain, '  improver 1%');
    const fat = label!.nutrition.find((row) => row.nutrient === 'fat')!;
    expect(fat.lacking).toEqual(['improver']);
    expect(fat.per100Grams.amount).toBeUndefined();
    expect(fat.per100Grams.atLeast).toBeGreaterThan(0);
    expect(label!.allergens.notSaid).toEqual(['improver']);
    expect(label!.meetsSolids).toBeUndefined();
  });

  test('takes a flour of another grain for what its grain is', () => {
    const { label } = totals(
      ...['flour dock rye:', '  like bread flour', '  grain rye'],
      ...plain,
      '  dock rye 10%',
    );
    const rye = label!.ingredients.find((entry) => entry.name === 'dock rye')!;
    expect(rye.text.filter((stretch) => stretch.allergen).map((stretch) => stretch.text)).toContain('rye');
  });
});

describe('the cost of a formula', () => {
  const priced = [
    'flour dock white:',
    '  like bread flour',
    '  price 0.80 EUR per kg',
    'ingredient dock salt:',
    '  like salt',
    '  price 0.50 EUR per kg',
    ...plain.map((line) => line.replace('bread flour', 'dock white').replace('salt', 'dock salt')),
  ];

  test('is that of everything weighed, water not charged', () => {
    const { cost } = totals(...priced);
    expect(cost).toMatchObject({ currency: 'EUR', missing: [], waterNotCharged: true });
    expect(cost!.batch).toBeCloseTo(0.81, 9);
    expect(cost!.piece).toBeCloseTo(0.405, 9);
    expect(cost!.doughKilogram).toBeCloseTo(0.81 / 1.62, 9);
    expect(cost!.bakedKilogram).toBeCloseTo(0.81 / 1.458, 9);
  });

  test('tells a part with all that is in it, and the batch is the same with it', () => {
    const { cost } = totals(
      ...priced,
      ...['preferment sponge:', '  draws 30% of dock white', '  dock white 100%', '  water 60%'],
    );
    expect(cost!.parts).toEqual([
      { name: 'sponge', kind: 'preferment', missing: [], amount: expect.any(Number) },
    ]);
    expect(cost!.parts[0]!.amount).toBeCloseTo(0.24, 9);
    expect(cost!.batch).toBeCloseTo(0.81, 9);
  });

  test('is not told where a price is missing: only what it is at least', () => {
    const { cost } = totals(...priced, '  butter 5%');
    expect(cost!.missing).toEqual(['butter']);
    expect(cost!.batch).toBeUndefined();
    expect(cost!.piece).toBeUndefined();
    expect(cost!.atLeast).toBeGreaterThan(0);
  });

  test('is not told in two currencies, nor without any price', () => {
    const two = totals(...priced.map((line) => line.replace('0.50 EUR', '0.50 USD'))).cost;
    expect(two!.unknown).toMatch(/two currencies/);
    expect(two!.batch).toBeUndefined();
    expect(totals(...plain).cost).toBeUndefined();
  });

  test('stands in the hover of the header', () => {
    const service = createService();
    service.setText('file:///quay/a.dough', `${priced.join('\n')}\n`);
    const header = priced.findIndex((line) => line.startsWith('formula'));
    const { markdown } = service.hover('file:///quay/a.dough', header, 3)!;
    expect(markdown).toMatch(/0\.41 EUR a piece, 0\.81 EUR a batch, 0\.56 EUR per kg baked/);
  });
});
