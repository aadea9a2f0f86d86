import { stageMessage } from '../../analysis/mix-analysis.ts';
import { type TrialAnalysis, type TrialReading, trialsOf } from '../../analysis/trials.ts';
import { cannotHaveBeen, coldestCelsius } from '../../calc/heat/coldest.ts';
import type { MixingInput } from '../../calc/mixing/mixing-programme.ts';
import { phaseTimes } from '../../calc/mixing/phase-times.ts';
import { saidValue } from '../../model/properties.ts';
import { stageWords } from '../../syntax/vocabulary.ts';
import { elementAt, entryOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleContext, RuleFinding } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { pastEndMinutes } from './kept-programme.ts';

const stages: readonly string[] = stageWords;

/** A dough that weighs so much more than what went in has gained; below it the scale steps. */
const toleratedGain = 0.01;
/** Above this it was a larger batch, which is no contradiction. */
const largerBatch = 1.25;

export const trialContradicts: Rule = {
  code: 'trial-contradicts',
  level: 'warning',
  title: 'A trial states what cannot have been',
  explanation:
    'A trial is measured against the programme it ran (its own where it keeps one) and is what a mixer is calibrated from, so a slip in it spoils more than one number; a temperature that cannot have been is left out of that. ' +
    'Shown are: a dough colder than all that went into it poured together, or than the room, or hotter than mixing makes any; stages that run backwards with nothing added; a dough that weighs more than what went in, ' +
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
    const seconds = minutes * 60;
    if (latest !== undefined && minutes <= latest.minutes) {
      const again =
        minutes === latest.minutes
          ? message('trial-contradicts.second', { seconds })
          : message('trial-contradicts.backwards', { seconds, otherSeconds: latest.minutes * 60 });
      const related = [
        {
          line: latest.line,
          span: wordsOf(block, latest.line),
          message: message('trial-contradicts.before'),
        },
      ];
      yield { line, span, message: again, related };
      continue;
    }
    latest = reading;
    if (mix.known && minutes > mix.value.programmeMinutes + pastEndMinutes) {
      const facts = { seconds, otherSeconds: mix.value.programmeMinutes * 60 };
      const code = mix.value.isKept ? 'trial-contradicts.over-kept' : 'trial-contradicts.over';
      yield { line, span, message: message(code, facts) };
    }
  }
}

function* temperaturesOf({ block }: RuleContext, { readings, mix }: TrialAnalysis): Iterable<RuleFinding> {
  if (!mix.known) return;
  const { input } = mix.value;
  for (const { line, minutes, celsius } of readings) {
    if (celsius === undefined) continue;
    const how = cannotHaveBeen(input, minutes, celsius);
    if (how === undefined) continue;
    const coldest = coldestCelsius(input, minutes);
    const found =
      how === 'hotter' || !coldest.known
        ? message('trial-contradicts.hotter', { celsius })
        : message('trial-contradicts.colder', { celsius, limitCelsius: coldest.value });
    yield { line, span: wordsOf(block, line), message: found };
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
      const otherStage = stageMessage(stage!);
      yield {
        line: reading.line,
        span: wordsOf(block, reading.line),
        message: message('trial-contradicts.stage-back', {
          stage: stageMessage(reading.stage!),
          otherStage,
          seconds: minutes * 60,
        }),
        related: [
          {
            line,
            span: wordsOf(block, line),
            message: message('trial-contradicts.stage', { stage: otherStage }),
          },
        ],
      };
      continue;
    }
    latest = { reading, place };
  }
}

/** When something goes into the bowl, minutes of the programme. */
function additionMinutes({ phases }: MixingInput): number[] {
  const times = phaseTimes(phases);
  return phases.flatMap((phase, index) =>
    'portions' in phase ? [elementAt(times, index).startMinutes] : [],
  );
}

function* weightOf({ block }: RuleContext, trial: TrialAnalysis): Iterable<RuleFinding> {
  const { said } = trial.model;
  const dough = saidValue(said, 'dough', 'mass')?.grams;
  const baked = saidValue(said, 'baked', 'mass')?.grams;
  if (dough === undefined) return;
  const place = (word: string): { line: number; span: { start: number; end: number } } => {
    const { line } = entryOf(said, word).find((one) => one.statement.value !== undefined)!;
    return { line, span: wordsOf(block, line) };
  };
  const { pouredGrams } = trial;
  if (pouredGrams.known && pouredGrams.value > 0) {
    const ratio = dough / pouredGrams.value;
    if (ratio > 1 + toleratedGain && ratio <= largerBatch) {
      yield {
        ...place('dough'),
        message: message('trial-contradicts.heavier', {
          doughGrams: dough,
          pouredGrams: pouredGrams.value,
        }),
      };
    }
  }
  if (baked !== undefined && baked > dough) {
    yield {
      ...place('baked'),
      message: message('trial-contradicts.baked-heavier', { bakedGrams: baked, doughGrams: dough }),
    };
  }
}
