import { expect, it } from 'vitest';
import { readNumber } from '../../core/syntax/quantity.ts';

// What a sign of a fraction comes to is what Unicode takes it apart into: ⅗ is 3⁄5 (compatibility decomposition, UAX 15).
const signs = [...'½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'];

it.each(signs)('%s is what Unicode takes it apart into', (sign) => {
  const [top, bottom] = sign.normalize('NFKD').split('\u2044').map(Number);
  expect(readNumber(sign)).toBeCloseTo(top! / bottom!, 12);
  expect(readNumber(`2${sign}`)).toBeCloseTo(2 + top! / bottom!, 12);
});
