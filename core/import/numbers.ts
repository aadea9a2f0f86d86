import { scanQuantity } from '../syntax/quantity.ts';
import type { Quantity } from '../syntax/tree.ts';
import { groupOf } from '../text/element.ts';
import { trimmed } from '../text/figures.ts';
import type { Delimiter } from './delimited.ts';
import { unitOf } from './table-words.ts';

/** A cell that holds a number, and perhaps its unit; not yet read, for its signs may mean two things. */
export interface NumberCell {
  readonly number: string;
  /** The notation's spelling; absent where the cell has none. */
  readonly unit?: string;
}

const cellPattern =
  /^(?:[~≈]\s*)?([-+−]?(?:\d[\d.,'’ \u00A0\u202F]*)?(?:\d|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+\/\d+))\s*([\p{L}%％]*\.?)$/u;

/** A cell as number and unit, `undefined` where it is anything else. */
export function numberCell(cell: string): NumberCell | undefined {
  // What stands in brackets behind an amount says it in another way.
  const plain = cell.replace(/\s*\([^()]*\)$/, '');
  const two = twoUnits(plain);
  if (two !== undefined) return two;
  const match = cellPattern.exec(plain);
  if (match === null) return undefined;
  const [, number, word] = match;
  if (word === '') return { number: number! };
  const unit = unitOf(word!);
  return unit === undefined ? undefined : { number: number!, unit };
}

/** Pounds and ounces, or kilograms and grams, said together: `5 lb 8 oz` as ounces. */
function twoUnits(cell: string): NumberCell | undefined {
  const match = /^(\d+)\s*(\p{L}+)\.?[\s,]*(\d+(?:[.,]\d{1,2})?)\s*(\p{L}+)\.?$/u.exec(cell);
  if (match === null) return undefined;
  const [large, small] = [unitOf(groupOf(match, 2)), unitOf(groupOf(match, 4))];
  const times = large === 'lb' && small === 'oz' ? 16 : large === 'kg' && small === 'g' ? 1000 : undefined;
  if (times === undefined || small === undefined) return undefined;
  const number = Number(match[1]) * times + Number(groupOf(match, 3).replace(',', '.'));
  return { number: trimmed(number, 2), unit: small };
}

export type DecimalSign = '.' | ',';

/** How the signs in numbers are meant. `sure` where some number can be read in one way only. */
export interface Signs {
  readonly decimal: DecimalSign;
  readonly sure: boolean;
  /** Both signs stand where only a decimal sign can. */
  readonly mixed?: true;
}

/** Which sign parts whole from decimals, from all numbers of a table together. */
export function signsOf(numbers: readonly string[], delimiter: Delimiter): Signs {
  const votes = new Set(numbers.flatMap((number) => decimalIn(number) ?? []));
  if (votes.size > 1) return { decimal: '.', sure: false, mixed: true };
  const [decimal] = votes;
  if (decimal !== undefined) return { decimal, sure: true };
  return { decimal: delimiter === 'semicolon' ? ',' : '.', sure: delimiter === 'comma' };
}

/** The sign that must be the decimal one for a number to make sense, where one must. */
function decimalIn(number: string): DecimalSign | undefined {
  const used = number.match(/[.,]/g) ?? [];
  const last = used.at(-1) as DecimalSign | undefined;
  if (last === undefined) return undefined;
  if (used.some((sign) => sign !== last)) return last;
  if (used.length > 1) return last === '.' ? ',' : '.';
  return /^[-+−]?0[.,]/.test(number) || !/[.,]\d{3}$/.test(number) ? last : undefined;
}

/** Whether a number reads in two ways: one sign, and three digits behind it. */
export function isTwoWays(number: string): boolean {
  return /^[-+−]?[1-9]\d{0,2}[.,]\d{3}$/.test(number);
}

/** The number as the notation writes it: no sign between thousands, a decimal point. */
export function plainNumber(number: string, { decimal, mixed }: Signs): string {
  const own = mixed ? (decimalIn(number) ?? decimal) : decimal;
  const thousands = own === '.' ? ',' : '.';
  return number
    .replaceAll(thousands, '')
    .replace(/['’]/g, '')
    .replace(/(\d)[ \u00A0\u202F](?=\d{3}(?!\d))/g, '$1')
    .replace(own, '.');
}

/** Reads a number with its unit as the notation does; `undefined` where it is no amount. */
export function quantityOf(number: string, unit: string): Quantity | undefined {
  const text = unit === '%' ? `${number}%` : `${number} ${unit}`;
  const quantity = scanQuantity(text, 0, 'speed');
  return quantity?.end === text.length ? quantity : undefined;
}
