import { describe, expect, it } from 'vitest';
import { money, moneyApart } from '../../core/features/cost-words.ts';

describe('money', () => {
  it('stands to the cent, and never as nothing where it is something', () => {
    expect([0, 0.004, 0.0099, 0.01, 0.0834, 4.854, 1234.5].map((amount) => money(amount, 'EUR'))).toEqual([
      '0.00 EUR',
      'less than 0.01 EUR',
      'less than 0.01 EUR',
      '0.01 EUR',
      '0.08 EUR',
      '4.85 EUR',
      '1234.50 EUR',
    ]);
  });

  it('differs by what the figures shown differ by', () => {
    // 4.854 and 4.86106 differ by 0.00706, and read 4.85 and 4.86.
    expect(moneyApart(4.854, 4.861_06, 'EUR')).toBe('0.01 EUR');
    expect(moneyApart(5, 4.5, 'EUR')).toBe('0.50 EUR');
  });
});
