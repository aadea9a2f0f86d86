import { degrees } from '../text/figures.ts';
import { doughMixes, waterLine } from './mixes.ts';
import { headerPlace } from './places.ts';
import type { Rule } from './rule.ts';
import { wordsOf } from './words.ts';

/** Ice melts at the price of 80 °C of water: colder than this even all ice is not. */
const coldestVirtualCelsius = -80;

export const iceNeeded: Rule = {
  code: 'ice-needed',
  level: 'info',
  title: 'Water alone cannot be cold enough, and how much ice is not known',
  explanation:
    'To reach the dough temperature the water would have to be below freezing: part of it must be ice. How much depends on the tap; ' +
    'write `tap water` in the section of the bakery.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  dough temperature 18 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 10 min\n',
  good:
    'bakery Quay Lane:\n  tap water 12 °C\n\nformula Quay Tin:\n  yield 20 kg\n  dough temperature 24 °C\n  bread flour  100%\n  water  62%\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check({ analysis, block }) {
    for (const { mix, model } of doughMixes(analysis)) {
      if (!mix.water.known || mix.water.value.ice.known || mix.water.value.waterCelsius >= 0) continue;
      const line = waterLine(analysis!);
      const place =
        line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
      const virtual = degrees(mix.water.value.waterCelsius).replace('-', '−');
      const beyond = mix.water.value.waterCelsius < coldestVirtualCelsius;
      yield {
        ...place,
        message: beyond
          ? `Not even ice for all of the water would bring the dough to ${degrees(mix.targetCelsius)}. Mix shorter or slower, or cool the flour.`
          : `To reach ${degrees(mix.targetCelsius)} the water would have to be at ${virtual}: part of it must be ice. Write “tap water” in the bakery’s section to see how much.`,
      };
    }
  },
};
