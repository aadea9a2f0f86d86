import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  costOf,
  costOfPortion,
  currencyOf,
  type Price,
  type PricedPortion,
} from '../../core/calc/product/cost.ts';

const perKilogram = (amount: number, currency = 'EUR'): Price => ({
  amount,
  currency,
  per: { measure: 'mass', grams: 1000 },
});
const portion = (name: string, grams: number, more: Partial<PricedPortion> = {}): PricedPortion => ({
  name,
  grams,
  isWater: false,
  ...more,
});

describe('a portion', () => {
  // Plain arithmetic of prices: common practice, no source.
  test.each<[string, PricedPortion, number]>([
    ['by weight', portion('flour', 2500, { price: perKilogram(0.8) }), 2],
    [
      'by the sack',
      portion('flour', 5000, {
        price: { amount: 16.5, currency: 'EUR', per: { measure: 'mass', grams: 25_000 } },
      }),
      3.3,
    ],
    [
      'by volume',
      portion('oil', 915, {
        price: { amount: 6, currency: 'EUR', per: { measure: 'volume', millilitres: 1000 } },
        densityGramsPerMillilitre: 0.915,
      }),
      6,
    ],
    [
      'by the piece',
      portion('egg', 250, {
        price: { amount: 0.3, currency: 'EUR', per: { measure: 'count', count: 1 } },
        pieceGrams: 50,
      }),
      1.5,
    ],
  ])('priced %s', (_, one, amount) => {
    const cost = costOfPortion(one);
    expect(cost.known && cost.value).toBeCloseTo(amount, 9);
  });

  test.each<[PricedPortion, string]>([
    [portion('salt', 20), 'cost.no-price'],
    [
      portion('oil', 20, {
        price: { amount: 6, currency: 'EUR', per: { measure: 'volume', millilitres: 1000 } },
      }),
      'cost.no-density',
    ],
    [
      portion('egg', 20, { price: { amount: 6, currency: 'EUR', per: { measure: 'count', count: 30 } } }),
      'cost.no-piece-weight',
    ],
    [{ name: 'flour', isWater: false, price: perKilogram(1) }, 'cost.amount-not-known'],
    [
      portion('flour', 20, { price: { amount: 6, currency: 'EUR', per: { measure: 'mass', grams: 0 } } }),
      'cost.for-nothing',
    ],
  ])('%j says why it has no cost', (one, reason) => {
    const cost = costOfPortion(one);
    expect(cost.known ? '' : cost.reason.code).toBe(reason);
  });
});

describe('several portions', () => {
  test('a missing price leaves no sum, and is never nothing', () => {
    const sum = costOf([portion('flour', 1000, { price: perKilogram(0.8) }), portion('salt', 20)]);
    expect(sum.amount).toBeUndefined();
    expect([sum.atLeast, sum.missing]).toEqual([0.8, ['salt']]);
    expect(sum.lines[1]).toEqual({
      name: 'salt',
      grams: 20,
      reason: { code: 'cost.no-price', args: { name: 'salt' } },
    });
  });

  test('water without a price is not charged, and that is said', () => {
    const sum = costOf([
      portion('flour', 1000, { price: perKilogram(0.8) }),
      portion('water', 600, { isWater: true }),
    ]);
    expect([sum.amount, sum.missing, sum.waterFree]).toEqual([0.8, [], true]);
  });

  test('one currency, or a reason', () => {
    const euro = portion('flour', 1, { price: perKilogram(1) });
    const dollar = portion('pecans', 1, { price: perKilogram(1, 'USD') });
    expect(currencyOf([euro, portion('salt', 1)])).toMatchObject({ known: true, value: 'EUR' });
    const two = currencyOf([euro, dollar]);
    expect(two.known ? '' : two.reason).toEqual({
      code: 'cost.two-currencies',
      args: { currency: 'EUR', name: 'flour', otherCurrency: 'USD', otherName: 'pecans' },
    });
    expect(currencyOf([portion('salt', 1)]).known).toBe(false);
  });

  test('the sum is that of its lines, twice the weight costs twice, and nothing is NaN', () => {
    const amount = fc.double({ min: 0, max: 1000, noNaN: true });
    const portions = fc.array(
      fc.record({ grams: amount, price: fc.option(amount, { nil: undefined }), isWater: fc.boolean() }),
    );
    fc.assert(
      fc.property(portions, (all) => {
        const at = (times: number) =>
          costOf(
            all.map(({ grams, price, isWater }, index) =>
              portion(`i${index}`, grams * times, {
                isWater,
                ...(price === undefined ? {} : { price: perKilogram(price) }),
              }),
            ),
          );
        const [one, two] = [at(1), at(2)];
        expect(Number.isFinite(one.atLeast)).toBe(true);
        expect(two.atLeast).toBeCloseTo(one.atLeast * 2, 6);
        expect(one.lines.reduce((sum, line) => sum + (line.amount ?? 0), 0)).toBeCloseTo(one.atLeast, 9);
        expect(one.amount === undefined).toBe(all.some((row) => row.price === undefined && !row.isWater));
      }),
    );
  });
});
