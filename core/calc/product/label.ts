import { elementAt, entryOf } from '../../text/element.ts';
import { type Allergen, allergenOf, type LabelRegime, listedUnder, singularOf } from './allergens.ts';

/** A stretch of an ingredient's name on a label; an allergen is to be emphasised. */
export interface LabelText {
  readonly text: string;
  readonly allergen: boolean;
}

/** An ingredient before it is put in order. */
export interface LabelItem {
  readonly name: string;
  /** What the list is ordered by. */
  readonly grams: number;
  /** Words of its allergens, as its `contains` line or the catalogue has them. */
  readonly allergens: readonly string[];
  /** Nobody said whether it has allergens. */
  readonly allergensUnsaid?: boolean;
  /** What a compound ingredient, such as a filling, is made of. */
  readonly parts?: readonly LabelItem[];
}

export interface LabelEntry {
  readonly name: string;
  readonly grams: number;
  /** Of everything in the list. */
  readonly fraction: number;
  /** Words of its allergens, as its `contains` line or the catalogue has them. */
  readonly allergens: readonly string[];
  /** The name with its allergens marked; those that the name does not say stand behind it. */
  readonly text: readonly LabelText[];
  readonly parts?: readonly LabelEntry[];
}

/** The allergens of a product by both lists, whatever regime its label follows. */
export interface AllergenLists {
  /** As written, in the singular where the lists have one: which nut it is, where the list says nuts. */
  readonly words: readonly string[];
  /** Annex II of Regulation (EU) 1169/2011. */
  readonly eu: readonly string[];
  /** The nine of the United States. */
  readonly us: readonly string[];
  /** Words that files say and neither list has. */
  readonly onNeither: readonly string[];
  /** Ingredients of which nobody said whether they have any. */
  readonly notSaid: readonly string[];
}

/** The ingredient list in descending weight; equal weights stay in the order given. */
export function ingredientList(items: readonly LabelItem[], regime: LabelRegime): readonly LabelEntry[] {
  const sorted = items.filter((item) => item.grams > 0).sort((one, two) => two.grams - one.grams);
  const total = sorted.reduce((sum, item) => sum + item.grams, 0);
  return sorted.map(
    ({ name, grams, allergens, parts }): LabelEntry => ({
      name,
      grams,
      fraction: grams / total,
      allergens,
      text: markedName(name, allergens, regime),
      ...(parts === undefined ? {} : { parts: ingredientList(parts, regime) }),
    }),
  );
}

/** The allergens of all ingredients, each entry once, in the order in which they come. */
export function allergenLists(items: readonly LabelItem[]): AllergenLists {
  const [eu, us] = [new Set<string>(), new Set<string>()];
  const [words, onNeither, notSaid] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const take = (item: LabelItem): void => {
    if (item.allergensUnsaid) notSaid.add(item.name);
    for (const word of item.allergens) {
      const allergen = allergenOf(word);
      if (allergen === undefined) continue;
      words.add(singularOf(allergen.word));
      if (allergen.eu !== undefined) eu.add(allergen.eu);
      if (allergen.us !== undefined) us.add(allergen.us);
      if (allergen.eu === undefined && allergen.us === undefined) onNeither.add(allergen.word);
    }
    for (const part of item.parts ?? []) take(part);
  };
  for (const item of items) take(item);
  return { words: [...words], eu: [...eu], us: [...us], onNeither: [...onNeither], notSaid: [...notSaid] };
}

/**
 * The name with every listed allergen marked: in the name where it says it, else in brackets behind it, as in
 * `strong white (wheat)`. Emphasis in the list: Regulation (EU) 1169/2011, article 21. `nameOf` gives what a language calls an
 * allergen; such a word is looked for within compounds too, as in `Roggenmehl`.
 */
export function markedName(
  name: string,
  allergens: readonly string[],
  regime: LabelRegime,
  nameOf: (word: string) => string = (word) => word,
): readonly LabelText[] {
  const listed = allergens.flatMap((word): Allergen[] => {
    const allergen = allergenOf(word);
    return allergen === undefined || listedUnder(allergen, regime) === undefined ? [] : [allergen];
  });
  let text: LabelText[] = [{ text: name, allergen: false }];
  const behind: string[] = [];
  for (const word of new Set(listed.map((allergen) => allergen.word))) {
    const own = nameOf(word);
    const patterns = own === word ? [wholeWord(word)] : [withinWords(own), wholeWord(word)];
    const marked = patterns.map((pattern) => markedBy(pattern, text)).find((one) => one !== undefined);
    if (marked !== undefined) text = marked;
    else if (!behind.includes(own)) behind.push(own);
  }
  behind.forEach((word, index) => {
    text.push({ text: index === 0 ? ' (' : ', ', allergen: false }, { text: word, allergen: true });
  });
  if (behind.length > 0) text.push({ text: ')', allergen: false });
  return text;
}

/** The whole word and its plural. */
function wholeWord(word: string): RegExp {
  return new RegExp(`(?<![\\p{L}])(${escaped(word.replace(/s$/, ''))}s?)(?![\\p{L}])`, 'iu');
}

/** A word with its endings, within another word too, with or without the dots of an umlaut; a short one only where a word begins. */
function withinWords(word: string): RegExp {
  const stem = escaped(word).replace(
    /[aou]/gi,
    (vowel) => `[${vowel}${entryOf(umlauts, vowel.toLowerCase())}]`,
  );
  const from = word.length < 4 ? '(?<![\\p{L}])' : '';
  return new RegExp(`${from}(${stem}(?:(?:e|en|er|n|s)(?![\\p{L}]))?)`, 'iu');
}

const umlauts: ReadonlyMap<string, string> = new Map([
  ['a', 'ä'],
  ['o', 'ö'],
  ['u', 'ü'],
]);

function escaped(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** The stretches with what a pattern finds in them marked; `undefined` where it finds nothing new. */
function markedBy(pattern: RegExp, text: readonly LabelText[]): LabelText[] | undefined {
  const marked = text.flatMap((stretch) => (stretch.allergen ? [stretch] : splitAt(stretch.text, pattern)));
  const isNew =
    marked.length > text.length || marked.some((one, at) => one.allergen && !elementAt(text, at).allergen);
  return isNew ? marked : undefined;
}

/** A text in stretches, what the pattern finds apart from the rest. */
function splitAt(text: string, pattern: RegExp): LabelText[] {
  return text
    .split(pattern)
    .map((stretch, index) => ({ text: stretch, allergen: index % 2 === 1 }))
    .filter((stretch) => stretch.text !== '');
}

/** Bread, rolls and buns of the United States: not less than 62 percent total solids (21 CFR 136.110(a)). */
export const leastSolidsFraction = 0.62;

/** Whether baked bread has the total solids that 21 CFR 136.110(a) asks for. */
export function meetsSolids(solidsFraction: number): boolean {
  return solidsFraction >= leastSolidsFraction - 1e-9;
}

/** Half a pound. */
const halfPoundGrams = 226.796185;

/** What a baked piece is by 21 CFR 136.3: bread from half a pound after cooling, a roll or bun below. */
export function breadOrRoll(pieceGrams: number): 'bread' | 'roll or bun' {
  return pieceGrams >= halfPoundGrams ? 'bread' : 'roll or bun';
}
