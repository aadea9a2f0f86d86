import { nameAbroad } from '../catalogue/catalogue.ts';
import { writtenTypes } from '../catalogue/flour-types.ts';
import { anyFlourAbroad } from '../catalogue/names-abroad.ts';
import { groupOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';

/** A name of a table with what else its cell says of it. */
export interface SuggestedName {
  readonly name: string;
  /** The temperature that it goes in at. */
  readonly celsius?: number;
  /** Words that are no name: `soft`. */
  readonly remark?: string;
  /** The word of another language leaves open which of several is meant. */
  readonly isGuess?: true;
}

/** Words for flour of whatever kind, which leave open which of several is meant. */
const anyFlour: ReadonlySet<string> = new Set(anyFlourAbroad.map(foldName));

/** What the catalogue calls a thing that a word of another language names; none where English has the same word. */
function catalogueNameOf(folded: string): SuggestedName | undefined {
  if (anyFlour.has(folded)) return { name: 'bread flour', isGuess: true };
  const found = nameAbroad(folded);
  if (found === undefined) return undefined;
  const name = writtenTypes.get(found.name) ?? found.name;
  return found.isLoose ? { name, isGuess: true } : { name };
}

/** Flours that another language names by their type: `Weizenmehl Type 550`, `farine de blé T65`, `farina tipo 00`. */
const typePattern =
  /^(?:(?:weizen|roggen|dinkel)?mehl|farine|harina|farina)\b.*?\b(?:(typ[eo]?|t)\s*)?(\d{2,4})$/;

/**
 * What a name of a table means (`isSame`: two names are of one ingredient): itself where the baker defines it (`isOwn`) or it is known under no better name; else without the temperature and the words behind it; else the
 * name of the catalogue for a word of German, French, Spanish or Italian.
 */
export function suggestName(
  said: string,
  isKnown: (name: string) => boolean,
  isOwn: (name: string) => boolean,
  isSame: (one: string, other: string) => boolean,
): SuggestedName {
  const translated = (name: string): SuggestedName | undefined => {
    if (isOwn(name)) return { name };
    const folded = foldName(name);
    const found = catalogueNameOf(folded);
    if (found !== undefined) return found;
    if (isKnown(name) && !typePattern.test(folded)) return { name };
    const type = typePattern.exec(folded);
    if (type !== null) {
      const names = [`T${type[2]}`, `type ${type[2]}`];
      for (const one of type[1] === 't' ? names : names.toReversed()) if (isKnown(one)) return { name: one };
    }
    return undefined;
  };
  const whole = translated(said);
  if (whole !== undefined) return whole;
  const warm = warmthBehind(said);
  if (warm !== undefined) {
    const base = suggestName(warm.head, isKnown, isOwn, isSame);
    if (isKnown(base.name)) return { ...base, celsius: warm.celsius };
  }
  const numbered = /^(.*\p{L})\s+([1-9])$/u.exec(said);
  if (numbered !== null) {
    const base = suggestName(groupOf(numbered, 1), isKnown, isOwn, isSame);
    if (isKnown(base.name)) return { ...base, remark: withRemark(groupOf(numbered, 2), base.remark) };
  }
  const { head, remark } = remarkBehind(said);
  const turned =
    head === undefined || remark === undefined ? undefined : turnedRound(head, remark, translated, isSame);
  if (turned !== undefined) return turned;
  // “Seeds, mixed” is more than seeds: a word for a whole kind of things leaves the rest of the name to say which.
  const isKind = head !== undefined && /^(?:flour|fat|dairy|seeds)$/.test(foldName(head));
  const inner = head === undefined || isKind ? undefined : suggestName(head, isKnown, isOwn, isSame);
  const base = inner !== undefined && isKnown(inner.name) ? inner : undefined;
  if (base?.remark !== undefined && remark !== undefined)
    return { ...base, remark: withRemark(base.remark, remark) };
  return base === undefined || remark === undefined || remark === '' ? { name: said } : { ...base, remark };
}

/** Remarks one behind the other. */
function withRemark(one: string, other: string | undefined): string {
  return other === undefined || other === '' ? one : `${one}, ${other}`;
}

/** `Yeast, fresh` and `Flour (bread), sifted`: what stands behind the name is the first word of it. */
function turnedRound(
  head: string,
  remark: string,
  translated: (name: string) => SuggestedName | undefined,
  isSame: (one: string, other: string) => boolean,
): SuggestedName | undefined {
  const [first = '', ...rest] = remark.split(',').map((one) => one.trim());
  if (!/^\p{L}/u.test(first)) return undefined;
  const found = translated(`${first} ${head.charAt(0).toLowerCase()}${head.slice(1)}`);
  // Fine salt is salt, and how fine it is a remark; fresh yeast is another thing than yeast of whatever kind.
  if (found === undefined || found.isGuess === true || isSame(found.name, head)) return undefined;
  return { ...found, ...(rest.length === 0 ? {} : { remark: rest.join(', ') }) };
}

/** A temperature at the end of a cell, in brackets or behind `at`, and what stands before it. */
function warmthBehind(said: string): { readonly head: string; readonly celsius: number } | undefined {
  const found =
    /([-−]?\d{1,4}(?:[.,]\d{1,3})?) {0,2}° {0,2}([CF]) {0,2}\)?$/i.exec(said) ??
    /([-−]?\d{1,3}) ?([CF])\)$/.exec(said);
  if (found === null) return undefined;
  const degrees = Number(groupOf(found, 1).replace('−', '-').replace(',', '.'));
  const celsius = groupOf(found, 2).toUpperCase() === 'F' ? ((degrees - 32) * 5) / 9 : degrees;
  const before = withoutEnd(said.slice(0, found.index));
  const word = atWords.find((one) => before.toLowerCase().endsWith(one));
  const alone = word === undefined ? undefined : before.slice(0, -word.length);
  return { head: alone !== undefined && /[\s,(]$/.test(alone) ? withoutEnd(alone) : before, celsius };
}

const atWords = ['at', '@', 'bei', 'à', 'a'];

/** A text without the blanks, commas and opening brackets at its end. */
function withoutEnd(text: string): string {
  let end = text.length;
  while (end > 0 && ' \t,('.includes(text.charAt(end - 1))) end--;
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
  const close = said.indexOf(')', at);
  if (close < 0) return none;
  const inside = said.slice(at + 1, close);
  const rest = said.slice(close + 1).trim();
  if (/[()]/.test(inside + rest) || (rest !== '' && !rest.startsWith(','))) return none;
  return { head, remark: withRemark(inside, rest.slice(1).trim()) };
}
