import { celsiusAt } from '../../calc/mixing/mixing.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { causesOf, doughMixes, phaseAt, type RunMix, stopFix, takenInMinutes } from './mixes.ts';

/** D above the one wished from which more work is a waste; common practice, no source. */
const plenty = 1.5;
const leastWastedMinutes = 3;

/** The minute of the programme that would have been enough, where the dough is mixed far past it and neither let down nor broken. */
export function enoughMinutes(run: RunMix): number | undefined {
  const {
    wishedAfter,
    letDownAfter,
    development,
    wishedDevelopment,
    programmeMinutes: end,
  } = run.mix.outcome;
  if (!wishedAfter.known || !development.known || development.value < wishedDevelopment + plenty)
    return undefined;
  if (letDownAfter.known && letDownAfter.value.low <= end) return undefined;
  const enough = Math.max(wishedAfter.value.high, takenInMinutes(run));
  return end - enough < leastWastedMinutes ? undefined : enough;
}

export const mixedPastNeed: Rule = {
  code: 'mixed-past-need',
  level: 'info',
  title: 'The dough is mixed far longer than it needs',
  explanation:
    'The dough has had more than twice the work of an improved mix: one and a half times as much again as its degree of mixing wishes (`develop` in the mix section). The minutes are spent on warming it, and on bleaching the crumb. ' +
    'What an addition late in the programme needs to be taken in is not counted: three minutes, and more for much butter or water (common practice). Where the dough is let down or broken, that is shown instead.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 26 °C\n  bread flour  100%\n  water  60%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 8 min\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 26 °C\n  bread flour  100%\n  water  60%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 5 min\n',
  *check(context) {
    for (const run of doughMixes(context.analysis)) {
      const { outcome } = run.mix;
      const { wishedAfter, programmeMinutes: end } = outcome;
      const enough = enoughMinutes(run);
      if (enough === undefined || !wishedAfter.known) continue;
      const wasted = end - enough;
      const line = phaseAt(run, end)?.line ?? run.model.headerLine;
      const before = celsiusAt(outcome, enough);
      const added =
        before.known && outcome.endCelsius.known ? outcome.endCelsius.value - before.value : undefined;
      const facts = {
        lowMinutes: wishedAfter.value.low,
        highMinutes: wishedAfter.value.high,
        programmeMinutes: end,
        minutes: wasted,
      };
      yield {
        line,
        span: wordsOf(context.block, line),
        message:
          added === undefined || added < 0.1
            ? message('mixed-past-need.longer', facts)
            : message('mixed-past-need.warms', { ...facts, apartCelsius: added }),
        related: causesOf(context, run),
        fixes: stopFix(context, run, enough, (after) => after.programmeMinutes - enough < leastWastedMinutes),
      };
    }
  },
};
