import type { ExperimentAnalysis, ExperimentDough } from '../../analysis/experiment-analysis.ts';
import { flourTrials } from '../../analysis/flour-trials.ts';
import { handTrials, type MixerTrials, mixerTrials } from '../../analysis/mixer-trials.ts';
import { keyOf } from '../../analysis/trial-evidence.ts';
import { figureOf } from '../../facts/calibration-markdown.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import type { Scope } from '../../model/scope.ts';
import { quantityMessage } from '../../rules/trials/calibration-words.ts';
import { type Message, message } from '../../words/message.ts';

/** What the readings say of the mixers and of the flours of an experiment, each with its error; no sentence before there is a reading. */
export function lessonsOf(experiment: ExperimentAnalysis, scope: Scope): readonly Message[] {
  if (!hasReadings(experiment)) return [];
  return [
    ...mixersOf(experiment).flatMap((mixer) => mixerLessons(mixer, scope)),
    ...flourLessons(experiment, scope),
  ];
}

/** What one more reading would settle. */
export function nextReadings(experiment: ExperimentAnalysis, scope: Scope): readonly Message[] {
  if (!hasReadings(experiment)) return [message('experiment.nothing-yet')];
  return [
    ...experiment.doughs.flatMap(widestReading),
    ...mixersOf(experiment).flatMap((mixer) => mixerQuestions(mixer, scope)),
  ];
}

const hasReadings = ({ doughs }: ExperimentAnalysis): boolean =>
  doughs.some(({ measured }) => measured.some(({ readings }) => readings.length > 0));

/** The mixers that the doughs with readings were run on, each once. */
function mixersOf({ doughs }: ExperimentAnalysis): readonly Mixer[] {
  const mixers = new Map<unknown, Mixer>();
  for (const { measured } of doughs)
    for (const { trial } of measured)
      if (trial.mix.known) mixers.set(keyOf(trial.mix.value.mixer), trial.mix.value.mixer);
  return [...mixers.values()];
}

function trialsOn({ definition, data }: Mixer, scope: Scope): MixerTrials | undefined {
  if (definition !== undefined) return mixerTrials(definition.block, definition.name, scope);
  return data.kind === 'hand' ? handTrials(scope) : undefined;
}

function mixerLessons(mixer: Mixer, scope: Scope): readonly Message[] {
  const { name } = mixer;
  const trials = trialsOn(mixer, scope);
  if (trials === undefined) return [];
  const { calibration } = trials;
  if (!calibration.known) return [message('experiment.mixer-not-yet', { name, reason: calibration.reason })];
  const { spreadBefore, spreadAfter: laterCelsius, parameters } = calibration.value;
  const misses = spreadBefore.known
    ? [message('experiment.mixer-misses', { name, apartCelsius: spreadBefore.value, laterCelsius })]
    : [];
  const learned = parameters.flatMap((one) =>
    one.value.known && one.standardError !== undefined
      ? [
          message('experiment.learned', {
            name,
            title: quantityMessage(one.quantity),
            figures: figureOf(one, one.value.value),
            difference: figureOf(one, one.standardError, true),
          }),
        ]
      : [],
  );
  const factor = trials.development();
  if (!factor.known || factor.value.most === undefined) return [...misses, ...learned];
  const { least: lowFactor, most: highFactor, flours } = factor.value;
  if (lowFactor <= 1 && highFactor >= 1)
    return [...misses, ...learned, message('experiment.develops-so', { name, lowFactor, highFactor })];
  const code = flours > 1 ? 'experiment.develops' : 'experiment.develops-either';
  return [...misses, ...learned, message(code, { name, lowFactor, highFactor })];
}

function flourLessons({ doughs }: ExperimentAnalysis, scope: Scope): readonly Message[] {
  const told = new Set<string>();
  return doughs.flatMap(({ analysis }) =>
    [...(analysis?.resolved.ingredients.values() ?? [])].flatMap((ingredient): Message[] => {
      const { definition, key, isFlour } = ingredient;
      if (!isFlour || definition === undefined || told.has(key)) return [];
      told.add(key);
      const seen = flourTrials(definition.block, definition.name, scope);
      if (seen === undefined) return [];
      const { least: lowFactor, most: highFactor, mixers: count } = seen;
      return [
        message('experiment.flour-develops', { name: definition.name.text, lowFactor, highFactor, count }),
      ];
    }),
  );
}

function mixerQuestions(mixer: Mixer, scope: Scope): readonly Message[] {
  const { name } = mixer;
  const trials = trialsOn(mixer, scope);
  if (trials === undefined) return [];
  const { calibration } = trials;
  const parameters = calibration.known ? calibration.value.parameters : [];
  const open = parameters.flatMap(({ quantity, value }) =>
    value.known
      ? []
      : [
          message('experiment.next-parameter', {
            name,
            title: quantityMessage(quantity),
            reason: value.reason,
          }),
        ],
  );
  const factor = trials.development();
  if (!factor.known) return [...open, message('experiment.next-stage', { name })];
  const { least, most, flours } = factor.value;
  const isOff = least > 1 || (most !== undefined && most < 1);
  return isOff && flours < 2 ? [...open, message('experiment.next-flour', { name })] : open;
}

/** Of a dough that nobody has read yet, the reading whose band is widest. */
function widestReading({ formula, readings, measured }: ExperimentDough): readonly Message[] {
  if (measured.some((one) => one.readings.length > 0)) return [];
  let widest: { readonly minutes: number; readonly bandCelsius: number } | undefined;
  for (const { minutes, expected } of readings) {
    if (!expected.known) continue;
    const { bandCelsius } = expected.value;
    if (widest === undefined || bandCelsius > widest.bandCelsius) widest = { minutes, bandCelsius };
  }
  return widest === undefined
    ? []
    : [message('experiment.next-reading', { name: formula, minutes: widest.minutes })];
}
