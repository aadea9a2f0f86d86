import type { WeightLoss } from '../analysis/trial-weights.ts';
import { type ComparedReading, comparedReadings, type TrialAnalysis } from '../analysis/trials.ts';
import { degrees, degreesApart, mass, minutes, percent } from '../text/figures.ts';
import { stopFirst } from '../text/stop-first.ts';

/** Measured against worked out, for the line of a reading; undefined for a line that holds none. */
export function readingWords(trial: TrialAnalysis, line: number): string | undefined {
  const reading = comparedReadings(trial).find((one) => one.line === line);
  if (reading === undefined) return undefined;
  const measured = `**Measured ${state(degrees(reading.celsius), reading.stage)}**`;
  if (!reading.predictedCelsius.known)
    return `${measured} — no figure to set beside it: ${reading.predictedCelsius.reason}.`;
  const worked = state(degrees(reading.predictedCelsius.value), reading.predictedStage);
  return `${measured} — worked out ${worked}: ${missWords(reading, reading.predictedCelsius.value)}.`;
}

/** A trial in sentences: its readings against the programme, its weight, as Markdown. */
export function trialMarkdown(trial: TrialAnalysis): string[] {
  const said: string[] = [];
  const compared = comparedReadings(trial);
  const rows = compared.map((one) => {
    const when = one.isEnd ? 'end' : minutes(one.minutes);
    const worked = one.predictedCelsius.known
      ? state(degrees(one.predictedCelsius.value), one.predictedStage)
      : '–';
    return `| ${when} | ${state(degrees(one.celsius), one.stage)} | ${worked} |`;
  });
  if (rows.length > 0) said.push(['| | measured | worked out |', '| --- | --- | --- |', ...rows].join('\n'));
  const misses = compared.flatMap((one) =>
    one.predictedCelsius.known ? [one.celsius - one.predictedCelsius.value] : [],
  );
  const unknownReason = compared.find((one) => !one.predictedCelsius.known)?.predictedCelsius;
  if (misses.length > 0) {
    const spread = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
    const mean = misses.reduce((sum, miss) => sum + miss, 0) / misses.length;
    const side =
      Math.abs(mean) < 0.3 ? '' : `, on the whole ${mean > 0 ? 'warmer' : 'colder'} than worked out`;
    said.push(`The readings miss what is worked out by ${degreesApart(spread)}${side}.`);
  } else if (unknownReason !== undefined && !unknownReason.known)
    said.push(`Nothing to set beside the readings: ${unknownReason.reason}.`);
  const friction = trial.friction();
  if (friction.known)
    said.push(
      `Friction factor by this trial: ${degreesApart(friction.value)} (a difference, for three temperatures). It holds for such a batch, time and hydration; a mixer’s section says it as \`friction ${degreesApart(friction.value)}\`.`,
    );
  if (trial.loss.known) said.push(lossWords(trial.loss.value));
  // Hands need no stopping.
  if (!trial.mix.known || trial.mix.value.input.mixer.kind !== 'hand') said.push(`_${stopFirst}_`);
  return said;
}

/** What a dough weighed less than what went in, read as water that is gone. */
export function lossWords(loss: Omit<WeightLoss, 'doughGrams'>): string {
  const { lostGrams, pouredGrams, hydrationBefore, hydrationIfWater, hydrationAfter, stuckGrams } = loss;
  const gone =
    `${mass(lostGrams)} of ${mass(pouredGrams)} were gone when the dough was weighed. Were all of it water, the hydration would have ` +
    `fallen from ${percent(hydrationBefore)} to ${percent(hydrationIfWater)}, at most; dough left on bowl, table and hands takes its flour ` +
    'with it and changes no hydration.';
  if (stuckGrams === undefined) {
    const half = (hydrationBefore + hydrationIfWater) / 2;
    return `${gone} Were half of it such dough, it would be ${percent(half)}. Weigh what sticks, or give the formula a \`loss\`, to tell them apart.`;
  }
  return stuckGrams >= lostGrams
    ? `${gone} The formula’s own loss counts as much as that left behind: then no water is gone.`
    : `${gone} The formula’s own loss leaves ${mass(stuckGrams)} of dough behind: then the rest is water, and the hydration ${percent(hydrationAfter)}.`;
}

function state(celsius: string, stage: string | undefined): string {
  return stage === undefined ? celsius : `${celsius}, ${stage}`;
}

function missWords(reading: ComparedReading, predicted: number): string {
  const miss = reading.celsius - predicted;
  const warmth =
    Math.abs(miss) < 0.05
      ? 'as worked out'
      : `${degreesApart(Math.abs(miss))} ${miss > 0 ? 'warmer' : 'colder'} than that`;
  const { stage, predictedStage } = reading;
  if (stage === undefined || predictedStage === undefined) return warmth;
  return stage === predictedStage ? `${warmth}, the stage agrees` : `${warmth}, and another stage`;
}
