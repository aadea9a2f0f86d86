import { scaledPortion } from '../calc/formula/scaled-portion.ts';
import { cannotHaveBeen } from '../calc/heat/coldest.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import type { MixingStage } from '../calc/mixing/development.ts';
import { celsiusAt, type MixingOutcome, simulateMixing } from '../calc/mixing/mixing.ts';
import type { MixingInput, MixingPhase, MixPortion } from '../calc/mixing/mixing-programme.ts';
import { minutesOfPhases } from '../calc/mixing/phase-times.ts';
import { stageAt } from '../calc/mixing/stage-at.ts';
import type { TrialModel } from '../model/formula-model.ts';
import { findHands, findMixer, type Mixer } from '../model/found-mixer.ts';
import { saidValue } from '../model/properties.ts';
import type { Scope } from '../model/scope.ts';
import type { ReadingValue } from '../syntax/reading-value.ts';
import type { Name } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import { type StageSpan, stagesSeen } from './feel.ts';
import type { ReadyProgramme } from './mix-analysis.ts';
import { batchOfTrial } from './trial-batch.ts';
import { frictionOfTrial } from './trial-friction.ts';
import { doughMixOf, keptProgramme, withUsualFriction } from './trial-programme.ts';
import { isSameBatch, lossOf, type Poured, portionsOf, pouredOf, type WeightLoss } from './trial-weights.ts';

/** A reading of the dough’s temperature, on its line of the block. */
export interface TrialReading {
  readonly line: number;
  /** From the start of mixing, rests included; of `end`, the end of the programme. */
  readonly minutes: number;
  /** Absent where words alone were written. */
  readonly celsius?: number;
  readonly stage?: string;
  /** How the dough felt, in the words of the notation. */
  readonly feel?: readonly string[];
  /** The stages that the reading saw, by its stage or by its feel. */
  readonly stages?: StageSpan;
  readonly isEnd: boolean;
}

/** The programme that a trial ran: its own where it keeps one, else the formula’s as it is now. */
export interface TrialMix {
  readonly mixer: Mixer;
  readonly input: MixingInput;
  /** Lines of the phases of `input`, counted in the block. */
  readonly phaseLines: readonly number[];
  /** The trial keeps what was run, so that no change of the formula’s programme changes it. */
  readonly isKept: boolean;
  /** The trial or the formula says how warm the water was. */
  readonly waterKnown: boolean;
  readonly programmeMinutes: number;
}

/** A trial of a formula beside the programme it ran. */
export interface TrialAnalysis {
  readonly index: number;
  readonly model: TrialModel;
  readonly readings: readonly TrialReading[];
  readonly mix: Known<TrialMix, Message>;
  /** What went into the bowl, grams; unknown where the formula has no yield of its own. */
  readonly pouredGrams: Known<number, Message>;
  /** Runs the programme; worked out when first asked for. */
  readonly predicted: () => Known<MixingOutcome, Message>;
  readonly loss: Known<WeightLoss, Message>;
  /** The friction factor of three thermometers that it shows; worked out when asked for. */
  readonly friction: () => Known<number, Message>;
}

/** A reading beside the prediction for its minute. */
export interface ComparedReading extends TrialReading {
  readonly predictedCelsius: Known<number, Message>;
  readonly predictedStage?: MixingStage;
}

interface KeptTrials {
  readonly trials: readonly TrialAnalysis[];
  readonly batches: readonly (number | undefined)[];
}

const kept = new WeakMap<Analysis, KeptTrials>();

/**
 * The trials of a formula, each beside the programme it ran, in the order of the file. The prediction itself is run only when it is
 * asked for, so that a keystroke does not pay for it.
 */
export function trialsOf(analysis: Analysis, scope: Scope): readonly TrialAnalysis[] {
  const { trials } = analysis.resolved.model;
  if (trials.length === 0) return [];
  // Mixers and experiments are looked up each time: whoever remembers look-ups must see them, and another one is another answer.
  const mixers = trials.map((trial) => mixerOf(analysis, trial, scope));
  const batches = trials.map((trial) => batchOfTrial(trial, scope));
  const before = kept.get(analysis);
  const isSame = before?.trials.every(
    ({ mix }, index) =>
      isSameMixer(mix, elementAt(mixers, index)) && before.batches[index] === batches[index],
  );
  if (before !== undefined && isSame === true) return before.trials;
  const made = trials.map((model, index) =>
    trialOf(analysis, model, index, elementAt(mixers, index), batches[index]),
  );
  kept.set(analysis, { trials: made, batches });
  return made;
}

/** The readings of a trial beside what is worked out for them. Runs the programme. */
export function comparedReadings(trial: TrialAnalysis): ComparedReading[] {
  const outcome = trial.predicted();
  return trial.readings.map((reading): ComparedReading => {
    const { mix } = trial;
    if (!mix.known) return { ...reading, predictedCelsius: mix };
    const { input, programmeMinutes } = mix.value;
    if (reading.minutes > programmeMinutes + 1e-6)
      return { ...reading, predictedCelsius: unknown(message('mixing.over')) };
    // What stage a dough is in hangs on its flour and its work, and is told also where nobody knows how warm it began.
    const stage = stageAt(input, reading.minutes);
    const last = outcome.known ? (outcome.value.points.at(-1)?.minutes ?? 0) : 0;
    return {
      ...reading,
      predictedCelsius: outcome.known ? celsiusAt(outcome.value, Math.min(last, reading.minutes)) : outcome,
      ...(stage.known ? { predictedStage: stage.value } : {}),
    };
  });
}

/** What each reading with a temperature misses the prediction by, °C. */
export function missesOf(compared: readonly ComparedReading[]): readonly number[] {
  return compared.flatMap(({ celsius, predictedCelsius }) =>
    celsius !== undefined && predictedCelsius.known ? [celsius - predictedCelsius.value] : [],
  );
}

/** Why there is nothing to set beside some reading: no temperature beside its own, nor a stage beside what was seen alone. */
export function lackingOf(compared: readonly ComparedReading[]): Message | undefined {
  for (const { celsius, predictedCelsius, predictedStage } of compared)
    if (!predictedCelsius.known && (celsius !== undefined || predictedStage === undefined))
      return predictedCelsius.reason;
  return undefined;
}

/** The part of a trial that a mixer can be fitted to; undefined when it has none. */
export function trialEvidence(trial: TrialAnalysis, label: string) {
  if (!trial.mix.known) return undefined;
  const { input, waterKnown, programmeMinutes } = trial.mix.value;
  const readings = trial.readings.filter(
    ({ minutes, celsius }) =>
      minutes >= 0 &&
      minutes <= programmeMinutes + 1e-6 &&
      (celsius === undefined || cannotHaveBeen(input, minutes, celsius) === undefined),
  );
  return readings.length === 0 ? undefined : { label, mixing: input, readings, waterKnown };
}

function mixerOf(analysis: Analysis, trial: TrialModel, scope: Scope): Known<Mixer, Message> {
  const own = ownMixer(trial);
  if (own?.byHand === true) return known(findHands(scope), 'given');
  const name = own?.name;
  if (name === undefined) {
    if (analysis.doughMix.known) return known(analysis.doughMix.value.mixer, 'given');
    const mixer = trial.phases.length === 0 ? undefined : doughMixOf(analysis.resolved)?.mixer;
    return mixer === undefined ? analysis.doughMix : known(mixer, 'given');
  }
  const found = findMixer(name, scope);
  return found.kind === 'found'
    ? known(found.mixer, 'given')
    : unknown(message('mixing.mixer-not-known', { name: name.text }));
}

/** What the trial says it was mixed in, by whichever of `mixed` and `mixer` stands first. */
function ownMixer({ said }: TrialModel): { readonly name?: Name; readonly byHand?: true } | undefined {
  const told = [...(said.get('mixed') ?? []), ...(said.get('mixer') ?? [])]
    .sort((one, other) => one.line - other.line)
    .flatMap(({ statement: { value } }) =>
      value?.form === 'mixedIn' || value?.form === 'name' ? [value] : [],
    );
  return told[0];
}

function isSameMixer(mix: Known<TrialMix, Message>, mixer: Known<Mixer, Message>): boolean {
  if (!mix.known || !mixer.known) return !mix.known && !mixer.known && isSameReason(mix.reason, mixer.reason);
  const [one, other] = [mix.value.mixer, mixer.value];
  if (one === other || one.definition?.block !== other.definition?.block) return one === other;
  return one.definition !== undefined || (one.name === other.name && one.data === other.data);
}

/** Messages are plain data: the same where they are written alike. */
function isSameReason(one: Message, other: Message): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

function trialOf(
  analysis: Analysis,
  model: TrialModel,
  index: number,
  mixer: Known<Mixer, Message>,
  batchGrams: number | undefined,
): TrialAnalysis {
  const programme = programmeOf(analysis, index);
  const poured = programme.known ? pouredOf(analysis, model, programme.value, batchGrams) : programme;
  const mix = mixer.known ? mixOf(analysis, model, mixer.value, programme, poured) : mixer;
  let outcome: Known<MixingOutcome, Message> | undefined;
  return {
    index,
    model,
    readings: readingsOf(model, mix),
    mix,
    pouredGrams:
      poured.known && poured.value.sized
        ? known(poured.value.grams, 'given')
        : unknown(poured.known ? message('trial.no-yield') : poured.reason),
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

function run(mix: Known<TrialMix, Message>): Known<MixingOutcome, Message> {
  if (!mix.known) return mix;
  if (!mix.value.waterKnown) return unknown(message('trial.no-water'));
  const outcome = simulateMixing(mix.value.input);
  return outcome.endCelsius.known ? known(outcome, 'common practice') : outcome.endCelsius;
}

/** What the trial ran: the lines it keeps, else the programme as it is now. */
function programmeOf(
  { resolved, solved, doughMix }: Analysis,
  index: number,
): Known<ReadyProgramme, Message> {
  const kept = resolved.kept[index];
  return kept === undefined ? doughMix : keptProgramme(resolved, solved, kept);
}

function mixOf(
  analysis: Analysis,
  trial: TrialModel,
  mixer: Mixer,
  programme: Known<ReadyProgramme, Message>,
  poured: Known<Poured, Message>,
): Known<TrialMix, Message> {
  if (!programme.known) return programme;
  if (!poured.known) return poured;
  const { input, phaseLines } = programme.value;
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
  const isSame = poured.value.sized && isSameBatch(ratio);
  const size = isSame || !(ratio > 0 && Number.isFinite(ratio)) ? 1 : ratio;
  const measured = (portion: MixPortion): MixPortion => {
    const factor =
      size * poured.value.batchFactor * (portion.kind === 'water' ? poured.value.waterFactor : 1);
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
  const phases = input.phases.map(
    (phase): MixingPhase =>
      'portions' in phase ? { ...phase, portions: phase.portions.map(measured) } : phase,
  );
  const ran: MixingInput = { ...input, phases, roomCelsius, mixer: mixer.data };
  const isKept = trial.phases.length > 0;
  const isOther = isKept && mixer.data.frictionCelsius !== undefined;
  return known(
    {
      mixer,
      input: isOther ? withUsualFriction(ran, analysis.doughMix, size * poured.value.batchFactor) : ran,
      phaseLines,
      isKept,
      waterKnown: !portionsOf(phases).some((portion) => portion.tempered === true),
      programmeMinutes: minutesOfPhases(phases),
    },
    'given',
  );
}

function at(portion: MixPortion, celsius: number): MixPortion {
  const { tempered: _, ...rest } = portion;
  return { ...rest, celsius };
}

function readingsOf(trial: TrialModel, mix: Known<TrialMix, Message>): TrialReading[] {
  const readings = (trial.said.get('at') ?? []).flatMap(({ line, statement: { value } }): TrialReading[] => {
    if (value?.form !== 'reading') return [];
    return [{ line, minutes: value.seconds / 60, isEnd: false, ...seenIn(value) }];
  });
  const end = trial.said.get('end')?.find((one) => one.statement.value !== undefined);
  const value = end?.statement.value;
  if (end !== undefined && (value?.form === 'temperature' || value?.form === 'seen') && mix.known) {
    const { programmeMinutes: minutes } = mix.value;
    readings.push({ line: end.line, minutes, isEnd: true, ...seenIn(value) });
  }
  return readings;
}

function seenIn(value: ReadingValue): Pick<TrialReading, 'celsius' | 'stage' | 'feel' | 'stages'> {
  const seen = {
    ...('celsius' in value ? { celsius: value.celsius } : {}),
    ...(value.stage === undefined ? {} : { stage: value.stage.folded }),
    ...(value.feel === undefined ? {} : { feel: value.feel.map(({ folded }) => folded) }),
  };
  const stages = stagesSeen(seen);
  return stages === undefined ? seen : { ...seen, stages };
}

function saidTemperature(trial: TrialModel, word: string): number | undefined {
  for (const { statement } of trial.said.get(word) ?? [])
    if (statement.value?.form === 'temperature') return statement.value.celsius;
  return undefined;
}
