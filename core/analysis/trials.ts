import { cannotHaveBeen } from '../calc/coldest.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import { celsiusAt, type MixingOutcome, simulateMixing } from '../calc/mixing.ts';
import type { MixingInput, MixingPhase, MixPortion } from '../calc/mixing-programme.ts';
import { stageAt } from '../calc/stage-at.ts';
import type { TrialModel } from '../model/formula-model.ts';
import { findMixer, type Mixer } from '../model/mixer.ts';
import { fractionOf, saidValue } from '../model/properties.ts';
import type { Scope } from '../model/scope.ts';
import { foldName } from '../text/names.ts';
import type { Analysis } from './analysis.ts';
import { frictionOfTrial } from './trial-friction.ts';

/** A reading of the dough’s temperature, on its line of the block. */
export interface TrialReading {
  readonly line: number;
  /** From the start of mixing, rests included; of `end`, the end of the programme. */
  readonly minutes: number;
  readonly celsius: number;
  readonly stage?: string;
  readonly isEnd: boolean;
}

/** The formula’s programme as the trial ran it. */
export interface TrialMix {
  readonly mixer: Mixer;
  readonly input: MixingInput;
  /** The trial or the formula says how warm the water was. */
  readonly waterKnown: boolean;
  readonly programmeMinutes: number;
}

/** What a dough weighed less than what went in, read as water that is gone. */
export interface WeightLoss {
  readonly pouredGrams: number;
  readonly doughGrams: number;
  readonly lostGrams: number;
  readonly hydrationBefore: number;
  /** Were all of it water; what stuck to hands, bowl and table takes no hydration with it. */
  readonly hydrationIfWater: number;
  /** What the formula itself counts as dough left in bowl, on table and hands, of what is gone; absent where it counts none. */
  readonly stuckGrams?: number;
  /** With that left out, the rest read as water. */
  readonly hydrationAfter: number;
}

/** A trial of a formula beside its programme. */
export interface TrialAnalysis {
  readonly index: number;
  readonly model: TrialModel;
  readonly readings: readonly TrialReading[];
  readonly mix: Known<TrialMix>;
  /** What went into the bowl, grams; unknown where the formula has no yield of its own. */
  readonly pouredGrams: Known<number>;
  /** Runs the programme; worked out when first asked for. */
  readonly predicted: () => Known<MixingOutcome>;
  readonly loss: Known<WeightLoss>;
  /** The friction factor of three thermometers that it shows; worked out when asked for. */
  readonly friction: () => Known<number>;
}

/** A reading beside the prediction for its minute. */
export interface ComparedReading extends TrialReading {
  readonly predictedCelsius: Known<number>;
  readonly predictedStage?: string;
}

/** Of a batch of the formula’s size; a trial that weighs less or more than these was a batch of another size. */
const sameBatch = { least: 0.8, most: 1.25 };

const kept = new WeakMap<Analysis, readonly TrialAnalysis[]>();

/**
 * The trials of a formula beside its programme, in the order of the file. The prediction itself is run only when it is
 * asked for, so that a keystroke does not pay for it.
 */
export function trialsOf(analysis: Analysis, scope: Scope): readonly TrialAnalysis[] {
  const { trials } = analysis.resolved.model;
  if (trials.length === 0) return [];
  // The mixers are looked up each time: whoever remembers look-ups must see them, and another mixer is another answer.
  const mixers = trials.map((trial) => mixerOf(analysis, trial, scope));
  const before = kept.get(analysis);
  if (before?.every((one, index) => isSameMixer(one.mix, mixers[index]!)) === true) return before;
  const made = trials.map((model, index) => trialOf(analysis, model, index, mixers[index]!));
  kept.set(analysis, made);
  return made;
}

/** The readings of a trial beside what is worked out for them. Runs the programme. */
export function comparedReadings(trial: TrialAnalysis): ComparedReading[] {
  const outcome = trial.predicted();
  return trial.readings.map((reading): ComparedReading => {
    if (!outcome.known) return { ...reading, predictedCelsius: outcome };
    if (reading.minutes > outcome.value.programmeMinutes + 1e-6)
      return { ...reading, predictedCelsius: unknown('the programme is over by then') };
    const last = outcome.value.points.at(-1)?.minutes ?? 0;
    const stage = trial.mix.known ? stageAt(trial.mix.value.input, reading.minutes) : trial.mix;
    return {
      ...reading,
      predictedCelsius: celsiusAt(outcome.value, Math.min(last, reading.minutes)),
      ...(stage.known ? { predictedStage: stage.value } : {}),
    };
  });
}

/** The part of a trial that a mixer can be fitted to; undefined when it has none. */
export function trialEvidence(trial: TrialAnalysis, label: string) {
  if (!trial.mix.known) return undefined;
  const { input, waterKnown, programmeMinutes } = trial.mix.value;
  const readings = trial.readings.filter(
    ({ minutes, celsius }) =>
      minutes >= 0 &&
      minutes <= programmeMinutes + 1e-6 &&
      cannotHaveBeen(input, minutes, celsius) === undefined,
  );
  return readings.length === 0 ? undefined : { label, mixing: input, readings, waterKnown };
}

function mixerOf(analysis: Analysis, trial: TrialModel, scope: Scope): Known<Mixer> {
  const name = saidValue(trial.said, 'mixer', 'name')?.name;
  if (name === undefined) {
    const { doughMix } = analysis;
    return doughMix.known ? known(doughMix.value.mixer, 'given') : doughMix;
  }
  const found = findMixer(name, scope);
  return found.kind === 'found'
    ? known(found.mixer, 'given')
    : unknown(`the mixer “${name.text}” is not known`);
}

function isSameMixer(mix: Known<TrialMix>, mixer: Known<Mixer>): boolean {
  if (!mix.known || !mixer.known) return !mix.known && !mixer.known && mix.reason === mixer.reason;
  const [one, other] = [mix.value.mixer, mixer.value];
  return one === other || (one.definition !== undefined && one.definition.block === other.definition?.block);
}

function trialOf(analysis: Analysis, model: TrialModel, index: number, mixer: Known<Mixer>): TrialAnalysis {
  const poured = pouredOf(analysis, model);
  const mix = mixer.known ? mixOf(analysis, model, mixer.value, poured) : mixer;
  let outcome: Known<MixingOutcome> | undefined;
  return {
    index,
    model,
    readings: readingsOf(model, mix),
    mix,
    pouredGrams:
      poured.known && poured.value.sized
        ? known(poured.value.grams, 'given')
        : unknown(poured.known ? 'the formula has no yield' : poured.reason),
    predicted: () => {
      outcome ??= run(mix);
      return outcome;
    },
    loss: lossOf(analysis, model, poured),
    friction: () =>
      mix.known
        ? frictionOfTrial(mix.value.input, saidValue(model.said, 'end', 'temperature')?.celsius)
        : mix,
  };
}

function run(mix: Known<TrialMix>): Known<MixingOutcome> {
  if (!mix.known) return mix;
  if (!mix.value.waterKnown) return unknown('the trial does not say how warm the water was');
  const outcome = simulateMixing(mix.value.input);
  return outcome.endCelsius.known ? known(outcome, 'common practice') : outcome.endCelsius;
}

interface Poured {
  readonly grams: number;
  readonly flourGrams: number;
  /** The water lines of the programme against those of the formula. */
  readonly waterFactor: number;
  readonly waterGrams: number;
  /** The formula gives the size of its batch. */
  readonly sized: boolean;
}

function pouredOf(analysis: Analysis, trial: TrialModel): Known<Poured> {
  const { doughMix, solved } = analysis;
  if (!doughMix.known) return doughMix;
  const portions = portionsOf(doughMix.value.input.phases);
  const sum = (of: (portion: MixPortion) => number): number =>
    portions.reduce((all, one) => all + of(one), 0);
  const waterGrams = sum((one) => (one.kind === 'water' ? one.grams : 0));
  const given = saidMass(trial, 'water');
  const waterFactor = given === undefined || !(waterGrams > 0) ? 1 : given / waterGrams;
  return known(
    {
      grams: sum((one) => one.grams) + (waterFactor - 1) * waterGrams,
      flourGrams: sum((one) => one.flourGrams),
      waterFactor,
      waterGrams,
      sized: solved?.assumedScale === false,
    },
    'given',
  );
}

function mixOf(analysis: Analysis, trial: TrialModel, mixer: Mixer, poured: Known<Poured>): Known<TrialMix> {
  const { doughMix } = analysis;
  if (!doughMix.known) return doughMix;
  if (!poured.known) return poured;
  const { bakery } = analysis.resolved;
  const roomCelsius = saidValue(trial.said, 'room', 'temperature')?.celsius ?? bakery.roomCelsius;
  const flourCelsius = saidValue(trial.said, 'flour', 'temperature')?.celsius;
  const waterCelsius = saidTemperature(trial, 'water');
  const named = new Map<string, number>();
  for (const { statement } of trial.said.get('part temperature') ?? []) {
    if (statement.value?.form === 'partTemperature')
      named.set(statement.value.name.folded, statement.value.celsius);
  }
  const dough = saidValue(trial.said, 'dough', 'mass')?.grams;
  const ratio = dough === undefined ? 1 : dough / poured.value.grams;
  const isSame = poured.value.sized && ratio >= sameBatch.least && ratio <= sameBatch.most;
  const size = isSame || !(ratio > 0 && Number.isFinite(ratio)) ? 1 : ratio;
  const measured = (portion: MixPortion): MixPortion => {
    const factor = size * (portion.kind === 'water' ? poured.value.waterFactor : 1);
    const taken = factor === 1 ? portion : scaledPortion(portion, factor);
    const byName = named.get(foldName(portion.label));
    if (byName !== undefined) return at(taken, byName);
    if (portion.kind === 'water' && waterCelsius !== undefined) return at(taken, waterCelsius);
    if (portion.kind === 'flour' && flourCelsius !== undefined) return at(taken, flourCelsius);
    // What stood in the room is as warm as the room was that day.
    return portion.kind !== 'water' && portion.kind !== 'flour' && portion.celsius === bakery.roomCelsius
      ? at(taken, roomCelsius)
      : taken;
  };
  const phases = doughMix.value.input.phases.map(
    (phase): MixingPhase =>
      'portions' in phase ? { ...phase, portions: phase.portions.map(measured) } : phase,
  );
  return known(
    {
      mixer,
      input: { ...doughMix.value.input, phases, roomCelsius, mixer: mixer.data },
      waterKnown: !portionsOf(phases).some((portion) => portion.tempered === true),
      programmeMinutes: doughMix.value.outcome.programmeMinutes,
    },
    'given',
  );
}

function at(portion: MixPortion, celsius: number): MixPortion {
  const { tempered: _, ...rest } = portion;
  return { ...rest, celsius };
}

function scaledPortion(portion: MixPortion, factor: number): MixPortion {
  return {
    ...portion,
    grams: portion.grams * factor,
    flourGrams: portion.flourGrams * factor,
    freeWaterGrams: portion.freeWaterGrams * factor,
    fatGrams: portion.fatGrams * factor,
    sugarGrams: portion.sugarGrams * factor,
    saltGrams: portion.saltGrams * factor,
  };
}

function portionsOf(phases: readonly MixingPhase[]): MixPortion[] {
  return phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
}

function readingsOf(trial: TrialModel, mix: Known<TrialMix>): TrialReading[] {
  const readings = (trial.said.get('at') ?? []).flatMap(({ line, statement: { value } }): TrialReading[] => {
    if (value?.form !== 'reading') return [];
    const { seconds, celsius, stage } = value;
    const base = { line, minutes: seconds / 60, celsius, isEnd: false };
    return [stage === undefined ? base : { ...base, stage: stage.folded }];
  });
  const end = trial.said.get('end')?.find((one) => one.statement.value?.form === 'temperature');
  const celsius = saidValue(trial.said, 'end', 'temperature')?.celsius;
  if (end !== undefined && celsius !== undefined && mix.known)
    readings.push({ line: end.line, minutes: mix.value.programmeMinutes, celsius, isEnd: true });
  return readings;
}

function lossOf(analysis: Analysis, trial: TrialModel, poured: Known<Poured>): Known<WeightLoss> {
  const doughGrams = saidValue(trial.said, 'dough', 'mass')?.grams;
  if (doughGrams === undefined) return unknown('the trial does not say what the dough weighed');
  if (!poured.known) return poured;
  const { grams, flourGrams, sized, waterFactor } = poured.value;
  const hydration = analysis.solved?.hydration;
  if (!sized) return unknown('the formula has no yield, so what went in is not known');
  if (hydration === undefined || !(flourGrams > 0)) return unknown('the hydration is not known');
  if (doughGrams < grams * sameBatch.least || doughGrams > grams * sameBatch.most)
    return unknown('it was a batch of another size than the formula’s');
  const lostGrams = grams - doughGrams;
  // The scale steps: less than a thousandth is no loss.
  if (lostGrams < grams * 1e-3) return unknown('the dough weighs what went in');
  const counted = (fractionOf(analysis.resolved.model.said, 'loss') ?? 0) * grams;
  const stuckGrams = Math.min(counted, lostGrams);
  const hydrationBefore = hydration + ((waterFactor - 1) * poured.value.waterGrams) / flourGrams;
  return known(
    {
      pouredGrams: grams,
      doughGrams,
      lostGrams,
      hydrationBefore,
      hydrationIfWater: hydrationBefore - lostGrams / flourGrams,
      hydrationAfter: hydrationBefore - (lostGrams - stuckGrams) / flourGrams,
      ...(counted > 0 ? { stuckGrams } : {}),
    },
    'measured',
  );
}

function saidMass(trial: TrialModel, word: string): number | undefined {
  for (const { statement } of trial.said.get(word) ?? [])
    if (statement.value?.form === 'mass') return statement.value.grams;
  return undefined;
}

function saidTemperature(trial: TrialModel, word: string): number | undefined {
  for (const { statement } of trial.said.get(word) ?? [])
    if (statement.value?.form === 'temperature') return statement.value.celsius;
  return undefined;
}
