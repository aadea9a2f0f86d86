import { isDate } from './quantity.ts';

const months = [
  /^jan/i,
  /^feb/i,
  /^(?:mar|mär|mars)/i,
  /^(?:apr|avr)/i,
  /^(?:may|mai)/i,
  /^(?:june?|juin)/i,
  /^(?:july?|juil)/i,
  /^(?:aug|aoû)/i,
  /^sep/i,
  /^(?:oct|okt)/i,
  /^nov/i,
  /^(?:dec|dez|déc)/i,
];
const monthWord =
  '(?:jan|feb|mar|mär|mars|apr|avr|may|mai|june?|juin|july?|juil|aug|aoû|sep|oct|okt|nov|dec|dez|déc)\\p{L}*\\.?';

/** A day as people write it at the begin of a text: where it ends, and as which days of the calendar it can be read, `2026-03-14`. */
export interface WrittenDate {
  readonly end: number;
  readonly days: readonly string[];
}

/**
 * Reads `3 March 2026`, `March 3rd, 2026`, `3.3.2026` and `10/03/2026`, which is a day of March or of October. `undefined` where a text
 * begins with no day, or with one that no calendar has.
 */
export function writtenDate(text: string): WrittenDate | undefined {
  const dayFirst = new RegExp(
    `^(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s*(?:of\\s+)?(${monthWord})\\s*,?\\s*(\\d{4})(?!\\d)`,
    'iu',
  ).exec(text);
  const monthFirst = new RegExp(
    `^(${monthWord})\\s*(\\d{1,2})(?:st|nd|rd|th)?\\s*,?\\s*(\\d{4})(?!\\d)`,
    'iu',
  ).exec(text);
  const figures = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?!\d)/.exec(text);
  const yearFirst = /^(\d{4})[./](\d{1,2})[./](\d{1,2})(?!\d)/.exec(text);
  const found = dayFirst ?? monthFirst ?? figures ?? yearFirst;
  if (found === null) return undefined;
  const [whole, one = '', two = '', three = '', four = ''] = found;
  const named = (day: string, month: string, year: string): string[] =>
    isoDay(Number(year), months.findIndex((word) => word.test(month)) + 1, Number(day));
  const days = (): readonly string[] => {
    if (found === dayFirst) return named(one, two, three);
    if (found === monthFirst) return named(two, one, three);
    if (found === yearFirst) return isoDay(Number(one), Number(two), Number(three));
    const [first, second, year] = [Number(one), Number(three), Number(four)];
    const european = isoDay(year, second, first);
    // With points the day stands first; with a stroke it depends on who writes.
    return two === '.' ? european : [...new Set([...european, ...isoDay(year, first, second)])];
  };
  const read = days();
  return read.length === 0 ? undefined : { end: whole.length, days: read };
}

/** A day as the notation writes it, where the calendar has it. */
function isoDay(year: number, month: number, day: number): string[] {
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return isDate(year, month, day) ? [`${year}-${two(month)}-${two(day)}`] : [];
}
