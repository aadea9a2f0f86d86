import { groupOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { countsBreads as isBread } from './bread-words.ts';
import { problem, replaceFix, writeFix } from './problem.ts';
import { readNumber } from './quantity.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import { units } from './units.ts';

/** Spellings of a unit that bakers type and the notation does not have; the full stop of a short form is taken off. */
const spellings: Readonly<Record<string, string>> = {
  ...spelled('g', 'gr grs gm gms gramm gramme grammes'),
  ...spelled('kg', 'kilo kilos kgs kgr'),
  ...spelled('oz', 'ozs'),
  ...spelled('ml', 'mls cc millilitre millilitres milliliter milliliters'),
  ...spelled('l', 'lt ltr ltrs'),
  ...spelled('tsp', 'teaspoon teaspoons'),
  ...spelled('tbsp', 'tbs tbl tblsp tablespoon tablespoons'),
  ...spelled('%', 'percent pct'),
  ...spelled('pieces', 'pc pcs ea each'),
};
/** Measures of a kitchen and a store that weigh this or that. */
const anyWeight =
  /(?:^|\s)((?:\d+\s+\d+\/\d+|\d+(?:[.,]\d+)?|\d+\/\d+|\d*[½¼¾]|an?|half an?)\s+(?:pinch|dash|handful|knob|drop|sprig|clove|stick|cube|packet|sachet|bag|sack|tin|bunch)(?:e?s)?)$/iu;
const noFigure = /\s(to taste|as needed|as required)$/i;
const number = String.raw`(?:\d+\s+)?\d+\/\d+|\d+[½¼¾]|[½¼¾]|\d+(?:[.,]\d+)?`;
/** `5 parts`, in a formula of parts. */
const inParts = new RegExp(String.raw`(?:^|\s)((${number})\s+parts?)$`, 'iu');
const numberAndWord = new RegExp(String.raw`(?:^|\s)((${number})\s*(\p{L}+\.?|%{2,}|%(?:\s%)+))$`, 'u');
const openPoint = /(?:^|\s)([.,](\d+)\s*(\p{L}+\.?|%))$/u;
const barePoint = /(?:^|\s)((\d+)[.,]\s*(\p{L}+\.?|%))$/u;
const openFigure = /\s(\d+\.)$/;
const begunBalance = /\s(bal(?:a(?:nc?)?)?)$/i;
const rest = /\s((?:the\s+)?(?:rest|remainder))$/i;

const fluidOunces = new RegExp(String.raw`(?:^|\s)((${number})\s*fl\.?\s*oz\.?)$`, 'iu');

/** NIST Handbook 44, appendix C: a fluid ounce of the United States. The imperial one is 1/160 of 4.54609 l. */
const fluidOunceMillilitres = { us: 29.5735295625, imperial: 28.4130625 };

/** `2 fl oz`: the ounce of a cup differs from country to country, and a millilitre does not. */
function inMillilitres(
  written: string,
  count: string,
  span: { start: number; end: number },
): { readonly start: number; readonly millilitres: number; readonly problem: SyntaxProblem } {
  const ounces = readNumber(count);
  const shown = (of: number): string => `${Number((ounces * of).toPrecision(3))} ml`;
  const [us, imperial] = [shown(fluidOunceMillilitres.us), shown(fluidOunceMillilitres.imperial)];
  const said = message('missing-unit.fluid-ounce', { written, meant: us, otherMeant: imperial });
  return {
    start: span.start,
    millilitres: ounces * fluidOunceMillilitres.us,
    problem: problem(
      'missing-unit',
      said,
      span,
      writeFix(span, us, true),
      replaceFix(message('missing-unit.fix-imperial', { meant: imperial }), span, imperial),
    ),
  };
}

function spelled(unit: string, words: string): Record<string, string> {
  return Object.fromEntries(words.split(' ').map((word) => [word, unit]));
}

const amountMeasures: ReadonlySet<string> = new Set(['mass', 'volume', 'count', 'fraction']);

const firstPattern = new RegExp(String.raw`^(${number}|an?)\s*(\p{L}+\.?)\s+(?:of\s+)?(?=\S*\p{L})`, 'iu');

/** A stick of butter is a quarter of a pound, a packet of dry yeast a quarter of an ounce. Packings of the United States; common practice. */
const packed: readonly { readonly word: RegExp; readonly of: RegExp; readonly grams: number }[] = [
  { word: /^sticks?$/i, of: /butter|margarine|shortening/i, grams: 113.4 },
  { word: /^(?:packets?|pkts?|envelopes?|sachets?)$/i, of: /yeast/i, grams: 7 },
];

/** `2 Tbsp cinnamon`, `1 stick butter`: the amount that stands first, as the notation writes it, and where the name begins. */
export function amountBefore(text: string): { readonly meant: string; readonly nameAt: number } | undefined {
  const found = firstPattern.exec(text);
  if (found === null) return undefined;
  const [whole, figure = '', word = ''] = found;
  const count = /^an?$/i.test(figure) ? 1 : readNumber(figure);
  const plain = word.replace(/\.$/, '');
  const name = text.slice(whole.length);
  const pack = packed.find((one) => one.word.test(plain) && one.of.test(name));
  if (pack !== undefined)
    return { meant: `${Number((count * pack.grams).toFixed(1))} g`, nameAt: whole.length };
  if (/^an?$/i.test(figure) || units.get(plain) !== undefined) return undefined;
  const unit = suggestUnit(word) ?? suggestUnit(word.toLowerCase());
  return unit === undefined || unit === 'pieces'
    ? undefined
    : { meant: written(figure, unit), nameAt: whole.length };
}

const dozens = /^(?:dozens?|doz\.?)$/i;

/** The unit that a word is or was meant to be, in the spelling of the notation. */
export function suggestUnit(word: string): string | undefined {
  if (/^[%\s]+$/.test(word)) return '%';
  const plain = word.replace(/\.$/, '');
  const known = units.get(plain);
  if (known !== undefined) return amountMeasures.has(known.measure) ? known.canonical : undefined;
  return Object.hasOwn(spellings, plain.toLowerCase()) ? spellings[plain.toLowerCase()] : undefined;
}

/**
 * What is to be said of an amount at the end of a line that cannot be read, `900 gr` say, and where it starts.
 * `text` begins at the column `from` of its line; `countsBreads` where the line says how many of a bread.
 */
export function unreadAmount(
  text: string,
  from: number,
  countsBreads: boolean,
): { readonly start: number; readonly millilitres?: number; readonly problem: SyntaxProblem } | undefined {
  const at = (found: RegExpExecArray): { start: number; end: number } => {
    const end = from + text.length;
    return { start: end - groupOf(found, 1).length, end };
  };
  const fixed = (found: RegExpExecArray, { code, meant, said }: Amount) => {
    const span = at(found);
    return { start: span.start, problem: problem(code, said, span, writeFix(span, meant, true)) };
  };
  const shown = (found: RegExpExecArray, code: string, said: Message) => {
    const span = at(found);
    return { start: span.start, problem: problem(code, said, span) };
  };

  const fluid = fluidOunces.exec(text);
  if (fluid !== null) return inMillilitres(groupOf(fluid, 1), groupOf(fluid, 2), at(fluid));
  for (const [pattern, amountOf] of [
    [numberAndWord, countsBreads ? amountOrBreads : amountInOtherWords],
    [openPoint, amountWithPointFirst],
    [barePoint, amountWithPointLast],
  ] as const) {
    const found = pattern.exec(text);
    const amount = found === null ? undefined : amountOf(groupOf(found, 2), groupOf(found, 3));
    if (found !== null && amount !== undefined) return fixed(found, amount);
  }
  // Half typed: `fresh yeast 1.` and `wholemeal wheat bal`.
  const figure = openFigure.exec(text);
  if (figure !== null) {
    const written = groupOf(figure, 1);
    return shown(
      figure,
      'missing-amount',
      message('missing-amount.figure', { written, meant: `${written}5%` }),
    );
  }
  const begun = begunBalance.exec(text);
  if (begun !== null) {
    const said = message('missing-amount.unfinished', { written: groupOf(begun, 1), example: 'balance' });
    return fixed(begun, { code: 'missing-amount', meant: 'balance', said });
  }
  const balance = rest.exec(text);
  if (balance !== null) {
    const said = message('no-amount.rest', { written: groupOf(balance, 1), meant: 'balance' });
    return fixed(balance, { code: 'no-amount', meant: 'balance', said });
  }
  const vague = anyWeight.exec(text);
  if (vague !== null)
    return shown(vague, 'no-amount', message('no-amount.any-weight', { written: groupOf(vague, 1) }));
  const parts = inParts.exec(text);
  if (parts !== null) {
    const span = at(parts);
    const meant = `${Number((readNumber(groupOf(parts, 2)) * 100).toFixed(2))}%`;
    const said = message('no-amount.parts', { written: groupOf(parts, 1), meant });
    return { start: span.start, problem: problem('no-amount', said, span, writeFix(span, meant)) };
  }
  const open = noFigure.exec(text);
  if (open === null) return undefined;
  return shown(open, 'no-amount', message('no-amount.no-figure', { written: groupOf(open, 1) }));
}

/** An amount that was meant, with the code and the words of what is written instead. */
interface Amount {
  readonly code: 'missing-amount' | 'missing-unit' | 'no-amount';
  readonly meant: string;
  readonly said: Message;
}

function written(figure: string, unit: string): string {
  return `${figure}${unit === '%' ? '' : ' '}${unit}`;
}

/** `900 gr`, `2 %%`, `3 dozen`. */
function amountInOtherWords(figure: string, word: string): Amount | undefined {
  const unit = suggestUnit(word);
  if (unit !== undefined && units.get(word) === undefined) {
    const meant = written(figure, unit);
    const said = word.startsWith('%')
      ? message('missing-unit.one-sign', { meant })
      : message('missing-unit.no-unit', { written: word, unit, meant });
    return { code: 'missing-unit', meant, said };
  }
  if (!/^\d+$/.test(figure) || !dozens.test(word)) return undefined;
  const meant = written(String(Number(figure) * 12), 'pieces');
  return { code: 'missing-unit', meant, said: message('missing-unit.dozens', { meant }) };
}

/** The same where breads are counted: `40 loaves`. */
function amountOrBreads(figure: string, word: string): Amount | undefined {
  const amount = amountInOtherWords(figure, word);
  if (amount !== undefined || !isBread(word)) return amount;
  const meant = written(figure, 'pieces');
  const said = message('missing-unit.no-unit', { written: word, unit: 'pieces', meant });
  return { code: 'missing-unit', meant, said };
}

/** `.5 g`. */
function amountWithPointFirst(figure: string, word: string): Amount | undefined {
  const unit = suggestUnit(word);
  if (unit === undefined) return undefined;
  const meant = written(`0.${figure}`, unit);
  return { code: 'no-amount', meant, said: message('no-amount.point-first', { meant }) };
}

/** `5. g`. */
function amountWithPointLast(figure: string, word: string): Amount | undefined {
  const unit = suggestUnit(word);
  if (unit === undefined) return undefined;
  const meant = written(figure, unit);
  return { code: 'no-amount', meant, said: message('no-amount.point-last', { meant }) };
}
