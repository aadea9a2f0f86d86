import { limitOf } from '../../analysis/mix-analysis.ts';
import { message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { iceFix } from './ice-fix.ts';
import { iceMessage } from './ice-message.ts';
import { doughMixes, waterLine } from './mixes.ts';

/** Degrees above what is wanted from which ice is worth a word; common practice, no source. */
const leastOver = 1;

export const iceNeeded: Rule = {
  code: 'ice-needed',
  level: 'info',
  title: 'The tap is too warm for the dough temperature wanted',
  explanation:
    'With water straight from the tap the dough ends more than 1 °C warmer than wanted, and ice would bring it down. How much ice is computed from the ' +
    'temperature of the tap: write `tap water` in the section of the bakery, else 15 °C is assumed. With `ice to hand` there the ice is planned. ' +
    'Where the dough is more than 2 °C too warm, that is shown instead (too-warm).',
  bad:
    'bakery Quay Lane:\n  room 25 °C\n  flour 24 °C\n  tap water 18 °C\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 25 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  good:
    'bakery Quay Lane:\n  tap water 12 °C\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 25 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check(context) {
    const { block } = context;
    for (const run of doughMixes(context.analysis)) {
      const { analysis } = run;
      const { mix, model } = run;
      const { endCelsius } = mix.outcome;
      if (!mix.water.known || !endCelsius.known || mix.targetAssumed) continue;
      const { iceCure, tapCelsius, tapAssumed } = mix.water.value;
      const over = endCelsius.value - mix.targetCelsius;
      if (iceCure === undefined || over < leastOver || endCelsius.value > limitOf(mix)) continue;
      const line = waterLine(analysis);
      const place =
        line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
      const facts = { tapCelsius, doughCelsius: endCelsius.value, targetCelsius: mix.targetCelsius };
      const said = tapAssumed
        ? message('ice-needed.tap-assumed', { ...facts, property: 'tap water' })
        : message('ice-needed.tap', facts);
      const help =
        analysis.solved?.assumedScale === true
          ? message('ice-needed.would-bring', { doughCelsius: iceCure.doughCelsius })
          : iceMessage(iceCure);
      yield {
        ...place,
        message: paragraph(said, help),
        fixes: iceFix(context, run),
      };
    }
  },
};
