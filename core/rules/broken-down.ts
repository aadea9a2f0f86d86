import { minutes, minutesBand } from '../text/figures.ts';
import {
  causesOf,
  doughMixes,
  guessWords,
  holds,
  isGuessed,
  isMostlyGluten,
  phaseAt,
  stopFix,
} from './mixes.ts';
import type { Rule } from './rule.ts';
import { wordsOf } from './words.ts';

export const brokenDown: Rule = {
  code: 'broken-down',
  level: 'warning',
  title: 'The dough is mixed until it breaks down',
  explanation:
    'Beyond let-down the gluten is torn: the dough runs, gives water back and cannot be mended. Stop earlier, use a slower speed, less water ' +
    'or a stronger flour. The band is ±20 % (common practice) until the mixer is calibrated; a programme that ends in the second half of it may break the dough; before that it is told of as let down.',
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
      const line = phaseAt(run, expected)?.line ?? run.model.headerLine;
      const isGuess = isGuessed(run);
      const isSure = isMostlyGluten(run) && (!isGuess || high <= end);
      const verdict =
        high <= end && isSure && !isGuess
          ? 'the dough is broken down and cannot be mended'
          : 'the dough may be broken down';
      yield {
        line,
        span: wordsOf(context.block, line),
        message: `Breakdown from about ${minutesBand(low, high)}; this programme ends at ${minutes(end)}: ${verdict}. It is developed after about ${minutes(developedAfter.value.expected)}.${isGuess ? guessWords : ''}`,
        ...(isSure ? {} : { level: 'info' as const }),
        related: causesOf(context, run),
        fixes: stopFix(context, run, developedAfter.value.expected, holds),
      };
    }
  },
};
