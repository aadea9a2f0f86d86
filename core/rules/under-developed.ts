import { minutesBand, percent, trimmed } from '../text/figures.ts';
import { replaceFix } from './fixes.ts';
import { foldEdits } from './fold-edits.ts';
import { causesOf, doughMixes, isMostlyGluten, phaseAt, type RunMix, timedPhases } from './mixes.ts';
import { headerPlace, quantityPlace } from './places.ts';
import type { Rule, RuleContext, RuleFix } from './rule.ts';
import { wordsOf } from './words.ts';

/** Folds that finish a dough which was mixed short; common practice, no source. */
const foldsEnough = 2;
/** Hours of bulk in which a dough develops by itself; common practice, no source. */
const hoursEnough = 8;
/** A single stretch longer than this, in minutes, is no advice. */
const longestMinutes = 40;

export const underDeveloped: Rule = {
  code: 'under-developed',
  level: 'warning',
  title: 'The programme ends before the dough is developed',
  explanation:
    'By the flour, the water and the mixer the dough needs more work than the programme gives. That is intended where folds or a long ' +
    'bulk do the rest: with two folds or more, or eight hours of bulk, nothing is said. The time is common practice, ±20 % until the ' +
    'mixer is calibrated; while the end of the programme lies inside that band the finding is information only. Dough with a quarter of rye and more is only informed of, and above 40% there is no such finding: it is mixed until even.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  1%\n\nmix in spiral:\n  load flour, water, salt, fresh yeast\n' +
    '  speed 1 for 3 min\n\nprocess:\n  bulk 1 h at 25 °C\n  divide\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  1%\n\nmix in spiral:\n  load flour, water, salt, fresh yeast\n' +
    '  speed 1 for 3 min\n\nprocess:\n  bulk 3 h at 25 °C, fold at 45 min, fold at 90 min\n  divide\n',
  *check(context) {
    if (isFinishedByTime(context)) return;
    for (const run of doughMixes(context.analysis)) {
      const { outcome } = run.mix;
      const after = outcome.developedAfter;
      if (!after.known || !outcome.development.known || !(outcome.workedMinutes > 0)) continue;
      const { low, expected, high } = after.value;
      const end = outcome.programmeMinutes;
      // Told when most of the band lies beyond the end; only a warning when all of it does.
      if (low + (expected - low) / 4 <= end + 1e-9) continue;
      const isSure = low > end + 1e-9 && isMostlyGluten(run);
      const line = phaseAt(run, end)?.line;
      const place =
        line === undefined
          ? headerPlace(context.block, run.model.headerLine)
          : { line, span: wordsOf(context.block, line) };
      const missing = minutesBand(Math.max(0, low - end), high - end);
      const verdict = isSure ? 'is not developed' : 'may not be developed';
      yield {
        ...place,
        message: `The dough ${verdict} when the programme ends: about ${percent(outcome.development.value, 0)} of the work it needs, ${missing} more at the last speed. Mix on, or plan two folds in the bulk.`,
        ...(isSure ? {} : { level: 'info' as const }),
        related: causesOf(context, run),
        fixes: [...foldFix(context), ...mixOnFix(context, run, expected)],
      };
    }
  },
};

function foldFix(context: RuleContext): RuleFix[] {
  const edits = foldEdits(context);
  return edits.length === 0 ? [] : [{ title: 'Fold twice in the bulk instead', edits, preferred: true }];
}

/** Mixes on at the last speed, to the half minute. */
function mixOnFix({ block }: RuleContext, run: RunMix, minute: number): RuleFix[] {
  const phases = timedPhases(run);
  const last = phases[phases.length - 1];
  const span = last === undefined ? undefined : quantityPlace(block, last.line, 'duration');
  if (last === undefined || !last.works || span === undefined || minute - last.startMinutes > longestMinutes)
    return [];
  const written = `${trimmed(Math.ceil((minute - last.startMinutes) * 2) / 2, 1)} min`;
  return [replaceFix(`Write ${written}: developed when it ends`, last.line, span, written)];
}

function isFinishedByTime({ analysis }: RuleContext): boolean {
  if (analysis === undefined) return true;
  const { model } = analysis.resolved;
  let folds = model.mixes
    .flatMap((mix) => mix.phases)
    .filter(({ statement }) => statement.property === 'fold').length;
  let seconds = 0;
  for (const process of model.processes) {
    if (process.header.part !== undefined && process.header.part.folded !== model.name.folded) continue;
    for (const { step } of process.steps) {
      folds += step.foldSeconds.length + (step.known === 'fold' ? 1 : 0);
      if (step.known === 'bulk' || step.known === 'retard') seconds += step.seconds ?? 0;
    }
  }
  return folds >= foldsEnough || seconds >= hoursEnough * 3600;
}
