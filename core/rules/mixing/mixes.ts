import type { AfterMixing } from '../../analysis/after-mixing.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import { type MixingOutcome, simulateMixing } from '../../calc/mixing/mixing.ts';
import type { MixPortion } from '../../calc/mixing/mixing-programme.ts';
import { temperWater } from '../../calc/mixing/mixing-water.ts';
import { phaseTimes } from '../../calc/mixing/phase-times.ts';
import { lineOfId, type MixModel } from '../../model/formula-model.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { RelatedLine, RuleContext, RuleEdit, RuleFix } from '../engine/rule.ts';
import { headerPlace, quantityPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

/** A mixing programme that could be run, with the section that says it. */
export interface RunMix {
  readonly mix: MixAnalysis;
  readonly model: MixModel;
  /** The formula whose programme it is. */
  readonly analysis: Analysis;
}

/** All programmes of a formula that could be run. */
export function runMixes(analysis: Analysis | undefined): RunMix[] {
  if (analysis === undefined) return [];
  const { mixes, resolved } = analysis;
  return mixes.flatMap((mix) =>
    mix.known ? [{ mix: mix.value, model: elementAt(resolved.model.mixes, mix.value.index), analysis }] : [],
  );
}

/** The programmes that mix the dough itself: a preferment is only stirred together, and wants no network. */
export function doughMixes(analysis: Analysis | undefined): RunMix[] {
  return runMixes(analysis).filter(
    ({ mix, analysis: { resolved } }) => mix.sectionId === doughOf(resolved.input).id,
  );
}

/** One line of a programme that takes time. */
export interface TimedPhase {
  readonly line: number;
  readonly startMinutes: number;
  readonly endMinutes: number;
  readonly works: boolean;
  /** When all that went in before it is taken in, minutes of the programme. */
  readonly takenInMinutes: number;
}

/** The lines of a programme that take time, in their order, with what is taken in by then. */
export function timedPhases({ mix }: RunMix): TimedPhase[] {
  const phases: TimedPhase[] = [];
  const times = phaseTimes(mix.input.phases);
  let [worked, flour, takenIn] = [0, 0, 0];
  for (const [index, phase] of mix.input.phases.entries()) {
    const { startMinutes, endMinutes } = elementAt(times, index);
    if ('portions' in phase) {
      for (const portion of phase.portions) flour += Math.max(0, portion.flourGrams);
      const soft = worked > 0 ? minutesByPercent * softPercent(phase.portions, flour) : 0;
      // It comes on top of what is not taken in yet, whether the programme says it in one line or in several.
      takenIn = Math.min(startMinutes + mostToTakeIn, Math.max(takenIn, startMinutes + leastToTakeIn) + soft);
      continue;
    }
    const works = phase.kind !== 'rest';
    if (works) worked += endMinutes - startMinutes;
    // What has only stood in the bowl is as far from being taken in as before.
    else if (takenIn > startMinutes) takenIn += endMinutes - startMinutes;
    phases.push({
      line: elementAt(mix.phaseLines, index),
      startMinutes,
      endMinutes,
      works,
      takenInMinutes: takenIn,
    });
  }
  return phases;
}

/** Minutes of work that any addition needs to be taken in; common practice, no source. */
const leastToTakeIn = 3;
/**
 * Minutes more for each percent of the flour in fat or water that a dough already worked has to take in, so that half of a
 * flour’s weight in butter takes some ten minutes and a pinch of salt three: common practice, no source.
 */
const minutesByPercent = 0.15;
/** However much of it there is; common practice, no source. */
const mostToTakeIn = 15;

/** Fat, and water for which a portion brings no flour, in percent of all flour: a preferment brings flour for its water. */
function softPercent(late: readonly MixPortion[], flourGrams: number): number {
  const soft = late.reduce(
    (sum, { fatGrams, freeWaterGrams, flourGrams: own }) =>
      sum + Math.max(0, fatGrams) + Math.max(0, freeWaterGrams - own),
    0,
  );
  return flourGrams > 0 ? (100 * soft) / flourGrams : 0;
}

/** The line in which the programme is at a minute; its last working line when the minute is past its end. */
export function phaseAt(run: RunMix, minutes: number): TimedPhase | undefined {
  const working = timedPhases(run).filter((phase) => phase.works);
  return working.find((phase) => phase.endMinutes >= minutes - 1e-9) ?? working[working.length - 1];
}

/** When all that goes in late is taken in, minutes of the programme. */
export function takenInMinutes(run: RunMix): number {
  return Math.max(0, ...timedPhases(run).map((phase) => phase.takenInMinutes));
}

/**
 * Works the dough no further than to a minute, and than what went in late takes to be taken in: lines end there, to the
 * half minute. No fix where a line would have to go, or where the finding would stay.
 */
export function stopFix(
  context: RuleContext,
  run: RunMix,
  minutes: number,
  cures: (after: MixingOutcome) => boolean,
): RuleFix[] {
  const edits = stopEdits(context, run, minutes);
  if (edits === undefined || edits.length === 0 || !cures(outcomeAfter(run, edits))) return [];
  return [{ title: message('mix.fix-shorten', { choices: timesOf(edits) }), edits, preferred: true }];
}

/** How long each line lasts after the edits, as it is written: `4 min`. */
export function timesOf(edits: readonly RuleEdit[]): readonly string[] {
  return edits.map(({ insert }) => insert);
}

/** An edit that makes a line of a programme last so long. */
export interface StopEdit extends RuleEdit {
  readonly minutes: number;
}

/** The edits of `stopFix`; undefined where they cannot be made. */
export function stopEdits({ block }: RuleContext, run: RunMix, minutes: number): StopEdit[] | undefined {
  const phases = timedPhases(run);
  const edits: StopEdit[] = [];
  for (const phase of phases) {
    const long = phase.endMinutes - phase.startMinutes;
    const wanted = Math.max(minutes, phase.takenInMinutes) - phase.startMinutes;
    if (!phase.works || wanted >= long) continue;
    if (wanted <= 0) return undefined;
    const kept = Math.max(0.5, Math.round(wanted * 2) / 2);
    if (kept >= long) continue;
    const span = quantityPlace(block, phase.line, 'duration');
    if (span === undefined) return undefined;
    const insert = `${trimmed(kept, 1)} min`;
    edits.push({ line: phase.line, start: span.start, end: span.end, insert, minutes: kept });
  }
  return edits;
}

/** What the programme does to the dough once its lines last as long as these edits say. */
export function outcomeAfter({ mix }: RunMix, edits: readonly StopEdit[]): MixingOutcome {
  const phases = mix.input.phases.map((phase, index) => {
    const edit = edits.find(({ line }) => line === mix.phaseLines[index]);
    if (edit === undefined || !('seconds' in phase)) return phase;
    return { ...phase, seconds: 60 * edit.minutes };
  });
  const mixing = { ...mix.input, phases };
  if (!mix.water.known) return simulateMixing(mixing);
  const water = temperWater({ mixing, ...mix.tempering });
  return water.known ? water.value.outcome : simulateMixing(mixing);
}

/** The part of the work wished from which a dough is developed enough; common practice, no source. */
const enough = 0.8;

/** Whether a dough of this D is developed enough for what is wished once folds and bulk are counted. */
export function isWorkedEnough(
  development: number,
  after: AfterMixing,
  { wishedDevelopment }: MixingOutcome,
): boolean {
  return development + after.development >= enough * wishedDevelopment - 1e-9;
}

/** Not even the earliest let-down comes before the end of the programme. */
export function holds({ letDownAfter, programmeMinutes }: MixingOutcome): boolean {
  return !letDownAfter.known || letDownAfter.value.low > programmeMinutes + 1e-9;
}

/** With more of the flour than this forming no gluten network, rye above all, the curve is a guess; common practice. */
const mostWithoutNetwork = 0.25;

/** Whether the flour forms enough of a gluten network for a warning: doughs of much rye are mixed until even, and only told of. */
export function isMostlyGluten({ mix }: RunMix): boolean {
  return mix.input.curve.known && mix.input.curve.value.shareWithoutNetwork <= mostWithoutNetwork;
}

/** Points of water beyond all that is known from which a band is a guess. */
const guessedPercent = 10;

/** Whether the dough is so wet that nobody has told how long it holds: then only all of its wide band is worth a warning. */
export function isGuessed({ mix }: RunMix): boolean {
  const { times } = mix.outcome;
  return times.known && times.value.beyondKnownPercent > guessedPercent;
}

/** What a finding about over-mixing hangs on: the flours and their stability, the water, the mixer. */
export function causesOf({ block }: RuleContext, { mix, model, analysis }: RunMix): RelatedLine[] {
  const related: RelatedLine[] = [];
  for (const line of analysis.solved?.overall ?? []) {
    const ingredient = analysis.resolved.ingredients.get(line.key);
    if (!line.isFlour || ingredient?.definition === undefined) continue;
    const stability = ingredient.flour?.stabilityMinutes;
    const { name, definition } = ingredient;
    const flour =
      stability === undefined
        ? message('mix.flour', { name })
        : message('mix.flour-stability', { name, minutes: stability });
    related.push({ definition, message: flour });
  }
  const water = waterLine(analysis);
  if (water !== undefined)
    related.push({ line: water, span: wordsOf(block, water), message: message('mix.water') });
  if (mix.mixer.definition !== undefined)
    related.push({
      definition: mix.mixer.definition,
      message: message('mix.mixer-named', { name: mix.mixer.name }),
    });
  else related.push({ ...headerPlace(block, model.headerLine), message: message('mix.mixer') });
  return related;
}

/** The line of the formula that holds most of its water. */
export function waterLine(analysis: Analysis): number | undefined {
  const lines = (analysis.solved?.sections[0]?.lines ?? []).filter(
    (line) => line.role === 'water' && !line.id.startsWith('F'),
  );
  const most = [...lines].sort((one, other) => (other.grams ?? 0) - (one.grams ?? 0))[0];
  return most === undefined ? undefined : lineOfId(most.id);
}
