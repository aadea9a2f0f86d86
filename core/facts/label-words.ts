import type { LabelRegime } from '../calc/product/allergens.ts';
import { type LabelEntry, type LabelText, leastSolidsFraction, markedName } from '../calc/product/label.ts';
import { type Nutrient, type PrintedFigure, printedFigure } from '../calc/product/nutrition-figures.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { allergenName, entryMessage } from './allergen-words.ts';
import type { TotalsLabel, TotalsNutrientAmount } from './totals-product.ts';

/** What stands beside every draft of a label. */
export function labelCaution(speaker: Speaker): string {
  return speaker.say(message('label.caution'));
}

/** The nutrition of a label in words, ready to be set in columns. */
export interface NutritionWords {
  readonly heads: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
  /** What nothing states of which ingredients, in sentences. */
  readonly missing: readonly string[];
}

/** The nutrition table in words; no rows where it is not known. */
export function nutritionWords(label: TotalsLabel, speaker: Speaker): NutritionWords {
  const { nutritionUnknown, regime, bakedPieceGrams } = label;
  if (nutritionUnknown !== undefined) {
    const missing = speaker.say(message('nutrition.not-known', { sentence: nutritionUnknown }));
    return { heads: [], rows: [], missing: [missing] };
  }
  const silent = new Map<string, { names: readonly string[]; facts: Set<Nutrient> }>();
  const rows = label.nutrition.map(({ nutrient, per100Grams, perPiece, lacking }) => {
    const amounts = [per100Grams, perPiece].filter((one) => one !== undefined);
    if (amounts.some((one) => one.figure === undefined)) {
      const key = lacking.join('\n');
      const told = silent.get(key) ?? { names: lacking, facts: new Set() };
      silent.set(key, told);
      told.facts.add(nutrient);
    }
    return {
      name: speaker.say(rowMessage(nutrient, regime)),
      cells: amounts.map((one) => amountWords(one, nutrient, regime, speaker)),
    };
  });
  const heads: Message[] = [message('nutrition.in-hundred-grams')];
  if (bakedPieceGrams !== undefined)
    heads.push(message('nutrition.in-piece', { bakedGrams: bakedPieceGrams }));
  return {
    heads: heads.map(speaker.say),
    rows,
    missing: [...silent.values()].map(({ names, facts }) =>
      speaker.say(message('nutrition.not-stated', { names, facts: namesOf(facts, regime) })),
    ),
  };
}

/** Nutrients by their names; energy, which has two rows, once. */
function namesOf(nutrients: Iterable<Nutrient>, regime: LabelRegime): Message[] {
  const all = [...nutrients];
  return all
    .filter((one) => one !== 'kilocalories' || !all.includes('kilojoules'))
    .map((one) => nameMessage(one, regime));
}

function nameMessage(nutrient: Nutrient, regime: LabelRegime): Message {
  return regime === 'EU' ? message(`nutrient-eu.${nutrient}`) : message(`nutrient-us.${nutrient}`);
}

function rowMessage(nutrient: Nutrient, regime: LabelRegime): Message {
  const title = nameMessage(nutrient, regime);
  const isWithin = regime === 'EU' && (nutrient === 'saturates' || nutrient === 'sugars');
  return isWithin ? message('nutrient-eu.of-which', { title }) : title;
}

/** The allergens by either list, in sentences. */
export function allergenWords({ allergens }: TotalsLabel, speaker: Speaker): string[] {
  const { eu, us, onNeither, notSaid } = allergens;
  const found: Message[] = [];
  if (eu.length > 0) found.push(message('allergens.eu', { facts: eu.map(entryMessage) }));
  if (us.length > 0) found.push(message('allergens.us', { names: us }));
  if (onNeither.length > 0) found.push(message('allergens.on-neither', { names: onNeither }));
  if (notSaid.length > 0) found.push(message('allergens.not-stated', { names: notSaid }));
  return found.map(speaker.say);
}

/** What the law calls the product and how much solids it holds, in sentences; for the United States alone. */
export function standardWords(label: TotalsLabel, speaker: Speaker): string[] {
  const { regime, kind, bakedPieceGrams: bakedGrams, solidsFraction: fraction } = label;
  if (regime !== 'US') return [];
  const facts: Message[] = [];
  if (kind !== undefined && bakedGrams !== undefined)
    facts.push(message(kind === 'bread' ? 'label-us.bread' : 'label-us.roll', { bakedGrams }));
  if (fraction !== undefined) {
    const code = label.meetsSolids ? 'label-us.solids-enough' : 'label-us.solids-too-little';
    facts.push(message(code, { fraction, lowFraction: leastSolidsFraction }));
  }
  return facts.map(speaker.say);
}

/**
 * The ingredient list as one run of stretches, compounds in brackets, commas between, a point at the end. The allergens of
 * Annex II are called what the speaker calls them; a label of the United States is in English.
 */
export function ingredientStretches(
  entries: readonly LabelEntry[],
  regime: LabelRegime,
  speaker: Speaker,
): LabelText[] {
  const plain = (text: string): LabelText => ({ text, allergen: false });
  const nameOf = (word: string): string => (regime === 'EU' ? allergenName(word, speaker) : word);
  const listed = (some: readonly LabelEntry[]): LabelText[] =>
    some.flatMap(({ name, allergens, parts }, index) => [
      ...(index === 0 ? [] : [plain(', ')]),
      ...markedName(name, allergens, regime, nameOf),
      ...(parts === undefined ? [] : [plain(' ('), ...listed(parts), plain(')')]),
    ]);
  return [...listed(entries), plain('.')];
}

/** The figure as the regime prints it, else what it is between. */
function amountWords(
  { amount, atLeast, atMost, figure }: TotalsNutrientAmount,
  nutrient: Nutrient,
  regime: LabelRegime,
  speaker: Speaker,
): string {
  const unit = unitOf[nutrient] ?? 'g';
  const certain = figure === undefined ? undefined : (amount ?? atLeast);
  const printed = certain === undefined ? undefined : printedFigure(nutrient, certain, regime);
  if (printed !== undefined) return figureWords(printed, unit, regime, speaker);
  // A range that says next to nothing is not worth reading.
  if (atLeast === undefined || atMost === undefined || atMost > 1.5 * atLeast)
    return speaker.say(message('nutrition.figure-not-known'));
  // Both ends with the places that the label would print; where it prints words there, with one.
  const [low, high] = [atLeast, atMost].map((end) => {
    const one = printedFigure(nutrient, end, regime);
    return one === undefined || one.isBelow
      ? speaker.number(end, 1)
      : speaker.printed(one.amount, one.places);
  });
  return `${low}–${high} ${unit}`;
}

function figureWords(
  { amount, places, isBelow }: PrintedFigure,
  unit: string,
  regime: LabelRegime,
  speaker: Speaker,
): string {
  const written = `${speaker.printed(amount, places)} ${unit}`;
  if (!isBelow) return written;
  return speaker.say(message(regime === 'EU' ? 'nutrition.below-eu' : 'nutrition.below-us', { written }));
}

const unitOf: Partial<Record<Nutrient, string>> = {
  kilojoules: 'kJ',
  kilocalories: 'kcal',
  sodium: 'mg',
};
