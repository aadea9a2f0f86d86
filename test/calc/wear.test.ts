import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { temperatureAfter, type WarmingPhase } from '../../core/calc/heat/warming.ts';
import { minutesToWear, warmthFactor, wearMinutes } from '../../core/calc/mixing/wear.ts';

/** A numerical integrator: extrapolation after Hairer and Wanner. Its package has no usable default export in ESM. */
interface Odex {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(
    slope: (x: number, y: readonly number[]) => number[],
    from: number,
    start: readonly number[],
    to: number,
  ): { readonly y: readonly number[] };
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Odex };

/**
 * The integral of the factor over a phase by the integrator, which follows the temperature itself: melting at 0 °C first, then
 * dT/dt = H − (T − T_around)/τ. It goes in
 * short pieces, so that a corner of the factor spoils one of them at most.
 */
function integrated(phase: WarmingPhase, start: number, minutes: number): number {
  const { celsiusPerMinute: rate, aroundCelsius: around, settlesMinutes: settles } = phase;
  const slope = (celsius: number): number => rate - (Math.max(0, celsius) - around) / settles;
  let [sum, celsius] = [0, start];
  let clock = 0;
  const pieces = 400;
  for (let piece = 0; piece < pieces; piece++) {
    const solver = new Solver(2);
    solver.absoluteTolerance = 1e-11;
    solver.relativeTolerance = 1e-11;
    solver.maxSteps = 100_000;
    const until = (minutes * (piece + 1)) / pieces;
    // While ice melts the dough stands at 0 °C: it wears as at 0 °C, and that is below the lower bound.
    const { y } = solver.solve(
      (_, [warm]) => [slope(warm!), warmthFactor(Math.max(0, warm!))],
      clock,
      [celsius, sum],
      until,
    );
    [celsius, sum] = [y[0]!, y[1]!];
    clock = until;
  }
  return sum;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** From ice left to melt to hotter than any dough; from no warming to the fastest mixer. */
const anyPhase = fc.record({
  celsiusPerMinute: between(0, 4),
  aroundCelsius: between(0, 45),
  settlesMinutes: between(0.5, 120),
});

describe('wear by the warmth of the dough', () => {
  test('counts half below 17 °C, once at 27 °C, four times from 47 °C on', () => {
    expect(warmthFactor(27)).toBe(1);
    expect(warmthFactor(37)).toBe(2);
    expect([warmthFactor(17), warmthFactor(-30)]).toEqual([0.5, 0.5]);
    expect([warmthFactor(47), warmthFactor(90)]).toEqual([4, 4]);
  });

  test('agrees with the integrator (odex) to 1e-6', () => {
    fc.assert(
      fc.property(anyPhase, between(-25, 60), between(0.1, 60), (phase, start, minutes) => {
        const closed = wearMinutes(phase, start, minutes);
        expect(Math.abs(closed - integrated(phase, start, minutes))).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('agrees with the integrator where nothing clamps and nothing melts, over whole programmes', () => {
    fc.assert(
      fc.property(
        between(0, 0.4),
        between(18, 30),
        between(2, 60),
        between(18, 40),
        between(0.1, 120),
        (celsiusPerMinute, aroundCelsius, settlesMinutes, start, minutes) => {
          const phase = { celsiusPerMinute, aroundCelsius, settlesMinutes };
          expect(
            Math.abs(wearMinutes(phase, start, minutes) - integrated(phase, start, minutes)),
          ).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('has its inverse, to 1e-6 of a minute', () => {
    fc.assert(
      fc.property(anyPhase, between(-25, 60), between(0.1, 200), (phase, start, minutes) => {
        const wanted = wearMinutes(phase, start, minutes);
        const back = minutesToWear(phase, start, wanted, minutes + 1);
        expect(back).toBeDefined();
        expect(Math.abs(back! - minutes)).toBeLessThan(1e-6);
      }),
    );
  });

  test('is the same whole or in parts', () => {
    fc.assert(
      fc.property(anyPhase, between(-25, 60), between(0, 60), between(0, 60), (phase, start, one, two) => {
        const parts =
          wearMinutes(phase, start, one) + wearMinutes(phase, temperatureAfter(phase, start, one), two);
        expect(Math.abs(wearMinutes(phase, start, one + two) - parts)).toBeLessThan(1e-6);
      }),
    );
  });

  test('grows with time, warmth and surroundings', () => {
    fc.assert(
      fc.property(
        anyPhase,
        between(-25, 50),
        between(0, 60),
        between(0, 5),
        between(0, 5),
        (phase, start, minutes, warmer, longer) => {
          const wear = wearMinutes(phase, start, minutes);
          expect(wearMinutes(phase, start, minutes + longer)).toBeGreaterThanOrEqual(wear - 1e-9);
          expect(wearMinutes(phase, start + warmer, minutes)).toBeGreaterThanOrEqual(wear - 1e-9);
          const room = { ...phase, aroundCelsius: phase.aroundCelsius + warmer };
          expect(wearMinutes(room, start, minutes)).toBeGreaterThanOrEqual(wear - 1e-9);
        },
      ),
    );
  });

  test('without any lag, and with none to its surroundings at all', () => {
    // τ = 0: the dough is as warm as what is around it at once. Endless τ: it warms by its mixer alone.
    const sudden = { celsiusPerMinute: 1, aroundCelsius: 37, settlesMinutes: 0 };
    expect(wearMinutes(sudden, 20, 6)).toBeCloseTo(12, 12);
    expect(minutesToWear(sudden, 20, 12, 60)).toBeCloseTo(6, 12);
    const alone = { celsiusPerMinute: 1, aroundCelsius: 37, settlesMinutes: Number.POSITIVE_INFINITY };
    // ∫ 2^((t)/10) dt from 27 °C on is 10/ln 2 · (2^(t/10) − 1).
    expect(wearMinutes(alone, 27, 10)).toBeCloseTo(10 / Math.LN2, 9);
    // From 7 °C: ten minutes at a half, thirty between the bounds, then at four.
    const smooth = (10 / Math.LN2) * (4 - 0.5);
    expect(wearMinutes(alone, 7, 45)).toBeCloseTo(5 + smooth + 20, 9);
    expect(minutesToWear(alone, 7, 5 + smooth + 20, 60)).toBeCloseTo(45, 9);
    expect(wearMinutes({ ...alone, celsiusPerMinute: 0 }, 37, 10)).toBeCloseTo(20, 12);
    expect(wearMinutes({ ...alone, celsiusPerMinute: -1 }, 37, 10)).toBeCloseTo(10 / Math.LN2, 9);
  });

  test('of dough in which ice still melts is that of the coldest dough', () => {
    const melting = { celsiusPerMinute: 1, aroundCelsius: 0, settlesMinutes: 10 };
    expect(wearMinutes(melting, -8, 8)).toBeCloseTo(4, 9);
    // Where nothing melts it, it stays as it is.
    const frozen = { celsiusPerMinute: 0, aroundCelsius: 0, settlesMinutes: 10 };
    expect(wearMinutes(frozen, -8, 100)).toBeCloseTo(50, 9);
    expect(minutesToWear(frozen, -8, 60, 100)).toBeUndefined();
  });

  test('takes no time where none is wanted, and is not reached where the time is too short', () => {
    const phase = { celsiusPerMinute: 0.5, aroundCelsius: 22, settlesMinutes: 12 };
    expect(minutesToWear(phase, 24, 0, 10)).toBe(0);
    expect(minutesToWear(phase, 24, 100, 10)).toBeUndefined();
    expect(wearMinutes(phase, 24, 0)).toBe(0);
  });
});
