import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { problem, writeFix } from './problem.ts';
import type { Property } from './shared-properties.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import type { Value } from './tree.ts';

/** Values that read well and cannot be: a share above the whole, a time or weight below nothing. */
export function wrongSize(value: Value, property: Property, span: Span): SyntaxProblem | undefined {
  if (value.form === 'temperature' && value.celsius > warmest && isOfTheHouse.has(property.word)) {
    const meant = `${Number(value.celsius.toFixed(1))} °F`;
    const said = message('wrong-value.fahrenheit', { property: property.word, meant });
    return problem('wrong-value', said, span, writeFix(span, meant, true));
  }
  if (value.form === 'yieldPieces' && value.grams > 0) {
    const meant = meantGrams(value.grams);
    if (meant !== undefined) {
      const written = `${value.count} pieces of ${meant} g${value.baked ? ' baked' : ''}`;
      const code =
        meant < value.grams ? ('wrong-value.piece-too-heavy' as const) : 'wrong-value.piece-too-light';
      const said = message(code, { meant: `${meant} g` });
      return problem('wrong-value', said, span, writeFix(span, written, true));
    }
  }
  const number = sizeOf(value);
  if (number === undefined) return undefined;
  const word = { property: property.word };
  if (number < 0) return problem('wrong-value', message('wrong-value.negative', word), span);
  if (number === 0 && isNeverNothing(value, property))
    return problem('wrong-value', message('wrong-value.zero', word), span);
  if (property.form === 'headcount' && !Number.isInteger(number))
    return problem('wrong-value', message('wrong-value.not-whole', { example: property.example }), span);
  if (value.form === 'massRange' && (value.leastGrams ?? 0) > value.mostGrams)
    return problem('wrong-value', message('wrong-value.least-first', { example: property.example }), span);
  const share = property.form === 'percent' || property.form === 'shareAt' || property.form === 'draws';
  if (share && property.word !== 'ripe culture' && number > 1) {
    return problem('wrong-value', message('wrong-value.above-all', word), span);
  }
  if (losses.has(property.word) && number >= 1) {
    return problem('wrong-value', message('wrong-value.nothing-left', word), span);
  }
  return undefined;
}

/** Between these, grams, lies all that is divided and baked in one piece: a slip of the unit is a thousand times off. */
const lightest = 1;
const heaviest = 50_000;

function meantGrams(grams: number): number | undefined {
  if (grams >= lightest && grams <= heaviest) return undefined;
  const meant = Number((grams < lightest ? grams * 1000 : grams / 1000).toPrecision(6));
  return meant >= lightest && meant <= heaviest ? meant : undefined;
}

/** No room, store or dough is that warm, °C: degrees of the other kind were meant. */
const warmest = 60;
const isOfTheHouse: ReadonlySet<string> = new Set(['dough temperature', 'room', 'flour', 'tap water']);

function isNeverNothing(value: Value, property: Property): boolean {
  return (
    value.form.startsWith('yield') || value.form === 'machineSpeed' || mustBeSomething.has(property.word)
  );
}

/** Of a whole that must not be lost whole. */
const losses: ReadonlySet<string> = new Set(['loss', 'bake loss', 'cooking loss']);

const mustBeSomething: ReadonlySet<string> = new Set([
  'scale step',
  'cup',
  'oven',
  'oven load',
  'people',
  'bowl',
  'settles',
  'density',
  'piece weight',
]);

/** The number that may not be below nothing. */
function sizeOf(value: Value): number | undefined {
  switch (value.form) {
    case 'mass':
    case 'yieldMass':
    case 'yieldFlour':
      return value.grams;
    case 'yieldPieces':
      return Math.min(value.grams, value.count);
    case 'massRange':
      return Math.min(value.leastGrams ?? value.mostGrams, value.mostGrams);
    case 'volume':
      return value.millilitres;
    case 'count':
      return value.count;
    case 'duration':
    case 'mixSpeed':
    case 'reading':
      return value.seconds;
    case 'fraction':
    case 'draws':
      return value.fraction;
    case 'times':
      return value.factor;
    case 'energy':
      return value.kilojoules;
    case 'density':
      return value.gramsPerMillilitre;
    case 'price':
      return value.amount;
    case 'machineSpeed':
      return Math.min(
        value.rpm,
        ...[value.develops, value.withinPerMinute, value.developsWithin].map((one) => one ?? value.rpm),
      );
    default:
      return undefined;
  }
}
