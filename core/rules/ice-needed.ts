import { limitOf } from '../analysis/mixing.ts';
import { degrees } from '../text/figures.ts';
import { iceFix } from './ice-fix.ts';
import { cureWords } from './ice-words.ts';
import { doughMixes, waterLine } from './mixes.ts';
import { headerPlace } from './places.ts';
import type { Rule } from './rule.ts';
import { wordsOf } from './words.ts';

/** Degrees above what is wanted from which ice is worth a word; common practice, no source. */
const leastOver = 1;

export const iceNeeded: Rule = {
  code: 'ice-needed',
  level: 'info',
  title: 'The tap is too warm for the dough temperature wanted',
  explanation:
    'With water straight from the tap the dough ends more than 1 °C warmer than wanted, and ice would bring it down. How much ice is worked out from the ' +
    'temperature of the tap: write `tap water` in the section of the bakery, else 15 °C is assumed. With `ice to hand` there the ice is planned. ' +
    'Where the dough is more than 2 °C too warm, that is told instead (too-warm).',
  bad:
    'bakery Quay Lane:\n  room 25 °C\n  flour 24 °C\n  tap water 18 °C\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 25 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  good:
    'bakery Quay Lane:\n  tap water 12 °C\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 25 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check(context) {
    const { analysis, block } = context;
    for (const run of doughMixes(analysis)) {
      const { mix, model } = run;
      const { endCelsius } = mix.outcome;
      if (!mix.water.known || !endCelsius.known || mix.targetAssumed) continue;
      const { iceCure, tapCelsius, tapAssumed } = mix.water.value;
      const over = endCelsius.value - mix.targetCelsius;
      if (iceCure === undefined || over < leastOver || endCelsius.value > limitOf(mix)) continue;
      const line = waterLine(analysis!);
      const place =
        line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
      const tap = tapAssumed
        ? `taken to be at ${degrees(tapCelsius)} (write “tap water” in the bakery’s section)`
        : `at ${degrees(tapCelsius)}`;
      yield {
        ...place,
        message: `With water from the tap, ${tap}, the dough ends at ${degrees(endCelsius.value)} instead of ${degrees(mix.targetCelsius)}. ${analysis!.solved?.assumedScale === true ? `Ice would bring it to ${degrees(iceCure.doughCelsius)}.` : cureWords(iceCure)}`,
        fixes: iceFix(context, run),
      };
    }
  },
};
