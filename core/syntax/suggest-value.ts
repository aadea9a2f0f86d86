import { groupOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { countsBreads, wordFor } from './bread-words.ts';
import type { Form } from './shared-properties.ts';
import { timesAsUsual } from './spelled-times.ts';
import { suggestUnit } from './suggest-amount.ts';
import { meantDough, meantMinutes, meantReading, meantStock } from './suggest-bench.ts';

const figure = String.raw`(?:\d+\s+\d+\/\d+|\d+\/\d+|\d+\s?[½¼¾]|[½¼¾]|\d+(?:[.,]\d+)?)`;
const dozen = /^(?:dozens?|doz)$/i;
const weight = String.raw`${figure}\s*\p{L}+`;

/** What a baker most likely meant with a value that does not read as its form; not yet looked at whether that reads. */
export function suggestValue(form: Form, text: string): string | undefined {
  if (form === 'yield') return meantYield(text);
  if (form === 'price') return meantPrice(text);
  if (form === 'mixedIn') return meantMixer(text);
  if (form === 'shareAt') return meantShare(text);
  if (form === 'testedDough') return meantDough(text);
  if (form === 'minutes') return meantMinutes(text);
  if (form === 'stock') return meantStock(text);
  if (form === 'heldAt') return meantHeld(text);
  if (timedForms.has(form)) return timesAsUsual(text) ?? (isReading(form) ? meantReading(text) : undefined);
  return undefined;
}

const isReading = (form: Form): boolean => form === 'reading' || form === 'endReading';
const timedForms: ReadonlySet<Form> = new Set([
  'reading',
  'endReading',
  'duration',
  'mixSpeed',
  'settles',
  'rise',
]);

/** `12 Std. at 26 °C`, `12 h at 28 °C until tripled`, whose last words are a remark. */
function meantHeld(text: string): string | undefined {
  const timed = timesAsUsual(text) ?? text;
  const until = /[\s,](?:or\s)?(?:until|till)\s/i.exec(timed);
  const seen = until === null ? '' : timed.slice(until.index + 1).trim();
  if (until === null || /\d/.test(seen)) return timed === text ? undefined : timed;
  return `${timed.slice(0, until.index).replace(/,$/, '').trim()}  # ${seen}`;
}

/** `0.56% of dry matter`, `0.56 % on the dry basis`, `0.65% d.m.`, `12% as is`, `12% at 14 % m.b.`. */
function meantShare(text: string): string | undefined {
  const [share = ''] = /^[\d.,]+\s*%/.exec(text) ?? [];
  const basis = text.slice(share.length).trim();
  if (share === '' || basis === '') return undefined;
  const [, moisture] =
    /^(?:(?:at|on)\s+)?\(?([\d.,]+)\s*%\s*(?:moisture(?:\s+basis)?|m\.?\s?b\.?|water)\)?$/i.exec(basis) ?? [];
  if (moisture !== undefined) return `${share} at ${moisture}% moisture`;
  return dryBasis.test(basis) ? `${share} at 0% moisture` : asIs.test(basis) ? share : undefined;
}

const dryBasis =
  /^\(?(?:(?:of|on|in|at)\s+)?(?:the\s+)?(?:dry(?:\s+(?:matter|basis|weight|substance|solids?))?|d\.?\s?(?:m|b|s)\.?)\)?$/i;
const asIs =
  /^\(?(?:(?:of|on)\s+(?:the\s+)?flour\s+)?as(?:\s+(?:is|it is|received|milled))\)?(?:\s+basis)?$/i;

/** `hand`, `by hands`, `in hand`; `big spiral`, `with the big spiral`, `on big spiral`. */
function meantMixer(text: string): string | undefined {
  if (/^(?:(?:by|in|with)\s+)?(?:my\s+|the\s+)?hands?$/iu.test(text)) return 'by hand';
  if (/^(?:in|on|with|by|at|using)$/iu.test(text)) return undefined;
  const [, name] = /^(?:(?:in|on|with|by|at|using)\s+)?(?:the\s+)?(\S.*)$/iu.exec(text) ?? [];
  return name === undefined || /\d\s*(?:min|h|s)\b/u.test(name) ? undefined : `in ${name}`;
}

/**
 * `24 loaves at 880 g`, `24 x 880 g`, `two 900 g loaves`, `12 buns, 60 g each`, `24 baked pieces of 800 g`, `25 kg of bread flour`,
 * `20 Kgs`. A word that breads are counted in stays.
 */
function meantYield(written: string): string | undefined {
  const text = plainYield(written);
  const of = (count: string, word: string | undefined, mass: string, isBaked: boolean): string => {
    const counted = word === undefined || !countsBreads(word) ? 'pieces' : word;
    return `${count} ${wordFor(Number(count), counted)} of ${inUnits(mass)}${isBaked ? ' baked' : ''}`;
  };
  const pieces = new RegExp(
    String.raw`^(\d+)\s*(baked\s+)?(?:[x×*]|(\p{L}+)\s+(?:of|at|à|@|x|×)|of|at|à|@)\s*(${weight})(\s+baked)?$`,
    'iu',
  ).exec(text);
  if (pieces !== null) {
    const [, number, bakedBefore, word, mass, bakedBehind] = pieces;
    return of(inPieces(number!, word), word, mass!, (bakedBefore ?? bakedBehind) !== undefined);
  }
  const isEach = eachBehind.test(text) || /\seach\s/i.test(text);
  const each = isEach ? eachPattern.exec(text.replace(eachBehind, '').replace(eachBefore, ' ')) : null;
  if (each !== null) return of(groupOf(each, 1), each[2], groupOf(each, 3), false);
  const weighed = weighedFirst.exec(text);
  if (weighed !== null) return of(groupOf(weighed, 1), groupOf(weighed, 3), groupOf(weighed, 2), false);
  const beside = unjoined.exec(text);
  if (beside !== null && countsBreads(groupOf(beside, 2)))
    return of(groupOf(beside, 1), beside[2], groupOf(beside, 3), beside[4] !== undefined);
  const turned = new RegExp(String.raw`^(${weight})\s*[x×*]\s*(\d+)$`, 'iu').exec(text);
  if (turned !== null) return of(groupOf(turned, 2), undefined, groupOf(turned, 1), false);
  const flour = new RegExp(String.raw`^(?:from\s+)?(${weight})(?:\s+of)?(?:\s+\p{L}+)*\s+flour$`, 'iu').exec(
    text,
  );
  const from = flour ?? new RegExp(String.raw`^from\s+(${weight})$`, 'iu').exec(text);
  if (from !== null) return `from ${inUnits(groupOf(from, 1))} flour`;
  return new RegExp(`^${weight}$`, 'iu').test(text) ? inUnits(text) : undefined;
}

/** A yield without `about`, brackets and words that say of the breads what they are like, its dozens counted: `1 dozen large rolls (58 g)`. */
function plainYield(written: string): string {
  const text = written
    .replace(/(?<=^|\s)(?:about|around|approx\.?|ca\.?|~)\s*(?=\S)/gi, '')
    .replace(/\s+(?:of\s+)?(?:the\s+)?dough$/i, '')
    .replace(/\s*\(([^()]*)\)/g, ', $1')
    .replace(spelledNumber, inFigures)
    .replace(/^(\d+) dozen (?=\p{L})/iu, (_, dozens: string) => `${Number(dozens) * 12} `);
  const [, number, words = ''] = /^(\d+)\s+(\p{L}.*|\d+x\d+\s.*)$/iu.exec(text) ?? [];
  const all = words.split(/\s+/);
  const bread = all.findIndex((word) => countsBreads(word.replace(/,$/, '')));
  const isLikeness = (word: string): boolean =>
    !/^(?:baked|of|at|x)$|,$/i.test(word) && suggestUnit(word) === undefined;
  return bread > 0 && bread <= 3 && all.slice(0, bread).every(isLikeness)
    ? `${number} ${all.slice(bread).join(' ')}`
    : text;
}

const spelled = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const spelledNumber = new RegExp(`^(?:${spelled.join('|')})(?=\\s)`, 'i');
const inFigures = (word: string): string => String(spelled.indexOf(word.toLowerCase()) + 1);

/** `12 buns, 60 g each`, without what says that it is each. */
const eachPattern = new RegExp(String.raw`^(\d+)\s*(\p{L}+)?[\s,;]+(${weight})$`, 'iu');
const eachBehind = /\s(?:each|apiece|a piece|per piece)$/i;
const eachBefore = /[\s,;](?:each|at|of)\s+(?=\d)/i;
/** `2 900 g loaves`, `2 x 900 g loaves` */
const weighedFirst = /^(\d{1,4})\s*[x×*]?\s+(\d+(?:[.,]\d+)?\s*(?:g|kg|oz|lb))\s+(\p{L}+)$/iu;

/** `90 rolls 58 g`, `90 rolls (58 g)` */
const unjoined = new RegExp(String.raw`^(\d+)\s*(\p{L}+)\s*[\s,;:/(–—-]\s*(${weight})\)?(\s+baked)?$`, 'iu');

/** Twelve of each where they are dozens, in the words they were counted in else. */
function inPieces(number: string, word: string | undefined): string {
  return word !== undefined && dozen.test(word) ? String(Number(number.replace(',', '.')) * 12) : number;
}

function inUnits(mass: string): string {
  const [, number, word] = /^([\d.,/½¼¾\s]*[\d½¼¾])\s*(.+)$/u.exec(mass)!;
  return `${number} ${suggestUnit(word!) ?? word}`;
}

/** The signs and words of money that mean one currency alone. A dollar may be of many countries. */
const currencies: Readonly<Record<string, string>> = {
  '€': 'EUR',
  euro: 'EUR',
  euros: 'EUR',
  '£': 'GBP',
};

const price = new RegExp(
  String.raw`^([€£$¥]|\p{L}{3}(?=\s*\d))?\s*(${figure})\s*([€£$¥]|\p{L}{3}|euros?)?(?:\s*(?:\/|per|an?)\s*(?:(${figure})\s*)?(\p{L}+))?$`,
  'iu',
);

const containers =
  /^(?:bag|sack|bottle|tub|pack|packet|box|carton|tin|can|crate|case|bucket|drum|jar|tray|block)s?$/i;

/** `0.40 €/kg`, `€ 0.40 per kg`, `EUR 0.40 per kg`, `0.40 eur per kg`, `2.88 EUR per dozen`. */
function meantPrice(text: string): string | undefined {
  const [, before, amount, behind, many, word] = price.exec(text) ?? [];
  const currency = currencyOf(before ?? behind);
  if (amount !== undefined && currency !== undefined && word !== undefined && dozen.test(word))
    return `${amount} ${currency} per ${inPieces(many ?? '1', word)} pieces`;
  const unit = word === undefined ? undefined : suggestUnit(word);
  if (amount === undefined || currency === undefined || unit === undefined) return undefined;
  return `${amount} ${currency} per ${many === undefined ? '' : `${many} `}${unit === 'pieces' ? 'piece' : unit}`;
}

function currencyOf(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  if (/^[A-Za-z]{3}$/.test(text)) return text.toUpperCase();
  return Object.hasOwn(currencies, text.toLowerCase()) ? currencies[text.toLowerCase()] : undefined;
}

/** What a price lacks that nobody can guess, `undefined` where it lacks nothing of the kind. */
export function lackingInPrice(text: string): Message | undefined {
  const found = price.exec(text);
  if (found === null) return undefined;
  const [, before, amount, behind, many, word] = found;
  const per = word === undefined ? 'per kg' : `per ${many === undefined ? '' : `${many} `}${word}`;
  const currency = currencyOf(before ?? behind);
  if (currency === undefined)
    return message('wrong-value.no-currency', { example: `price ${amount} EUR ${per}` });
  if (word !== undefined && containers.test(word))
    return message('wrong-value.container', {
      written: word.toLowerCase().replace(/s$/, ''),
      example: `price ${amount} ${currency} per 25 kg`,
    });
  if (word !== undefined) return undefined;
  return message('wrong-value.price-of', { example: `price ${amount} ${currency} per kg` });
}
