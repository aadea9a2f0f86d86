import type { LabelEntry, LabelText } from '../calc/label.ts';
import { labelFigure } from '../calc/nutrition-figures.ts';
import { figure, mass, percent } from '../text/figures.ts';
import type { TotalsLabel, TotalsNutrient, TotalsNutrientAmount } from './totals-product.ts';

/** What stands beside every draft of a label. */
export const labelCaution =
  'This is a draft from what the files say. The producer answers for the label; follow local food law and licensed advice.';

/** The nutrition of a label in words, ready to be set in columns. */
export interface NutritionWords {
  readonly heads: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
  /** What nobody says of which ingredients, in sentences. */
  readonly missing: readonly string[];
}

/** The nutrition table in words; no rows where it is not known. */
export function nutritionWords(label: TotalsLabel): NutritionWords {
  if (label.nutritionUnknown !== undefined)
    return { heads: [], rows: [], missing: [`Not known yet: ${label.nutritionUnknown}.`] };
  const words = label.regime === 'EU' ? euWords : usWords;
  const silent = new Map<string, string[]>();
  const rows = label.nutrition.map(({ nutrient, per100Grams, perPiece, lacking }) => {
    const names = lacking.join(', ');
    const unsure = [per100Grams, perPiece].some((one) => one !== undefined && one.figure === undefined);
    if (unsure) silent.set(names, [...(silent.get(names) ?? []), words[nutrient].replace('of which ', '')]);
    return {
      name: words[nutrient],
      cells: [per100Grams, perPiece].flatMap((one) =>
        one === undefined ? [] : [amountWords(one, nutrient, label.regime)],
      ),
    };
  });
  const piece = label.bakedPieceGrams === undefined ? [] : [`in ${mass(label.bakedPieceGrams)}`];
  return {
    heads: ['in 100 g', ...piece],
    rows,
    missing: [...silent].map(
      ([names, nutrients]) => `Nothing says the ${[...new Set(nutrients)].join(', ')} of: ${names}.`,
    ),
  };
}

/** The allergens by either list, in sentences. */
export function allergenWords({ allergens }: TotalsLabel): string[] {
  return [
    ...named('Allergens of Annex II', allergens.eu),
    ...named('Allergens of the US list', allergens.us),
    ...named('On neither list', allergens.onNeither),
    ...named('Nobody says whether these have allergens', allergens.notSaid),
  ];
}

/** What the law calls the product and how much solids it holds, in sentences; for the United States alone. */
export function standardWords(label: TotalsLabel): string[] {
  if (label.regime !== 'US') return [];
  const facts: string[] = [];
  if (label.kind !== undefined && label.bakedPieceGrams !== undefined)
    facts.push(
      `A piece of ${mass(label.bakedPieceGrams)} is ${label.kind === 'bread' ? 'bread' : `a ${label.kind}`} (21 CFR 136.3).`,
    );
  if (label.solidsFraction !== undefined) {
    const verdict = label.meetsSolids ? 'enough for' : 'too little for';
    facts.push(`Total solids ${percent(label.solidsFraction)}: ${verdict} 21 CFR 136.110 (62% or more).`);
  }
  return facts;
}

/** The ingredient list as one run of stretches, compounds in brackets, commas between, a point at the end. */
export function ingredientStretches(entries: readonly LabelEntry[]): LabelText[] {
  const plain = (text: string): LabelText => ({ text, allergen: false });
  const listed = (some: readonly LabelEntry[]): LabelText[] =>
    some.flatMap((entry, index) => [
      ...(index === 0 ? [] : [plain(', ')]),
      ...entry.text,
      ...(entry.parts === undefined ? [] : [plain(' ('), ...listed(entry.parts), plain(')')]),
    ]);
  return [...listed(entries), plain('.')];
}

function named(title: string, names: readonly string[]): string[] {
  return names.length === 0 ? [] : [`${title}: ${names.join(', ')}.`];
}

const usWords: Readonly<Record<TotalsNutrient['nutrient'], string>> = {
  kilojoules: 'energy',
  kilocalories: 'calories',
  fat: 'total fat',
  saturates: 'saturated fat',
  carbohydrate: 'total carbohydrate',
  sugars: 'total sugars',
  fibre: 'dietary fiber',
  protein: 'protein',
  salt: 'salt',
  sodium: 'sodium',
};
const euWords: Readonly<Record<TotalsNutrient['nutrient'], string>> = {
  ...usWords,
  kilocalories: 'energy',
  fat: 'fat',
  saturates: 'of which saturates',
  carbohydrate: 'carbohydrate',
  sugars: 'of which sugars',
  fibre: 'fibre',
};

function amountWords(
  amount: TotalsNutrientAmount,
  nutrient: TotalsNutrient['nutrient'],
  regime: TotalsLabel['regime'],
): string {
  const unit = unitOf[nutrient] ?? 'g';
  if (amount.figure !== undefined)
    return amount.figure.startsWith('less') ? amount.figure : `${amount.figure} ${unit}`;
  const { atLeast, atMost } = amount;
  // A range that says next to nothing is not worth reading.
  if (atLeast === undefined || atMost === undefined || atMost > 1.5 * atLeast) return 'not known';
  // Both ends with the places that the label would print; where it prints words there, with one.
  const [low, high] = [atLeast, atMost].map((end) => {
    const printed = labelFigure(nutrient, end, regime);
    return printed !== undefined && /^\d/.test(printed) ? printed : figure(end, 1);
  });
  return `${low}–${high} ${unit}`;
}

const unitOf: Partial<Record<TotalsNutrient['nutrient'], string>> = {
  kilojoules: 'kJ',
  kilocalories: 'kcal',
  sodium: 'mg',
};
