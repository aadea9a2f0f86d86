import { stagesFelt } from '../analysis/feel.ts';
import { stageMessage } from '../analysis/mix-analysis.ts';
import type { WeightLoss } from '../analysis/trial-weights.ts';
import {
  type ComparedReading,
  comparedReadings,
  lackingOf,
  missesOf,
  type TrialAnalysis,
  type TrialReading,
} from '../analysis/trials.ts';
import { type Known, known } from '../calc/known.ts';
import { mixingStages } from '../calc/mixing/development.ts';
import { feelWords } from '../syntax/vocabulary.ts';
import { trimmed } from '../text/figures.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

/** Measured against computed, for the line of a reading; undefined for a line that holds none. */
export function readingMessage(trial: TrialAnalysis, line: number): Message | undefined {
  const reading = comparedReadings(trial).find((one) => one.line === line);
  if (reading === undefined) return undefined;
  return reading.celsius === undefined ? seenMessage(reading) : takenMessage(reading, reading.celsius);
}

function takenMessage(reading: ComparedReading, celsius: number): Message {
  const { predictedCelsius, predictedStage } = reading;
  const measured = measuredState(reading);
  if (!predictedCelsius.known) return message('reading.alone', { measured, reason: predictedCelsius.reason });
  const computed = state(predictedCelsius.value, predictedStage);
  const off = differenceMessage(celsius - predictedCelsius.value);
  const agrees = stageAgrees(reading);
  const difference =
    agrees === undefined
      ? off
      : message(agrees ? 'reading.same-stage' : 'reading.other-stage', { difference: off });
  return message('reading.beside', { measured, computed, difference });
}

function seenMessage(reading: ComparedReading): Message {
  const measured = measuredState(reading);
  const computed = computedState(reading);
  if (!computed.known) return message('reading.seen-alone', { measured, reason: computed.reason });
  const agrees = stageAgrees(reading);
  const how = agrees === undefined ? 'beside' : agrees ? 'same-stage' : 'other-stage';
  return message(`reading.seen-${how}`, { measured, computed: computed.value });
}

/** Readings that are off by less than this on the whole lean to no side, °C. */
const leastLean = 0.3;

/** A trial in sentences: its readings against the programme, its weight, as Markdown. */
export function trialMarkdown(trial: TrialAnalysis, speaker: Speaker): string[] {
  const said: string[] = [];
  const compared = comparedReadings(trial);
  const rows = compared.map((one) => {
    const when = one.isEnd ? speaker.say(message('readings.end')) : speaker.minutes(one.minutes);
    const computed = computedState(one);
    return `| ${when} | ${speaker.say(measuredState(one))} | ${computed.known ? speaker.say(computed.value) : '–'} |`;
  });
  const heads = [message('readings.measured'), message('readings.computed')].map(speaker.say);
  if (rows.length > 0) said.push([`| | ${heads.join(' | ')} |`, '| --- | --- | --- |', ...rows].join('\n'));
  const misses = missesOf(compared);
  const lacking = lackingOf(compared);
  if (misses.length > 0) said.push(speaker.say(missMessage(misses)));
  else if (lacking !== undefined) said.push(speaker.say(message('readings.alone', { reason: lacking })));
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

/** What is computed for the minute of a reading: without its temperature its stage. */
function computedState({ predictedCelsius, predictedStage }: ComparedReading): Known<Message, Message> {
  if (predictedCelsius.known) return known(state(predictedCelsius.value, predictedStage), 'common practice');
  return predictedStage === undefined
    ? predictedCelsius
    : known(stageMessage(predictedStage), 'common practice');
}

function measuredState({ celsius, stage, feel = [] }: TrialReading): Message {
  const facts = feelFacts(feel);
  if (celsius === undefined)
    return message('reading.seen', {
      facts: [...(stage === undefined ? [] : [stageMessage(stage)]), ...facts],
    });
  const measured = state(celsius, stage);
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

function differenceMessage(miss: number): Message {
  const apartCelsius = Math.abs(miss);
  if (apartCelsius < 0.05) return message('reading.as-computed');
  return message(miss > 0 ? 'reading.warmer' : 'reading.colder', { apartCelsius });
}

/** Whether the stage seen, or one of those felt, is the one computed; undefined where nothing tells. */
function stageAgrees({ stages, predictedStage }: ComparedReading): boolean | undefined {
  if (predictedStage === undefined || stages === undefined) return undefined;
  const place = mixingStages.indexOf(predictedStage);
  return mixingStages.indexOf(stages.earliest) <= place && place <= mixingStages.indexOf(stages.latest);
}
