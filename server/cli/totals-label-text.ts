import {
  costSentence,
  mass,
  money,
  percent,
  type TotalsCost,
  type TotalsLabel,
  type TotalsNutrient,
  type TotalsNutrientAmount,
  trimmed,
} from '../../core/index.ts';

/** The cost of a formula in lines: the whole first, then ingredient by ingredient and part by part. */
export function costLines(cost: TotalsCost): string[] {
  const { currency } = cost;
  if (currency === undefined) return [costSentence(cost)];
  const row = (name: string, amount: number | undefined): string =>
    `${name.padEnd(nameWidth)}${(amount === undefined ? '–' : money(amount, currency)).padStart(16)}`;
  return [
    costSentence(cost),
    ...cost.lines.map((line) => row(line.name, line.amount)),
    ...cost.parts.map((part) => row(`all of ${part.name}`, part.amount)),
  ];
}

const nameWidth = 26;

/** The draft of a label in sections of lines; allergens stand in capitals. */
export function labelSections(label: TotalsLabel): { title: string; lines: string[] }[] {
  const { regime, allergens } = label;
  const facts: string[] = [];
  if (label.kind !== undefined && label.bakedPieceGrams !== undefined && regime === 'US')
    facts.push(`A piece of ${mass(label.bakedPieceGrams)} is ${label.kind} (21 CFR 136.3).`);
  if (label.solidsFraction !== undefined && regime === 'US') {
    const verdict = label.meetsSolids ? 'enough for' : 'too little for';
    facts.push(`Total solids ${percent(label.solidsFraction)}: ${verdict} 21 CFR 136.110 (62% or more).`);
  }
  const lists = [
    ...named('Allergens of Annex II', allergens.eu),
    ...named('Allergens of the US list', allergens.us),
    ...named('On neither list', allergens.onNeither),
    ...named('Nobody says whether these have allergens', allergens.notSaid),
  ];
  const nutrition =
    label.nutritionUnknown === undefined
      ? nutritionLines(label)
      : [`Not known yet: ${label.nutritionUnknown}.`];
  return [
    { title: `label draft (${regime}): nutrition, baked`, lines: nutrition },
    { title: 'label draft: ingredients', lines: [`${listed(label.ingredients)}.`, ...lists, ...facts] },
    { title: 'label draft: to be checked', lines: [...label.notes, caution] },
  ];
}

const caution =
  'This is a draft from what the files say. The producer answers for the label; follow local food law and licensed advice.';

function named(title: string, names: readonly string[]): string[] {
  return names.length === 0 ? [] : [`${title}: ${names.join(', ')}.`];
}

function listed(entries: TotalsLabel['ingredients']): string {
  return entries
    .map(({ text, parts }) => {
      const name = text
        .map((stretch) => (stretch.allergen ? stretch.text.toUpperCase() : stretch.text))
        .join('');
      return parts === undefined ? name : `${name} (${listed(parts)})`;
    })
    .join(', ');
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

function nutritionLines(label: TotalsLabel): string[] {
  const words = label.regime === 'EU' ? euWords : usWords;
  const heading = [
    ''.padEnd(nameWidth),
    'in 100 g'.padStart(20),
    label.bakedPieceGrams === undefined ? '' : `in ${mass(label.bakedPieceGrams)}`.padStart(20),
  ].join('');
  const silent = new Map<string, string[]>();
  const rows = label.nutrition.map(({ nutrient, per100Grams, perPiece, lacking }) => {
    const names = lacking.join(', ');
    const unsure = [per100Grams, perPiece].some((one) => one !== undefined && one.figure === undefined);
    if (unsure) silent.set(names, [...(silent.get(names) ?? []), words[nutrient].replace('of which ', '')]);
    return [
      words[nutrient].padEnd(nameWidth),
      amountWords(per100Grams, nutrient).padStart(20),
      perPiece === undefined ? '' : amountWords(perPiece, nutrient).padStart(20),
    ]
      .join('')
      .trimEnd();
  });
  const missing = [...silent].map(
    ([names, nutrients]) => `Nothing says the ${[...new Set(nutrients)].join(', ')} of: ${names}.`,
  );
  return [heading.trimEnd(), ...rows, ...missing];
}

function amountWords(amount: TotalsNutrientAmount, nutrient: TotalsNutrient['nutrient']): string {
  const unit =
    nutrient === 'kilojoules'
      ? 'kJ'
      : nutrient === 'kilocalories'
        ? 'kcal'
        : nutrient === 'sodium'
          ? 'mg'
          : 'g';
  if (amount.figure !== undefined)
    return amount.figure.startsWith('less') ? amount.figure : `${amount.figure} ${unit}`;
  const { atLeast, atMost } = amount;
  // A range that says next to nothing is not worth reading.
  if (atLeast === undefined || atMost === undefined || atMost > 1.5 * atLeast) return 'not known';
  return `${trimmed(atLeast, 1)}–${trimmed(atMost, 1)} ${unit}`;
}
