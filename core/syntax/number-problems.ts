import type { IToken } from 'chevrotain';
import { type Message, message } from '../words/message.ts';
import { problem, replaceFix, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { QuantityOf } from './tree.ts';
import { units } from './units.ts';

/** `1.000 g` is one gram where a point is the decimal sign and a kilogram where it parts thousands. */
export function pointProblems(tokens: readonly IToken[]): SyntaxProblem[] {
  return tokens.flatMap((token) => {
    const quantity = t.quantityOf(token);
    if (quantity === undefined || !/^[1-9]\d{0,2}\.\d{3}$/.test(quantity.number)) return [];
    if (!['g', 'ml', 'pieces'].includes(units.get(quantity.unit)?.canonical ?? '')) return [];
    const tail = token.image.slice(quantity.number.length);
    // Where no zero can go, one more shows that the point is a decimal point.
    const shortest = String(Number(quantity.number));
    const one = `${shortest === quantity.number ? `${shortest}0` : shortest}${tail}`;
    const thousand = `${quantity.number.replace('.', '')}${tail}`;
    const read = { written: token.image, meant: one, otherMeant: thousand };
    const fixes = [writeFix(quantity, thousand), writeFix(quantity, one)];
    const said = message('point-or-thousand.read-as', read);
    return [problem('point-or-thousand', said, { start: quantity.start, end: quantity.end }, ...fixes)];
  });
}

/** The message for a number written with marks between its thousands. */
function twoReadings(written: string, readings: readonly string[]): Message {
  return readings.length > 1
    ? message('two-readings.two-ways', { written, choices: readings })
    : message('two-readings.groups', { written, meant: readings[0] ?? written });
}

/** The finding for a range where one value is needed. */
export function rangeProblem(quantity: QuantityOf<'range'>, written: string): SyntaxProblem {
  const span = { start: quantity.start, end: quantity.end };
  const fixes = [quantity.low, quantity.high].map((end) => writeFix(span, end));
  return problem('range', message('range.one-value', { written }), span, ...fixes);
}

/** What is said of a character that the notation has no use for, with the fix that takes it out where that helps. */
export function strangeCharacter(token: IToken): SyntaxProblem {
  const span = { start: token.startOffset, end: t.endOf(token) };
  // What a reader of UTF-8 puts in the place of a letter saved in another way.
  if (token.image.startsWith('\ufffd')) {
    return problem('unreadable', message('unreadable.encoding'), span);
  }
  if (/^[\p{C}\p{Z}]/u.test(token.image)) {
    const code = `U+${token.image.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
    const fix = replaceFix(message('fix.take-out'), span, '', true);
    return problem('unreadable', message('unreadable.unseen', { code }), span, fix);
  }
  return problem('unreadable', message('unreadable.character', { written: token.image }), span);
}

/**
 * The finding for `1,000 g` or `1 000 g` where a value stands. Behind a name its first figures may be the name’s, as in `type 550 400 g`:
 * two blanks part them.
 */
export function groupedProblem(
  quantity: QuantityOf<'grouped'>,
  written: string,
  behind?: string,
): SyntaxProblem {
  const span = { start: quantity.start, end: quantity.end };
  const { readings, first, rest } = quantity;
  const [number, second] = readings;
  if (behind === undefined || second === undefined || number === undefined || !/\s/.test(quantity.number))
    return problem(
      'two-readings',
      twoReadings(written, readings),
      span,
      ...readings.map((reading) => writeFix(span, reading)),
    );
  const name = `${behind} ${first}`;
  const said = message('two-readings.or-name', { written, meant: number, name, example: `${name}  ${rest}` });
  const split = replaceFix(message('fix.take-as-name', { name }), span, `${first}  ${rest}`);
  return problem('two-readings', said, span, writeFix(span, number), split);
}

/**
 * The finding for the first number of a line that is beyond what a bakery can mean. What stands in parentheses belongs to a
 * name, whatever it is.
 */
export function beyondProblem(tokens: readonly IToken[]): SyntaxProblem | undefined {
  let depth = 0;
  for (const token of tokens) {
    if (token.tokenType === t.LeftParen) depth++;
    else if (token.tokenType === t.RightParen) depth = Math.max(0, depth - 1);
    const quantity = t.quantityOf(token);
    if (depth > 0 || quantity?.kind !== 'beyond') continue;
    const { least, most } = quantity.limit;
    const written = shortened(token.image);
    const said =
      least === undefined
        ? message('beyond-limit.most', { written, meant: most })
        : message('beyond-limit.between', { written, meant: least, otherMeant: most });
    return problem('beyond-limit', said, { start: quantity.start, end: quantity.end });
  }
  return undefined;
}

/** A number of three hundred digits is told by its first. */
const shortened = (written: string): string => (written.length <= 40 ? written : `${written.slice(0, 24)}…`);
