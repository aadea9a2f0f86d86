import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { temperatureAfter } from '../../core/calc/heat/warming.ts';
import type { Known } from '../../core/calc/known.ts';
import { simulateMixing } from '../../core/calc/mixing/mixing.ts';
import type { MixingPhase } from '../../core/calc/mixing/mixing-programme.ts';
import type { Message } from '../../core/words/message.ts';
import { inWords } from '../words/told.ts';
import { hand, planetary, programme, spiral, strongWhite } from './mixing-fixture.ts';

// The package brings its own source as types, which this project’s strictness does not pass.
interface Odex {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(f: (x: number, y: number[]) => number[], x: number, y: number[], end: number): { y: number[] };
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Odex };

/** The temperature after a stretch by the extrapolation method of Hairer and Wanner (odex). */
function integrated(slope: (celsius: number) => number, start: number, minutes: number): number {
  const solver = new Solver(1);
  solver.absoluteTolerance = 1e-10;
  solver.relativeTolerance = 1e-10;
  solver.maxSteps = 100_000;
  return solver.solve((_, [celsius]) => [slope(celsius!)], 0, [start], minutes).y[0]!;
}

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
  return value.value;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the closed form against an integrator (odex)', () => {
  test('agrees for one stretch to 1e-6', () => {
    fc.assert(
      fc.property(
        between(0, 4),
        between(0, 40),
        between(0.5, 60),
        between(0, 40),
        between(0.1, 40),
        (rate, around, settles, start, minutes) => {
          const phase = { celsiusPerMinute: rate, aroundCelsius: around, settlesMinutes: settles };
          const byOdex = integrated((celsius) => rate - (celsius - around) / settles, start, minutes);
          expect(Math.abs(temperatureAfter(phase, start, minutes) - byOdex)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 50 },
    );
  });

  const speed = (number: number, minutes: number): MixingPhase => ({
    kind: 'speed',
    number,
    seconds: 60 * minutes,
  });
  const rest: MixingPhase = { kind: 'rest', seconds: 1200 };
  const knead: MixingPhase = { kind: 'knead', seconds: 600 };
  test.each([
    ['a spiral', spiral, [speed(1, 4), rest, speed(2, 5)]],
    ['a planetary', planetary, [speed(2, 3), rest, speed(4, 6)]],
    ['hands', hand, [knead, rest, knead]],
  ] as const)('agrees for a whole programme to 1e-6: %s', (_, mixer, work) => {
    const outcome = simulateMixing(programme(strongWhite, 0.68, mixer, work, { flourGrams: 5000 }));
    let celsius = outcome.points[0]!.celsius!;
    for (const [index, point] of outcome.points.entries()) {
      const next = outcome.points[index + 1];
      if (next === undefined || point.start === undefined || next.minutes === point.minutes) continue;
      const { celsiusPerMinute, aroundCelsius, settlesMinutes } = point.start.warming;
      celsius = integrated(
        (now) => celsiusPerMinute - (now - aroundCelsius) / settlesMinutes,
        celsius,
        next.minutes - point.minutes,
      );
    }
    expect(Math.abs(told(outcome.endCelsius) - celsius)).toBeLessThan(1e-6);
  });
});
