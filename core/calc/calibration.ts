import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { standardErrors } from './calibration-errors.ts';
import {
  type CalibratedQuantity,
  type CalibrationTrial,
  type Free,
  quantitiesOf,
  startable,
  withValues,
} from './calibration-quantities.ts';
import { trialTemperatures, withWater } from './calibration-temperatures.ts';
import { type Known, known, unknown } from './known.ts';
import type { MixerData } from './mixer.ts';
import { simulateMixing } from './mixing.ts';
import { thermometerCelsius } from './thermometer.ts';

/** One quantity of a mixer: °C a minute, °C, or minutes. */
export interface CalibratedParameter {
  readonly quantity: CalibratedQuantity;
  /** As the mixer has it now, measured or by its kind. */
  readonly before: Known<number>;
  /** As the readings have it, or why they cannot tell. */
  readonly value: Known<number>;
  /** One standard error of `value`, in its unit; absent where it cannot be told. */
  readonly standardError?: number;
}

/** A reading beside what is computed for it, °C; `before` is unknown where the mixer as it is has no answer. */
export interface Residual {
  readonly label: string;
  readonly minutes: number;
  readonly measuredCelsius: number;
  readonly before: Known<number>;
  readonly afterCelsius: number;
}

/** A mixer as its trials have it. */
export interface Calibration {
  readonly mixer: MixerData;
  readonly parameters: readonly CalibratedParameter[];
  readonly residuals: readonly Residual[];
  /** Root of the mean square of the residuals, °C. */
  readonly spreadBefore: Known<number>;
  readonly spreadAfter: number;
}

/**
 * Fits a mixer to the temperatures of its trials by Levenberg–Marquardt: warming H of each speed and the time constant τ
 * of a machine; of hands what they warm the dough towards, and τ. What the readings do not determine keeps the value it
 * has and says so. Unknown, with the reason, when no reading can be used. Never throws.
 */
export function calibrateMixer(mixer: MixerData, trials: readonly CalibrationTrial[]): Known<Calibration> {
  const usable = trials.filter((trial) => canBeFitted(mixer, trial));
  const count = usable.reduce((sum, trial) => sum + trial.readings.length, 0);
  const starts = usable.filter((trial) => !trial.waterKnown).length;
  if (count === 0) return unknown('no trial of this mixer has a temperature that can be compared');
  if (count - starts < 2) return unknown('one reading is too little to fit a mixer to');
  const all = quantitiesOf(mixer, usable);
  let free = all;
  let fit = fitted(mixer, usable, free);
  for (;;) {
    // Of what the readings do not tell, that one keeps its value without which they are still met best.
    const without = untold(fit, free).map((one) => {
      const rest = free.filter((other) => other !== one);
      return { rest, fit: fitted(mixer, usable, rest) };
    });
    if (without.length === 0) break;
    // Where several would do as well it is the last, how slowly the dough follows the room.
    const least = Math.min(...without.map((one) => one.fit.spread));
    const best = without.findLast((one) => !(one.fit.spread > least + asGoodCelsius)) ?? without.at(-1)!;
    free = best.rest;
    fit = best.fit;
  }
  if (free.length === 0) return unknown(tooLittle);
  // Where the start is not given, the mixer as it is may find its own best one: the comparison is fair.
  const before = trialTemperatures(mixer, usable)([], fitted(mixer, usable, []).values);
  const measured = usable.flatMap((trial) =>
    trial.readings.map((reading) => ({ label: trial.label, ...reading })),
  );
  const residuals = measured.map(
    ({ label, minutes, celsius }, index): Residual => ({
      label,
      minutes,
      measuredCelsius: celsius,
      before: before[index]!,
      afterCelsius: fit.celsius[index]!,
    }),
  );
  const misses = residuals.flatMap((one) => (one.before.known ? one.before.value - one.measuredCelsius : []));
  const lacking = before.find((one) => !one.known);
  return known(
    {
      mixer: withValues(mixer, free, fit.values),
      parameters: all.map((one) => parameterOf(one, free.indexOf(one), fit)),
      residuals,
      spreadBefore:
        lacking === undefined || lacking.known ? known(spread(misses), 'common practice') : lacking,
      spreadAfter: spread(residuals.map((one) => one.afterCelsius - one.measuredCelsius)),
    },
    'measured',
  );
}

/** Fits that miss the readings by no more than so much beyond the best are as good, °C: no thermometer tells them apart. */
const asGoodCelsius = 0.05;

const tooLittle =
  'the readings do not determine it: they lie too close together, or stand in for one another';

interface Fit {
  /** Of the free quantities, then the water temperature of each trial that does not give it. */
  readonly values: readonly number[];
  readonly errors: readonly number[];
  readonly celsius: readonly number[];
  /** Root of the mean square of what it misses the readings by, °C. */
  readonly spread: number;
}

function canBeFitted(mixer: MixerData, trial: CalibrationTrial): boolean {
  const input = { ...trial.mixing, mixer: startable(mixer, trial.mixing) };
  const { endCelsius } = simulateMixing(trial.waterKnown ? input : withWater(input, 20));
  return endCelsius.known && trial.readings.length > 0;
}

function fitted(mixer: MixerData, trials: readonly CalibrationTrial[], free: readonly Free[]): Fit {
  const starts = trials.filter((trial) => !trial.waterKnown).length;
  const first = [...free.map((one) => one.start / one.scale), ...Array<number>(starts).fill(20 / waterScale)];
  const scales = [...free.map((one) => one.scale), ...Array<number>(starts).fill(waterScale)];
  const measured = trials.flatMap((trial) => trial.readings.map((reading) => reading.celsius));
  const temperatures = trialTemperatures(mixer, trials, free);
  const model = (scaled: readonly number[]): number[] => {
    const values = scaled.map((value, index) => value * scales[index]!);
    const told = temperatures(values.slice(0, free.length), values.slice(free.length));
    return told.map((one) => (one.known ? one.value : Number.NaN));
  };
  let scaled = first;
  // All readings weigh alike. With no quantity left, or a single reading, there is nothing for the library to search.
  const canBegin = model(first).every((one) => Number.isFinite(one));
  if (canBegin && first.length > 0 && measured.length > 1) {
    scaled = levenbergMarquardt(
      { x: measured.map((_, index) => index), y: measured },
      (parameters) => {
        const told = model(parameters);
        return (index) => told[index]!;
      },
      {
        initialValues: first,
        damping: 0.1,
        gradientDifference: differenceStep,
        centralDifference: true,
        maxIterations: 12,
        errorTolerance: 1e-9,
        minValues: [...free.map((one) => one.least / one.scale), ...Array<number>(starts).fill(-1)],
        maxValues: [...free.map((one) => one.most / one.scale), ...Array<number>(starts).fill(6)],
      },
    ).parameterValues;
  }
  const celsius = model(scaled);
  const misses = celsius.map((one, index) => one - measured[index]!);
  const slopes = scaled.map((value, index) => {
    const at = (change: number) => model(scaled.with(index, value + change));
    const [above, below] = [at(differenceStep), at(-differenceStep)];
    return above.map((one, reading) => (one - below[reading]!) / (2 * differenceStep));
  });
  const errors = standardErrors(slopes, misses, thermometerCelsius);
  return {
    values: scaled.map((value, index) => value * scales[index]!),
    errors: errors.map((error, index) => error * scales[index]!),
    celsius,
    spread: spread(misses),
  };
}

const waterScale = 10;
const differenceStep = 1e-3;

/** The quantities that the readings do not tell: undetermined, too uncertain, or run up against what can be. */
function untold(fit: Fit, free: readonly Free[]): Free[] {
  return free.filter((one, index) => {
    const value = fit.values[index]!;
    const atBound = value >= one.most * (1 - 1e-9) || value <= one.least + 1e-9;
    if (atBound && one.quantity.kind !== 'warms') return true;
    return !(fit.errors[index]! <= one.tellable(value));
  });
}

function parameterOf(one: Free, index: number, fit: Fit): CalibratedParameter {
  const { quantity, before } = one;
  if (index < 0) return { quantity, before, value: unknown(tooLittle) };
  return {
    quantity,
    before,
    value: known(fit.values[index]!, 'measured'),
    standardError: fit.errors[index]!,
  };
}

function spread(misses: readonly number[]): number {
  return Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / Math.max(1, misses.length));
}
