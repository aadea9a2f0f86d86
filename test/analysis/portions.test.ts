import { describe, expect, it } from 'vitest';
import type { MixAnalysis } from '../../core/analysis/mix-analysis.ts';
import { heatAt, heatCurve } from '../../core/calc/formula/composition.ts';
import { contextsOf, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

function mixed(lines: string, programme = '  load flour, water, salt\n'): MixAnalysis {
  const text =
    'bakery Quay Lane:\n  room 21 °C\n  flour 19 °C\n\nmixer hook:\n  kind spiral\n  speed 1 100 rpm\n\n' +
    `formula Quay Tin:\n  yield 20 kg\n  dough temperature 25 °C\n  bread flour  100%\n${lines}  salt  2%\n\nmix in hook:\n${programme}  speed 1 for 6 min\n`;
  const contexts = contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough');
  const mix = contexts.find(({ context }) => context.analysis !== undefined)!.context.analysis!.doughMix;
  if (!mix.known) throw new Error(inWords(mix.reason));
  return mix.value;
}

function endCelsius({ outcome }: MixAnalysis): number {
  if (!outcome.endCelsius.known) throw new Error(inWords(outcome.endCelsius.reason));
  return outcome.endCelsius.value;
}

/** The temperature and the share of all water, line by line as it goes in. */
const waters = (mix: MixAnalysis): (readonly [number | 'chosen', number])[] =>
  mix.input.phases.flatMap((phase) =>
    'portions' in phase
      ? phase.portions
          .filter(({ kind }) => kind === 'water')
          .map((one) => [one.tempered ? 'chosen' : one.celsius, Math.round(one.grams)] as const)
      : [],
  );

describe('two lines of one ingredient', () => {
  it('go in as one where nothing tells them apart', () => {
    expect(waters(mixed('  water  40%\n  water  25%\n'))).toEqual(waters(mixed('  water  65%\n')));
  });

  it('keep their temperatures, whichever is written first', () => {
    const [cold, hot] = ['  water  40%, at 10 °C\n', '  water  25%, at 40 °C\n'];
    const end = endCelsius(mixed(cold + hot));
    expect(endCelsius(mixed(hot + cold))).toBeCloseTo(end, 9);
    const water = heatCurve({ water: 1, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: 0 });
    const heat = (40 * heatAt(water, 10) + 25 * heatAt(water, 40)) / 65;
    const between = heat / (heatAt(water, 22) - heatAt(water, 21));
    expect(end).toBeCloseTo(endCelsius(mixed(`  water  65%, at ${between.toFixed(3)} °C\n`)), 2);
  });

  it('leave the water free whose temperature is not said', () => {
    const mix = mixed('  water  20%, at 4 °C\n  water  45%\n');
    expect(mix.water.known).toBe(true);
    expect(endCelsius(mix)).toBeCloseTo(25, 9);
  });

  it('go in one after the other by portions', () => {
    const mix = mixed(
      '  water  40%, at 10 °C\n  water  25%, at 40 °C\n',
      '  load flour, water 50%, salt\n  speed 1 for 2 min\n  add remaining water\n',
    );
    const flour = 20_000 / 1.67;
    expect(waters(mix)).toEqual([
      [10, Math.round(0.4 * flour)],
      [40, Math.round(0.1 * flour)],
      [40, Math.round(0.15 * flour)],
    ]);
  });
});

describe('a part that was held in the cold', () => {
  const celsiusOf = (kilograms: number, rests: string): number => {
    const text =
      `bakery Quay Lane:\n  room 21 °C\n\nformula Quay Tin:\n  yield ${kilograms} kg\n  bread flour  100%\n  water  60%\n  salt  2%\n\npreferment poolish:\n  draws 30% of flour\n` +
      `  bread flour  100%\n  water  100%\n${rests}\nmix by hand:\n  load flour, water, poolish, salt\n  knead 10 min\n`;
    const { analysis } = contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough').find(
      ({ context }) => context.analysis !== undefined,
    )!.context;
    const mix = analysis!.doughMix;
    if (!mix.known) throw new Error(inWords(mix.reason));
    const portions = mix.value.input.phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
    return portions.find(({ kind }) => kind === 'preferment')!.celsius;
  };

  it('is as cold as its weight lets it get in the time', () => {
    const rests = '  ferment 12 h at 20 °C\n  hold 2 h at 4 °C\n';
    // Some 22 kg in a bucket hardly cool in two hours; a cupful is nearly there (common practice, no source).
    expect(celsiusOf(60, rests)).toBeGreaterThan(16);
    expect(celsiusOf(0.2, rests)).toBeLessThan(7);
    expect(celsiusOf(60, '  ferment 12 h at 20 °C\n  hold 240 h at 4 °C\n')).toBeCloseTo(4, 3);
    expect(celsiusOf(60, '  ferment 12 h at 20 °C\n')).toBe(20);
    expect(celsiusOf(60, '')).toBe(21);
  });

  it('begins at the temperature it was made at', () => {
    const warm = celsiusOf(2, '  dough temperature 30 °C\n  ferment 1 h at 20 °C\n');
    expect(warm).toBeGreaterThan(20);
    expect(warm).toBeLessThan(30);
  });
});
