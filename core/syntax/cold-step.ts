import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import { message } from '../words/message.ts';
import type { KnownStep } from './known-step.ts';
import { insertFix, problem } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';

/** A cold store as food hygiene wants it; common practice, no source. */
export const usualColdStoreCelsius = 5;

const cold = /^(?:fridge|refrigerator|retarder|cooler|cold|chiller|refrigerated|chilled)$/i;

/**
 * A step that is kept cold and gives no temperature, `proof 12 h in the fridge`, `retard 14 h`: it is taken to be a usual cold store, for the
 * temperature of the room would have the dough rise in an hour. That is told, with the fix that writes it.
 */
export function coldWithoutDegrees(
  tokens: readonly IToken[],
  known: KnownStep | undefined,
): SyntaxProblem | undefined {
  const at = known?.step === 'retard' ? 0 : tokens.findIndex(({ image }) => cold.test(image));
  const time = tokens.findIndex((token) => t.quantityOf(token)?.kind === 'duration');
  if (at < 0 || time < 0) return undefined;
  const token = elementAt(tokens, at);
  const meant = `at ${usualColdStoreCelsius} °C`;
  const said = message('cold-without-degrees.taken', {
    written: token.image,
    celsius: usualColdStoreCelsius,
  });
  return problem(
    'cold-without-degrees',
    said,
    { start: token.startOffset, end: t.endOf(token) },
    insertFix(message('fix.write', { meant }), t.endOf(elementAt(tokens, time)), ` ${meant}`, true),
  );
}
