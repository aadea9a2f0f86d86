import { waterWanted } from '../analysis/water-wanted.ts';
import { celsiusAt, developmentAt } from '../calc/mixing.ts';
import { allPortions } from '../calc/mixing-water.ts';
import { thermometerCelsius } from '../calc/thermometer.ts';
import { lineOfId } from '../model/formula-model.ts';
import { degrees, degreesApart, minutes, trimmed, warmthWord } from '../text/figures.ts';
import type { Span } from '../text/span.ts';
import { foldEdits } from './fold-edits.ts';
import { doughMixes, outcomeAfter, type RunMix, shorterWords, stopEdits, waterLine } from './mixes.ts';
import { headerPlace, propertyPlace, quantityPlace } from './places.ts';
import type { RelatedLine, Rule, RuleContext, RuleEdit, RuleFix } from './rule.ts';
import { wordsOf } from './words.ts';

/** Degrees above the dough temperature that are told; where none is written, the usual one is only a guess. */
const tolerated = 2;
const toleratedWhenAssumed = 3;

export const tooWarm: Rule = {
  code: 'too-warm',
  level: 'warning',
  title: 'The dough leaves the mixer too warm',
  explanation:
    'Mixing warms the dough, fast speeds most. For strong flour at modest hydration the dough is too warm long before it is ' +
    'over-mixed. Use colder water or ice, mix shorter or slower, cool the flour. A dough more than 2 °C above its temperature is ' +
    'told (3 °C above 25 °C where none is written). The warming is common practice until the mixer is calibrated by a trial: the ± behind ' +
    'the temperature says how sure it is, and while the limit lies inside of it the finding is information only.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 24 °C\n  bread flour  100%\n  water  65%, at 24 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 8 min\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 24 °C\n  bread flour  100%\n  water  65%, at 12 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 5 min\n',
  *check(context) {
    for (const run of doughMixes(context.analysis)) {
      const { outcome, targetCelsius, targetAssumed, water } = run.mix;
      if (!outcome.endCelsius.known) continue;
      const end = outcome.endCelsius.value;
      const over = end - targetCelsius;
      const limit = targetAssumed ? toleratedWhenAssumed : tolerated;
      if (over <= limit) continue;
      // What went in was measured no better than a thermometer does.
      const band = Math.max(thermometerCelsius, outcome.endCelsiusBand);
      const isSure = over - band > limit;
      const allIce = water.known && water.value.ice.known && water.value.ice.value.capped;
      const passes =
        outcome.limitAfter.known && !outcome.limitAfter.value.atLastSpeed
          ? outcome.limitAfter.value.minutes
          : undefined;
      const when =
        passes === undefined
          ? ''
          : passes < 0.5
            ? ` It is above ${degrees(targetCelsius + 1)} from the start.`
            : ` It passes ${degrees(targetCelsius + 1)} after ${minutes(passes)} of ${minutes(outcome.programmeMinutes)}.`;
      const wanted = targetAssumed
        ? `${degrees(targetCelsius)} that are usual`
        : `${degrees(targetCelsius)} wanted`;
      const cure = allIce
        ? ' All of the water is ice already: cool the flour, or mix shorter or slower.'
        : allPortions(run.mix.input).every(({ kind }) => kind !== 'water')
          ? ' There is no water to cool: chill the flour and what else goes in, or mix shorter or slower.'
          : '';
      yield {
        ...lastLine(context, run),
        message: `The dough ${isSure ? 'leaves' : 'may leave'} the mixer ${warmthWord(over)}: ${degrees(end)} ± ${degreesApart(band)}, ${degreesApart(over)} above the ${wanted}.${when}${cure}`,
        ...(isSure ? {} : { level: 'info' as const }),
        related: relatedPlaces(context, run),
        fixes: [...colderWater(context, run), ...shorter(context, run, limit)],
      };
    }
  },
};

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
  const celsius = Math.floor(needed.value.waterCelsius);
  const { ice } = needed.value;
  // Written colder than the tap a temperature would hide how much ice it takes.
  if (celsius < 1 || (ice.known && ice.value.iceGrams > 0)) {
    const edits = places.map(
      ({ line, from, span }): RuleEdit => ({ line, start: from, end: span.end, insert: '' }),
    );
    return [
      { title: 'Leave the temperature out: the water and its ice are worked out', edits, preferred: true },
    ];
  }
  const written = `${trimmed(celsius, 0)} °C`;
  const edits = places.map(
    ({ line, span }): RuleEdit => ({ line, start: span.start, end: span.end, insert: written }),
  );
  return [{ title: `Take the water at ${written}`, edits, preferred: true }];
}

/** From this development on two folds do the rest; common practice, no source. */
const foldsDoTheRest = 0.6;

/**
 * Shorter mixing: to full development where the dough is not too warm by then, else to where its temperature is and two
 * folds in the bulk do the rest.
 */
function shorter(context: RuleContext, run: RunMix, limit: number): RuleFix[] {
  const { outcome, targetCelsius } = run.mix;
  const { developedAfter, limitAfter, programmeMinutes } = outcome;
  if (!developedAfter.known) return [];
  const cures = (edits: readonly RuleEdit[]): boolean => {
    const { endCelsius } = outcomeAfter(run, edits);
    return endCelsius.known && endCelsius.value - targetCelsius <= limit;
  };
  const developed = developedAfter.value.expected;
  const then = developed < programmeMinutes ? celsiusAt(outcome, developed) : undefined;
  if (then?.known && then.value - targetCelsius <= limit) {
    const edits = stopEdits(context, run, developed) ?? [];
    return edits.length === 0 || !cures(edits)
      ? []
      : [{ title: `${shorterWords(edits)}: developed by then, and cooler`, edits }];
  }
  if (!limitAfter.known || limitAfter.value.atLastSpeed) return [];
  const enough = developmentAt(outcome, limitAfter.value.minutes);
  if (!enough.known || enough.value < foldsDoTheRest) return [];
  const stops = stopEdits(context, run, limitAfter.value.minutes) ?? [];
  const folds = foldEdits(context);
  if (stops.length === 0 || folds.length === 0 || !cures(stops)) return [];
  return [{ title: `${shorterWords(stops)}, and fold twice in the bulk`, edits: [...stops, ...folds] }];
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
