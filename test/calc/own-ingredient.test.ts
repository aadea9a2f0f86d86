import { describe, expect, test } from 'vitest';
import { createService, type FormulaTotals } from '../../core/index.ts';

const uri = 'file:///quay/a.dough';

function serviceOf(...sections: readonly string[]) {
  const service = createService();
  service.setRoots(['file:///quay/']);
  service.setText(uri, `${sections.join('\n\n')}\n`);
  return service;
}
const totals = (...sections: readonly string[]): FormulaTotals =>
  serviceOf(...sections)
    .totals(uri)
    .at(-1)!;

const loaf = (extra: string) =>
  `formula Quay Tin:\n  yield 2 pieces of 810 g\n  bake loss 10%\n  bread flour  1000 g\n  water  580 g\n  salt  20 g\n  ${extra}`;
const energy = (one: FormulaTotals, nutrient: string) =>
  one.label!.nutrition.find((row) => row.nutrient === nutrient)!.per100Grams;

describe('the energy that an ingredient states', () => {
  // 20 g of it in 1458 g of baked bread; Regulation (EU) 1169/2011, Annex XIV, for the rest.
  const without = totals(loaf('dust  20 g'), 'ingredient dust:\n  like salt');

  test('counts as it is stated, in kJ and in kcal of 4.184 kJ', () => {
    const stated = totals(loaf('dust  20 g'), 'ingredient dust:\n  like salt\n  energy 1520 kJ');
    const more = energy(stated, 'kilojoules').amount! - energy(without, 'kilojoules').amount!;
    expect(more).toBeCloseTo((20 * 15.2) / 14.58, 6);
    const moreCalories = energy(stated, 'kilocalories').amount! - energy(without, 'kilocalories').amount!;
    expect(moreCalories).toBeCloseTo((20 * 15.2) / 4.184 / 14.58, 6);
    const inCalories = totals(loaf('dust  20 g'), 'ingredient dust:\n  like salt\n  energy 363.2887 kcal');
    expect(energy(inCalories, 'kilojoules').amount).toBeCloseTo(energy(stated, 'kilojoules').amount!, 3);
  });

  test('stands where nothing else is known, and what is not known is still said', () => {
    const one = totals(loaf('mystery mix  20 g'), 'ingredient mystery mix:\n  energy 1520 kJ');
    expect(energy(one, 'kilojoules').amount).toBeDefined();
    expect(energy(one, 'fat').amount).toBeUndefined();
    expect(energy(one, 'fat').atMost).toBeGreaterThan(energy(one, 'fat').atLeast!);
  });

  test('is not taken over by what is like it but made of something else', () => {
    const base = 'ingredient dust:\n  like salt\n  energy 1520 kJ';
    const like = totals(loaf('grit  20 g'), base, 'ingredient grit:\n  like dust');
    expect(energy(like, 'kilojoules').amount! - energy(without, 'kilojoules').amount!).toBeCloseTo(
      (20 * 15.2) / 14.58,
      6,
    );
    const other = totals(loaf('grit  20 g'), base, 'ingredient grit:\n  like dust\n  fat 10%');
    // A tenth of fat, 37 kJ a gram.
    expect(energy(other, 'kilojoules').amount! - energy(without, 'kilojoules').amount!).toBeCloseTo(
      (20 * 0.1 * 37) / 14.58,
      6,
    );
  });
});

describe('the allergens that an ingredient states', () => {
  const eu = (section: string): readonly string[] =>
    totals(`formula Quay Tin:\n  water  100 g\n  spread  20 g`, section).label!.allergens.eu;

  test('come on top of those of what it is like', () => {
    expect(eu('ingredient spread:\n  like butter\n  contains soya')).toEqual(['milk', 'soybeans']);
  });

  test('are all there are where it says that there are none of the others', () => {
    expect(eu('ingredient spread:\n  like butter\n  contains none')).toEqual([]);
    expect(eu('ingredient spread:\n  like butter\n  contains none\n  contains soya')).toEqual(['soybeans']);
  });

  test('are told whatever it weighs, known or not', () => {
    const { label } = totals(
      `formula Quay Tin:\n  bread flour  1 kg\n  water  600 g\n  spread\n\nfilling cream:\n  hazelnut  100%\n  egg  50%`,
      'ingredient spread:\n  contains milk',
    );
    expect([...label!.allergens.eu].sort()).toEqual(['cereals containing gluten', 'eggs', 'milk', 'nuts']);
    expect(label!.allergens.notSaid).toEqual([]);
    expect(label!.ingredients.map(({ name }) => name)).not.toContain('spread');
    expect(label!.notes.join(' ')).toMatch(/weight is not known: spread and cream/);
  });
});

describe('a flour that states only some of its figures', () => {
  const flour = (lines: string) => `flour dock:\n  ${lines}`;
  const formula = 'formula Quay Tin:\n  yield 2 kg\n  bake loss 10%\n  dock  100%\n  water  60%';
  const hoverOf = (lines: string): string => {
    const service = serviceOf(formula, flour(lines));
    return service.hover(uri, 3, 4)!.markdown;
  };

  test('says in its hover and on the label who lends the rest', () => {
    expect(hoverOf('protein 12.5%')).toMatch(/the rest from bread flour, the usual of its kind/);
    const { label } = totals(formula, flour('protein 12.5%'));
    expect(label!.notes.join(' ')).toMatch(/“dock” does not state is taken from bread flour/);
  });

  test('takes it from its own grain', () => {
    expect(hoverOf('grain rice')).toMatch(/from rice flour/);
    expect(hoverOf('grain rye\n  milling wholemeal')).toMatch(/from dark rye/);
    const protein = (lines: string) =>
      totals(formula, flour(lines)).label!.nutrition.find((row) => row.nutrient === 'protein')!.per100Grams
        .amount!;
    // 1250 g of flour in 1800 g baked; USDA 20061 and 20083.
    expect(protein('grain rice')).toBeCloseTo((5.95 * 12.5) / 18, 3);
    expect(protein('grain wheat')).toBeCloseTo((11.98 * 12.5) / 18, 3);
  });

  test('says nothing of a lender where it is like another', () => {
    const { label } = totals(formula, flour('like bread flour\n  protein 12.5%'));
    expect(label!.notes.join(' ')).not.toMatch(/usual of its kind/);
  });

  test('is measured in cups as the usual one is', () => {
    const one = totals('formula Quay Tin:\n  dock  2 cups\n  water  300 g', flour('protein 12.5%'));
    expect(one.flourGrams).toBeCloseTo(2 * 250 * 0.55, 6);
  });
});

test('what is overridden in a nearer folder keeps its price, what is only like another has its own', () => {
  const service = createService();
  service.setRoots(['file:///quay/']);
  service.setText('file:///quay/flours.dough', 'flour dock:\n  protein 12%\n  price 1.00 EUR per kg\n');
  const text = (section: string) => `${section}\n\nformula Quay Tin:\n  dock  1 kg\n  water  600 g\n`;
  const cost = (section: string): number | undefined => {
    service.setText('file:///quay/breads/a.dough', text(section));
    const found = service.totals('file:///quay/breads/a.dough')[0]!.cost;
    return found?.lines.find(({ name }) => name === 'dock')?.amount;
  };
  expect(cost('flour dock:\n  protein 13%')).toBeCloseTo(1, 9);
  expect(cost('flour dock:\n  protein 13%\n  price 2.00 EUR per kg')).toBeCloseTo(2, 9);
  expect(cost('flour dock:\n  like bread flour')).toBeUndefined();
});

describe('what a flour takes over from another', () => {
  const hoverOf = (lines: string): string => {
    const service = serviceOf(
      `flour dock:\n  ${lines}`,
      'formula Quay Tin:\n  dock  1 kg\n  water  600 g\n  salt  20 g',
    );
    const line = service.lines(uri).findIndex((one) => one.includes('dock  1 kg'));
    return service.hover(uri, line, 4)!.markdown;
  };

  test('keeps the provenance it has there', () => {
    const one = hoverOf('like bread flour\n  absorption 62%');
    expect(one).toMatch(/absorption 62% at 14% moisture _\(stated\)_/);
    expect(one).toMatch(/protein 11.9% at 14% moisture _\(published\)_/);
    expect(one).toMatch(/ash 0.54% of dry matter _\(published\)_/);
  });

  test('keeps the moisture its protein was measured at', () => {
    // USDA 20083: 11.98 % protein at 13.36 % water are 11.9 % at 14 %, whatever the moisture of this flour.
    expect(hoverOf('like bread flour\n  moisture 10%')).toMatch(/protein 11.9% at 14% moisture/);
  });

  test('a protein stated at 14 % moisture is another share of a drier flour on the label', () => {
    const { label } = totals(
      'formula Quay Tin:\n  yield 2 kg\n  bake loss 10%\n  dock  100%\n  water  60%',
      'flour dock:\n  protein 12.9% at 14% moisture\n  moisture 10%',
    );
    // 1250 g of flour in 1800 g baked; x·(100 − 10)/(100 − 14), King Arthur Flour Guide.
    const protein = label!.nutrition.find((row) => row.nutrient === 'protein')!.per100Grams.amount!;
    expect(protein).toBeCloseTo((12.9 * (90 / 86) * 12.5) / 18, 6);
  });
});
