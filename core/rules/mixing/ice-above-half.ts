import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { doughMixes, waterLine } from './mixes.ts';

/** Degrees by which half of the water as ice falls short that are worth a word. */
const leastShort = 0.25;

export const iceAboveHalf: Rule = {
  code: 'ice-above-half',
  level: 'info',
  title: 'More than half of the water would have to be ice',
  explanation:
    'Ice is never planned for more than half of the water: so much melts late, in a short programme there may be pieces of it left, and the dough stays ' +
    'firm at first. Cool the flour, mix shorter or slower, or accept a warmer dough. The limit is common practice.',
  bad:
    'bakery Quay Lane:\n  room 32 °C\n  flour 31 °C\n  tap water 24 °C\n  ice to hand\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 20 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 12 min\n',
  good:
    'bakery Quay Lane:\n  room 21 °C\n  flour 19 °C\n  tap water 12 °C\n  ice to hand\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 25 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check({ analysis: formula, block }) {
    for (const { mix, model, analysis } of doughMixes(formula)) {
      if (!mix.water.known || mix.water.value.ice === undefined) continue;
      const { iceGrams, doughCelsius } = mix.water.value.ice;
      if (doughCelsius - mix.targetCelsius < leastShort) continue;
      const line = waterLine(analysis);
      const place =
        line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
      const ends = { doughCelsius, targetCelsius: mix.targetCelsius };
      yield {
        ...place,
        message:
          analysis.solved?.assumedScale === true
            ? message('ice-above-half.unsized', ends)
            : message('ice-above-half.weighed', { iceGrams, ...ends }),
      };
    }
  },
};
