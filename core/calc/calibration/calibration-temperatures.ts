import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { type Known, unknown } from '../known.ts';
import type { MixerData } from '../mixing/mixer.ts';
import { celsiusAt, simulateMixing } from '../mixing/mixing.ts';
import type { MixingInput } from '../mixing/mixing-programme.ts';
import { type CalibrationTrial, type Free, withValues } from './calibration-quantities.ts';

/** The run of one trial on a mixer, with its water at so many °C where the trial does not say. */
interface Run {
  readonly mixer: MixerData;
  readonly water: number | undefined;
  readonly celsius: readonly Known<number, Message>[];
}

/** More than a fit tries of one mixer before it comes back to where it was. */
const mostRuns = 12;

/**
 * The temperatures of all readings, trial by trial, for values of the free quantities and for the water of each trial that
 * does not give its own. Each trial remembers its last runs: another start of one of them is no reason to run the others.
 */
export function trialTemperatures(
  mixer: MixerData,
  trials: readonly CalibrationTrial[],
  free: readonly Free[] = [],
): (values: readonly number[], waters: readonly number[]) => Known<number, Message>[] {
  const runs: Run[][] = trials.map(() => []);
  const mixers: { readonly values: readonly number[]; readonly mixer: MixerData }[] = [];
  const mixerOf = (values: readonly number[]): MixerData => {
    const before = mixers.find((one) => one.values.every((value, index) => value === values[index]));
    if (before !== undefined) return before.mixer;
    const made = { values, mixer: withValues(mixer, free, values) };
    mixers.push(made);
    if (mixers.length > mostRuns) mixers.shift();
    return made.mixer;
  };
  return (values, waters) => {
    const now = mixerOf(values);
    let next = 0;
    return trials.flatMap((trial, index) => {
      const water = trial.waterKnown ? undefined : elementAt(waters, next++);
      const held = elementAt(runs, index);
      const before = held.find((one) => one.mixer === now && one.water === water);
      if (before !== undefined) return before.celsius;
      const celsius = readingsOf(trial, now, water);
      held.push({ mixer: now, water, celsius });
      if (held.length > mostRuns) held.shift();
      return celsius;
    });
  };
}

function readingsOf(
  trial: CalibrationTrial,
  mixer: MixerData,
  water: number | undefined,
): Known<number, Message>[] {
  const plain = { ...trial.mixing, mixer, curve: noCurve };
  const outcome = simulateMixing(water === undefined ? plain : withWater(plain, water));
  const last = outcome.points.at(-1)?.minutes ?? 0;
  return trial.readings.map(({ minutes }) => celsiusAt(outcome, Math.min(last, Math.max(0, minutes))));
}

// Temperatures do not hang on development, and without it the programme runs faster.
const noCurve = unknown(message('mixing.not-asked'));

/** A programme with its tempered water at a temperature, °C. */
export function withWater(mixing: MixingInput, celsius: number): MixingInput {
  const phases = mixing.phases.map((phase) =>
    'portions' in phase
      ? {
          ...phase,
          portions: phase.portions.map((one) => (one.tempered === true ? { ...one, celsius } : one)),
        }
      : phase,
  );
  return { ...mixing, phases };
}
