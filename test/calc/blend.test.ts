import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BlendFlour, blendFlours } from '../../core/calc/flour/blend.ts';
import type { FlourData } from '../../core/calc/flour/flour.ts';
import { flourMix } from '../../core/calc/flour/flour-mix.ts';
import { findCatalogue } from '../../core/catalogue/catalogue.ts';
import { plainSpeaker } from '../../core/words/speak.ts';

const flour = (protein: number, more: Partial<FlourData> = {}): FlourData => ({
  grain: 'wheat',
  milling: 'white',
  protein: protein / 100,
  moisture: 0.14,
  ash: 0.005,
  ...more,
});
const at = (
  name: string,
  protein: number,
  pricePerKilogram?: number,
  more: Partial<BlendFlour> = {},
): BlendFlour => ({
  name,
  flour: flour(protein),
  ...(pricePerKilogram === undefined ? {} : { pricePerKilogram }),
  ...more,
});

describe('a mix of flours', () => {
  it('counts each flour by its dry matter', () => {
    // King Arthur Flour Guide: P14 = P · 86 / (100 − M). USDA SR27: 20081 has 10.33 % at 11.92 %, 20080 13.21 % at 10.74 %.
    const [plain, wholemeal] = ['plain flour', 'wholemeal wheat'].map((name) => findCatalogue(name)!.flour!);
    const mix = flourMix([
      { name: 'plain', grams: 500, flour: plain! },
      { name: 'wholemeal', grams: 500, flour: wholemeal! },
    ]);
    const dry = 500 * 0.8808 + 500 * 0.8926;
    const protein = 500 * 0.1033 + 500 * 0.1321;
    expect(mix.proteinAt14).toMatchObject({ known: true, value: expect.closeTo((protein / dry) * 0.86, 9) });
    const ash = 500 * 0.0047 + 500 * 0.0158;
    expect(mix.ashOfDry).toMatchObject({ known: true, value: expect.closeTo(ash / dry, 9) });
  });

  it('of one flour is that flour, at whatever moisture its protein is told', () => {
    const told = flour(15, { moisture: 0.12, proteinMoistureBasis: 0 });
    const mix = flourMix([{ name: 'one', grams: 3, flour: told }]);
    expect(mix.proteinAt14).toMatchObject({ value: expect.closeTo(0.15 * 0.86, 9) });
  });

  it('does not know what one of its flours does not tell, and says which', () => {
    const { protein: _, ...bare } = flour(12);
    const mix = flourMix([
      { name: 'known', grams: 1, flour: flour(12) },
      { name: 'sack without a sheet', grams: 1, flour: bare },
    ]);
    expect(mix.proteinAt14).toEqual({
      known: false,
      reason: {
        code: 'flour.of',
        args: { name: 'sack without a sheet', reason: { code: 'flour.no-protein', args: {} } },
      },
    });
  });
});

describe('a blend', () => {
  it('of two flours is what the square of the textbook says', () => {
    // Pearson square, common practice: 14 % and 10 % to 12.5 % is 2.5 parts to 1.5.
    const blend = blendFlours([at('strong', 14, 1), at('soft', 10, 0.6)], {
      proteinAt14: 0.125,
      goal: 'cheapest',
    });
    expect(blend.known && blend.value.shares).toEqual([expect.closeTo(0.625, 9), expect.closeTo(0.375, 9)]);
    expect(blend.known && blend.value.pricePerKilogram).toBeCloseTo(0.625 + 0.375 * 0.6, 9);
  });

  it('is the cheapest of those that do', () => {
    // 13 % at 0.90 costs more than 14 % thinned with 10 %, which comes to 0.875 at 12.5 %.
    const blend = blendFlours([at('strong', 14, 1), at('good', 12.5, 0.9), at('soft', 10, 0.6)], {
      proteinAt14: 0.125,
      goal: 'cheapest',
    });
    expect(blend.known && blend.value.shares[1]).toBeCloseTo(0, 9);
    expect(blend.known && blend.value.pricePerKilogram).toBeCloseTo(0.85, 9);
  });

  it('nearest to what there is changes as little as can be', () => {
    const blend = blendFlours(
      [
        at('strong', 14, undefined, { share: 0.3 }),
        at('soft', 10, undefined, { share: 0.5 }),
        at('rye', 9, undefined, { share: 0.2 }),
      ],
      { proteinAt14: 0.12, goal: 'nearest' },
    );
    expect(blend.known && blend.value.proteinAt14).toBeCloseTo(0.12, 9);
    // Every point of protein costs least change where the weakest gives way: rye to strong.
    expect(blend.known && blend.value.shares[2]).toBeLessThan(0.2);
  });

  it('says how far the flours reach, and what it lacks', () => {
    const weak = blendFlours([at('strong', 12), at('soft', 10)], { proteinAt14: 0.13, goal: 'nearest' });
    const reason = weak.known ? undefined : weak.reason;
    expect(reason?.code).toBe('blend.protein');
    expect(plainSpeaker.say(reason!)).toBe(
      'these flours reach from 10% to 12% of protein at 14% moisture, and 13% is wanted',
    );
    const unpriced = blendFlours([at('strong', 12), at('soft', 10)], { proteinAt14: 0.11, goal: 'cheapest' });
    expect(unpriced).toEqual({
      known: false,
      reason: { code: 'cost.no-price', args: { name: 'strong' } },
    });
  });

  it('keeps its ash, and the shares that are set', () => {
    const dark = { ...at('dark', 14, 0.5), flour: flour(14, { ash: 0.015 }) };
    const blend = blendFlours([dark, at('white', 12, 0.8)], { mostAshOfDry: 0.008, goal: 'cheapest' });
    expect(blend.known && blend.value.ashOfDry).toBeCloseTo(0.008, 9);
    const kept = blendFlours([at('strong', 14, 1, { least: 0.7 }), at('soft', 10, 0.6)], {
      goal: 'cheapest',
    });
    expect(kept.known && kept.value.shares[0]).toBeCloseTo(0.7, 9);
  });

  it('of three flours is no dearer than any found by trying', () => {
    const figure = fc.record({
      protein: fc.integer({ min: 80, max: 150 }),
      price: fc.integer({ min: 30, max: 200 }),
      moisture: fc.integer({ min: 100, max: 150 }),
    });
    fc.assert(
      fc.property(fc.tuple(figure, figure, figure), fc.integer({ min: 90, max: 140 }), (figures, wanted) => {
        const flours = figures.map(({ protein, price, moisture }, index) => ({
          name: `flour ${index}`,
          flour: flour(protein / 10, { moisture: moisture / 1000 }),
          pricePerKilogram: price / 100,
        }));
        const target = wanted / 1000;
        const blend = blendFlours(flours, { proteinAt14: target, goal: 'cheapest' });
        // The best of a line between two flours is the best of all: the corners of what is possible lie there.
        let best = Number.POSITIVE_INFINITY;
        const at14 = flours.map((one) => (one.flour.protein! * 0.86) / (1 - one.flour.moisture!));
        const dry = flours.map((one) => 1 - one.flour.moisture!);
        for (let i = 0; i < 3; i++) {
          for (let j = 0; j < 3; j++) {
            const slope = (at14[i]! - target) * dry[i]! - (at14[j]! - target) * dry[j]!;
            const x = Math.abs(slope) < 1e-12 ? 0 : -((at14[j]! - target) * dry[j]!) / slope;
            const reached = Math.abs(
              x * (at14[i]! - target) * dry[i]! + (1 - x) * (at14[j]! - target) * dry[j]!,
            );
            if (x < -1e-9 || x > 1 + 1e-9 || reached > 1e-9) continue;
            best = Math.min(best, x * flours[i]!.pricePerKilogram + (1 - x) * flours[j]!.pricePerKilogram);
          }
        }
        expect(blend.known).toBe(best < Number.POSITIVE_INFINITY);
        if (!blend.known) return;
        expect(blend.value.pricePerKilogram).toBeCloseTo(best, 6);
        expect(blend.value.proteinAt14).toBeCloseTo(target, 6);
        expect(blend.value.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
      }),
    );
  });
});
