import { foldName } from '../../text/names.ts';

/** A name of a table with what else its cell says of it. */
export interface MeantName {
  readonly name: string;
  /** The temperature that it goes in at. */
  readonly celsius?: number;
  /** Words that are no name: `soft`. */
  readonly remark?: string;
  /** The word of another language says less than the name that was taken for it. */
  readonly isGuess?: true;
}

/** Words for what goes into bread, by the name of the catalogue. Common practice of the trade, no source. */
const words: Readonly<Record<string, string>> = {
  water: 'wasser leitungswasser eau agua acqua',
  ice: 'eis scherbeneis glace hielo ghiaccio',
  salt: 'salz speisesalz meersalz sel sal sale',
  'fresh yeast':
    'frischhefe, hefe frisch, levure fraîche, levure boulangère, levadura fresca, lievito fresco, lievito di birra, lievito di birra fresco',
  'active dry yeast': 'trockenhefe, levure sèche, levadura seca, lievito secco',
  'instant yeast': 'instanthefe, levure instantanée, levadura instantánea, lievito istantaneo',
  butter: 'beurre mantequilla burro',
  'olive oil': "olivenöl, huile d'olive, aceite de oliva, olio d'oliva, olio di oliva",
  sugar: 'zucker sucre azúcar zucchero',
  honey: 'honig miel miele',
  egg: 'ei eier œuf œufs oeuf oeufs huevo huevos uovo uova',
  'egg yolk': "eigelb, jaune d'œuf, jaune d'oeuf, yema, tuorlo",
  'whole milk': 'vollmilch, milch, lait, lait entier, leche, leche entera, latte, latte intero',
  'sunflower seed': 'sonnenblumenkerne, graines de tournesol, pipas de girasol, semi di girasole',
  linseed: 'leinsamen, leinsaat, lin, lino, graines de lin, semi di lino',
  sesame: 'sesam sésame sésamo sesamo',
  walnut: 'walnuss walnüsse noix nueces noci',
  hazelnut: 'haselnuss haselnüsse noisettes avellanas nocciole',
  raisins: 'rosinen, raisins secs, pasas, uvetta',
  'wholemeal rye': 'roggenvollkornmehl, seigle intégral, centeno integral, segale integrale',
};

/** Words that leave open which of several is meant. */
const guesses: Readonly<Record<string, string>> = {
  'fresh yeast': 'hefe levure levadura lievito',
  'bread flour':
    'mehl, weizenmehl, farine, farine de blé, harina, harina de trigo, farina, farina di frumento',
  'medium rye': 'roggenmehl, farine de seigle, harina de centeno, farina di segale',
  'wholemeal wheat': 'weizenvollkornmehl, farine complète, harina integral, farina integrale',
};

function byWord(table: Readonly<Record<string, string>>): Map<string, string> {
  return new Map(
    Object.entries(table).flatMap(([name, said]) =>
      (said.includes(',') ? said.split(/,\s*/) : said.split(' ')).map(
        (word) => [foldName(word), name] as const,
      ),
    ),
  );
}

const sure = byWord(words);
const unsure = byWord(guesses);

/** Flours that another language names by their type: `Weizenmehl Type 550`, `farine de blé T65`, `farina tipo 00`. */
const typePattern =
  /^(?:(?:weizen|roggen|dinkel)?mehl|farine|harina|farina)\b.*?\b(?:(typ[eo]?|t)\s*)?(\d{2,4})$/;

/**
 * What a name of a table means: itself where the baker defines it (`isOwn`) or it is known under no better name; else without the temperature and the words behind it; else the
 * name of the catalogue for a word of German, French, Spanish or Italian.
 */
export function meantName(
  said: string,
  isKnown: (name: string) => boolean,
  isOwn: (name: string) => boolean,
): MeantName {
  const translated = (name: string): MeantName | undefined => {
    if (isOwn(name)) return { name };
    const folded = foldName(name);
    const own = sure.get(folded);
    if (own !== undefined) return { name: own };
    if (isKnown(name) && !unsure.has(folded) && !typePattern.test(folded)) return { name };
    const type = typePattern.exec(folded);
    if (type !== null) {
      const names = [`T${type[2]}`, `type ${type[2]}`];
      for (const one of type[1] === 't' ? names : names.toReversed()) if (isKnown(one)) return { name: one };
    }
    const guess = unsure.get(folded);
    return guess === undefined ? undefined : { name: guess, isGuess: true };
  };
  const whole = translated(said);
  if (whole !== undefined) return whole;
  const warm = warmthBehind(said);
  if (warm !== undefined) {
    const base = meantName(warm.head, isKnown, isOwn);
    if (isKnown(base.name)) return { ...base, celsius: warm.celsius };
  }
  const { head, remark } = remarkBehind(said);
  // “Seeds, mixed” is more than seeds: a word for a whole kind of things leaves the rest of the name to say which.
  const isKind = head !== undefined && /^(?:flour|fat|dairy|seeds)$/.test(foldName(head));
  const base = head === undefined || isKind ? undefined : translated(head);
  return base === undefined || remark === undefined || remark === '' ? { name: said } : { ...base, remark };
}

/** A temperature at the end of a cell, in brackets or behind `at`, and what stands before it. */
function warmthBehind(said: string): { readonly head: string; readonly celsius: number } | undefined {
  const found = /([-−]?\d{1,4}(?:[.,]\d{1,3})?) {0,2}° {0,2}([CF]) {0,2}\)?$/i.exec(said);
  if (found === null) return undefined;
  const degrees = Number(found[1]!.replace('−', '-').replace(',', '.'));
  const celsius = found[2]!.toUpperCase() === 'F' ? ((degrees - 32) * 5) / 9 : degrees;
  const before = withoutEnd(said.slice(0, found.index));
  const word = atWords.find((one) => before.toLowerCase().endsWith(one));
  const alone = word === undefined ? undefined : before.slice(0, -word.length);
  return { head: alone !== undefined && /[\s,(]$/.test(alone) ? withoutEnd(alone) : before, celsius };
}

const atWords = ['at', '@', 'bei', 'à', 'a'];

/** A text without the blanks, commas and opening brackets at its end. */
function withoutEnd(text: string): string {
  let end = text.length;
  while (end > 0 && ' \t,('.includes(text[end - 1]!)) end--;
  return text.slice(0, end);
}

/** What stands in brackets or behind the first comma, and the name before it. */
function remarkBehind(said: string): {
  readonly head: string | undefined;
  readonly remark: string | undefined;
} {
  const at = said.search(/[,(]/);
  const none = { head: undefined, remark: undefined };
  if (at <= 0) return none;
  const head = said.slice(0, at).trimEnd();
  if (said[at] === ',') return { head, remark: said.slice(at + 1).trim() };
  const inside = said.slice(at + 1, -1);
  return said.endsWith(')') && !/[()]/.test(inside) ? { head, remark: inside } : none;
}
