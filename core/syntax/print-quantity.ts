import type { Quantity } from './tree.ts';
import { units } from './units.ts';

/**
 * A quantity in its canonical form: its digits as given, a decimal point, one blank before the unit and none before a
 * percent sign, the unit in its usual spelling. What has no single reading stays as it is written.
 */
export function printQuantity(text: string, quantity: Quantity): string {
  switch (quantity.kind) {
    case 'bare':
    case 'date':
    case 'clock':
    case 'range':
    case 'grouped':
    case 'beyond':
      return text;
    case 'duration':
      return [...text.matchAll(durationPart)].map(([, number, unit]) => together(number!, unit!)).join(' ');
    case 'money': {
      const [, currency, measure] = pricePattern.exec(quantity.unit)!;
      let cut = measure!.length;
      while (cut > 0 && unitSign.test(measure!.charAt(cut - 1))) cut--;
      const [number, unit] = [measure!.slice(0, cut).trimEnd(), measure!.slice(cut)];
      const per = number === '' ? unitOf(unit) : together(number, unit);
      return `${numberOf(quantity.number)} ${currency} per ${per}`;
    }
    default:
      return together(quantity.number, quantity.unit);
  }
}

const durationPart = /([^\p{L}\s]+(?:\s[^\p{L}\s]+)?)\s*(\p{L}+)/gu;
const pricePattern = /^([A-Z]{3})\s+per\s+(\S.*)$/u;
const unitSign = /[^\s\d/½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/u;

function together(number: string, unit: string): string {
  const spelled = unitOf(unit);
  return numberOf(number) + (spelled === '%' ? '' : ' ') + spelled;
}

function numberOf(written: string): string {
  return written.replace(',', '.').replace(/\s+/g, ' ');
}

/** Words that may stand in the singular or the plural keep whichever it is. */
const countedWords = /^(?:pieces?|days?|cups?|tonnes?)$/;

function unitOf(written: string): string {
  return countedWords.test(written) ? written : (units.get(written)?.canonical ?? written);
}
