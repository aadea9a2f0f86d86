import { afterMixing, withFolds } from '../analysis/after-mixing.ts';
import { limitOf } from '../analysis/mixing.ts';
import { waterWanted } from '../analysis/water-wanted.ts';
import { celsiusAt, developmentAt, hottestDough, type MixingOutcome } from '../calc/mixing.ts';
import { allPortions, hasLittleWater } from '../calc/mixing-water.ts';
import { thermometerCelsius } from '../calc/thermometer.ts';
import { lineOfId } from '../model/formula-model.ts';
import { degrees, degreesApart, degreesWithBand, minutes, trimmed, warmthWord } from '../text/figures.ts';
import type { Span } from '../text/span.ts';
import { foldEdits } from './fold-edits.ts';
import { iceFix } from './ice-fix.ts';
import { cureWords } from './ice-words.ts';
import {
  doughMixes,
  isWorkedEnough,
  outcomeAfter,
  type RunMix,
  shorterWords,
  stopEdits,
  waterLine,
} from './mixes.ts';
import { headerPlace, propertyPlace, quantityPlace } from './places.ts';
import type { RelatedLine, Rule, RuleContext, RuleEdit, RuleFix } from './rule.ts';
import { wordsOf } from './words.ts';

export const tooWarm: Rule = {
  code: 'too-warm',
  level: 'warning',
  title: 'The dough leaves the mixer too warm',
  explanation:
    'Mixing warms the dough, fast speeds most. For strong flour at modest hydration the dough is too warm long before it is ' +
    'over-mixed. Use colder water or ice, mix shorter or slower, cool the flour. Where the tap is too warm for the temperature wanted, the dough is judged as it comes out with water straight from the tap, and ice is the cure. A dough more than 2 °C above its temperature is ' +
    'shown (3 °C above 25 °C where none is written). The warming is common practice until the mixer is calibrated by a trial: the ± behind ' +
    'the temperature says how sure it is, and while the limit lies inside of it the finding is information only.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 24 °C\n  bread flour  100%\n  water  65%, at 24 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 8 min\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 24 °C\n  bread flour  100%\n  water  65%, at 12 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 5 min\n',
  *check(context) {
    for (const run of doughMixes(context.analysis)) {
      const { mix } = run;
      const { outcome } = mix;
      const found = outcome.hotAfterMinutes === undefined ? verdictOf(run) : hotVerdict(outcome);
      if (found === undefined) continue;
      yield {
        ...lastLine(context, run),
        message: `${found.words}${cureOf(context, run)}`,
        ...(found.isSure ? {} : { level: 'info' as const }),
        related: relatedPlaces(context, run),
        fixes: [...colderWater(context, run), ...iceFix(context, run), ...shorter(context, run)],
      };
    }
  },
};

interface Verdict {
  readonly words: string;
  readonly isSure: boolean;
}

function verdictOf({ mix }: RunMix): Verdict | undefined {
  const { outcome, targetCelsius, targetAssumed } = mix;
  const limit = limitOf(mix);
  if (!outcome.endCelsius.known || outcome.endCelsius.value <= limit) return undefined;
  const end = outcome.endCelsius.value;
  const over = end - targetCelsius;
  // What went in was measured no better than a thermometer does.
  const band = Math.max(thermometerCelsius, outcome.endCelsiusBand);
  const isSure = end - band > limit;
  const { limitAfter } = outcome;
  const passes = limitAfter.known && !limitAfter.value.atLastSpeed ? limitAfter.value.minutes : undefined;
  const when =
    passes === undefined
      ? ''
      : passes < 0.5
        ? ` It is above ${degrees(limit)} from the start.`
        : ` It passes ${degrees(limit)} after ${minutes(passes)} of ${minutes(outcome.programmeMinutes)}.`;
  const wanted = targetAssumed
    ? `${degrees(targetCelsius)} that are usual`
    : `${degrees(targetCelsius)} wanted`;
  return {
    words: `The dough ${isSure ? 'leaves' : 'may leave'} the mixer ${warmthWord(over)}: ${degreesWithBand(end, band)}, ${degreesApart(over)} above the ${wanted}.${when}`,
    isSure,
  };
}

/** Dough so hot that it is none any more: no figure is told for it but when it gets there. */
function hotVerdict({ hotAfterMinutes, programmeMinutes }: MixingOutcome): Verdict {
  const minute = hotAfterMinutes ?? 0;
  const when = minute < 0.5 ? 'from the start' : `after ${minutes(minute)} of ${minutes(programmeMinutes)}`;
  return {
    words: `The dough leaves the mixer much too warm: it passes ${degrees(hottestDough)} ${when}, and yeast does not survive that.`,
    isSure: true,
  };
}

/** What would help, beside mixing shorter. */
function cureOf({ analysis }: RuleContext, { mix }: RunMix): string {
  if (allPortions(mix.input).every(({ kind }) => kind !== 'water'))
    return ' There is no water to cool: chill the flour and what else goes in, or mix shorter or slower.';
  if (!mix.water.known) return '';
  const { reach, ice, iceCure, tapAssumed, tapCelsius } = mix.water.value;
  if (reach === 'no lever')
    return hasLittleWater(mix.input)
      ? ' There is too little water to cool it by: chill the flour and what else goes in, or mix shorter or slower.'
      : ' Other water changes little after so long: mix shorter or slower, or in a cooler room.';
  if (ice !== undefined)
    return ' Half of the water is ice already: cool the flour, or mix shorter or slower.';
  const tap = tapAssumed ? ` The tap is taken to be at ${degrees(tapCelsius)}.` : '';
  if (iceCure === undefined || analysis!.solved?.assumedScale === true) return tap;
  return iceCure.doughCelsius > limitOf(mix)
    ? `${tap} Not even half of the water as ice would do: mix shorter or slower.`
    : `${tap} ${cureWords(iceCure)}`;
}

function lastLine(
  { block }: RuleContext,
  { mix, model }: RunMix,
): { line: number; span: { start: number; end: number } } {
  const line = mix.phaseLines[mix.input.phases.findLastIndex((phase) => !('portions' in phase))];
  return line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
}

function relatedPlaces(context: RuleContext, { mix }: RunMix): RelatedLine[] {
  const related: RelatedLine[] = [];
  const target = propertyPlace(context, 'dough temperature');
  if (target.line > 0) related.push({ ...target, message: 'the dough temperature wanted' });
  const water = waterLine(context.analysis!);
  if (water !== undefined)
    related.push({ line: water, span: wordsOf(context.block, water), message: 'the water' });
  if (mix.mixer.definition !== undefined)
    related.push({ definition: mix.mixer.definition, message: `the mixer “${mix.mixer.name}”` });
  return related;
}

/** Where the file gives the water its temperature: the one that reaches the target, or none where that takes ice. */
function colderWater(context: RuleContext, { mix, model }: RunMix): RuleFix[] {
  const places = givenTemperatures(context, mix.index, model.headerLine);
  if (places.length === 0) return [];
  const needed = waterWanted(mix);
  if (!needed.known) return [];
  const { reach, waterCelsius } = needed.value;
  // Written colder than the tap a temperature would hide that it takes ice.
  if (reach !== 'reachable' || waterCelsius === undefined) {
    const edits = places.map(
      ({ line, from, span }): RuleEdit => ({ line, start: from, end: span.end, insert: '' }),
    );
    return [{ title: 'Leave the temperature out: the water is worked out', edits, preferred: true }];
  }
  const celsius = Math.floor(waterCelsius);
  const written = `${trimmed(celsius, 0)} °C`;
  const edits = places.map(
    ({ line, span }): RuleEdit => ({ line, start: span.start, end: span.end, insert: written }),
  );
  return [{ title: `Take the water at ${written}`, edits, preferred: true }];
}

/**
 * Shorter mixing: to where the dough is worked as wished if it is not too warm by then, else to where its temperature is, if folds
 * and bulk do the rest; with two folds more where those are wanted.
 */
function shorter(context: RuleContext, run: RunMix): RuleFix[] {
  const { outcome } = run.mix;
  const { wishedAfter, limitAfter, programmeMinutes, hotAfterMinutes } = outcome;
  if (!wishedAfter.known) return [];
  const limit = limitOf(run.mix);
  const cures = (edits: readonly RuleEdit[]): boolean => {
    const { endCelsius } = outcomeAfter(run, edits);
    return endCelsius.known && endCelsius.value <= limit;
  };
  const wished = wishedAfter.value.expected;
  const then = wished < programmeMinutes ? celsiusAt(outcome, wished) : undefined;
  if (then?.known && then.value <= limit) {
    const edits = stopEdits(context, run, wished) ?? [];
    if (edits.length > 0 && cures(edits))
      return [{ title: `${stopWords(wished, edits)}: developed by then, and cooler`, edits }];
  }
  const passes =
    limitAfter.known && !limitAfter.value.atLastSpeed ? limitAfter.value.minutes : hotAfterMinutes;
  if (passes === undefined) return [];
  const stops = stopEdits(context, run, passes) ?? [];
  const development = developmentAt(outcome, passes);
  if (stops.length === 0 || !development.known || !cures(stops)) return [];
  const after = afterMixing(context.analysis!.resolved.model);
  if (isWorkedEnough(development.value, after, outcome))
    return [{ title: `${stopWords(passes, stops)}: folds and bulk do the rest`, edits: stops }];
  const folds = foldEdits(context);
  return folds.length > 0 && isWorkedEnough(development.value, withFolds(after, 2), outcome)
    ? [{ title: `${stopWords(passes, stops)}, and fold twice in the bulk`, edits: [...stops, ...folds] }]
    : [];
}

function stopWords(minute: number, edits: readonly RuleEdit[]): string {
  const words = shorterWords(edits);
  return `Stop at minute ${trimmed(Math.round(minute), 0)}: ${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

function givenTemperatures({ analysis, block }: RuleContext, mixIndex: number, headerLine: number) {
  const { statements, mixes, ingredients, input } = analysis!.resolved;
  const places: { line: number; from: number; span: Span }[] = [];
  const isWater = (key: string): boolean => ingredients.get(key)?.role === 'water';
  for (const line of input.sections[0]!.lines) {
    const statement = statements.get(line.id);
    if (line.role !== 'water' || statement?.celsius === undefined) continue;
    const number = lineOfId(line.id);
    const span = quantityPlace(block, number, 'temperature', statement.amount.end);
    if (span !== undefined) places.push({ line: number, from: statement.amount.end, span });
  }
  for (const { line, item, keys } of mixes[mixIndex]!.loads) {
    if (line <= headerLine || item.celsius === undefined || !keys.some(isWater)) continue;
    const span = quantityPlace(block, line, 'temperature', item.end);
    if (span !== undefined) places.push({ line, from: item.end, span });
  }
  return places;
}
