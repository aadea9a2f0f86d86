import type { Rule } from '../engine/rule.ts';
import { doughMixes } from './mixes.ts';
import { tooFarFinding } from './over-mixing.ts';

export const brokenDown: Rule = {
  code: 'broken-down',
  level: 'warning',
  title: 'The dough is mixed until it breaks down',
  explanation:
    'Beyond let-down the gluten is torn: the dough runs, gives water back and cannot be saved. Stop earlier, use a slower speed, less water ' +
    'or a stronger flour. The band is ±20 % (common practice) until the mixer is calibrated; a programme that ends in the second half of it may break the dough; before that it is shown as let down.',
  bad:
    'formula Quay Brown:\n  yield 20 kg\n  dough temperature 26 °C\n  wholemeal wheat  100%\n  water  84%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 16 min\n',
  good:
    'formula Quay Brown:\n  yield 20 kg\n  dough temperature 26 °C\n  wholemeal wheat  100%\n  water  84%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check(context) {
    for (const run of doughMixes(context.analysis)) {
      const { breakdownAfter, developedAfter, programmeMinutes: end } = run.mix.outcome;
      if (!breakdownAfter.known || !developedAfter.known) continue;
      const { low, expected, high } = breakdownAfter.value;
      if (expected > end + 1e-9) continue;
      const found = { code: 'broken-down', band: { low, high }, minutes: expected, isPast: true } as const;
      yield tooFarFinding(context, run, found, developedAfter.value.expected);
    }
  },
};
