import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heatOfHydration } from '../../core/calc/formula/composition.ts';
import {
  capacityShares,
  doughTemperature,
  frictionFactor,
  frictionFromRise,
  type HeatInput,
  mixedCelsius,
  riseFromFriction,
  ruleOfThumb,
  ruleOfThumbWater,
  waterTemperature,
} from '../../core/calc/heat/heat.ts';
import { pureWater } from '../../core/calc/heat/heat-content.ts';
import { iceByRule, iceFor, virtualWaterCelsius } from '../../core/calc/heat/ice.ts';
import { inWords } from '../words/told.ts';
import { breadFlour, item, salt, water } from './mixing-fixture.ts';

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

describe('rule of thumb', () => {
  test.each([
    // Cook's Illustrated, how_tos/5818: 75·4 − 71·3 − 20 °F.
    [75, [71, 71, 71], 20, 67],
    // San Francisco Baking Institute hand-out, farine-mc.blogspot.com.
    [75, [65, 65], 8, 87],
    // bradnor wiki after Hamelman, °C.
    [24.5, [20, 20], 14, 19.5],
    // The same page’s four-factor column prints 17.5, an arithmetic slip; the right value is 22.0.
    [24.5, [20, 20, 22], 14, 22],
    // T. Lehmann, Pizza Today, June 2018.
    [80, [65, 75], 35, 65],
  ])('dough %d, others %j, friction %d: water %d', (dough, others, friction, expected) => {
    expect(ruleOfThumbWater(dough, others, friction)).toBeCloseTo(expected, 9);
  });

  test('friction is read back from three thermometers', () => {
    // T. Lehmann: definition in PMQ Spring 2003, numbers in Pizza Today June 2018; °F.
    expect(frictionFactor(80, [75, 65, 65])).toBeCloseTo(35, 9);
  });

  test('friction is a difference: 25 °F are 13.9 °C', () => {
    const inCelsius = frictionFactor(celsius(78), [celsius(70), celsius(70), celsius(69)]);
    expect(inCelsius).toBeCloseTo(frictionFactor(78, [70, 70, 69]) / 1.8, 9);
    expect(25 / 1.8).toBeCloseTo(13.9, 1);
  });
});

describe('ice', () => {
  // Koerner Co. Ice Temperature Table, lb of ice per lb of water, °F.
  test.each([
    [32, 0, 0.222],
    [32, -30, 0.43],
    [50, 40, 0.061],
    [60, 50, 0.057],
    [60, 30, 0.172],
    [70, 60, 0.054],
    [70, 40, 0.163],
    [80, 70, 0.052],
    [80, 50, 0.155],
    [80, 0, 0.416],
  ])('tap %d °F, wanted %d °F: %d', (tap, wanted, expected) => {
    expect(Math.abs(iceByRule(1, celsius(tap), celsius(wanted)) - expected)).toBeLessThan(0.003);
    // Our balance takes 333.6 kJ/kg, the table 144 Btu/lb = 334.9; the worst cell differs by no more than this.
    expect(Math.abs(iceFor(1, celsius(tap), celsius(wanted)).iceGrams - expected)).toBeLessThan(0.005);
  });

  test('40 kg from 20 to 10 °C take 4.00 kg', () => {
    // Algebra, from memory: (Tt − Tw)/(Tt + 80) is the Fahrenheit form (Tt − Tw)/(Tt + 112).
    expect(iceByRule(40, 20, 10)).toBeCloseTo(4, 9);
    expect((40 * (68 - 50)) / (68 + 112)).toBeCloseTo(4, 9);
  });

  test('the balance of enthalpies gives 4.003 kg', () => {
    // With 334.6 kJ/kg and 4.186 kJ/(kg·K), the constants of D. Argyriou, whose article prints 4.4 by an error.
    expect(Math.abs(iceFor(40, 20, 10).iceGrams - 4.003)).toBeLessThan(0.003);
  });

  test('the balance and the rule agree to 0.2 % where the water stays liquid', () => {
    for (const [tap, wanted] of [
      [20, 10],
      [25, 5],
      [15, 2],
      [30, 12],
    ] as const) {
      const byBalance = iceFor(1000, tap, wanted).iceGrams;
      expect(Math.abs(byBalance / iceByRule(1000, tap, wanted) - 1)).toBeLessThan(0.002);
    }
  });

  test('none when the tap is cool enough, capped at all of the water', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: -90, max: 60, noNaN: true }),
        (grams, tap, wanted) => {
          const share = iceFor(grams, tap, wanted);
          if (tap <= wanted) expect(share.iceGrams).toBe(0);
          expect(share.iceGrams).toBeLessThanOrEqual(grams);
          expect(share.iceGrams + share.tapGrams).toBeCloseTo(grams, 6);
          if (!share.capped && tap > wanted) {
            expect(virtualWaterCelsius(share.iceGrams, share.tapGrams, tap)).toBeCloseTo(wanted, 6);
          }
        },
      ),
    );
  });
});

describe('heat', () => {
  test('of hydration is 15.1 kJ/kg at 12 % moisture and falls to nothing at 20 %', () => {
    // Sosland Baker's Dictionary: 6.5 Btu/lb of flour at 11–12 % moisture. The zero at 20 % is our choice.
    expect(Math.abs(heatOfHydration(0.12) - 6.5 * 2.326)).toBeLessThan(0.02);
    expect(heatOfHydration(0.2)).toBe(0);
    expect(heatOfHydration(0.3)).toBe(0);
    expect(heatOfHydration(0.16)).toBeCloseTo(7.55, 9);
  });

  test('of poured waters', () => {
    // qammunity.org/7204734: 0.6 kg at 40 °C and 0.171 kg at 49 °C make 42 °C.
    const mixed = mixedCelsius([
      item('water', 600, 40, water, 'water'),
      item('hot', 171, 49, water, 'water'),
    ]);
    expect(Math.abs(mixed - 42)).toBeLessThan(0.005);
  });

  test('of ice laid in at 0 °C is that of the ice the balance asks for', () => {
    const share = iceFor(1000, 20, 8);
    const mixed = mixedCelsius([
      { ...item('ice', share.iceGrams, 0, water, 'other'), frozen: true },
      item('tap water', share.tapGrams, 20, water, 'water'),
    ]);
    expect(mixed).toBeCloseTo(8, 9);
  });

  test('of 15 kJ/kg dough is taken off by water at 4.2 °C', () => {
    // Çengel & Boles, Thermodynamics 8e, problem 5-157: 2 kg flour and 1 kg water, all at 15 °C; 4.23 °C computed,
    // the printed 4.2 °C is from memory. A rise by q stands for those 45 kJ.
    const items = [item('flour', 2000, 15, breadFlour, 'flour')];
    const capacity = 2 * 1.9948 + 4.1761;
    const outcome = waterTemperature({
      items,
      waterGrams: 1000,
      targetCelsius: 15,
      roomCelsius: 15,
      rise: { celsius: 45 / capacity, includesHydration: true },
    });
    expect(outcome.known && Math.abs(outcome.value.waterCelsius - 4.23)).toBeLessThan(0.02);
  });

  test('shares are about 0.42, 0.57 and 0.01 at 65 % hydration', () => {
    const shares = capacityShares([item('flour', 1000, 20, breadFlour, 'flour')], 650, 20);
    expect(shares.flour).toBeCloseTo(0.42, 2);
    expect(shares.water).toBeCloseTo(0.57, 2);
    expect(shares.salt).toBeCloseTo(0.005, 2);
  });

  test('5 °F of water move the dough by about 2 to 3 °F', () => {
    // Pizza Today, June 2018, prints "about 2 °F".
    const dough = (celsiusOfWater: number) => {
      const one = doughTemperature(batch(), celsiusOfWater);
      return one.known ? one.value : Number.NaN;
    };
    const moved = 1.8 * (dough(15 + 5 / 1.8) - dough(15));
    expect(moved).toBeGreaterThan(1.9);
    expect(moved).toBeLessThan(3.1);
  });
});

describe('balance of a batch', () => {
  test('closes: the bill sums to zero, and the dough of the water found is the target', () => {
    fc.assert(
      fc.property(
        temperature,
        temperature,
        temperature,
        fc.double({ min: 0.4, max: 1, noNaN: true }),
        (flour, room, rise, hydration) => {
          const input = {
            ...batch(flour, room, hydration),
            rise: { celsius: rise / 5, includesHydration: false },
          };
          const found = waterTemperature(input);
          if (!found.known) throw new Error(inWords(found.reason));
          const { bill, waterCelsius } = found.value;
          expect(Math.abs(bill.reduce((sum, line) => sum + line.celsius, 0))).toBeLessThan(1e-6);
          expect(Math.abs(bill.reduce((sum, line) => sum + line.kilojoules, 0))).toBeLessThan(1e-6);
          const back = doughTemperature(input, waterCelsius);
          expect(back.known && back.value).toBeCloseTo(input.targetCelsius, 6);
        },
      ),
    );
  });

  test('warmer flour wants colder water, and a warmer target warmer water', () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0.5, max: 10, noNaN: true }), (flour, more) => {
        const at = (input: HeatInput) => {
          const found = waterTemperature(input);
          return found.known ? found.value.waterCelsius : Number.NaN;
        };
        expect(at(batch(flour + more))).toBeLessThan(at(batch(flour)));
        expect(at({ ...batch(flour), targetCelsius: 25 + more })).toBeGreaterThan(at(batch(flour)));
      }),
    );
  });

  test('with water to spare of cold: all is ice, and the dough is warmer than wanted', () => {
    const found = waterTemperature({
      ...batch(60, 35, 0.35),
      targetCelsius: 0,
      rise: { celsius: 14, includesHydration: false },
    });
    expect(found.known && found.value.ice.known && found.value.ice.value.capped).toBe(true);
    expect(found.known && found.value.doughCelsius).toBeGreaterThan(0);
    const sum = found.known ? found.value.bill.reduce((all, line) => all + line.celsius, 0) : Number.NaN;
    expect(Math.abs(sum)).toBeLessThan(1e-6);
  });

  test('frozen butter brings the cold of its ice', () => {
    const butter = { water: 0.16, protein: 0.01, fat: 0.83, carbohydrate: 0, fibre: 0, ash: 0 };
    const dough = (at: number) => {
      const input = batch();
      const one = doughTemperature(
        { ...input, items: [...input.items, item('butter', 300, at, butter, 'other')] },
        15,
      );
      return one.known ? one.value : Number.NaN;
    };
    // 300 g hold 48 g of ice: 16 kJ on top of the cooling, which is some 3 °C of the dough.
    expect(dough(-0.5) - dough(-1.5)).toBeGreaterThan(2);
  });

  test('is unknown with a reason, never NaN', () => {
    const without = waterTemperature({ ...batch(), waterGrams: 0 });
    expect(!without.known && without.reason.code).toBe('heat.no-water');
    const noTarget = waterTemperature({ ...batch(), targetCelsius: Number.NaN });
    expect(noTarget.known).toBe(false);
    const noTap = waterTemperature(batch());
    expect(noTap.known && noTap.value.ice.known).toBe(true);
    const { tapCelsius: _tap, ...untold } = batch();
    const found = waterTemperature(untold);
    expect(found.known && found.value.ice.known).toBe(false);
  });
});

describe('friction factor', () => {
  const shares = { flour: 0.42, water: 0.57, salt: 0.01 };
  const at = { doughCelsius: 25, roomCelsius: 21, flourCelsius: 21, shares };

  test('and the whole rise convert both ways', () => {
    fc.assert(
      fc.property(temperature, temperature, temperature, (friction, room, flour) => {
        const conditions = { ...at, roomCelsius: room, flourCelsius: flour };
        const rise = riseFromFriction(friction, conditions);
        expect(frictionFromRise(rise, conditions)).toBeCloseTo(friction, 9);
      }),
    );
  });

  test('goes there and back with salt as cold as the cellar, which takes its share of the heat', () => {
    const cold = { ...at, saltCelsius: 1 };
    // The mixture of the ingredients is colder by salt’s hundredth of the 20 °C between room and cellar, so the rise is larger by that.
    expect(riseFromFriction(14, cold) - riseFromFriction(14, at)).toBeCloseTo(0.01 * 20, 9);
    expect(frictionFromRise(riseFromFriction(14, cold), cold)).toBeCloseTo(14, 9);
    // By hand: the water at which the rise comes to 25 °C, in the rule of three temperatures.
    const waterCelsius = (25 - 5.1 - 0.42 * 21 - 0.01 * 1) / 0.57;
    expect(frictionFromRise(5.1, cold)).toBeCloseTo(
      3 * 5.1 + 0.26 * 21 + 0.71 * waterCelsius + 0.03 * 1 - 21,
      9,
    );
  });

  test('is the rule of three temperatures', () => {
    const rise = 5.1;
    const waterCelsius = (25 - rise - 0.43 * 21) / 0.57;
    expect(frictionFromRise(rise, at)).toBeCloseTo(frictionFactor(25, [21, 21, waterCelsius]), 9);
  });

  test('of a rise that it holds already is not heated by hydration again', () => {
    const factor = 14;
    const input = batch(21, 21);
    const exact = capacityShares(input.items.slice(0, 1), 650, 20);
    const rise = riseFromFriction(factor, { ...at, shares: exact });
    const found = waterTemperature({
      ...input,
      rise: { celsius: rise, includesHydration: true },
      givenFrictionCelsius: factor,
    });
    if (!found.known) throw new Error(inWords(found.reason));
    expect(found.value.waterCelsius).toBeCloseTo(ruleOfThumbWater(25, [21, 21], factor), 1);
    const rule = ruleOfThumb({ ...input, givenFrictionCelsius: factor });
    expect(rule).toMatchObject({ known: true, value: { waterCelsius: 19, frictionCelsius: factor } });
  });

  test('marks the water by its weakest part: the warming by mixing is our own fit, whatever else is published', () => {
    const found = waterTemperature(batch());
    expect(found).toMatchObject({ known: true, provenance: 'common practice' });
    expect(doughTemperature(batch(), 15)).toMatchObject({ known: true, provenance: 'common practice' });
  });

  test('is told of no batch that ice is weighed into: its cold is in none of the three temperatures', () => {
    const input = batch();
    const ice = { ...item('ice', 100, 0, pureWater, 'other'), frozen: true };
    const found = waterTemperature({ ...input, waterGrams: 550, items: [...input.items, ice] });
    if (!found.known) throw new Error(inWords(found.reason));
    expect(found.value.waterCelsius).toBeGreaterThan(30);
    expect(ruleOfThumb({ ...input, waterGrams: 550, items: [...input.items, ice] }).known).toBe(false);
  });
});

const temperature = fc.double({ min: 2, max: 32, noNaN: true });

function batch(flourCelsius = 21, roomCelsius = 21, hydration = 0.65): HeatInput {
  return {
    items: [
      { ...item('flour', 1000, flourCelsius, breadFlour, 'flour'), dryFlourMoisture: 0.14 },
      item('salt', 20, roomCelsius, salt, 'salt'),
    ],
    waterGrams: 1000 * hydration,
    targetCelsius: 25,
    roomCelsius,
    tapCelsius: 12,
    rise: { celsius: 3, includesHydration: false },
  };
}
