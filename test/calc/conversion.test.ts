import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blendCurve } from '../../core/calc/flour/flour.ts';
import type { Known } from '../../core/calc/known.ts';
import {
  type Conversion,
  type ConversionInput,
  convertProgramme,
} from '../../core/calc/mixing/conversion.ts';
import { developmentRate, type MixerData } from '../../core/calc/mixing/mixer.ts';
import type { MixingPhase } from '../../core/calc/mixing/mixing-programme.ts';
import type { Message } from '../../core/words/message.ts';
import { inWords } from '../words/told.ts';
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

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
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

const rye = blendCurve([{ grams: 1000, flour: { ...wholemeal13, grain: 'rye' } }]);

describe('conversion of a programme', () => {
  test('turns 1,200 turns of a spiral into 12 min by hand', () => {
    // A hook gives rpm/100 slow minutes a minute, hands one (common practice, no source): 4 + 4 · 200/100 = 12.
    expect(worked(convert(spiral, [speed(1, 4), speed(2, 4)], hand))).toEqual([knead(12)]);
  });

  test('runs a machine in its usual shape: first speed wets the flour, the second does the work', () => {
    expect(worked(convert(hand, [knead(12)], spiral))).toEqual([speed(1, 4), speed(2, 4)]);
    // No more than five minutes at first speed, no fewer than three (common practice, no source).
    expect(worked(convert(spiral, [speed(1, 12)], spiral))).toEqual([speed(1, 5), speed(2, 3.5)]);
    expect(worked(convert(spiral, [speed(2, 6)], spiral))).toEqual([speed(1, 3), speed(2, 4.5)]);
    const horizontal: MixerData = {
      kind: 'horizontal',
      speeds: [35, 70, 100].map((rpm, index) => ({ number: index + 1, rpm })),
    };
    const [first, second] = worked(convert(spiral, [speed(1, 4), speed(2, 5)], horizontal));
    expect(first).toEqual(speed(1, 5));
    expect(second).toMatchObject({ kind: 'speed', number: 2 });
  });

  test('keeps stiff dough, and rye, at first speed alone', () => {
    const stiff = programme(strongWhite, 0.55, hand, [knead(12)]);
    expect(worked(told(convertProgramme({ mixing: stiff, to: spiral, targetCelsius: 25 })))).toEqual([
      speed(1, 12),
    ]);
    const ofRye = { ...programme(wholemeal13, 0.8, hand, [knead(8)]), curve: rye };
    const made = told(convertProgramme({ mixing: ofRye, to: spiral, targetCelsius: 25 }));
    expect(worked(made)).toEqual([speed(1, 8)]);
    expect(made.after.development.known).toBe(false);
  });

  test('does with the one speed that a mixer has', () => {
    const one: MixerData = { kind: 'spiral', speeds: [{ number: 1, rpm: 150 }] };
    expect(worked(convert(spiral, [speed(2, 6)], one))).toEqual([speed(1, 8)]);
  });

  test('leaves rests, additions and folds in their order', () => {
    const add: MixingPhase = { kind: 'add', portions: [saltPortion(10)] };
    const fold: MixingPhase = { kind: 'fold', seconds: 60 };
    const made = convert(spiral, [speed(1, 3), rest(20), add, speed(2, 3), fold], hand);
    expect(made.mixing.phases.slice(2)).toEqual([knead(3), rest(20), add, knead(6), fold]);
    expect(made.converted).toEqual([
      { phase: 2, by: [knead(3)] },
      { phase: 5, by: [knead(6)] },
    ]);
  });

  test('makes one line of what goes on as before', () => {
    const made = convert(spiral, [speed(1, 3), speed(2, 3)], hand);
    expect(made.converted).toEqual([
      { phase: 2, by: [knead(9)] },
      { phase: 3, by: [] },
    ]);
  });

  test('makes good in the next stretch what rounding left over', () => {
    const short = (minutes: number): MixingPhase[] => [rest(1), speed(1, minutes)];
    const made = convert(spiral, [...short(0.7), ...short(0.7), ...short(0.7), ...short(0.7)], hand);
    // 0.7, 1.4, 2.1 and 2.8 slow minutes by the ends of the stretches: to the nearest half 0.5, 1.5, 2 and 3.
    expect(worked(made).filter(({ kind }) => kind === 'knead')).toEqual([0.5, 1, 0.5, 1].map(knead));
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
        fc.double({ min: 0.5, max: 0.85, noNaN: true }),
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
          const by = made.converted.flatMap((line) => line.by);
          if (from.kind !== 'hand' || to.kind !== 'hand') expect(worked(made)).toEqual(by);
          for (const { seconds } of by) expect(Number.isInteger(seconds / 30)).toBe(true);
          for (const [index, line] of by.entries())
            if (line.kind === 'speed' && line.number > 1) expect(by[index - 1]).toMatchObject({ number: 1 });
        },
      ),
      { numRuns: 60 },
    );
  });

  test('tells the working time as a range by what is not known of the two mixers', () => {
    const range = ({ workedMinutes: { low, high } }: Conversion): number => (high - low) / (high + low);
    // Each is off by a fifth over the root of two, the flour being the same on both.
    expect(range(convert(spiral, [speed(1, 4), speed(2, 4)], planetary))).toBeCloseTo(0.2, 9);
    const known: MixerData = {
      kind: 'spiral',
      speeds: spiral.speeds.map((one) => ({
        ...one,
        developsTimes: one.rpm! / 90,
        developsWithinTimes: 0.05,
      })),
    };
    const sure = range(convert(known, [speed(1, 4), speed(2, 4)], planetary));
    expect(sure).toBeGreaterThan(0.2 * Math.SQRT1_2);
    expect(sure).toBeLessThan(0.2);
  });

  test('gives the water that restores the dough temperature, warmer by hand than on a machine', () => {
    const made = convert(planetary, [speed(1, 3), speed(2, 9)], hand, 24);
    const water = told(made.water);
    expect(told(water.endCelsius)).toBeCloseTo(24, 6);
    // With the water of the machine, hands end cooler; so they want it warmer.
    const machine = told(convert(planetary, [speed(1, 3), speed(2, 9)], planetary, 24).water);
    expect(told(made.after.endCelsius)).toBeLessThan(told(made.before.endCelsius));
    expect(water.waterCelsius).toBeGreaterThan(machine.waterCelsius!);
  });

  test('never tells anybody to draw water hotter than may be drawn: the dough ends cooler', () => {
    const cold = { ...programme(strongWhite, 0.6, hand, [knead(6)]), roomCelsius: 5 };
    const mixing = {
      ...cold,
      phases: cold.phases.map((phase) =>
        'portions' in phase
          ? { ...phase, portions: phase.portions.map((one) => ({ ...one, celsius: 3 })) }
          : phase,
      ),
    };
    for (const to of [spiral, planetary]) {
      const water = told(told(convertProgramme({ mixing, to, targetCelsius: 32, hottestCelsius: 45 })).water);
      expect(water.isTooCool).toBe(true);
      expect(water.waterCelsius).toBeLessThanOrEqual(45);
      expect(told(water.endCelsius)).toBeLessThan(31.9);
    }
  });

  test('of another batch develops it alike, and a smaller one follows the room sooner', () => {
    const mixing = programme(strongWhite, 0.65, hand, [knead(20)], { flourGrams: 8000 });
    const [whole, tenth] = [1, 0.1].map((batch) =>
      told(convertProgramme({ mixing, to: planetary, targetCelsius: 25, batch })),
    );
    expect(worked(tenth!)).toEqual(worked(whole!));
    expect(told(tenth!.after.endCelsius)).toBeLessThan(told(whole!.after.endCelsius));
  });

  test('says why where a mixer cannot be told', () => {
    const blank: MixerData = { kind: 'spiral', speeds: [] };
    const mixing = programme(strongWhite, 0.65, spiral, [speed(1, 6)]);
    const unnumbered = programme(strongWhite, 0.65, spiral, [speed(7, 6)]);
    expect(convertProgramme({ mixing, to: blank, targetCelsius: 25 }).known).toBe(false);
    expect(convertProgramme({ mixing: unnumbered, to: hand, targetCelsius: 25 }).known).toBe(false);
  });
});
