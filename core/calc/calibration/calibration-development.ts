import { type Message, message } from '../../words/message.ts';
import { type Known, known, unknown } from '../known.ts';
import { mixingStages } from '../mixing/development.ts';
import { developmentRate, findSpeed, type MixerData } from '../mixing/mixer.ts';
import { stageAt } from '../mixing/stage-at.ts';
import type { CalibrationTrial } from './calibration-quantities.ts';

/** How many times as fast as worked out a mixer develops dough, by the stages that were seen. */
export interface DevelopmentFactor {
  readonly least: number;
  /** Absent where no stage was seen that it must not have passed. */
  readonly most?: number;
  /** Stages seen. */
  readonly readings: number;
  /** Speeds that ran before them: the factor is theirs together. */
  readonly speeds: readonly number[];
  /** Different doughs by their flours that each show it by themselves: with one alone it may be the flour’s. */
  readonly flours: number;
}

/**
 * The factors on a mixer’s development that agree with every stage seen in its trials. A stage is a stretch and no point,
 * so what they leave is a band; one that holds 1 says that the mixer develops as worked out. Unknown where no stage was
 * seen, the dough has no curve, or no one factor agrees with all: flours differ, and a stage is a judgement.
 */
export function developmentFactor(
  mixer: MixerData,
  trials: readonly CalibrationTrial[],
): Known<DevelopmentFactor, Message> {
  const { least, most, readings, speeds } = bandOfStages(mixer, trials);
  if (readings === 0) return unknown(message('calibration.no-stage'));
  if (least > most) return unknown(message('calibration.stages-disagree'));
  return known(
    {
      least,
      readings,
      speeds: [...speeds].sort((one, other) => one - other),
      flours: repeats(mixer, trials, { least, most }),
      ...(most < largestFactor ? { most } : {}),
    },
    'measured',
  );
}

function bandOfStages(
  mixer: MixerData,
  trials: readonly CalibrationTrial[],
): { least: number; most: number; readings: number; speeds: Set<number> } {
  let [least, most] = [0, Number.POSITIVE_INFINITY];
  let readings = 0;
  const speeds = new Set<number>();
  for (const trial of trials) {
    for (const { minutes, stage = '', stages: span } of trial.readings) {
      const earliest = stages.indexOf(span?.earliest ?? stage);
      const latest = stages.indexOf(span?.latest ?? stage);
      if (earliest < 0 || latest < 0) continue;
      const at = (factor: number): number => placeAt(mixer, trial, minutes, factor);
      if (at(1) < 0) continue;
      readings++;
      for (const number of usedSpeeds(mixer, trial)) speeds.add(number);
      // Most readings close the band in no further, and say so at its ends.
      const isReached = (factor: number): boolean => at(factor) >= earliest;
      const isPassed = (factor: number): boolean => at(factor) > latest;
      if (least === 0 || !isReached(least)) least = Math.max(least, firstFactor(isReached));
      if (most > largestFactor || isPassed(most)) most = Math.min(most, firstFactor(isPassed));
    }
  }
  return { least, most, readings, speeds };
}

/** How many flours show by themselves that the mixer develops faster, or slower, than is believed. */
function repeats(
  mixer: MixerData,
  trials: readonly CalibrationTrial[],
  all: { readonly least: number; readonly most: number },
): number {
  const flours = [...new Set(trials.map((trial) => trial.flours))];
  if (flours.length < 2) return 1;
  const alike = flours.filter((flour) => {
    const { least, most } = bandOfStages(
      mixer,
      trials.filter((trial) => trial.flours === flour),
    );
    return all.least > 1 ? least > 1 : all.most < 1 ? most < 1 : false;
  });
  return Math.max(1, alike.length);
}

/** Flours of one name differ by so much from bag to bag. Common practice, no source. */
const flourAlone = 1.2;

/** Whether a band of factors is no news: what is believed lies in it, or so near that the flour of another bag may be all of it. */
export function agreesWithBelieved({ least, most }: Pick<DevelopmentFactor, 'least' | 'most'>): boolean {
  return least <= flourAlone && (most === undefined || most >= 1 / flourAlone);
}

const stages: readonly string[] = mixingStages;

const largestFactor = 10;
const smallestFactor = 0.1;

/** The place of the stage at a minute in the order of stages; −1 where it cannot be told. */
function placeAt(mixer: MixerData, trial: CalibrationTrial, minutes: number, factor: number): number {
  const used = usedSpeeds(mixer, trial);
  const speeds = mixer.speeds.filter((speed) => !used.includes(speed.number));
  for (const number of used) {
    const speed = findSpeed(mixer, number);
    const rate = speed.known ? developmentRate(mixer, speed.value) : speed;
    if (!speed.known || !rate.known) return -1;
    speeds.push({ ...speed.value, developsTimes: rate.value * factor });
  }
  const stage = stageAt({ ...trial.mixing, mixer: { ...mixer, speeds } }, minutes);
  return stage.known ? stages.indexOf(stage.value) : -1;
}

function usedSpeeds(mixer: MixerData, trial: CalibrationTrial): number[] {
  const numbers = trial.mixing.phases.flatMap((phase) => (phase.kind === 'speed' ? [phase.number] : []));
  return mixer.kind === 'hand' ? [1] : [...new Set(numbers)];
}

/** The smallest factor for which something holds that goes on holding; 0 where it always does, endless where never. */
function firstFactor(holds: (factor: number) => boolean): number {
  if (holds(smallestFactor)) return 0;
  if (!holds(largestFactor)) return Number.POSITIVE_INFINITY;
  let [low, high] = [smallestFactor, largestFactor];
  while (high / low > 1.005) {
    const middle = Math.sqrt(low * high);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
