import { softness } from '../calc/bowl-load.ts';
import type { MixPortion } from '../calc/mixing-programme.ts';
import { trimmed } from '../text/figures.ts';
import { doughMixes, waterLine } from './mixes.ts';
import type { Rule } from './rule.ts';
import { listed, wordsOf } from './words.ts';

/**
 * Water to flour, by weight, up to which makers’ manuals of dough mixers keep to the first speed. Flours differ by a few
 * points: nearer than this below the edge the finding is information only.
 */
const stiff = 0.5;
const edge = 0.02;

/** `47 g of water to 100 g of flour`, and what egg, fat and sugar make of it. */
function stiffWords(inBowl: readonly MixPortion[], soft: number): string {
  const lean = softness(
    inBowl.map((portion) => ({ ...portion, fatGrams: 0, sugarGrams: 0, eggBeyondGrams: 0 })),
  );
  const [water, as] = [lean ?? soft, soft].map((ratio) => trimmed(100 * ratio, 0));
  const rich = listed([
    ...(inBowl.some(({ eggBeyondGrams = 0 }) => eggBeyondGrams > 0) ? ['egg'] : []),
    'fat',
    'sugar',
  ]);
  return `${water} g of water to 100 g of flour${water === as ? '' : `, with ${rich} as soft as ${as} g,`}`;
}

export const fastForStiff: Rule = {
  code: 'fast-for-stiff',
  level: 'warning',
  title: 'A very stiff dough at second speed',
  explanation:
    'Up to 50 g of water to 100 g of flour a dough is so stiff that a faster speed overloads motor and gears, tears the dough instead of ' +
    'developing it and warms it fast. Makers’ manuals of dough mixers keep such dough to the first speed. Fat and sugar soften a dough: they count as half their weight in water, and egg, which is poured, counts whole (common practice). Your machine’s own manual ' +
    'comes first.',
  bad:
    'formula Quay Ring:\n  yield 20 kg\n  bread flour  100%\n  water  45%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n  speed 2 for 3 min\n',
  good:
    'formula Quay Ring:\n  yield 20 kg\n  bread flour  100%\n  water  45%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 14 min\n',
  *check({ analysis, block }) {
    for (const { mix } of doughMixes(analysis)) {
      const { phases, mixer } = mix.input;
      const slowest = Math.min(...mixer.speeds.map((speed) => speed.number));
      const inBowl: MixPortion[] = [];
      for (const [index, phase] of phases.entries()) {
        if ('portions' in phase) {
          inBowl.push(...phase.portions);
          continue;
        }
        if (phase.kind !== 'speed' || mixer.kind === 'hand' || phase.number <= slowest) continue;
        const soft = softness(inBowl);
        if (soft === undefined || soft > stiff || !(phase.seconds > 0)) continue;
        const line = mix.phaseLines[index]!;
        const by = waterLine(analysis!);
        const isSure = soft <= stiff - edge;
        yield {
          line,
          span: wordsOf(block, line),
          message: `${stiffWords(inBowl, soft)} is ${isSure ? 'too stiff' : 'on the edge of too stiff'} for speed ${phase.number}: it strains the machine and tears the dough. Stay at speed ${slowest}, and follow the machine’s manual.`,
          ...(isSure ? {} : { level: 'info' as const }),
          related: [
            ...(by === undefined ? [] : [{ line: by, span: wordsOf(block, by), message: 'the water' }]),
            ...(mix.mixer.definition === undefined
              ? []
              : [{ definition: mix.mixer.definition, message: `the mixer “${mix.mixer.name}”` }]),
          ],
        };
        break;
      }
    }
  },
};
