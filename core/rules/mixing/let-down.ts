import { afterMixing } from '../../analysis/after-mixing.ts';
import type { Rule } from '../engine/rule.ts';
import { doughMixes, isWorkedEnough } from './mixes.ts';
import { tooFarFinding } from './over-mixing.ts';

export const letDown: Rule = {
  code: 'let-down',
  level: 'warning',
  title: 'The dough is mixed until it lets down',
  explanation:
    'Past full development the dough holds for a while, then lets down: it gets slack, shiny and sticky. Strong flour at modest hydration ' +
    'holds long; weak, wholemeal or very wet dough does not. Stop earlier, use a slower speed, less water or a stronger flour. The band is ±20 % ' +
    '(common practice) until the mixer is calibrated; a programme that ends inside it only may let the dough down, and in the first half of it that is information.',
  bad:
    'formula Quay Brown:\n  yield 20 kg\n  dough temperature 26 °C\n  wholemeal wheat  100%\n  water  84%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 10 min\n',
  good:
    'formula Quay Brown:\n  yield 20 kg\n  dough temperature 26 °C\n  wholemeal wheat  100%\n  water  84%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check(context) {
    for (const run of doughMixes(context.analysis)) {
      const { outcome } = run.mix;
      const { letDownAfter, breakdownAfter, developedAfter, development, programmeMinutes: end } = outcome;
      if (!letDownAfter.known || !breakdownAfter.known || !developedAfter.known) continue;
      const { low, expected, high } = letDownAfter.value;
      if (low > end + 1e-9 || breakdownAfter.value.expected <= end + 1e-9) continue;
      const [minutes, isPast] = [Math.min(expected, end), expected <= end];
      // Where the bands are so wide that a dough may lack work and may have had too much, the likelier of both is told.
      const after = afterMixing(run.analysis.resolved.model);
      if (expected > end && development.known && !isWorkedEnough(development.value, after, outcome)) continue;
      const found = { code: 'let-down', band: { low, high }, minutes, isPast } as const;
      yield tooFarFinding(context, run, found, developedAfter.value.expected);
    }
  },
};
