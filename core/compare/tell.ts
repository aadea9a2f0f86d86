import { percentPlaces, trimmed } from '../text/figures.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Change, Told } from './comparison.ts';

/** The figure of a value by the unit in its name. */
type Unit = 'fraction' | 'grams' | 'celsius' | 'minutes' | 'pieces' | 'amount';

/** A value that is not known. */
export function notKnown(say: Speaker): Told {
  return { text: say.say(message('comparison.not-known')) };
}

/** The change of a value in words; one that is absent is not known. */
export function changeOfWords(
  name: Message,
  before: string | undefined,
  after: string | undefined,
  say: Speaker,
): Change[] {
  if (before === after) return [];
  const told = (text: string | undefined): Told => (text === undefined ? notKnown(say) : { text });
  return [{ name: say.say(name), before: told(before), after: told(after) }];
}

/** Whether two figures differ by more than the last digits of their computation. */
export function differs(before: number | undefined, after: number | undefined): boolean {
  if (before === undefined || after === undefined) return before !== after;
  return Math.abs(before - after) > 1e-6 * Math.max(Math.abs(before), Math.abs(after)) + 1e-12;
}

/**
 * The change of one figure that was computed: told when it differs as it is shown, so that nobody reads `69% → 69%`.
 * `apart` says how far two figures lie apart. A figure that is not known on one side is told as such; one known on neither is no change.
 */
export function changeOfFigure(
  name: Message,
  unit: Unit,
  before: number | undefined,
  after: number | undefined,
  words: (value: number) => string,
  say: Speaker,
  apart: Apart = (one, other) => words(Math.abs(other - one)),
): Change[] {
  if (!differs(before, after)) return [];
  const told = (value: number | undefined): Told =>
    value === undefined ? notKnown(say) : { text: words(value), [unit]: value };
  const [one, other] = [told(before), told(after)];
  if (one.text === other.text) return [];
  const by =
    before === undefined || after === undefined
      ? undefined
      : difference(before, after, [one.text, other.text], say, apart);
  return [{ name: say.say(name), before: one, after: other, ...(by === undefined ? {} : { by }) }];
}

/** A fraction in percent, rounded as it is usually shown. */
function shownPercent(fraction: number): number {
  return Number(trimmed(fraction * 100, percentPlaces(fraction)));
}

/** Whether two fractions as percents are usually shown would hide how far they are apart, or tell it more than a quarter wrong. */
function isTooCoarse(before: number, after: number): boolean {
  const [one, other] = [shownPercent(before), shownPercent(after)];
  const [shown, real] = [Math.abs(other - one), Math.abs(after - before) * 100];
  return Math.abs(shown - real) > 0.25 * real;
}

/** The change of an ingredient: its percentage with as many places as show it, the weight beside. */
export function changeOfShare(
  name: string,
  before: { readonly fraction?: number; readonly grams?: number } | undefined,
  after: { readonly fraction?: number; readonly grams?: number } | undefined,
  say: Speaker,
): Change[] {
  const shared = before?.fraction !== undefined && after?.fraction !== undefined;
  const key = shared ? 'fraction' : 'grams';
  if (before !== undefined && after !== undefined && !differs(before[key], after[key])) return [];
  const fine = (value: number): string => say.percent(value, 5);
  const words =
    shared && isTooCoarse(before.fraction!, after.fraction!) ? fine : (value: number) => say.percent(value);
  const told = (one: typeof before): Told | undefined => {
    if (one === undefined) return undefined;
    const { fraction, grams } = one;
    const weight = grams === undefined ? undefined : say.mass(grams);
    if (fraction === undefined)
      return weight === undefined
        ? notKnown(say)
        : { text: weight, ...(grams === undefined ? {} : { grams }) };
    return {
      text: words(fraction),
      fraction,
      ...(weight === undefined ? {} : { beside: weight }),
      ...(grams === undefined ? {} : { grams }),
    };
  };
  const [one, other] = [told(before), told(after)];
  const by = shared
    ? difference(before.fraction!, after.fraction!, [one!.text, other!.text], say, (a, b) =>
        words(Math.abs(b - a)),
      )
    : undefined;
  return [
    {
      name,
      ...(one === undefined ? {} : { before: one }),
      ...(other === undefined ? {} : { after: other }),
      ...(by === undefined ? {} : { by }),
    },
  ];
}

/**
 * How much more the second is, worked out from the two as they are shown, so that the three figures agree. Of two percents
 * it is points: two tenths of a percent of the flour are not two tenths of the salt. Nothing where `apart` has nothing to say.
 */
function difference(
  before: number,
  after: number,
  told: readonly [string, string],
  say: Speaker,
  apart: Apart,
): string | undefined {
  const [one, other] = told.map(shownFigure);
  if (one === undefined || other === undefined || one.unit !== other.unit) {
    const by = apart(before, after);
    return by === undefined ? undefined : `${after > before ? '+' : '−'}${by}`;
  }
  const places = Math.max(one.places, other.places);
  const by = Math.abs(other.value - one.value).toFixed(places);
  const sign = other.value > one.value ? '+' : '−';
  if (one.unit.endsWith('%')) return `${sign}${say.say(message('comparison.points', { count: Number(by) }))}`;
  const trimmedBy = one.unit === ' g' ? trimmed(Number(by), places) : by;
  return `${sign}${told.some((text) => text.includes(',')) ? trimmedBy.replace('.', ',') : trimmedBy}${one.unit}`;
}

type Apart = (before: number, after: number) => string | undefined;

interface ShownFigure {
  readonly value: number;
  readonly places: number;
  readonly unit: string;
}

/** A figure taken apart again: `9.23 EUR`, `9,23 EUR`. Nothing where it is made of several, as `1 h 30 min` is. */
function shownFigure(text: string): ShownFigure | undefined {
  const match = /^([−-]?\d+(?:[.,](\d+))?)(\D*)$/.exec(text);
  if (match === null) return undefined;
  return {
    value: Number(match[1]!.replace('−', '-').replace(',', '.')),
    places: match[2]?.length ?? 0,
    unit: match[3]!,
  };
}
