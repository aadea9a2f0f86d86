import { minutes, percent } from '../text/figures.ts';
import { doughMixes, phaseAt } from './mixes.ts';
import { headerPlace } from './places.ts';
import type { Rule, RuleContext } from './rule.ts';
import { wordsOf } from './words.ts';

/** Folds that finish a dough which was mixed short; common practice, no source. */
const foldsEnough = 2;
/** Hours of bulk in which a dough develops by itself; common practice, no source. */
const hoursEnough = 8;

export const underDeveloped: Rule = {
  code: 'under-developed',
  level: 'warning',
  title: 'The programme ends before the dough is developed',
  explanation:
    'By the flour, the water and the mixer the dough needs more work than the programme gives. That is intended where folds or a long ' +
    'bulk do the rest: with two folds or more, or eight hours of bulk, nothing is said. The time is common practice, ±20 % until the ' +
    'mixer is calibrated. No such finding for doughs that are mostly rye: they are mixed until even.',
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
      if (after.value.low <= outcome.programmeMinutes + 1e-9) continue;
      const line = phaseAt(run, outcome.programmeMinutes)?.line;
      const place =
        line === undefined
          ? headerPlace(context.block, run.model.headerLine)
          : { line, span: wordsOf(context.block, line) };
      const missing = minutes(after.value.expected - outcome.programmeMinutes);
      yield {
        ...place,
        message: `The dough is not developed when the programme ends: ${percent(outcome.development.value)} of the work it needs, about ${missing} more at the last speed. Mix on, or plan two folds in the bulk.`,
      };
    }
  },
};

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
