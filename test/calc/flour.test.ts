import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  absorptionAt14,
  absorptionAtMoisture,
  atMoisture,
  blendCurve,
  type FlourData,
  fittedAbsorption,
  peakMinutes,
  stabilityMinutes,
} from '../../core/calc/flour/flour.ts';
import { findCatalogue } from '../../core/catalogue/catalogue.ts';
import { strongWhite, wholemeal13 } from './mixing-fixture.ts';

test('spelt that nobody measured takes up what handbooks give for it, not what wheat of its protein would', () => {
  // Handbook range of white spelt 54–60 %, from memory.
  for (const protein of [0.11, 0.14, 0.17]) {
    const white = absorptionAt14({ grain: 'spelt', milling: 'white', protein });
    expect(white.known && white.value).toBeGreaterThan(0.54);
    expect(white.known && white.value).toBeLessThan(0.6);
  }
  const measured = absorptionAt14({ grain: 'spelt', protein: 0.14, absorption: 0.62 });
  expect(measured.known && measured.value).toBe(0.62);
});

describe('moisture basis', () => {
  test.each([
    // Canadian Grain Commission, Quality of western Canadian wheat 2014, CPSR No. 1.
    [12.1, 13.5, 0, 14.0, 0.06],
    // Canadian Grain Commission, Quality of western Canadian wheat exports 2020.
    [14.0, 13.5, 0, 16.2, 0.06],
    // King Arthur Flour Guide, P14 = P·86/(100 − M), on USDA 20081.
    [10.33, 11.92, 14, 10.086, 0.002],
  ])('%d %% protein at %d %% moisture is, at %d %%, %d %%', (protein, from, to, expected, tolerance) => {
    expect(Math.abs(100 * atMoisture(protein / 100, from / 100, to / 100) - expected)).toBeLessThan(
      tolerance,
    );
  });

  test('absorption at the farinograph’s own moisture is unchanged, and wetter flour takes less', () => {
    expect(absorptionAtMoisture(0.62, 0.14)).toBeCloseTo(0.62, 12);
    expect(absorptionAtMoisture(0.62, 0.155)).toBeLessThan(0.62);
    // Equal dry matter, equal water in all: 86 g dry and 76 g water.
    const asIs = absorptionAtMoisture(0.62, 0.1);
    expect((0.1 + asIs) / 0.9).toBeCloseTo((0.14 + 0.62) / 0.86, 12);
  });
});

describe('absorption', () => {
  // Canadian Grain Commission, Quality of western Canadian wheat: protein (14 %), starch damage, absorption.
  // The fit is our own on 27 such rows; its greatest error is 2.1 points.
  test.each([
    ['2013, CWRS', 12.1, 7.5, 65.2],
    ['2013, CWRS', 13.0, 7.3, 66.3],
    ['2012, CWRS', 12.9, 6.7, 64.0],
    ['2013, Allis-Chalmers mill', 12.1, 9.7, 69.5],
    ['exports 2020, No. 1 CWRS Atlantic', 13.4, 7.3, 64.8],
  ])('%s', (_row, protein, damage, expected) => {
    expect(Math.abs(100 * fittedAbsorption(protein / 100, damage / 100, 0) - expected)).toBeLessThan(2.2);
  });

  test('what the miller gives is believed, what is fitted says so', () => {
    const given = absorptionAt14({ grain: 'wheat', absorption: 0.625 });
    expect(given).toEqual({ known: true, value: 0.625, provenance: 'given' });
    const fitted = absorptionAt14(strongWhite);
    expect(fitted.known && fitted.provenance).toBe('common practice');
    const published = peakMinutes({ ...strongWhite, peakMinutes: 7, provenance: 'published' });
    expect(published.known && published.provenance).toBe('published');
  });

  test('wholemeal takes six points more', () => {
    const white = absorptionAt14(strongWhite);
    const whole = absorptionAt14(wholemeal13);
    expect(white.known && whole.known && whole.value - white.value).toBeCloseTo(0.06, 12);
  });

  test('rye has none, with a reason', () => {
    const rye = absorptionAt14({ grain: 'rye', protein: 0.1 });
    expect(rye.known).toBe(false);
    expect(rye).toMatchObject({ reason: { code: 'flour.no-network', args: { name: 'rye' } } });
  });
});

describe('peak and stability of white wheat', () => {
  // Common practice, no source.
  test.each([
    [0.08, 1.5, 2],
    [0.09, 1.5, 2],
    [0.115, 4, 8],
    [0.13, 6.5, 15],
    [0.15, 6.5, 15],
  ])('protein %d', (protein, peak, stability) => {
    const flour: FlourData = { grain: 'wheat', milling: 'white', protein };
    expect(peakMinutes(flour)).toMatchObject({ known: true, value: expect.closeTo(peak, 9) });
    expect(stabilityMinutes(flour)).toMatchObject({ known: true, value: expect.closeTo(stability, 9) });
  });
});

describe('blends', () => {
  const rye: FlourData = { grain: 'rye', milling: 'medium', protein: 0.1 };

  test('are weighted by mass over the wheat', () => {
    const curve = blendCurve([
      { grams: 300, flour: { ...strongWhite, absorption: 0.6, peakMinutes: 4, stabilityMinutes: 8 } },
      { grams: 100, flour: { ...strongWhite, absorption: 0.68, peakMinutes: 8, stabilityMinutes: 4 } },
      { grams: 100, flour: rye },
    ]);
    expect(curve.known && curve.value).toMatchObject({
      absorptionAt14: { known: true, value: expect.closeTo(0.62, 12) },
      peakMinutes: { known: true, value: expect.closeTo(5, 12) },
      stabilityMinutes: { known: true, value: expect.closeTo(7, 12) },
      shareWithoutNetwork: expect.closeTo(0.2, 12),
    });
  });

  test('have no curve above 40 % rye, but at 40 % they have', () => {
    const blend = (grams: number) =>
      blendCurve([
        { grams, flour: rye },
        { grams: 100 - grams, flour: strongWhite },
      ]);
    expect(blend(40).known).toBe(true);
    expect(blend(41).known).toBe(false);
    expect(blendCurve([{ grams: 1, flour: { grain: 'rice' } }]).known).toBe(false);
    expect(blendCurve([]).known).toBe(false);
  });

  test('of flour that nobody described still have an answer, with wide bands and the reason', () => {
    const curve = blendCurve([{ grams: 1000, flour: { grain: 'wheat' } }]);
    expect(curve.known && curve.value.band).toBe(0.4);
    expect(curve.known && curve.value.notes).toContainEqual({
      code: 'flour.protein-assumed',
      args: { fraction: 0.115 },
    });
    expect(curve.known && curve.value.peakMinutes).toMatchObject({ known: true, value: 4 });
  });

  test('say that a protein outside the fit is extrapolated', () => {
    const notes = (protein: number) => {
      const curve = blendCurve([{ grams: 1, flour: { grain: 'wheat', protein } }]);
      return curve.known ? curve.value.notes.map(({ code }) => code) : [];
    };
    expect(notes(0.09)).toContain('flour.extrapolated');
    expect(notes(0.12)).not.toContain('flour.extrapolated');
  });

  test('of the catalogue’s flours are all told or refused, never NaN', () => {
    for (const name of [
      'bread flour',
      'plain flour',
      'wholemeal wheat',
      'wholemeal spelt',
      'semolina',
      'khorasan',
    ]) {
      const flour = findCatalogue(name)?.flour;
      const curve = blendCurve([{ grams: 1, flour: flour! }]);
      expect(curve.known && curve.value.peakMinutes.known && curve.value.absorptionAsIs.known, name).toBe(
        true,
      );
    }
  });

  test('are never NaN whatever the numbers', () => {
    const number = fc.oneof(fc.double(), fc.double({ min: 0, max: 1, noNaN: true }));
    fc.assert(
      fc.property(
        number,
        number,
        number,
        fc.constantFrom('wheat', 'rye', 'spelt', ''),
        (a, b, grams, grain) => {
          const curve = blendCurve([
            { grams, flour: { grain, protein: a, moisture: b, absorption: b, peakMinutes: a } },
            { grams: 100, flour: strongWhite },
          ]);
          if (!curve.known) return curve.reason.code.startsWith('flour.');
          const { absorptionAsIs, peakMinutes: peak, stabilityMinutes: stability } = curve.value;
          return [absorptionAsIs, peak, stability].every((one) => !one.known || Number.isFinite(one.value));
        },
      ),
    );
  });
});
