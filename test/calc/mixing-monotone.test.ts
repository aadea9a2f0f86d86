import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FlourData } from '../../core/calc/flour.ts';
import type { Known } from '../../core/calc/known.ts';
import type { MixerData } from '../../core/calc/mixer.ts';
import { simulateMixing } from '../../core/calc/mixing.ts';
import type { MixingPhase } from '../../core/calc/mixing-programme.ts';
import { programme, spiral, strongWhite } from './mixing-fixture.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const speed = (number: number, minutes: number): MixingPhase => ({
  kind: 'speed',
  number,
  seconds: 60 * minutes,
});

function told<T>(value: Known<T>): T {
  if (!value.known) throw new Error(value.reason);
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
