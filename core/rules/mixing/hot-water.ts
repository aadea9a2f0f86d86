import type { Analysis } from '../../analysis/analysis.ts';
import { hasLittleWater } from '../../calc/mixing/mixing-water.ts';
import type { Block } from '../../syntax/tree.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { type BlockPlace, headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { doughMixes, waterLine } from './mixes.ts';

/** Common practice, no source: warmer water harms yeast where it meets it, and is hot to the hand. */
export const hottestCelsius = 45;
/** Degrees too cool that are worth a word. */
const leastShort = 0.5;
/** The same where the dough follows the room, and nobody expects it to the half degree. */
const leastCool = 1;

export const hotWater: Rule = {
  code: 'hot-water',
  level: 'warning',
  title: 'The water is hot enough to harm yeast and hands',
  explanation:
    'Water above about 45 °C harms the yeast that it meets, and can scald (common practice). Warm the flour or the room, or take a cooler ' +
    'dough. Scalds are made on purpose in a `part` of their own. No water hotter than 60 °C is ever computed, and by hand none above 40 °C: where that is not warm enough, it is shown as information.',
  bad:
    'formula Quay Tin:\n  yield 10 kg\n  dough temperature 30 °C\n  bread flour  100%\n  water  60%, at 60 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  good:
    'formula Quay Tin:\n  yield 10 kg\n  dough temperature 28 °C\n  bread flour  100%\n  water  60%, at 30 °C\n  salt  2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  *check({ analysis: formula, block }) {
    for (const { mix, model, analysis } of doughMixes(formula)) {
      const needed = mix.water.known ? mix.water.value.waterCelsius : undefined;
      if (mix.water.known && mix.water.value.reach === 'not warm enough' && needed !== undefined) {
        const { doughCelsius } = mix.water.value;
        const isShort = doughCelsius.known && mix.targetCelsius - doughCelsius.value >= leastShort;
        // Nobody asked for a temperature that is only assumed; that the water for it harms the yeast is told all the same.
        if (!mix.targetAssumed && isShort) {
          yield {
            ...waterPlace(analysis, block, model.headerLine),
            message: message('hot-water.not-enough', {
              waterCelsius: needed,
              doughCelsius: doughCelsius.value,
              targetCelsius: mix.targetCelsius,
            }),
            level: 'info',
          };
          continue;
        }
      }
      if (mix.water.known && mix.water.value.reach === 'no lever') {
        const { doughCelsius } = mix.water.value;
        if (mix.targetAssumed || !doughCelsius.known || mix.targetCelsius - doughCelsius.value < leastCool)
          continue;
        yield {
          ...waterPlace(analysis, block, model.headerLine),
          message: message(hasLittleWater(mix.input) ? 'hot-water.too-little' : 'hot-water.follows-room', {
            doughCelsius: doughCelsius.value,
            targetCelsius: mix.targetCelsius,
          }),
          level: 'info',
        };
        continue;
      }
      const celsius = Math.max(needed ?? 0, mix.givenWaterCelsius ?? 0);
      if (celsius <= hottestCelsius) continue;
      const isStated = (mix.givenWaterCelsius ?? 0) > hottestCelsius;
      const facts = { waterCelsius: celsius, limitCelsius: hottestCelsius };
      yield {
        ...waterPlace(analysis, block, model.headerLine),
        message: isStated
          ? message('hot-water.stated', facts)
          : message('hot-water.computed', { ...facts, targetCelsius: mix.targetCelsius }),
        // A temperature that nobody asked for is no ground for a warning.
        ...(mix.targetAssumed && !isStated ? { level: 'info' as const } : {}),
      };
    }
  },
};

function waterPlace(analysis: Analysis, block: Block, headerLine: number): BlockPlace {
  const line = waterLine(analysis);
  return line === undefined ? headerPlace(block, headerLine) : { line, span: wordsOf(block, line) };
}
