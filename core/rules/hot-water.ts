import type { Analysis } from '../analysis/analysis.ts';
import { allPortions } from '../calc/mixing-water.ts';
import type { Block } from '../syntax/tree.ts';
import { degrees } from '../text/figures.ts';
import { doughMixes, waterLine } from './mixes.ts';
import { type BlockPlace, headerPlace } from './places.ts';
import type { Rule } from './rule.ts';
import { wordsOf } from './words.ts';

/** Common practice, no source: warmer water harms yeast where it meets it, and is hot to the hand. */
export const hottestCelsius = 45;

export const hotWater: Rule = {
  code: 'hot-water',
  level: 'warning',
  title: 'The water is hot enough to harm yeast and hands',
  explanation:
    'Water above about 45 °C harms the yeast that it meets, and can scald (common practice). Warm the flour or the room, or take a cooler ' +
    'dough. Scalds are made on purpose in a `part` of their own. Where not even boiling water would do, because the dough follows the room or the water is too little, that is told as information.',
  bad:
    'formula Quay Tin:\n  yield 10 kg\n  dough temperature 30 °C\n  bread flour  100%\n  water  60%, at 60 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 9 min\n  speed 2 for 3 min\n',
  good:
    'formula Quay Tin:\n  yield 10 kg\n  dough temperature 28 °C\n  bread flour  100%\n  water  60%, at 30 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 9 min\n  speed 2 for 3 min\n',
  *check({ analysis, block }) {
    for (const { mix, model } of doughMixes(analysis)) {
      const tempers = allPortions(mix.input).some(({ tempered, grams }) => tempered === true && grams > 0);
      if (!mix.water.known && tempers && mix.outcome.endCelsius.known) {
        // Nobody asked for a temperature that is only assumed.
        if (mix.targetAssumed) continue;
        yield {
          ...waterPlace(analysis!, block, model.headerLine),
          message: `No water brings the dough to ${degrees(mix.targetCelsius)}: ${mix.water.reason}. Warm the room or what else goes in, or write the dough temperature that comes of it.`,
          level: 'info',
        };
        continue;
      }
      const needed = mix.water.known ? mix.water.value.waterCelsius : undefined;
      const celsius = Math.max(needed ?? 0, mix.givenWaterCelsius ?? 0);
      if (celsius <= hottestCelsius) continue;
      const what =
        (mix.givenWaterCelsius ?? 0) > hottestCelsius
          ? `Water at ${degrees(celsius)}`
          : `To reach ${degrees(mix.targetCelsius)} the water would have to be at ${degrees(celsius)}, and that`;
      yield {
        ...waterPlace(analysis!, block, model.headerLine),
        message: `${what} harms yeast and can scald: above about ${degrees(hottestCelsius)} warm the flour instead, or take a cooler dough.`,
        // A temperature that nobody asked for is no ground for a warning.
        ...(mix.targetAssumed && (mix.givenWaterCelsius ?? 0) <= hottestCelsius
          ? { level: 'info' as const }
          : {}),
      };
    }
  },
};

function waterPlace(analysis: Analysis, block: Block, headerLine: number): BlockPlace {
  const line = waterLine(analysis);
  return line === undefined ? headerPlace(block, headerLine) : { line, span: wordsOf(block, line) };
}
