import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Conversion, type ConversionInput, convertProgramme } from '../../core/calc/conversion.ts';
import { blendCurve } from '../../core/calc/flour.ts';
import type { Known } from '../../core/calc/known.ts';
import { developmentRate, type MixerData } from '../../core/calc/mixer.ts';
import type { MixingPhase } from '../../core/calc/mixing-programme.ts';
import {
  hand,
  planetary,
  programme,
  saltPortion,
  spiral,
  strongWhite,
  wholemeal13,
} from './mixing-fixture.ts';

const speed = (number: number, minutes: number): MixingPhase => ({
  kind: 'speed',
  number,
  seconds: 60 * minutes,
});
const rest = (minutes: number): MixingPhase => ({ kind: 'rest', seconds: 60 * minutes });
const knead = (minutes: number): MixingPhase => ({ kind: 'knead', seconds: 60 * minutes });

function told<T>(value: Known<T>): T {
  if (!value.known) throw new Error(value.reason);
  return value.value;
}

function convert(from: MixerData, work: readonly MixingPhase[], to: MixerData, target = 25): Conversion {
  const input: ConversionInput = {
    mixing: programme(strongWhite, 0.65, from, work),
    to,
    targetCelsius: target,
  };
  return told(convertProgramme(input));
}

const worked = ({ mixing }: Conversion): MixingPhase[] =>
  mixing.phases.filter((phase) => !('portions' in phase));

describe('conversion of a programme', () => {
  test('turns 12 min of a spiral at 100 rpm, 1,200 turns, into 8 min by hand', () => {
    // A hook gives rpm/150 slow minutes a minute, hands one (common practice, no source): 12 · 100/150 = 8.
    expect(worked(convert(spiral, [speed(1, 12)], hand))).toEqual([knead(8)]);
  });

  test('turns hand kneading into the slowest speed', () => {
    expect(worked(convert(hand, [knead(8)], spiral))).toEqual([speed(1, 12)]);
    expect(worked(convert(hand, [knead(8)], planetary))).toEqual([speed(1, 8)]);
  });

  test('keeps the number of a speed where the mixer has it, else its highest below', () => {
    const one: MixerData = { kind: 'spiral', speeds: [{ number: 1, rpm: 150 }] };
    const kept = worked(convert(spiral, [speed(1, 3), speed(2, 6)], planetary));
    expect(kept).toEqual([speed(1, 2), speed(2, 8)]);
    expect(worked(convert(spiral, [speed(2, 6)], one))).toEqual([speed(1, 8)]);
  });

  test('leaves rests, additions and folds where they are', () => {
    const add: MixingPhase = { kind: 'add', portions: [saltPortion(10)] };
    const fold: MixingPhase = { kind: 'fold', seconds: 60 };
    const made = convert(spiral, [speed(1, 3), rest(20), add, speed(1, 6), fold], hand);
    expect(made.mixing.phases.slice(2)).toEqual([knead(2), rest(20), add, knead(4), fold]);
    expect(made.converted).toEqual([2, 5]);
  });

  test('makes good in the next stretch what rounding left over', () => {
    const made = convert(spiral, [speed(1, 1), speed(1, 1), speed(1, 1), speed(1, 1)], hand);
    // Each minute gives 2/3 of a slow one: 0.5, 1.5 (nearest to 1.33), 2 and 2.5 by the ends of the stretches.
    expect(worked(made)).toEqual([knead(0.5), knead(1), knead(0.5), knead(0.5)]);
    expect(made.slowMinutesAfter).toBeCloseTo(2.5, 9);
    expect(made.slowMinutesBefore).toBeCloseTo(8 / 3, 9);
  });

  test('gives the same development to within a quarter of a minute at the last speed', () => {
    const minutes = fc.double({ min: 1, max: 25, noNaN: true });
    const any = fc.constantFrom(hand, spiral, planetary);
    fc.assert(
      fc.property(
        any,
        any,
        minutes,
        minutes,
        fc.double({ min: 0.55, max: 0.85, noNaN: true }),
        (from, to, one, two, wet) => {
          const work = from.kind === 'hand' ? [knead(one), knead(two)] : [speed(1, one), speed(2, two)];
          const mixing = programme(strongWhite, wet, from, work);
          const made = told(convertProgramme({ mixing, to, targetCelsius: 25 }));
          const last = made.mixing.phases.at(-1)!;
          const used = to.speeds.find((other) => last.kind === 'speed' && other.number === last.number);
          const rate = told(developmentRate(to, used ?? { number: 1 }));
          const slow = Math.abs(made.slowMinutesAfter - made.slowMinutesBefore);
          expect(slow).toBeLessThanOrEqual(0.25 * rate + 1e-6);
          const need = told(made.after.times).slowMinutesToDeveloped;
          const apart = Math.abs(told(made.after.development) - told(made.before.development));
          expect(apart).toBeLessThanOrEqual((0.25 * rate) / need + 1e-6);
          for (const phase of made.converted.map((index) => made.mixing.phases[index]!)) {
            if (!('seconds' in phase)) throw new Error('not a stretch of time');
            expect(Number.isInteger(phase.seconds / 30)).toBe(true);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('to the mixer it is on changes nothing', () => {
    const work = [speed(1, 4), rest(20), speed(2, 3.5)];
    expect(worked(convert(spiral, work, spiral))).toEqual(work);
  });

  test('gives the water that restores the dough temperature, warmer by hand than on a machine', () => {
    const made = convert(planetary, [speed(1, 10)], hand, 24);
    const water = told(made.water);
    expect(told(water.outcome.endCelsius)).toBeCloseTo(24, 6);
    // With the water of the machine, hands end cooler; so they want it warmer.
    const machine = told(convert(planetary, [speed(1, 10)], planetary, 24).water);
    expect(told(made.after.endCelsius)).toBeLessThan(told(made.before.endCelsius));
    expect(water.waterCelsius!).toBeGreaterThan(machine.waterCelsius!);
  });

  test('needs no curve of development: rye is mixed for as long', () => {
    const mixing = {
      ...programme(wholemeal13, 0.8, spiral, [speed(1, 6)]),
      curve: blendCurve([{ grams: 1000, flour: { ...wholemeal13, grain: 'rye' } }]),
    };
    const made = told(convertProgramme({ mixing, to: hand, targetCelsius: 27 }));
    expect(worked(made)).toEqual([knead(4)]);
    expect(made.after.development.known).toBe(false);
  });

  test('says why where a mixer cannot be told', () => {
    const blank: MixerData = { kind: 'spiral', speeds: [] };
    const mixing = programme(strongWhite, 0.65, spiral, [speed(1, 6)]);
    const unnumbered = programme(strongWhite, 0.65, spiral, [speed(7, 6)]);
    expect(convertProgramme({ mixing, to: blank, targetCelsius: 25 }).known).toBe(false);
    expect(convertProgramme({ mixing: unnumbered, to: hand, targetCelsius: 25 }).known).toBe(false);
  });
});
