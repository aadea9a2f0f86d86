import type { Analysis } from '../analysis/analysis.ts';
import type { MixAnalysis } from '../analysis/mixing.ts';
import { lineOfId, type MixModel } from '../model/formula-model.ts';
import { figure, trimmed } from '../text/figures.ts';
import { headerPlace, quantityPlace } from './places.ts';
import type { RelatedLine, RuleContext, RuleEdit, RuleFix } from './rule.ts';
import { wordsOf } from './words.ts';

/** A mixing programme that could be run, with the section that says it. */
export interface RunMix {
  readonly mix: MixAnalysis;
  readonly model: MixModel;
}

export function runMixes(analysis: Analysis | undefined): RunMix[] {
  return (analysis?.mixes ?? []).flatMap((mix) =>
    mix.known ? [{ mix: mix.value, model: analysis!.resolved.model.mixes[mix.value.index]! }] : [],
  );
}

/** The programmes that mix the dough itself: a preferment is only stirred together, and wants no gluten. */
export function doughMixes(analysis: Analysis | undefined): RunMix[] {
  return runMixes(analysis).filter(({ mix }) => mix.sectionId === analysis!.resolved.input.sections[0]!.id);
}

/** One line of a programme that takes time. */
export interface TimedPhase {
  readonly line: number;
  readonly startMinutes: number;
  readonly endMinutes: number;
  readonly works: boolean;
  /** The first line that works the dough after something has gone in. */
  readonly afterAddition: boolean;
}

export function timedPhases({ mix }: RunMix): TimedPhase[] {
  const phases: TimedPhase[] = [];
  let clock = 0;
  let afterAddition = false;
  for (const [index, phase] of mix.input.phases.entries()) {
    if ('portions' in phase) {
      afterAddition = true;
      continue;
    }
    const startMinutes = clock;
    clock += Math.max(0, phase.seconds) / 60;
    phases.push({
      line: mix.phaseLines[index]!,
      startMinutes,
      endMinutes: clock,
      works: phase.kind !== 'rest',
      afterAddition,
    });
    if (phase.kind !== 'rest') afterAddition = false;
  }
  return phases;
}

/** The line in which the programme is at a minute; its last working line when the minute is past its end. */
export function phaseAt(run: RunMix, minutes: number): TimedPhase | undefined {
  const working = timedPhases(run).filter((phase) => phase.works);
  return working.find((phase) => phase.endMinutes >= minutes - 1e-9) ?? working[working.length - 1];
}

/** When the last portion goes in, minutes of the programme. */
export function lastAdditionMinutes({ mix }: RunMix): number {
  let clock = 0;
  let last = 0;
  for (const phase of mix.input.phases) {
    if ('portions' in phase) last = clock;
    else clock += Math.max(0, phase.seconds) / 60;
  }
  return last;
}

/**
 * Works the dough no further than to a minute: its line ends there, to the half minute, and what comes after it is
 * shortened to the minutes that an addition before it needs to be taken in. No fix where a line would have to go.
 */
export function stopFix(context: RuleContext, run: RunMix, minutes: number): RuleFix[] {
  const edits = stopEdits(context, run, minutes);
  if (edits === undefined || edits.length === 0) return [];
  return [{ title: `${shorterWords(edits)}: developed, and no further`, edits, preferred: true }];
}

/** `Write 4 min`, or of several lines `Shorten to 4 min, then 3 min`. */
export function shorterWords(edits: readonly RuleEdit[]): string {
  const times = edits.map(({ insert }) => insert);
  return times.length === 1 ? `Write ${times[0]}` : `Shorten to ${times.join(', then ')}`;
}

/** Minutes that an addition needs to be taken in; common practice, no source. */
export const takenInMinutes = 3;

/** The edits of `stopFix`; undefined where they cannot be made. */
export function stopEdits({ block }: RuleContext, run: RunMix, minutes: number): RuleEdit[] | undefined {
  const phases = timedPhases(run);
  const edits: RuleEdit[] = [];
  for (const phase of phases) {
    const long = phase.endMinutes - phase.startMinutes;
    const wanted = minutes - phase.startMinutes;
    if (!phase.works || wanted >= long) continue;
    if (wanted <= 0 && !phase.afterAddition) return undefined;
    const kept = wanted <= 0 ? Math.min(long, takenInMinutes) : Math.max(0.5, Math.round(wanted * 2) / 2);
    if (kept >= long) continue;
    const span = quantityPlace(block, phase.line, 'duration');
    if (span === undefined) return undefined;
    edits.push({ line: phase.line, start: span.start, end: span.end, insert: `${trimmed(kept, 1)} min` });
  }
  return edits;
}

/** What a finding about over-mixing hangs on: the flours and their stability, the water, the mixer. */
export function causesOf({ analysis, block }: RuleContext, { mix, model }: RunMix): RelatedLine[] {
  const related: RelatedLine[] = [];
  for (const line of analysis!.solved?.overall ?? []) {
    const ingredient = analysis!.resolved.ingredients.get(line.key);
    if (!line.isFlour || ingredient?.definition === undefined) continue;
    const stability = ingredient.flour?.stabilityMinutes;
    const told = stability === undefined ? '' : `, stability ${figure(stability, 1)} min`;
    related.push({ definition: ingredient.definition, message: `the flour “${ingredient.name}”${told}` });
  }
  const water = waterLine(analysis!);
  if (water !== undefined) related.push({ line: water, span: wordsOf(block, water), message: 'the water' });
  if (mix.mixer.definition !== undefined)
    related.push({ definition: mix.mixer.definition, message: `the mixer “${mix.mixer.name}”` });
  else related.push({ ...headerPlace(block, model.headerLine), message: 'the mixer' });
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
