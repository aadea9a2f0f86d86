import { expectedAt } from '../analysis/expected-dough.ts';
import type { MixingInput } from '../calc/mixing/mixing-programme.ts';

/** What is expected of a dough at a minute of its programme. */
export interface CurvePoint {
  readonly minutes: number;
  readonly celsius: number;
  /** Either way. */
  readonly bandCelsius: number;
  readonly stage?: string;
}

/** So many stretches a programme is drawn in. */
const curveSteps = 48;

/** What is expected all along a programme, from its start to its end; empty where nothing is. */
export function doughCurve(input: MixingInput, programmeMinutes: number): CurvePoint[] {
  if (!(programmeMinutes > 0)) return [];
  return Array.from(
    { length: curveSteps + 1 },
    (_, index) => (programmeMinutes * index) / curveSteps,
  ).flatMap((minutes): CurvePoint[] => {
    const expected = expectedAt(input, minutes);
    if (!expected.known) return [];
    const { celsius, bandCelsius, stage } = expected.value;
    return [{ minutes, celsius, bandCelsius, ...(stage.known ? { stage: stage.value } : {}) }];
  });
}
