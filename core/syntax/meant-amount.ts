import { problem, replaceFix } from './problem.ts';
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
  const message = `A fluid ounce is not the same everywhere: “${written}” is taken as ${us}, that of the United States; the imperial one makes ${imperial}. Write it in millilitres.`;
  return {
    start: span.start,
    millilitres: ounces * fluidOunceMillilitres.us,
    problem: problem(
      'missing-unit',
      message,
      span,
      replaceFix(`Write ${us}`, span, us, true),
      replaceFix(`Write ${imperial}, the imperial ounce`, span, imperial),
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
export function meantUnit(word: string): string | undefined {
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
  const cured = (found: RegExpExecArray, code: string, meant: string, why: string) => {
    const span = at(found);
    return {
      start: span.start,
      problem: problem(code, `${why}: ${meant}`, span, replaceFix(`Write ${meant}`, span, meant, true)),
    };
  };
  const amount = (figure: string, unit: string): string => `${figure}${unit === '%' ? '' : ' '}${unit}`;

  const fluid = fluidOunces.exec(text);
  if (fluid !== null) return inMillilitres(fluid, at(fluid));
  const word = numberAndWord.exec(text);
  const unit = word === null ? undefined : meantUnit(word[3]!);
  if (word !== null && unit !== undefined && units.get(word[3]!) === undefined) {
    const why = word[3]!.startsWith('%') ? 'One % is enough' : `“${word[3]}” is no unit; “${unit}” is`;
    return cured(word, 'missing-unit', amount(word[2]!, unit), why);
  }
  if (word !== null && /^\d+$/.test(word[2]!) && dozens.test(word[3]!))
    return cured(
      word,
      'missing-unit',
      amount(String(Number(word[2]) * 12), 'pieces'),
      'Dozens are counted in pieces',
    );
  if (word !== null && countsBreads && breads.test(word[3]!))
    return cured(word, 'missing-unit', amount(word[2]!, 'pieces'), `“${word[3]}” is no unit; “pieces” is`);
  const open = openPoint.exec(text);
  const openUnit = open === null ? undefined : meantUnit(open[3]!);
  if (open !== null && openUnit !== undefined)
    return cured(open, 'no-amount', amount(`0.${open[2]}`, openUnit), 'A figure stands before the point');
  const bare = barePoint.exec(text);
  const bareUnit = bare === null ? undefined : meantUnit(bare[3]!);
  if (bare !== null && bareUnit !== undefined)
    return cured(bare, 'no-amount', amount(bare[2]!, bareUnit), 'No point stands where no figure follows it');
  // Half typed: `fresh yeast 1.` and `wholemeal wheat bal`.
  const figure = openFigure.exec(text);
  if (figure !== null) {
    const message = `“${figure[1]}” is not finished. Write the amount with its unit, as in ${figure[1]}5% or 20 g.`;
    return { start: at(figure).start, problem: problem('missing-amount', message, at(figure)) };
  }
  const begun = begunBalance.exec(text);
  if (begun !== null) return cured(begun, 'missing-amount', 'balance', `“${begun[1]}” is not finished`);
  const balance = rest.exec(text);
  if (balance !== null)
    return cured(
      balance,
      'no-amount',
      'balance',
      `“${balance[1]}” is no amount; what is left of 100% flour is`,
    );
  const vague = anyWeight.exec(text);
  if (vague !== null) {
    const message = `“${vague[1]}” can be any weight. Write what it weighs, as in 2 g.`;
    return { start: at(vague).start, problem: problem('no-amount', message, at(vague)) };
  }
  const open2 = noFigure.exec(text);
  if (open2 === null) return undefined;
  const message = `“${open2[1]}” is no amount. Write how much it usually is, as in 2% or 20 g.`;
  return { start: at(open2).start, problem: problem('no-amount', message, at(open2)) };
}
