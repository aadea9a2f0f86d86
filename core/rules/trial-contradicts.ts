import { type TrialAnalysis, type TrialReading, trialsOf } from '../analysis/trials.ts';
import { cannotHaveBeen, coldestCelsius } from '../calc/coldest.ts';
import type { MixingInput } from '../calc/mixing-programme.ts';
import { saidValue } from '../model/properties.ts';
import { stageWords } from '../syntax/vocabulary.ts';
import { degrees, duration, mass } from '../text/figures.ts';
import { pastEndMinutes } from './kept-programme.ts';
import type { Rule, RuleContext, RuleFinding } from './rule.ts';
import { wordsOf } from './words.ts';

const stages: readonly string[] = stageWords;

/** A dough that weighs so much more than what went in has gained; below it the scale steps. */
const toleratedGain = 0.01;
/** Above this it was a larger batch, which is no contradiction. */
const largerBatch = 1.25;

export const trialContradicts: Rule = {
  code: 'trial-contradicts',
  level: 'warning',
  title: 'A trial says what cannot have been',
  explanation:
    'A trial is measured against the programme it ran (its own where it keeps one) and is what a mixer is calibrated from, so a slip in it spoils more than one number; a temperature that cannot have been is left out of that. ' +
    'Told are: a dough colder than all that went into it poured together, or than the room, or hotter than mixing makes any; stages that run backwards with nothing added; a dough that weighs more than what went in, ' +
    'or a bread that weighs more than its dough; readings whose times run backwards or lie past the end of the programme. ' +
    'Times run from the start of mixing and include the rests. Correct the slip, or write down what is missing: ice as colder ' +
    'water, a larger `water` weight, the programme that was really run.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n  speed 2 for 2 min\n\ntrial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 18 °C\n  mixed in spiral\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  at 3 min  12 °C\n  end  24 °C\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n  speed 2 for 2 min\n\ntrial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 18 °C\n  mixed in spiral\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  at 3 min  22 °C\n  end  24 °C\n',
  *check(context) {
    if (context.analysis === undefined) return;
    for (const trial of trialsOf(context.analysis, context.scope)) {
      yield* timesOf(context, trial);
      yield* temperaturesOf(context, trial);
      yield* stagesOf(context, trial);
      yield* weightOf(context, trial);
    }
  },
};

function* timesOf({ block }: RuleContext, { readings, mix }: TrialAnalysis): Iterable<RuleFinding> {
  let latest: TrialReading | undefined;
  for (const reading of readings) {
    if (reading.isEnd) continue;
    const { line, minutes } = reading;
    const span = wordsOf(block, line);
    const written = duration(minutes * 60);
    if (latest !== undefined && minutes <= latest.minutes) {
      const message =
        minutes === latest.minutes
          ? `A second reading at ${written}. Each minute of a trial has one; correct the time of one of them.`
          : `The time runs backwards: this reading stands at ${written}, the one before at ${duration(latest.minutes * 60)}. Times run from the start of mixing.`;
      const related = [
        { line: latest.line, span: wordsOf(block, latest.line), message: 'the reading before' },
      ];
      yield { line, span, message, related };
      continue;
    }
    latest = reading;
    if (mix.known && minutes > mix.value.programmeMinutes + pastEndMinutes) {
      const end = duration(mix.value.programmeMinutes * 60);
      const cure = mix.value.isKept
        ? 'or give the trial’s programme the minutes it really ran.'
        : 'or write into the trial what was really run: `mixed in …`, then its `speed` lines.';
      yield {
        line,
        span,
        message: `The programme is over after ${end}, and this reading stands at ${written}. Correct the time, ${cure}`,
      };
    }
  }
}

function* temperaturesOf({ block }: RuleContext, { readings, mix }: TrialAnalysis): Iterable<RuleFinding> {
  if (!mix.known) return;
  const { input } = mix.value;
  for (const { line, minutes, celsius } of readings) {
    const how = cannotHaveBeen(input, minutes, celsius);
    if (how === undefined) continue;
    const coldest = coldestCelsius(input, minutes);
    const message =
      how === 'hotter'
        ? `${degrees(celsius)} is hotter than mixing makes a dough. Correct the reading; what a thermometer in Fahrenheit shows is written with °F.`
        : `${degrees(celsius)} is colder than this dough can have been: what went in comes to ${coldest.known ? degrees(coldest.value) : 'more'} before any warming. Correct the reading, or the temperatures above it; ice counts as colder water.`;
    yield { line, span: wordsOf(block, line), message };
  }
}

/** Gluten goes one way only: a stage that was passed does not come again, unless something went in meanwhile. */
function* stagesOf({ block }: RuleContext, { readings, mix }: TrialAnalysis): Iterable<RuleFinding> {
  const additions = mix.known ? additionMinutes(mix.value.input) : [];
  let latest: { readonly reading: TrialReading; readonly place: number } | undefined;
  for (const reading of [...readings].sort((one, other) => one.minutes - other.minutes)) {
    const place = reading.stage === undefined ? -1 : stages.indexOf(reading.stage);
    if (place < 0) continue;
    const since = latest?.reading.minutes ?? 0;
    const isNew = additions.some((minute) => minute >= since - 1e-9 && minute <= reading.minutes);
    if (latest !== undefined && place < latest.place && !isNew) {
      const { line, minutes, stage } = latest.reading;
      yield {
        line: reading.line,
        span: wordsOf(block, reading.line),
        message: `“${reading.stage}” after “${stage}” at ${duration(minutes * 60)}: a dough does not go back. Correct one of the two.`,
        related: [{ line, span: wordsOf(block, line), message: `“${stage}”` }],
      };
      continue;
    }
    latest = { reading, place };
  }
}

/** When something goes into the bowl, minutes of the programme. */
function additionMinutes({ phases }: MixingInput): number[] {
  let clock = 0;
  return phases.flatMap((phase) => {
    if ('portions' in phase) return [clock];
    clock += Math.max(0, phase.seconds) / 60;
    return [];
  });
}

function* weightOf({ block }: RuleContext, trial: TrialAnalysis): Iterable<RuleFinding> {
  const { said } = trial.model;
  const dough = saidValue(said, 'dough', 'mass')?.grams;
  const baked = saidValue(said, 'baked', 'mass')?.grams;
  if (dough === undefined) return;
  const place = (word: string): { line: number; span: { start: number; end: number } } => {
    const { line } = said.get(word)!.find((one) => one.statement.value !== undefined)!;
    return { line, span: wordsOf(block, line) };
  };
  const { pouredGrams } = trial;
  if (pouredGrams.known && pouredGrams.value > 0) {
    const ratio = dough / pouredGrams.value;
    if (ratio > 1 + toleratedGain && ratio <= largerBatch) {
      yield {
        ...place('dough'),
        message: `The dough weighs ${mass(dough)}, and only ${mass(pouredGrams.value)} went in: dough gains no weight. Correct it, or write the weight of the water that was really used.`,
      };
    }
  }
  if (baked !== undefined && baked > dough) {
    yield {
      ...place('baked'),
      message: `${mass(baked)} baked is more than the ${mass(dough)} of dough: bread loses weight in the oven. Correct one of the two.`,
    };
  }
}
