import { softness, stiffWaterToFlour } from '../../calc/mixing/bowl-load.ts';
import type { MixPortion } from '../../calc/mixing/mixing-programme.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { doughMixes, waterLine } from './mixes.ts';

/** Flours differ by a few points: nearer than this below the edge of a stiff dough the finding is information only. */
const edge = 0.02;

/** How stiff a dough is, and what egg, fat and sugar make of it. */
function stiffMessage(inBowl: readonly MixPortion[], soft: number, speeds: Speeds): Message {
  const lean = softness(
    inBowl.map((portion) => ({ ...portion, fatGrams: 0, sugarGrams: 0, eggBeyondGrams: 0 })),
  );
  const [waterPerHundred, softPerHundred] = [100 * (lean ?? soft), 100 * soft];
  const facts = { ...speeds, waterPerHundred, softPerHundred };
  const isSure = soft <= stiffWaterToFlour - edge;
  if (trimmed(waterPerHundred, 0) === trimmed(softPerHundred, 0))
    return message(isSure ? 'fast-for-stiff.too-stiff' : 'fast-for-stiff.edge', facts);
  if (inBowl.some(({ eggBeyondGrams = 0 }) => eggBeyondGrams > 0))
    return message(isSure ? 'fast-for-stiff.too-stiff-egg' : 'fast-for-stiff.edge-egg', facts);
  return message(isSure ? 'fast-for-stiff.too-stiff-rich' : 'fast-for-stiff.edge-rich', facts);
}

/** The speed that is run, and the slowest there is. */
type Speeds = { readonly number: number; readonly slowestNumber: number };

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
  *check({ analysis: formula, block }) {
    for (const { mix, analysis } of doughMixes(formula)) {
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
        if (soft === undefined || soft > stiffWaterToFlour || !(phase.seconds > 0)) continue;
        const line = elementAt(mix.phaseLines, index);
        const by = waterLine(analysis);
        const isSure = soft <= stiffWaterToFlour - edge;
        yield {
          line,
          span: wordsOf(block, line),
          message: stiffMessage(inBowl, soft, { number: phase.number, slowestNumber: slowest }),
          ...(isSure ? {} : { level: 'info' as const }),
          related: [
            ...(by === undefined
              ? []
              : [{ line: by, span: wordsOf(block, by), message: message('mix.water') }]),
            ...(mix.mixer.definition === undefined
              ? []
              : [
                  {
                    definition: mix.mixer.definition,
                    message: message('mix.mixer-named', { name: mix.mixer.name }),
                  },
                ]),
          ],
        };
        break;
      }
    }
  },
};
