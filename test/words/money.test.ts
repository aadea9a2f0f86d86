import { describe, expect, it } from 'vitest';
import { german } from '../../core/words/de/german.ts';
import { plainSpeaker, speakerOf } from '../../core/words/speak.ts';

const asRead = speakerOf(german, { mass: 'grams', temperature: 'celsius', decimalSign: 'comma' });

describe('money', () => {
  it('stands to the cent, and never as nothing where it is something', () => {
    const amounts = [0, 0.004, 0.0099, 0.01, 0.0834, 4.854, 1234.5];
    expect(amounts.map((amount) => plainSpeaker.money(amount, 'EUR'))).toEqual([
      '0.00 EUR',
      'less than 0.01 EUR',
      'less than 0.01 EUR',
      '0.01 EUR',
      '0.08 EUR',
      '4.85 EUR',
      '1234.50 EUR',
    ]);
    expect(asRead.money(0.004, 'EUR')).toBe('weniger als 0,01 EUR');
  });

  it('differs by what the figures shown differ by', () => {
    // 4.854 and 4.86106 differ by 0.00706, and read 4.85 and 4.86.
    expect(plainSpeaker.moneyApart(4.854, 4.861_06, 'EUR')).toBe('0.01 EUR');
    expect(plainSpeaker.moneyApart(5, 4.5, 'EUR')).toBe('0.50 EUR');
    expect(plainSpeaker.moneyApart(4.851, 4.854, 'EUR')).toBeUndefined();
  });
});

describe('a figure of a label', () => {
  it('has exactly the places it is printed with, and the decimal sign of the reader', () => {
    expect([plainSpeaker.printed(1, 1), asRead.printed(1, 1), asRead.printed(0.31, 2)]).toEqual([
      '1.0',
      '1,0',
      '0,31',
    ]);
  });
});

describe('a weight that nobody weighs', () => {
  it('is said to be below one in the words of the reader', () => {
    expect([plainSpeaker.mass(0.01), asRead.mass(0.01)]).toEqual(['less than 0.05 g', 'weniger als 0,05 g']);
  });
});
