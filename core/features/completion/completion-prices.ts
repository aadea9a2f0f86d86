import { propertiesOf, saidValue } from '../../model/properties.ts';
import type { Scope } from '../../model/scope.ts';
import { type Asked, type LineCompletion, make } from './completion-place.ts';

/** Where nobody has said what is paid with. */
const usualCurrency = 'EUR';
const measures = ['kg', '25 kg', 'l', 'piece'];

/** What may come behind the number of a price: the money of the bakery, for what is bought. */
export function prices(asked: Asked): LineCompletion[] {
  const { before, scope, text, column } = asked;
  const begun = /\s\d+(?:[.,]\d+)?(\s*)([^\s\d]\D*)?$/.exec(before);
  if (begun === null) return [];
  const [, blank, words = ''] = begun;
  if (words === '' && /^\s*[A-Z]{3}\s/.test(text.slice(column))) return [];
  return measures.map((measure, index) => {
    const label = `${currencyOf(scope)} per ${measure}`;
    return make(asked, label, 'unit', {
      start: before.length - words.length,
      insert: blank === '' ? ` ${label}` : label,
      sort: String(index),
    });
  });
}

function currencyOf(scope: Scope): string {
  const bakery = scope.nearest('bakery');
  if (bakery === undefined) return usualCurrency;
  const said = propertiesOf(bakery.block, bakery.block.top!);
  return saidValue(said, 'currency', 'word')?.word.toUpperCase() ?? usualCurrency;
}
