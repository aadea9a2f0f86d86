import { afterMixing, withFolds } from '../../analysis/after-mixing.ts';
import { limitOf, type MixAnalysis, warmthOf } from '../../analysis/mix-analysis.ts';
import { waterWanted } from '../../analysis/water-wanted.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import { thermometerCelsius } from '../../calc/heat/thermometer.ts';
import { celsiusAt, developmentAt, hottestDough, type MixingOutcome } from '../../calc/mixing/mixing.ts';
import { allPortions, hasLittleWater } from '../../calc/mixing/mixing-water.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import type { Span } from '../../text/span.ts';
import { type Message, message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { RelatedLine, Rule, RuleContext, RuleEdit, RuleFix } from '../engine/rule.ts';
import { headerPlace, propertyPlace, quantityPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { foldEdits } from './fold-edits.ts';
import { iceFix } from './ice-fix.ts';
import { iceMessage } from './ice-message.ts';
import {
  doughMixes,
  isWorkedEnough,
  outcomeAfter,
  type RunMix,
  type StopEdit,
  stopEdits,
  timesOf,
  waterLine,
} from './mixes.ts';

export const tooWarm: Rule = {
  code: 'too-warm',
  level: 'warning',
  title: 'The dough leaves the mixer too warm',
  explanation:
    'Mixing warms the dough, fast speeds most. For strong flour at modest hydration the dough is too warm long before it is ' +
    'over-mixed. Use colder water or ice, mix shorter or slower, cool the flour. Where the tap is too warm for the temperature wanted, the dough is judged as it comes out with water straight from the tap, and ice is what helps. A dough more than 2 °C above its temperature is ' +
    'shown (3 °C above 25 °C where none is written). The warming is common practice until the mixer is calibrated by a trial: the ± behind ' +
    'the temperature says how sure it is, and while the limit lies inside of it, or a colder tap than the one assumed would do, the finding is information only.',
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
        message: paragraph(found.said, found.when, ...helpOf(run)),
        ...(found.isSure ? {} : { level: 'info' as const }),
        related: relatedPlaces(context, run),
        fixes: [...colderWater(context, run), ...iceFix(context, run), ...shorter(context, run)],
      };
    }
  },
};

interface Verdict {
  readonly said: Message;
  /** From when on it is too warm; absent where that is in the first. */
  readonly when?: Message;
  readonly isSure: boolean;
}

/** What is above a limit by this minute is so from the start. */
const fromStartMinutes = 0.5;

function verdictOf({ mix }: RunMix): Verdict | undefined {
  const { outcome, targetCelsius, targetAssumed } = mix;
  const limitCelsius = limitOf(mix);
  if (!outcome.endCelsius.known || outcome.endCelsius.value <= limitCelsius) return undefined;
  const celsius = outcome.endCelsius.value;
  const overCelsius = celsius - targetCelsius;
  // What went in was measured no better than a thermometer does.
  const bandCelsius = Math.max(thermometerCelsius, outcome.endCelsiusBand);
  const isSure = celsius - bandCelsius - unsureByTap(mix.water) > limitCelsius;
  const { limitAfter, programmeMinutes } = outcome;
  const minutes = limitAfter.known && !limitAfter.value.atLastSpeed ? limitAfter.value.minutes : undefined;
  const when =
    minutes === undefined
      ? undefined
      : message(minutes < fromStartMinutes ? 'too-warm.from-start' : 'too-warm.passes', {
          limitCelsius,
          minutes,
          programmeMinutes,
        });
  const facts = { warmth: warmthOf(overCelsius), celsius, bandCelsius, overCelsius, targetCelsius };
  const said = targetAssumed
    ? message(isSure ? 'too-warm.leaves-usual' : 'too-warm.may-leave-usual', facts)
    : message(isSure ? 'too-warm.leaves' : 'too-warm.may-leave', facts);
  return { said, isSure, ...(when === undefined ? {} : { when }) };
}

/** How far off a tap may be that nobody measured, °C: from a winter's to a summer's. Common practice, no source. */
const tapMayBeOff = 5;

/** How much cooler the dough may be because nobody said how cold the tap is, °C. */
function unsureByTap(water: MixAnalysis['water']): number {
  if (!water.known || !water.value.tapAssumed || water.value.reach !== 'tap too warm') return 0;
  return tapMayBeOff * Math.max(0, water.value.lever);
}

/** Dough so hot that it is none any more: no figure is shown for it but when it gets there. */
function hotVerdict({ hotAfterMinutes, programmeMinutes }: MixingOutcome): Verdict {
  const minutes = hotAfterMinutes ?? 0;
  const facts = { limitCelsius: hottestDough, minutes, programmeMinutes };
  const said = message(minutes < fromStartMinutes ? 'too-warm.hot-from-start' : 'too-warm.hot', facts);
  return { said, isSure: true };
}

/** What would help, beside mixing shorter. */
function helpOf({ mix, analysis }: RunMix): (Message | undefined)[] {
  if (allPortions(mix.input).every(({ kind }) => kind !== 'water')) return [message('too-warm.no-water')];
  if (!mix.water.known) return [];
  const { reach, ice, iceCure, tapAssumed, tapCelsius } = mix.water.value;
  if (reach === 'no lever')
    return [message(hasLittleWater(mix.input) ? 'too-warm.little-water' : 'too-warm.follows-room')];
  if (ice !== undefined) return [message('too-warm.half-ice')];
  const tap = tapAssumed ? message('too-warm.tap-assumed', { tapCelsius }) : undefined;
  if (iceCure === undefined || analysis.solved?.assumedScale === true) return [tap];
  return [
    tap,
    iceCure.doughCelsius > limitOf(mix) ? message('too-warm.ice-not-enough') : iceMessage(iceCure),
  ];
}

function lastLine(
  { block }: RuleContext,
  { mix, model }: RunMix,
): { line: number; span: { start: number; end: number } } {
  const line = mix.phaseLines[mix.input.phases.findLastIndex((phase) => !('portions' in phase))];
  return line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
}

function relatedPlaces(context: RuleContext, { mix, analysis }: RunMix): RelatedLine[] {
  const related: RelatedLine[] = [];
  const target = propertyPlace(context, 'dough temperature');
  if (target.line > 0) related.push({ ...target, message: message('too-warm.target') });
  const water = waterLine(analysis);
  if (water !== undefined)
    related.push({ line: water, span: wordsOf(context.block, water), message: message('mix.water') });
  if (mix.mixer.definition !== undefined)
    related.push({
      definition: mix.mixer.definition,
      message: message('mix.mixer-named', { name: mix.mixer.name }),
    });
  return related;
}

/** Where the file gives the water its temperature: the one that reaches the target, or none where that takes ice. */
function colderWater(context: RuleContext, run: RunMix): RuleFix[] {
  const places = givenTemperatures(context, run);
  if (places.length === 0) return [];
  const needed = waterWanted(run.mix);
  if (!needed.known) return [];
  const { reach, waterCelsius } = needed.value;
  // Written colder than the tap a temperature would hide that it takes ice.
  if (reach !== 'reachable' || waterCelsius === undefined) {
    const edits = places.map(
      ({ line, from, span }): RuleEdit => ({ line, start: from, end: span.end, insert: '' }),
    );
    return [{ title: message('too-warm.fix-leave-out'), edits, preferred: true }];
  }
  const celsius = Math.floor(waterCelsius);
  const written = `${trimmed(celsius, 0)} °C`;
  const edits = places.map(
    ({ line, span }): RuleEdit => ({ line, start: span.start, end: span.end, insert: written }),
  );
  return [{ title: message('too-warm.fix-water', { meant: written }), edits, preferred: true }];
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
  const cures = (edits: readonly StopEdit[]): boolean => {
    const { endCelsius } = outcomeAfter(run, edits);
    return endCelsius.known && endCelsius.value <= limit;
  };
  const wished = wishedAfter.value.expected;
  const then = wished < programmeMinutes ? celsiusAt(outcome, wished) : undefined;
  if (then?.known && then.value <= limit) {
    const edits = stopEdits(context, run, wished) ?? [];
    if (edits.length > 0 && cures(edits))
      return [{ title: message('too-warm.fix-developed', stopAt(wished, edits)), edits }];
  }
  const passes =
    limitAfter.known && !limitAfter.value.atLastSpeed ? limitAfter.value.minutes : hotAfterMinutes;
  if (passes === undefined) return [];
  const stops = stopEdits(context, run, passes) ?? [];
  const development = developmentAt(outcome, passes);
  if (stops.length === 0 || !development.known || !cures(stops)) return [];
  const after = afterMixing(run.analysis.resolved.model);
  if (isWorkedEnough(development.value, after, outcome))
    return [{ title: message('too-warm.fix-rest', stopAt(passes, stops)), edits: stops }];
  const folds = foldEdits(context);
  return folds.length > 0 && isWorkedEnough(development.value, withFolds(after, 2), outcome)
    ? [{ title: message('too-warm.fix-fold', stopAt(passes, stops)), edits: [...stops, ...folds] }]
    : [];
}

/** The minute to stop at, and how long the lines then last. */
function stopAt(minute: number, edits: readonly StopEdit[]) {
  return { number: Math.round(minute), choices: timesOf(edits) };
}

function givenTemperatures({ block }: RuleContext, { mix, model, analysis }: RunMix) {
  const { statements, mixes, ingredients, input } = analysis.resolved;
  const places: { line: number; from: number; span: Span }[] = [];
  const isWater = (key: string): boolean => ingredients.get(key)?.role === 'water';
  for (const line of doughOf(input).lines) {
    const statement = statements.get(line.id);
    if (line.role !== 'water' || statement?.celsius === undefined) continue;
    const number = lineOfId(line.id);
    const span = quantityPlace(block, number, 'temperature', statement.amount.end);
    if (span !== undefined) places.push({ line: number, from: statement.amount.end, span });
  }
  for (const { line, item, keys } of elementAt(mixes, mix.index).loads) {
    if (line <= model.headerLine || item.celsius === undefined || !keys.some(isWater)) continue;
    const span = quantityPlace(block, line, 'temperature', item.name.end);
    if (span !== undefined) places.push({ line, from: item.name.end, span });
  }
  return places;
}
