import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { elementAt, figureAt, lastOf } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { thermometerCelsius } from '../heat/thermometer.ts';
import { type Known, known, unknown } from '../known.ts';
import type { MixerData } from '../mixing/mixer.ts';
import { simulateMixing } from '../mixing/mixing.ts';
import { standardErrors } from './calibration-errors.ts';
import { frictionOf } from './calibration-friction.ts';
import type { CalibratedParameter } from './calibration-quantities.ts';
import {
  type CalibratedQuantity,
  type CalibrationTrial,
  type Free,
  isTaken,
  type MeasuredReading,
  type NamedFree,
  quantitiesOf,
  sharedWarming,
  startable,
  withError,
  withValues,
} from './calibration-quantities.ts';
import { isSetAside, readingWeight, robustSpread } from './calibration-robust.ts';
import { trialTemperatures, withWater } from './calibration-temperatures.ts';

/** A reading beside what is computed for it, °C; `before` is unknown where the mixer as it is has no answer. */
export interface Residual {
  readonly label: string;
  readonly minutes: number;
  readonly measuredCelsius: number;
  readonly before: Known<number, Message>;
  readonly afterCelsius: number;
  /** It lies so far from what the others say that it hardly counts: a slip, or a bowl that was cold. */
  readonly isSetAside: boolean;
}

/** A mixer as its trials have it. */
export interface Calibration {
  readonly mixer: MixerData;
  readonly parameters: readonly CalibratedParameter[];
  readonly residuals: readonly Residual[];
  /** Root of the mean square of the residuals, °C, those that are set aside left out. */
  readonly spreadBefore: Known<number, Message>;
  readonly spreadAfter: number;
}

/**
 * Fits a mixer to the temperatures of its trials by Levenberg–Marquardt with Huber’s loss, so that one bad reading does not
 * undo the rest: warming H of each speed and the time constant τ of a machine; of hands, and of a machine that says so,
 * what they warm the dough towards, and τ; and the friction factor where the mixer states one. What the readings do
 * not determine keeps the value it has and says so. Unknown, with the reason, when no reading can be used. Never throws.
 */
export function calibrateMixer(
  mixer: MixerData,
  trials: readonly CalibrationTrial[],
): Known<Calibration, Message> {
  const usable = trials
    .map((trial): TakenTrial => ({ ...trial, readings: trial.readings.filter(isTaken) }))
    .filter((trial) => canBeFitted(mixer, trial));
  const count = usable.reduce((sum, trial) => sum + trial.readings.length, 0);
  const starts = usable.filter((trial) => !trial.waterKnown).length;
  if (count === 0) return unknown(message('calibration.no-temperature'));
  if (count - starts < 2) return unknown(message('calibration.one-reading'));
  const all = quantitiesOf(mixer, usable);
  let free: readonly Free[] = all;
  let fit = fitted(mixer, usable, free);
  for (;;) {
    // Of what the readings do not tell, that one keeps its value without which they are still met best.
    const lost = untold(fit, free);
    const without = lost.map((one) => {
      const rest = free.filter((other) => other !== one);
      return { one, rest, fit: fitted(mixer, usable, rest) };
    });
    if (without.length === 0) break;
    const least = Math.min(...without.map((one) => one.fit.spread));
    const best =
      without.findLast((one) => !(one.fit.spread > least + worthCelsius(one.one))) ?? lastOf(without);
    // Speeds that the readings do not part are told together: none of them takes what may be the other’s.
    const together = lost.filter((one) => one.mayShare === true);
    if (best.one.quantity.kind === 'warms' && together.length > 1) {
      free = [sharedWarming(together), ...free.filter((one) => !together.includes(one))];
      fit = fitted(mixer, usable, free);
      continue;
    }
    free = best.rest;
    fit = best.fit;
  }
  if (free.length === 0) return unknown(message('calibration.too-close'));
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
      before: elementAt(before, index),
      afterCelsius: figureAt(fit.celsius, index),
      isSetAside: isSetAside(figureAt(fit.celsius, index) - celsius),
    }),
  );
  // Of what is set aside neither fit is told to miss it.
  const counted = residuals.some((one) => !one.isSetAside)
    ? residuals.filter((one) => !one.isSetAside)
    : residuals;
  const misses = counted.flatMap((one) => (one.before.known ? one.before.value - one.measuredCelsius : []));
  const lacking = before.find((one) => !one.known);
  const friction = frictionOf(mixer, usable);
  const parameters = [
    ...all.map((one) => parameterOf(one, free, fit)),
    ...(friction === undefined ? [] : [friction]),
  ];
  const sure = parameters.reduce(
    (now, { quantity, standardError }) =>
      standardError === undefined ? now : withError(now, quantity, standardError),
    withValues(mixer, free, fit.values),
  );
  return known(
    {
      mixer: friction?.value.known ? { ...sure, frictionCelsius: friction.value.value } : sure,
      parameters,
      residuals,
      spreadBefore:
        lacking === undefined || lacking.known ? known(rootMeanSquare(misses), 'common practice') : lacking,
      spreadAfter: rootMeanSquare(counted.map((one) => one.afterCelsius - one.measuredCelsius)),
    },
    'measured',
  );
}

/**
 * A quantity is worth keeping, where readings do not tell it, if without it they are missed by more than so much beyond the
 * best, °C. How slowly the dough follows the room bends the curve where one bad reading does: a thermometer is no proof of it.
 */
function worthCelsius({ quantity }: Free): number {
  return quantity.kind === 'settles' ? thermometerCelsius : 0.05;
}

interface Fit {
  /** Of the free quantities, then the water temperature of each trial that does not give it. */
  readonly values: readonly number[];
  readonly errors: readonly number[];
  readonly celsius: readonly number[];
  /** By how much it misses the readings on the whole, °C. */
  readonly spread: number;
}

/** A trial with those of its readings that have a temperature. */
type TakenTrial = Omit<CalibrationTrial, 'readings'> & {
  readonly readings: readonly (MeasuredReading & { readonly celsius: number })[];
};

function canBeFitted(mixer: MixerData, trial: CalibrationTrial): boolean {
  const input = { ...trial.mixing, mixer: startable(mixer, trial.mixing) };
  const { endCelsius } = simulateMixing(trial.waterKnown ? input : withWater(input, 20));
  return endCelsius.known && trial.readings.length > 0;
}

function fitted(mixer: MixerData, trials: readonly TakenTrial[], free: readonly Free[]): Fit {
  const starts = trials.filter((trial) => !trial.waterKnown).length;
  const first = [...free.map((one) => one.start / one.scale), ...Array<number>(starts).fill(20 / waterScale)];
  const scales = [...free.map((one) => one.scale), ...Array<number>(starts).fill(waterScale)];
  const measured = trials.flatMap((trial) => trial.readings.map((reading) => reading.celsius));
  const temperatures = trialTemperatures(mixer, trials, free);
  const model = (scaled: readonly number[]): number[] => {
    const values = products(scaled, scales);
    const told = temperatures(values.slice(0, free.length), values.slice(free.length));
    return told.map((one) => (one.known ? one.value : Number.NaN));
  };
  let scaled = first;
  let weights = measured.map(() => 1);
  let isFound = true;
  // With no quantity left, or a single reading, there is nothing for the library to search.
  const canBegin = model(first).every((one) => Number.isFinite(one));
  if (canBegin && first.length > 0 && measured.length > 1) {
    const bounds = {
      minValues: [...free.map((one) => one.least / one.scale), ...Array<number>(starts).fill(-1)],
      maxValues: [...free.map((one) => one.most / one.scale), ...Array<number>(starts).fill(6)],
    };
    // Huber’s loss by least squares with weights, which follow from what the fit before missed each reading by.
    for (let round = 0; round < mostRounds; round++) {
      try {
        scaled = levenbergMarquardt(
          { x: measured.map((_, index) => index), y: measured },
          (parameters) => {
            const told = model(parameters);
            return (index) => figureAt(told, index);
          },
          {
            initialValues: scaled,
            weights: weights.map(Math.sqrt),
            damping: 0.1,
            gradientDifference: differenceStep,
            centralDifference: true,
            maxIterations: round === 0 ? 12 : 3,
            errorTolerance: 1e-9,
            ...bounds,
          },
        ).parameterValues;
      } catch {
        // At a step where the model gives no figure, which readings far from any dough bring about, the library refuses to go
        // on: what the round before came to stands, and of the first one nothing is told.
        isFound = round > 0;
        break;
      }
      const next = differences(model(scaled), measured).map(readingWeight);
      const moved = Math.max(...differences(next, weights).map(Math.abs));
      weights = next;
      if (!(moved > settledWeights)) break;
    }
  }
  const celsius = model(scaled);
  const misses = differences(celsius, measured);
  const slopes = scaled.map((value, index) => {
    const at = (change: number) => model(scaled.with(index, value + change));
    const [above, below] = [at(differenceStep), at(-differenceStep)];
    return differences(above, below).map((one) => one / (2 * differenceStep));
  });
  const errors = standardErrors(slopes, misses, thermometerCelsius, weights);
  return {
    values: products(scaled, scales),
    errors: isFound ? products(errors, scales) : scales.map(() => Number.POSITIVE_INFINITY),
    celsius,
    spread: robustSpread(misses),
  };
}

/** Two rows of the same length, multiplied figure by figure. */
function products(some: readonly number[], others: readonly number[]): number[] {
  return some.map((one, index) => one * figureAt(others, index));
}

/** What each figure of the first row is more than that of the second. */
function differences(some: readonly number[], others: readonly number[]): number[] {
  return some.map((one, index) => one - figureAt(others, index));
}

/** Rounds of weighting, at most, and by how much weights may still move when they count as settled. */
const mostRounds = 8;
const settledWeights = 0.02;

const waterScale = 10;
const differenceStep = 1e-3;

/** The quantities that the readings do not tell: undetermined, too uncertain, or run up against what can be. */
function untold(fit: Fit, free: readonly Free[]): Free[] {
  return free.filter((one, index) => {
    const value = figureAt(fit.values, index);
    const atBound = value >= one.most * (1 - 1e-9) || value <= one.least + 1e-9;
    if (atBound && one.quantity.kind !== 'warms') return true;
    return !(figureAt(fit.errors, index) <= one.tellable(value));
  });
}

function parameterOf(one: NamedFree, free: readonly Free[], fit: Fit): CalibratedParameter {
  const { quantity, before } = one;
  const own = free.indexOf(one);
  if (own >= 0) return told(quantity, before, figureAt(fit.values, own), figureAt(fit.errors, own));
  for (const [index, { quantity: shared }] of free.entries()) {
    if (shared.kind !== 'warm alike' || quantity.kind !== 'warms') continue;
    const rate = shared.rates.find(({ speed }) => speed === quantity.speed)?.celsiusPerMinute;
    if (rate === undefined) continue;
    const [value, error] = [figureAt(fit.values, index), figureAt(fit.errors, index)];
    return { ...told(quantity, before, value * rate, error * rate), shared: true };
  }
  return { quantity, before, value: unknown(one.lacks) };
}

function told(
  quantity: CalibratedQuantity,
  before: Known<number, Message>,
  value: number,
  standardError: number,
): CalibratedParameter {
  return { quantity, before, value: known(value, 'measured'), standardError };
}

function rootMeanSquare(misses: readonly number[]): number {
  return Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / Math.max(1, misses.length));
}
