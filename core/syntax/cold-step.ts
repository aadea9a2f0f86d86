import type { IToken } from 'chevrotain';
import { elementAt, firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { insertFix, problem, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';

/** A cold store as food hygiene wants it; common practice, no source. */
export const usualColdStoreCelsius = 5;

const cold: ReadonlySet<string> = new Set(
  'fridge refrigerator retarder cooler coldroom cold chiller refrigerated chilled'.split(' '),
);

/**
 * A step that is kept cold and gives no temperature, `proof 12 h in the fridge`, `retard 14 h`: it is taken to be a usual cold store, for the
 * temperature of the room would have the dough rise in an hour. That is told, with the fix that writes it.
 */
export function coldWithoutDegrees(head: readonly IToken[]): SyntaxProblem | undefined {
  const at = head.findIndex(
    ({ image }, index) => cold.has(image.toLowerCase()) || (index === 0 && /^retard$/i.test(image)),
  );
  const time = head.findIndex((token) => t.quantityOf(token)?.kind === 'duration');
  if (at < 0 || time < 0) return undefined;
  const token = elementAt(head, at);
  const meant = `at ${usualColdStoreCelsius} °C`;
  const said = message('cold-without-degrees.taken', {
    written: token.image,
    celsius: usualColdStoreCelsius,
  });
  return problem(
    'cold-without-degrees',
    said,
    { start: token.startOffset, end: t.endOf(token) },
    insertFix(message('fix.write', { meant }), t.endOf(elementAt(head, time)), ` ${meant}`, true),
  );
}

/** A night; common practice, no source. */
const night = '12 h';

/** `retard overnight`: a night is no time that a clock can be set by. */
export function overnight(tokens: readonly IToken[], celsius: number | undefined): SyntaxProblem | undefined {
  const word = tokens.find(({ image }) => /^overnight$/i.test(image));
  if (word === undefined) return undefined;
  const own = { start: word.startOffset, end: t.endOf(word) };
  const cold = tokens.findIndex(({ image }) => /^(?:fridge|refrigerator|cold|cooler|retarder)$/i.test(image));
  const isAlone = tokens.every(
    (token) =>
      token === word || /^(?:in|the|fridge|refrigerator|cooler|retarder|rest|leave)$/i.test(token.image),
  );
  const meant =
    isAlone && cold >= 0 && celsius === undefined ? `retard ${night} at ${usualColdStoreCelsius} °C` : night;
  const span =
    isAlone && cold >= 0 ? { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) } : own;
  const said = message('missing-unit.overnight', { written: word.image, example: meant });
  // How long a night is the baker says: no fix of a whole file writes it.
  return problem('missing-unit', said, own, writeFix(span, meant));
}
