import { units } from '../syntax/units.ts';
import { foldName } from '../text/names.ts';

/** The words by which columns and rows of bakers' tables are known; all of it common practice, no source. */

/** Spellings that tables use and the notation does not, each with the notation's unit. */
const tableUnits: Readonly<Record<string, string>> = {
  gr: 'g',
  gm: 'g',
  gms: 'g',
  gramm: 'g',
  gramme: 'g',
  grammes: 'g',
  gramo: 'g',
  gramos: 'g',
  grammo: 'g',
  grammi: 'g',
  kilogramm: 'kg',
  kilogrammes: 'kg',
  kilogramos: 'kg',
  chilogrammi: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  kgs: 'kg',
  mls: 'ml',
  ltr: 'l',
  percent: '%',
  pct: '%',
  pc: 'pieces',
  pcs: 'pieces',
  each: 'pieces',
  ea: 'pieces',
  stk: 'pieces',
  el: 'tbsp',
  tl: 'tsp',
};

const amountMeasures = new Set(['mass', 'volume', 'fraction', 'count']);

/** The notation's spelling of a unit of amounts, or `undefined` where a word is none. */
export function unitOf(word: string): string | undefined {
  const plain = word.trim().replace(/\.$/, '');
  const known = units.get(plain) ?? units.get(plain.toLowerCase());
  if (known !== undefined) return amountMeasures.has(known.measure) ? known.canonical : undefined;
  return tableUnits[plain.toLowerCase()];
}

export type ColumnUse =
  | 'name'
  | 'part'
  | 'kind'
  | 'formula'
  | 'unit'
  | 'percent'
  | 'amount'
  | 'temperature'
  | 'remark'
  | 'other';

/** A heading in single words: `percentOfPartFlour` and `Weight (kg)` are several. */
function wordsOf(heading: string): string[] {
  const apart = heading.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2');
  return foldName(apart).match(/[\p{L}\p{M}]+|%/gu) ?? [];
}

const leftOut = /^(?:price|cost|money|eur|usd|gbp|supplier|code|number|no|role|file|preis)$/;
const uses: readonly (readonly [ColumnUse, RegExp])[] = [
  ['other', leftOut],
  ['percent', /^(?:%|percent|percentage|percents|pct|prozent|pourcentage|porcentaje|percentuale)$/],
  ['temperature', /^(?:temp|temps|temperatures?|temperatur|température|temperatura)$/],
  [
    'remark',
    /^(?:notes?|remarks?|comments?|bemerkung|bemerkungen|hinweis|hinweise|remarques?|osservazioni|observaciones|notas)$/,
  ],
  ['kind', /^kind$/],
  ['formula', /^(?:formula|bread|product)$/],
  ['part', /^(?:part|section|stage|phase|stufe|étape|etapa|fase)$/],
  ['unit', /^(?:unit|units|uom)$/],
  [
    'name',
    /^(?:ingredients?|names?|materials?|items?|component|components|description|zutat|zutaten|rohstoff|rohstoffe|ingrédients?|ingredientes?|ingredienti|ingrediente)$/,
  ],
  [
    'amount',
    /^(?:weight|weights|mass|amount|amounts|quantity|qty|grams|kilograms|g|kg|menge|gewicht|gramm|quantité|poids|grammes|cantidad|peso|gramos|quantità|grammi)$/,
  ],
];

/** What a heading says its column is for, `undefined` where its words say nothing. */
export function useOf(heading: string): ColumnUse | undefined {
  const words = wordsOf(heading);
  return uses.find(([, pattern]) => words.some((word) => pattern.test(word)))?.[0];
}

/** The unit that a heading names: `Weight (kg)`, `grams`, `% of flour`. */
export function unitOfHeading(heading: string): string | undefined {
  if (useOf(heading) === 'percent') return '%';
  for (const word of wordsOf(heading)) {
    const unit = unitOf(word);
    if (unit !== undefined) return unit;
  }
  return undefined;
}

const titleLabel =
  /^\s*(?:(?:recipe|formula|bread|product)(?: name)?|rezept|recette|ricetta|receta)\s*(?::\s*|$)/i;

/** The name of a formula in the cells of a row above its table; `undefined` where they say none. */
export function titleIn(cells: readonly string[]): string | undefined {
  // Without the signs that make it a heading in Markdown.
  const said = cells.map((cell) => cell.replace(/^#{1,6}\s+(?=\S)/, ''));
  const [first, second, more] = said.filter((cell) => cell !== '');
  if (first === undefined || more !== undefined) return undefined;
  const behind = first.replace(titleLabel, '');
  if (second === undefined) return behind || first;
  return behind === '' ? second : undefined;
}

const totalWords = /^(?:grand |sub)?-?(?:totals?|sum|summe|gesamt|total|totale)\b/;
const outcomeWords = /^(?:(?:dough|batch|total|final) weight|yield|hydration|tdw)\b/;

/** Whether a row of this name is a sum or an outcome of the others, and no ingredient. */
export function isTotalName(name: string): boolean {
  const folded = foldName(name).replace(/[:=]+$/, '');
  return totalWords.test(folded) || outcomeWords.test(folded) || folded === 'σ';
}

const aboutWords =
  /^(?:(?:number|no\.?) of\b|(?:pieces|loaves)$|(?:bak(?:e|ing) |scaling )?loss\b|waste\b|cost\b|(?:scaling|piece|unit) weight\b|weight (?:per|of a) (?:piece|loaf)\b)/;

/** Whether a row of this name tells of the batch, such as its loaves or its loss, and is no ingredient. */
export function isAboutBatch(name: string): boolean {
  return aboutWords.test(foldName(name));
}

const groupWords =
  /^(?:flours?|liquids?|dry|wet|fats?|sugars?|salts?|leavening|others?|miscellaneous|misc|inclusions|additions|minor)(?: ingredients?)?$|^ingredients?$/;

/** Whether a name alone in its row sorts the lines below it by what they are, and is no part that is made. */
export function isGroupName(name: string): boolean {
  return groupWords.test(foldName(name));
}

const overallWords =
  /^(?:(?:overall|total|all|whole)(?: (?:formula|dough|recipe|mix))?|gesamt(?:rezept|menge|teig)?|totale|total général)$/;

/** Whether weights under this heading are those of all parts together. */
export function isOverallName(name: string): boolean {
  return overallWords.test(foldName(name));
}

const doughWords =
  /^(?:(?:final |main )?(?:dough|mix)|overall|formula|(?:haupt)?teig|pâte(?: finale)?|pétrissage(?: final)?|impasto(?: finale)?|masa(?: final)?)$/;

/** Whether a part of this name is the dough itself. */
export function isDoughName(name: string): boolean {
  return doughWords.test(foldName(name));
}

const prefermentWords =
  /\b(?:preferment|poolish|biga|sponge|levain|sour|sourdough|starter|leaven|vorteig|sauerteig|prefermento|masa madre|lievito madre)\b/;

const packWords =
  /^(?:würfel|päckchen|packung|sachets?|packets?|packages?|cubes?|cubett[oi]|bustin[ae]|sobres?)(?: (?:of|de|di|d'))? +/i;

/** A name without the pack that it is counted in: `sachet dried yeast`; `undefined` where it has none. */
export function withoutPack(name: string): string | undefined {
  return packWords.test(name) ? name.replace(packWords, '') : undefined;
}

const cultureWords =
  /^(?:(?:ripe|mature|active|fed) )?(?:starter|sourdough starter|culture|seed|seed starter|mother|chef|sour|levain)$|^(?:anstellgut|levain chef|chef|lievito madre|pasta madre|masa madre)$/;

/** Whether a name within a preferment stands for ripe culture that feeds it. */
export function isCultureName(name: string): boolean {
  return cultureWords.test(foldName(name));
}

/** The kind of section that a part of a table becomes; `kind` is what the table itself says. */
export function sectionKindOf(name: string, kind: string): string {
  const said = foldName(kind);
  if (/^(?:preferment|soaker|scald|part|filling|topping|bath)$/.test(said)) return said;
  const folded = foldName(name);
  if (prefermentWords.test(folded)) return 'preferment';
  if (/\b(?:soaker|quellstück)\b/.test(folded)) return 'soaker';
  if (/\b(?:scald|tangzhong|yudane|brühstück|kochstück)\b/.test(folded)) return 'scald';
  const known = /\b(?:filling|topping|bath)\b/.exec(folded)?.[0];
  return known ?? 'part';
}
