import { degrees } from '../text/figures.ts';
import { doughMixes, waterLine } from './mixes.ts';
import { headerPlace } from './places.ts';
import type { Rule } from './rule.ts';
import { wordsOf } from './words.ts';

/** Common practice, no source: warmer water harms yeast where it meets it, and is hot to the hand. */
const hottestCelsius = 45;

export const hotWater: Rule = {
  code: 'hot-water',
  level: 'warning',
  title: 'The water is hot enough to harm yeast and hands',
  explanation:
    'Water above about 45 °C harms the yeast that it meets, and can scald (common practice). Warm the flour or the room, or take a cooler ' +
    'dough. Scalds are made on purpose in a `part` of their own.',
  bad:
    'formula Quay Tin:\n  yield 10 kg\n  dough temperature 30 °C\n  bread flour  100%\n  water  60%, at 60 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 9 min\n  speed 2 for 3 min\n',
  good:
    'formula Quay Tin:\n  yield 10 kg\n  dough temperature 28 °C\n  bread flour  100%\n  water  60%, at 30 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 9 min\n  speed 2 for 3 min\n',
  *check({ analysis, block }) {
    for (const { mix, model } of doughMixes(analysis)) {
      const needed = mix.water.known ? mix.water.value.waterCelsius : undefined;
      const celsius = Math.max(needed ?? 0, mix.givenWaterCelsius ?? 0);
      if (celsius <= hottestCelsius) continue;
      const line = waterLine(analysis!);
      const place =
        line === undefined ? headerPlace(block, model.headerLine) : { line, span: wordsOf(block, line) };
      const what =
        (mix.givenWaterCelsius ?? 0) > hottestCelsius
          ? `Water at ${degrees(celsius)}`
          : `To reach ${degrees(mix.targetCelsius)} the water would have to be at ${degrees(celsius)}, and that`;
      yield {
        ...place,
        message: `${what} harms yeast and can scald: above about ${degrees(hottestCelsius)} warm the flour instead, or take a cooler dough.`,
      };
    }
  },
};
