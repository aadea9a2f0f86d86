import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FlourData } from '../../core/calc/flour/flour.ts';
import type { Known } from '../../core/calc/known.ts';
import {
  developmentRate,
  type MixerData,
  type MixerKind,
  warmingRate,
} from '../../core/calc/mixing/mixer.ts';
import { type MinutesBand, type MixingOutcome, simulateMixing } from '../../core/calc/mixing/mixing.ts';
import type { MixingInput, MixingPhase } from '../../core/calc/mixing/mixing-programme.ts';
import type { Message } from '../../core/words/message.ts';
import { inWords } from '../words/told.ts';
import { flourPortion, programme, spiral, strongWhite, waterPortion, wholemeal13 } from './mixing-fixture.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const speed = (number: number, minutes: number): MixingPhase => ({
  kind: 'speed',
  number,
  seconds: 60 * minutes,
});

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
  return value.value;
}

/** What physics and the trade agree on, whatever the size of the effect. */
describe('monotone where it must be', () => {
  const developed = (flour: FlourData, hydration: number): number =>
    told(simulateMixing(programme(flour, hydration, spiral, [speed(1, 3)])).developedAfter).expected;
  const gap = (flour: FlourData, hydration: number): number => {
    const { developedAfter, breakdownAfter } = simulateMixing(
      programme(flour, hydration, spiral, [speed(1, 3)]),
    );
    return told(breakdownAfter).expected - told(developedAfter).expected;
  };

  test('a wetter dough takes longer to develop and breaks sooner after it', () => {
    fc.assert(
      fc.property(between(0.66, 0.9), between(0.005, 0.1), (hydration, more) => {
        expect(developed(strongWhite, hydration + more)).toBeGreaterThanOrEqual(
          developed(strongWhite, hydration) - 1e-9,
        );
        expect(gap(strongWhite, hydration + more)).toBeLessThanOrEqual(gap(strongWhite, hydration) + 1e-9);
      }),
    );
  });

  test('stronger flour, at the water it takes, needs more work and stands more of it', () => {
    fc.assert(
      fc.property(
        between(2, 9),
        between(0.1, 3),
        between(3, 18),
        between(0.1, 5),
        (peak, morePeak, stability, more) => {
          const one = { ...strongWhite, absorption: 0.62, peakMinutes: peak, stabilityMinutes: stability };
          expect(developed({ ...one, peakMinutes: peak + morePeak }, 0.65)).toBeGreaterThan(
            developed(one, 0.65),
          );
          expect(gap({ ...one, stabilityMinutes: stability + more }, 0.65)).toBeGreaterThan(gap(one, 0.65));
        },
      ),
    );
  });

  test('a faster hook warms the dough more and develops it sooner', () => {
    fc.assert(
      fc.property(between(80, 250), between(1, 80), (rpm, faster) => {
        const run = (turns: number) => {
          const mixer: MixerData = { kind: 'spiral', speeds: [{ number: 1, rpm: turns }] };
          return simulateMixing(programme(strongWhite, 0.65, mixer, [speed(1, 5)], { flourGrams: 9000 }));
        };
        expect(told(run(rpm + faster).endCelsius)).toBeGreaterThan(told(run(rpm).endCelsius));
        expect(told(run(rpm + faster).developedAfter).expected).toBeLessThan(
          told(run(rpm).developedAfter).expected,
        );
      }),
    );
  });

  test('a warmer room never leaves the dough cooler, and more dough follows the room less', () => {
    const rested = (room: number, flourGrams: number): number =>
      told(
        simulateMixing({
          ...programme(strongWhite, 0.65, spiral, [speed(1, 3), { kind: 'rest', seconds: 1200 }], {
            flourGrams,
          }),
          roomCelsius: room,
        }).endCelsius,
      );
    fc.assert(
      fc.property(between(5, 35), between(0.5, 10), between(500, 20_000), (room, warmer, grams) => {
        expect(rested(room + warmer, grams)).toBeGreaterThanOrEqual(rested(room, grams));
        const follows = (flourGrams: number): number => rested(35, flourGrams) - rested(5, flourGrams);
        expect(follows(grams * 2)).toBeLessThan(follows(grams));
      }),
    );
  });
});

/** The speeds that dough is developed at, by kind, rpm; hands have none. */
const turns: Readonly<Record<MixerKind, readonly [number, number]>> = {
  hand: [1, 1],
  planetary: [40, 260],
  spiral: [60, 250],
  fork: [30, 70],
  'twin arm': [32, 65],
  horizontal: [36, 110],
};

interface Kitchen {
  readonly kind: MixerKind;
  readonly flour: FlourData;
  /** Where within the speeds of its kind, 0 to 1. */
  readonly fast: number;
  readonly flourGrams: number;
  readonly waterGrams: number;
  readonly room: number;
  readonly water: number;
  readonly minutes: readonly [number, number, number];
}

/** Any kitchen: every kind, 0–90 min in all, 40–110 % of water, 130 g to 130 kg of flour, room 0–45 °C. */
const anyKitchen = fc.record({
  kind: fc.constantFrom<MixerKind>('hand', 'planetary', 'spiral', 'fork', 'twin arm', 'horizontal'),
  flour: fc.constantFrom(strongWhite, wholemeal13),
  fast: between(0, 1),
  size: between(Math.log(130), Math.log(130_000)),
  hydration: between(0.4, 1.1),
  room: between(0, 45),
  water: between(1, 45),
  minutes: fc.tuple(between(0.5, 30), between(0, 30), between(0.5, 30)),
});
type Drawn = typeof anyKitchen extends fc.Arbitrary<infer T> ? T : never;

function kitchen({ size, hydration, ...rest }: Drawn): Kitchen {
  const flourGrams = Math.exp(size);
  return { ...rest, flourGrams, waterGrams: hydration * flourGrams };
}

const rpmOf = ({ kind, fast }: Kitchen): number => turns[kind][0] + fast * (turns[kind][1] - turns[kind][0]);

function inputOf(of: Kitchen, rpm = rpmOf(of), flourCelsius = 21): MixingInput {
  const mixer: MixerData = {
    kind: of.kind,
    speeds: of.kind === 'hand' ? [] : [{ number: 1, rpm }],
  };
  const [one, rest, two] = of.minutes;
  const work = (minutes: number): MixingPhase =>
    of.kind === 'hand' ? { kind: 'knead', seconds: 60 * minutes } : speed(1, minutes);
  const base = programme(of.flour, 0.65, mixer, [], { flourGrams: of.flourGrams });
  return {
    ...base,
    roomCelsius: of.room,
    phases: [
      {
        kind: 'load',
        portions: [flourPortion(of.flourGrams, flourCelsius), waterPortion(of.waterGrams, of.water)],
      },
      work(one),
      { kind: 'rest', seconds: 60 * rest },
      work(two),
    ],
  };
}

const run = (of: Kitchen, rpm?: number, flourCelsius?: number): MixingOutcome =>
  simulateMixing(inputOf(of, rpm, flourCelsius));

/** The end temperature; endless where it would be hotter than any dough. */
const endOf = ({ endCelsius }: MixingOutcome): number =>
  endCelsius.known ? endCelsius.value : Number.POSITIVE_INFINITY;
const wornAtEnd = ({ points }: MixingOutcome): number => points.at(-1)?.worn ?? 0;
const noLess = (after: number, before: number): void => expect(after).toBeGreaterThanOrEqual(before - 1e-9);

describe('in any kitchen', () => {
  test('more minutes never leave a dough less developed, nor at its last speed less worn', () => {
    fc.assert(
      fc.property(anyKitchen, fc.nat(2), between(0, 20), (drawn, at, more) => {
        const of = kitchen(drawn);
        const longer = {
          ...of,
          minutes: of.minutes.with(at, of.minutes[at]! + more) as unknown as Kitchen['minutes'],
        };
        noLess(told(run(longer).development), told(run(of).development));
        if (at === 2) noLess(wornAtEnd(run(longer)), wornAtEnd(run(of)));
      }),
    );
  });

  test('a warmer room, warmer water, warmer flour or a faster speed never leaves it cooler', () => {
    fc.assert(
      fc.property(anyKitchen, between(0, 10), between(0, 60), (drawn, warmer, faster) => {
        const of = kitchen(drawn);
        const end = endOf(run(of));
        noLess(endOf(run({ ...of, room: of.room + warmer })), end);
        noLess(endOf(run({ ...of, water: of.water + warmer })), end);
        noLess(endOf(run(of, undefined, 21 + warmer)), end);
        noLess(endOf(run(of, rpmOf(of) + faster)), end);
      }),
    );
  });

  test('a warmer dough is never worn later', () => {
    fc.assert(
      fc.property(anyKitchen, between(0, 10), (drawn, warmer) => {
        const of = kitchen(drawn);
        const [cool, warm] = [run(of), run({ ...of, water: of.water + warmer })];
        noLess(told(cool.letDownAfter).expected, told(warm.letDownAfter).expected);
        noLess(wornAtEnd(warm), wornAtEnd(cool));
      }),
    );
  });
});

/**
 * A small change moves nothing by more than its share. The shares come from the model: no rate of warming grows faster than
 * with the power 2.5 of the rpm (the last speeds of horizontal mixers), none of development faster than with 1.3, wear with
 * 1.55 times that; warmth wears a dough faster by 7.2 % a degree (2^(1/10)); a point of water makes a dough slower to
 * develop by 6.7 % at most and narrows its gap by 2.5 %; slack dough in a planetary loses half of five minutes over two points.
 */
describe('continuity', () => {
  const wearByDegree = 2 ** 0.1 - 1;
  const moments = ['wishedAfter', 'developedAfter', 'letDownAfter', 'breakdownAfter'] as const;
  const atOnce = (of: Kitchen): Kitchen => ({ ...of, minutes: [of.minutes[0] + of.minutes[2], 0, 0] });

  /** Moments of one stretch of work move by this part of themselves, as far as anybody would wait for them. */
  function expectMoments(before: MixingOutcome, after: MixingOutcome, part: number, minutes = 0): void {
    for (const moment of moments) {
      const [one, other] = [before[moment], after[moment]].map(
        (of) => (of as { value?: MinutesBand }).value?.expected,
      );
      if (one === undefined || one > 3 * before.programmeMinutes) continue;
      expect(Math.abs(other! - one)).toBeLessThanOrEqual(part * one + minutes + 1e-6);
    }
  }

  test('of 1 rpm', () => {
    fc.assert(
      fc.property(anyKitchen, (drawn) => {
        const of = atOnce(kitchen(drawn));
        if (of.kind === 'hand') return;
        const rpm = rpmOf(of);
        const [before, after] = [run(of, rpm), run(of, rpm + 1)];
        const used = { number: 1, rpm: rpm + 1 };
        const mixer: MixerData = { kind: of.kind, speeds: [used] };
        const degrees = (2.5 / rpm) * told(warmingRate(mixer, used)) * of.minutes[0];
        if (after.endCelsius.known) expect(endOf(after) - endOf(before)).toBeLessThanOrEqual(degrees + 1e-9);
        const slow = (1.3 / rpm) * told(developmentRate(mixer, used)) * of.minutes[0];
        const { slowMinutesToDeveloped } = told(before.times);
        expect(told(after.development) - told(before.development)).toBeLessThanOrEqual(
          slow / slowMinutesToDeveloped + 1e-9,
        );
        // Thrice the programme warms three times as much.
        expectMoments(before, after, (1.3 * 1.55) / rpm + 3 * degrees * wearByDegree);
      }),
      { numRuns: 300 },
    );
  });

  test('of 0.1 °C of water, flour or room', () => {
    fc.assert(
      fc.property(anyKitchen, (drawn) => {
        const of = atOnce(kitchen(drawn));
        const before = run(of);
        const moved = [
          run({ ...of, water: of.water + 0.1 }),
          run(of, undefined, 21.1),
          run({ ...of, room: of.room + 0.1 }),
        ];
        for (const after of moved) {
          if (after.endCelsius.known)
            expect(Math.abs(endOf(after) - endOf(before))).toBeLessThanOrEqual(0.1 + 1e-3);
          expect(told(after.development)).toBeCloseTo(told(before.development), 9);
          expectMoments(before, after, 0.1 * wearByDegree * 1.01);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('of 1 g, and of 0.1 % of water', () => {
    fc.assert(
      fc.property(anyKitchen, fc.boolean(), (drawn, isGram) => {
        const of = atOnce(kitchen(drawn));
        const grams = isGram ? 1 : of.flourGrams / 1000;
        const [before, after] = [run(of), run({ ...of, waterGrams: of.waterGrams + grams })];
        const share = grams / (of.flourGrams + of.waterGrams);
        const points = (100 * grams) / of.flourGrams;
        // What it brings or takes of heat, and by the third root of the mass how slowly the dough follows its surroundings.
        if (after.endCelsius.known)
          expect(Math.abs(endOf(after) - endOf(before))).toBeLessThanOrEqual(60 * share + 1e-9);
        const { slowMinutesToDeveloped } = told(before.times);
        const rate = told(before.slowMinutes) / of.minutes[0];
        const slack =
          of.kind === 'planetary' ? (0.5 * points * 0.5 * 5 * 2 * rate) / slowMinutesToDeveloped : 0;
        const development = told(before.development);
        expect(Math.abs(told(after.development) - development)).toBeLessThanOrEqual(
          0.068 * points * development + slack + 1e-9,
        );
        expectMoments(
          before,
          after,
          (0.068 + 0.026) * points + 60 * share * wearByDegree,
          of.kind === 'planetary' ? 0.5 * points * 0.5 * 5 : 0,
        );
      }),
      { numRuns: 300 },
    );
  });
});
