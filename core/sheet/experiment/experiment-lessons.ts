import type { ExperimentAnalysis, ExperimentDough } from '../../analysis/experiment-analysis.ts';
import { flourTrials } from '../../analysis/flour-trials.ts';
import { handTrials, type MixerTrials, mixerTrials } from '../../analysis/mixer-trials.ts';
import { keyOf } from '../../analysis/trial-evidence.ts';
import { agreesWithBelieved } from '../../calc/calibration/calibration-development.ts';
import { factorsMessage, figureOf } from '../../facts/calibration-markdown.ts';
import { nameOf } from '../../facts/experiment-words.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import type { Scope } from '../../model/scope.ts';
import { apartOf, oddOf } from '../../rules/trials/calibration-doubts.ts';
import { quantityMessage } from '../../rules/trials/calibration-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

/** What the readings say of the mixers and of the flours of an experiment, each with its error; no sentence before there is a reading. */
export function lessonsOf(experiment: ExperimentAnalysis, scope: Scope): readonly Message[] {
  if (!hasReadings(experiment)) return [];
  return [
    ...mixersOf(experiment).flatMap((mixer) => mixerLessons(mixer, scope)),
    ...flourLessons(experiment, scope),
  ];
}

/** What one more reading would settle. */
export function nextReadings(
  experiment: ExperimentAnalysis,
  scope: Scope,
  speaker: Speaker,
): readonly Message[] {
  if (!hasReadings(experiment)) return [message('experiment.nothing-yet')];
  return [
    ...experiment.doughs.flatMap((dough) => widestReading(dough, experiment, scope, speaker)),
    ...mixersOf(experiment).flatMap((mixer) => mixerQuestions(mixer, experiment, scope)),
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

/** A kind that is named alone is no machine of anybody: what is read of it stands for no other dough. */
const isKindAlone = ({ definition, data }: Mixer): boolean =>
  definition === undefined && data.kind !== 'hand';

function mixerLessons(mixer: Mixer, scope: Scope): readonly Message[] {
  const { name } = mixer;
  if (isKindAlone(mixer)) return [message('experiment.kind-alone', { name, example: `mixer my ${name}:` })];
  const trials = trialsOn(mixer, scope);
  return trials === undefined ? [] : [...warmingLessons(name, trials), ...developmentLessons(name, trials)];
}

function warmingLessons(name: string, { calibration }: MixerTrials): readonly Message[] {
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
  const doubts = [apartOf(calibration.value), oddOf(calibration.value)].flatMap((one) =>
    one === undefined ? [] : [message('experiment.mixer-doubt', { name, parts: [one] })],
  );
  return [...misses, ...learned, ...doubts];
}

/** In agreement with the hover of the mixer; a band that is open on both sides says nothing. */
function developmentLessons(name: string, { development }: MixerTrials): readonly Message[] {
  const factor = development();
  if (!factor.known)
    return factor.reason.code === 'calibration.stages-disagree'
      ? [message('experiment.develops-unclear', { name, reason: factor.reason })]
      : [];
  const { least, most, flours } = factor.value;
  if (!(least > 0) && most === undefined) return [];
  const seen = { name, figures: factorsMessage(least, most) };
  if (agreesWithBelieved(factor.value)) return [message('experiment.develops-so', seen)];
  return [message(flours > 1 ? 'experiment.develops' : 'experiment.develops-either', seen)];
}

function flourLessons({ doughs }: ExperimentAnalysis, scope: Scope): readonly Message[] {
  const told = new Set<string>();
  return doughs.flatMap(({ analysis }) =>
    [...(analysis?.resolved.ingredients.values() ?? [])].flatMap((ingredient): Message[] => {
      const { definition, key, isFlour } = ingredient;
      if (!isFlour || definition === undefined || told.has(key)) return [];
      told.add(key);
      const seen = flourTrials(definition.block, definition.name, scope);
      if (seen === undefined || agreesWithBelieved(seen)) return [];
      const { least: lowFactor, most: highFactor, mixers: count } = seen;
      return [
        message('experiment.flour-develops', { name: definition.name.text, lowFactor, highFactor, count }),
      ];
    }),
  );
}

function mixerQuestions(mixer: Mixer, experiment: ExperimentAnalysis, scope: Scope): readonly Message[] {
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
  if (!factor.known) {
    // Stages that disagree are seen already, and a dough of rye has none to see.
    const isToSee = factor.reason.code === 'calibration.no-stage' && hasStages(mixer, experiment);
    return isToSee ? [...open, message('experiment.next-stage', { name })] : open;
  }
  const isOff = !agreesWithBelieved(factor.value);
  return isOff && factor.value.flours < 2 ? [...open, message('experiment.next-flour', { name })] : open;
}

/** Whether a dough of the experiment that goes through the stages of mixing is mixed there. */
function hasStages(mixer: Mixer, { doughs }: ExperimentAnalysis): boolean {
  return doughs.some(
    ({ mixer: own, programme }) =>
      own !== undefined &&
      keyOf(own) === keyOf(mixer) &&
      programme.known &&
      programme.value.outcome.development.known,
  );
}

/** Of a dough that nobody has read yet, the reading whose band is widest; one alone shows nothing of a mixer that nobody has read either. */
function widestReading(
  dough: ExperimentDough,
  { doughs }: ExperimentAnalysis,
  scope: Scope,
  speaker: Speaker,
): readonly Message[] {
  const { readings, measured, mixer } = dough;
  if (mixer === undefined || measured.some((one) => one.readings.length > 0)) return [];
  let widest: { readonly minutes: number; readonly bandCelsius: number } | undefined;
  for (const { minutes, expected } of readings) {
    if (!expected.known) continue;
    const { bandCelsius } = expected.value;
    if (widest === undefined || bandCelsius > widest.bandCelsius) widest = { minutes, bandCelsius };
  }
  if (widest === undefined) return [];
  const facts = { name: nameOf(dough, doughs, speaker), minutes: widest.minutes };
  const isFirst = !isKindAlone(mixer) && trialsOn(mixer, scope)?.calibration.known !== true;
  return [message(isFirst ? 'experiment.next-first' : 'experiment.next-reading', facts)];
}
