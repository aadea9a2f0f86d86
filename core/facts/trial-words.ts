import { stagesFelt } from '../analysis/feel.ts';
import { stageMessage } from '../analysis/mix-analysis.ts';
import type { WeightLoss } from '../analysis/trial-weights.ts';
import {
  type ComparedReading,
  comparedReadings,
  type TrialAnalysis,
  type TrialReading,
} from '../analysis/trials.ts';
import { mixingStages } from '../calc/mixing/development.ts';
import { feelWords } from '../syntax/vocabulary.ts';
import { trimmed } from '../text/figures.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

/** Measured against computed, for the line of a reading; undefined for a line that holds none. */
export function readingMessage(trial: TrialAnalysis, line: number): Message | undefined {
  const reading = comparedReadings(trial).find((one) => one.line === line);
  if (reading === undefined) return undefined;
  const measured = measuredState(reading);
  if (!reading.predictedCelsius.known)
    return message('reading.alone', { measured, reason: reading.predictedCelsius.reason });
  const computed = state(reading.predictedCelsius.value, reading.predictedStage);
  const difference = differenceFrom(reading, reading.predictedCelsius.value);
  return message('reading.beside', { measured, computed, difference });
}

/** Readings that are off by less than this on the whole lean to no side, °C. */
const leastLean = 0.3;

/** A trial in sentences: its readings against the programme, its weight, as Markdown. */
export function trialMarkdown(trial: TrialAnalysis, speaker: Speaker): string[] {
  const said: string[] = [];
  const compared = comparedReadings(trial);
  const rows = compared.map((one) => {
    const when = one.isEnd ? speaker.say(message('readings.end')) : speaker.minutes(one.minutes);
    const computed = one.predictedCelsius.known
      ? speaker.say(state(one.predictedCelsius.value, one.predictedStage))
      : '–';
    return `| ${when} | ${speaker.say(measuredState(one))} | ${computed} |`;
  });
  const heads = [message('readings.measured'), message('readings.computed')].map(speaker.say);
  if (rows.length > 0) said.push([`| | ${heads.join(' | ')} |`, '| --- | --- | --- |', ...rows].join('\n'));
  const misses = compared.flatMap((one) =>
    one.predictedCelsius.known ? [one.celsius - one.predictedCelsius.value] : [],
  );
  const lacking = compared.find((one) => !one.predictedCelsius.known)?.predictedCelsius;
  if (misses.length > 0) said.push(speaker.say(missMessage(misses)));
  else if (lacking?.known === false)
    said.push(speaker.say(message('readings.alone', { reason: lacking.reason })));
  const friction = trial.friction();
  if (friction.known) {
    const example = `friction ${trimmed(friction.value, 1)} °C`;
    said.push(speaker.say(message('readings.friction', { apartCelsius: friction.value, example })));
  }
  if (trial.loss.known) said.push(speaker.say(lossMessage(trial.loss.value)));
  // Hands need no stopping.
  if (!trial.mix.known || trial.mix.value.input.mixer.kind !== 'hand')
    said.push(`_${speaker.say(message('readings.stop-first'))}_`);
  return said;
}

function missMessage(misses: readonly number[]): Message {
  const apartCelsius = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
  const mean = misses.reduce((sum, miss) => sum + miss, 0) / misses.length;
  if (Math.abs(mean) < leastLean) return message('readings.miss', { apartCelsius });
  return message(mean > 0 ? 'readings.miss-warmer' : 'readings.miss-colder', { apartCelsius });
}

/** What a dough weighed less than what went in, read as water that is lost. */
export function lossMessage(loss: Omit<WeightLoss, 'doughGrams'>): Message {
  const { lostGrams, pouredGrams, hydrationBefore, hydrationIfWater, hydrationAfter, stuckGrams } = loss;
  const facts = {
    lostGrams,
    pouredGrams,
    highFraction: hydrationBefore,
    lowFraction: hydrationIfWater,
  };
  if (stuckGrams === undefined)
    return message('trial-loss.half', { ...facts, fraction: (hydrationBefore + hydrationIfWater) / 2 });
  return stuckGrams >= lostGrams
    ? message('trial-loss.all-stuck', facts)
    : message('trial-loss.some-stuck', { ...facts, stuckGrams, fraction: hydrationAfter });
}

function state(celsius: number, stage: string | undefined): Message {
  return stage === undefined
    ? message('reading.state', { celsius })
    : message('reading.state-stage', { celsius, stage: stageMessage(stage) });
}

function measuredState({ celsius, stage, feel = [] }: TrialReading): Message {
  const measured = state(celsius, stage);
  const facts = feelFacts(feel);
  return facts.length === 0 ? measured : message('reading.state-feel', { measured, facts });
}

/** How a dough felt, in the order in which the words of the bench stand. */
export function feelFacts(feel: readonly string[]): readonly Message[] {
  return feelWords.filter((word) => feel.includes(word)).map((word) => message(`feel.${word}`));
}

/** What the feel of a reading tells of its stage, or why it tells none; undefined where no feel is written. */
export function feelMessage(trial: TrialAnalysis, line: number): Message | undefined {
  const reading = trial.readings.find((one) => one.line === line);
  if (reading?.feel === undefined) return undefined;
  if (reading.stage !== undefined) return message('feel.stage-wins');
  const felt = stagesFelt(reading.feel);
  if (typeof felt === 'string') return message(`feel.${felt}`);
  const stage = stageMessage(felt.earliest);
  return felt.earliest === felt.latest
    ? message('feel.means-one', { stage })
    : message('feel.means', { stage, otherStage: stageMessage(felt.latest) });
}

function differenceFrom(reading: ComparedReading, predicted: number): Message {
  const miss = reading.celsius - predicted;
  const apartCelsius = Math.abs(miss);
  const difference =
    apartCelsius < 0.05
      ? message('reading.as-computed')
      : message(miss > 0 ? 'reading.warmer' : 'reading.colder', { apartCelsius });
  const { stage, stages, predictedStage } = reading;
  if (predictedStage === undefined || (stages === undefined && stage === undefined)) return difference;
  const place = mixingStages.indexOf(predictedStage);
  const isSeen =
    stages !== undefined &&
    mixingStages.indexOf(stages.earliest) <= place &&
    place <= mixingStages.indexOf(stages.latest);
  return message(isSeen ? 'reading.same-stage' : 'reading.other-stage', { difference });
}
