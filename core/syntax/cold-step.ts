import type { IToken } from 'chevrotain';
import { elementAt, firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import type { KnownStep } from './known-step.ts';
import { insertFix, problem, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { LineRead } from './tree.ts';

/** A cold store as food hygiene wants it; common practice, no source. */
export const usualColdStoreCelsius = 5;
/** A freezer as food hygiene wants it; common practice, no source. */
const usualFreezerCelsius = -18;

const cold: ReadonlyMap<string, number> = new Map([
  ...'fridge refrigerator retarder cooler coldroom cold chiller refrigerated chilled refrigerate chill walk-in'
    .split(' ')
    .map((word) => [word, usualColdStoreCelsius] as const),
  ...'freezer freeze'.split(' ').map((word) => [word, usualFreezerCelsius] as const),
]);

/**
 * A step that is kept cold and gives no temperature, `proof 12 h in the fridge`, `retard 14 h`, `30 min in the freezer`: it is taken to be a
 * usual cold store or freezer, for the temperature of the room would have the dough rise in an hour. That is told, with the fix that
 * writes it. An oven says its own: `bake 30 min from cold`.
 */
export function coldWithoutDegrees(
  head: readonly IToken[],
  known: KnownStep | undefined,
): { readonly celsius: number; readonly problem: SyntaxProblem } | undefined {
  const at = head.findIndex(
    ({ image }, index) => cold.has(image.toLowerCase()) || (index === 0 && /^retard$/i.test(image)),
  );
  const time = head.findIndex((token) => t.quantityOf(token)?.kind === 'duration');
  if (at < 0 || time < 0 || known?.step === 'bake' || known?.step === 'boil') return undefined;
  const token = elementAt(head, at);
  const celsius = cold.get(token.image.toLowerCase()) ?? usualColdStoreCelsius;
  const meant = `at ${celsius} °C`;
  const said = message('cold-without-degrees.taken', { written: token.image, celsius });
  const found = problem(
    'cold-without-degrees',
    said,
    { start: token.startOffset, end: t.endOf(token) },
    insertFix(message('fix.write', { meant }), t.endOf(elementAt(head, time)), ` ${meant}`, true),
  );
  return { celsius, problem: found };
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

/** `ferment overnight at 21 °C` of a part, whose night needs its hours too. */
export function readNightOfPart(tokens: readonly IToken[]): LineRead | undefined {
  if (!/^(?:ferment|soak|hold|ripen|stand|rest|leave)$/i.test(firstOf(tokens).image)) return undefined;
  if (
    tokens.some((token) => ['fraction', 'mass', 'volume', 'count'].includes(t.quantityOf(token)?.kind ?? ''))
  )
    return undefined;
  const night = overnight(tokens, usualColdStoreCelsius);
  return night === undefined ? undefined : { statement: { kind: 'unreadable' }, problems: [night] };
}
