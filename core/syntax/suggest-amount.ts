import { type Message, message } from '../words/message.ts';
import { problem, replaceFix, writeFix } from './problem.ts';
import { readNumber } from './quantity.ts';
import type { SyntaxProblem } from './tree.ts';
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
  /(?:^|\s)((?:\d+(?:[.,]\d+)?|\d+\/\d+|[½¼¾]|an?)\s+(?:pinch|dash|handful|knob|drop|sprig|clove|stick|packet|sachet|bag|sack|tin|bunch)(?:e?s)?)$/iu;
const noFigure = /\s(to taste|as needed|as required)$/i;
const number = String.raw`(?:\d+\s+)?\d+\/\d+|\d+[½¼¾]|[½¼¾]|\d+(?:[.,]\d+)?`;
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
  [, written, count]: RegExpExecArray,
  span: { start: number; end: number },
): { readonly start: number; readonly millilitres: number; readonly problem: SyntaxProblem } {
  const ounces = readNumber(count!);
  const shown = (of: number): string => `${Number((ounces * of).toPrecision(3))} ml`;
  const [us, imperial] = [shown(fluidOunceMillilitres.us), shown(fluidOunceMillilitres.imperial)];
  const said = message('missing-unit.fluid-ounce', { written: written!, meant: us, otherMeant: imperial });
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

/** Words that breads are counted in. */
const breads = /^(?:loaf|loaves|bread|breads|bun|buns|roll|rolls|unit|units)$/i;
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
    return { start: end - found[1]!.length, end };
  };
  const fixed = (found: RegExpExecArray, code: string, meant: string, said: Message) => {
    const span = at(found);
    return { start: span.start, problem: problem(code, said, span, writeFix(span, meant, true)) };
  };
  const amount = (figure: string, unit: string): string => `${figure}${unit === '%' ? '' : ' '}${unit}`;

  const fluid = fluidOunces.exec(text);
  if (fluid !== null) return inMillilitres(fluid, at(fluid));
  const word = numberAndWord.exec(text);
  const unit = word === null ? undefined : suggestUnit(word[3]!);
  if (word !== null && unit !== undefined && units.get(word[3]!) === undefined) {
    const meant = amount(word[2]!, unit);
    const said = word[3]!.startsWith('%')
      ? message('missing-unit.one-sign', { meant })
      : message('missing-unit.no-unit', { written: word[3]!, unit, meant });
    return fixed(word, 'missing-unit', meant, said);
  }
  if (word !== null && /^\d+$/.test(word[2]!) && dozens.test(word[3]!)) {
    const meant = amount(String(Number(word[2]) * 12), 'pieces');
    return fixed(word, 'missing-unit', meant, message('missing-unit.dozens', { meant }));
  }
  if (word !== null && countsBreads && breads.test(word[3]!)) {
    const meant = amount(word[2]!, 'pieces');
    const said = message('missing-unit.no-unit', { written: word[3]!, unit: 'pieces', meant });
    return fixed(word, 'missing-unit', meant, said);
  }
  const open = openPoint.exec(text);
  const openUnit = open === null ? undefined : suggestUnit(open[3]!);
  if (open !== null && openUnit !== undefined) {
    const meant = amount(`0.${open[2]}`, openUnit);
    return fixed(open, 'no-amount', meant, message('no-amount.point-first', { meant }));
  }
  const bare = barePoint.exec(text);
  const bareUnit = bare === null ? undefined : suggestUnit(bare[3]!);
  if (bare !== null && bareUnit !== undefined) {
    const meant = amount(bare[2]!, bareUnit);
    return fixed(bare, 'no-amount', meant, message('no-amount.point-last', { meant }));
  }
  // Half typed: `fresh yeast 1.` and `wholemeal wheat bal`.
  const figure = openFigure.exec(text);
  if (figure !== null) {
    const said = message('missing-amount.figure', { written: figure[1]!, meant: `${figure[1]}5%` });
    return { start: at(figure).start, problem: problem('missing-amount', said, at(figure)) };
  }
  const begun = begunBalance.exec(text);
  if (begun !== null) {
    const said = message('missing-amount.unfinished', { written: begun[1]!, example: 'balance' });
    return fixed(begun, 'missing-amount', 'balance', said);
  }
  const balance = rest.exec(text);
  if (balance !== null) {
    const said = message('no-amount.rest', { written: balance[1]!, meant: 'balance' });
    return fixed(balance, 'no-amount', 'balance', said);
  }
  const vague = anyWeight.exec(text);
  if (vague !== null) {
    const said = message('no-amount.any-weight', { written: vague[1]! });
    return { start: at(vague).start, problem: problem('no-amount', said, at(vague)) };
  }
  const open2 = noFigure.exec(text);
  if (open2 === null) return undefined;
  const said = message('no-amount.no-figure', { written: open2[1]! });
  return { start: at(open2).start, problem: problem('no-amount', said, at(open2)) };
}
