import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import { message } from '../words/message.ts';
import { insertFix, problem } from './problem.ts';
import * as t from './tokens.ts';
import type { SyntaxProblem } from './tree.ts';

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
