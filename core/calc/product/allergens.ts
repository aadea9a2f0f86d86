/** The two manners of a label: Regulation (EU) 1169/2011, or 21 CFR 101 of the United States. */
export type LabelRegime = 'EU' | 'US';

/** An allergen as a file names it, with the entry of each list it falls under. */
export interface Allergen {
  /** As written, lower case: `wheat`, `hazelnut`. */
  readonly word: string;
  /** Annex II of Regulation (EU) 1169/2011. */
  readonly eu?: string;
  /** The nine major food allergens of the United States; sesame since 1 January 2023. */
  readonly us?: string;
}

const gluten = 'cereals containing gluten';
const nuts = 'nuts';

type Row = readonly [words: readonly string[], eu: string | undefined, us: string | undefined];

// Annex II of Regulation (EU) 1169/2011; the nine of the Federal Food, Drug, and Cosmetic Act, section 201(qq). Which
// wheats count as wheat in the United States (spelt, khorasan, emmer, einkorn, durum) is from memory.
const rows: readonly Row[] = [
  [['wheat', 'spelt', 'khorasan', 'emmer', 'einkorn', 'durum', 'triticale'], gluten, 'wheat'],
  [['rye', 'barley', 'oats', 'oat', 'gluten'], gluten, undefined],
  [
    ['crustaceans', 'crustacean', 'shrimp', 'prawn', 'crab', 'lobster'],
    'crustaceans',
    'crustacean shellfish',
  ],
  [['egg', 'eggs'], 'eggs', 'eggs'],
  [['fish'], 'fish', 'fish'],
  [['peanut', 'peanuts'], 'peanuts', 'peanuts'],
  [['soy', 'soya', 'soybean', 'soybeans'], 'soybeans', 'soybeans'],
  [['milk', 'lactose'], 'milk', 'milk'],
  [
    [
      ...['almond', 'almonds', 'hazelnut', 'hazelnuts', 'walnut', 'walnuts', 'cashew', 'cashews'],
      ...['pecan', 'pecans', 'brazil nut', 'brazil nuts', 'pistachio', 'pistachios', 'macadamia'],
      ...['macadamia nut', 'macadamia nuts', 'nuts', 'tree nuts'],
    ],
    nuts,
    'tree nuts',
  ],
  [['celery'], 'celery', undefined],
  [['mustard'], 'mustard', undefined],
  [['sesame', 'sesame seed', 'sesame seeds'], 'sesame', 'sesame'],
  [
    ['sulphites', 'sulphite', 'sulfites', 'sulphur dioxide', 'sulfur dioxide'],
    'sulphur dioxide and sulphites',
    undefined,
  ],
  [['lupin', 'lupins'], 'lupin', undefined],
  [['molluscs', 'mollusc', 'mussel', 'oyster', 'squid'], 'molluscs', undefined],
];

const byWord: ReadonlyMap<string, Allergen> = new Map(
  rows.flatMap(([words, eu, us]) =>
    words.map((word): [string, Allergen] => [
      word,
      { word, ...(eu === undefined ? {} : { eu }), ...(us === undefined ? {} : { us }) },
    ]),
  ),
);

/** The words of the lists, each in the singular where it has one. */
export const knownAllergens: readonly string[] = [...byWord.keys()].filter(
  (word) => !byWord.has(word.replace(/s$/, '')) || !word.endsWith('s'),
);

/** The word of the lists for one of it, where they have both: `almond` for `almonds`. */
export function singularOf(word: string): string {
  const one = word.replace(/s$/, '');
  return byWord.has(one) ? one : word;
}

/** Words by which a file says that there is none. */
const none = new Set(['none', 'nothing', 'no allergens']);

/** What a word of a `contains` line stands for; `undefined` where it says that there is none. */
export function allergenOf(word: string): Allergen | undefined {
  const folded = word.trim().toLowerCase();
  if (folded === '' || none.has(folded)) return undefined;
  return byWord.get(folded) ?? { word: folded };
}

/** Whether a grain is one of the cereals containing gluten of Annex II. */
export function isGlutenCereal(grain: string): boolean {
  return byWord.get(grain)?.eu === gluten;
}

/** The entry of a regime's list that an allergen falls under. */
export function listedUnder(allergen: Allergen, regime: LabelRegime): string | undefined {
  return regime === 'EU' ? allergen.eu : allergen.us;
}
