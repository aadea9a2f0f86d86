import { mass, percent, trimmed } from '../text/plain-figures.ts';
import type { Change, Told } from './comparison.ts';

/** The figure of a value by the unit in its name. */
type Unit = 'fraction' | 'grams' | 'celsius' | 'minutes' | 'pieces' | 'amount';

export const notKnown: Told = { text: 'not known' };

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
  name: string,
  unit: Unit,
  before: number | undefined,
  after: number | undefined,
  words: (value: number) => string,
  apart: (before: number, after: number) => string = (one, other) => words(Math.abs(other - one)),
): Change[] {
  if (!differs(before, after)) return [];
  const told = (value: number | undefined): Told =>
    value === undefined ? notKnown : { text: words(value), [unit]: value };
  const [one, other] = [told(before), told(after)];
  if (one.text === other.text) return [];
  const by = before === undefined || after === undefined ? undefined : difference(before, after, apart);
  return [{ name, before: one, after: other, ...(by === undefined ? {} : { by }) }];
}

/** The change of an ingredient: its percentage with as many places as show it, the weight beside. */
export function changeOfShare(
  name: string,
  before: { readonly fraction?: number; readonly grams?: number } | undefined,
  after: { readonly fraction?: number; readonly grams?: number } | undefined,
): Change[] {
  const shared = before?.fraction !== undefined && after?.fraction !== undefined;
  const key = shared ? 'fraction' : 'grams';
  if (before !== undefined && after !== undefined && !differs(before[key], after[key])) return [];
  const coarse = [before, after].map((one) => one?.fraction).map((one) => one !== undefined && percent(one));
  const words = coarse[0] === coarse[1] ? finePercent : percent;
  const told = (one: typeof before): Told | undefined => {
    if (one === undefined) return undefined;
    const { fraction, grams } = one;
    const weight = grams === undefined ? undefined : mass(grams);
    if (fraction === undefined)
      return weight === undefined ? notKnown : { text: weight, ...(grams === undefined ? {} : { grams }) };
    return {
      text: words(fraction),
      fraction,
      ...(weight === undefined ? {} : { beside: weight }),
      ...(grams === undefined ? {} : { grams }),
    };
  };
  const [one, other] = [told(before), told(after)];
  return [
    {
      name,
      ...(one === undefined ? {} : { before: one }),
      ...(other === undefined ? {} : { after: other }),
      ...(shared
        ? { by: difference(before.fraction!, after.fraction!, (a, b) => words(Math.abs(b - a))) }
        : {}),
    },
  ];
}

function difference(before: number, after: number, apart: (before: number, after: number) => string): string {
  return `${after > before ? '+' : '−'}${apart(before, after)}`;
}

function finePercent(fraction: number): string {
  return `${trimmed(fraction * 100, 5)}%`;
}
