import { describe, expect, it } from 'vitest';
import { contextsOf, workspaceOf } from '../rules/findings.ts';

const solved = (text: string) =>
  contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough')[0]!.context.analysis!.solved!;
const gramsOf = (text: string, name: string): number =>
  solved(text).overall.find((row) => row.name === name)!.grams!;

describe('percent of all flour inside a part', () => {
  // By hand: 60 % of the flour is in the sponge, so 3 % of all flour is 5 % of the sponge's own.
  const sponge = (yeast: string): string =>
    `formula Loaf:\n  yield 40 pieces of 450 g\n  bread flour  100%\n  water  64%\n  salt  2%\n\npreferment sponge:\n  draws 60% of flour\n  bread flour  100%\n  water  60%\n  fresh yeast  ${yeast}\n`;
  it('is what the pocket calculator makes it', () => {
    const whole = solved(sponge('3% of all flour'));
    expect(gramsOf(sponge('3% of all flour'), 'fresh yeast') / whole.flourGrams!).toBeCloseTo(0.03, 9);
    expect(gramsOf(sponge('3% of all flour'), 'fresh yeast')).toBeCloseTo(
      gramsOf(sponge('5%'), 'fresh yeast'),
      6,
    );
    expect(whole.yieldDoughGrams).toBeCloseTo(18_000, 6);
  });

  // By hand: 100 of dough flour and r of the scald make all flour, r = 0.1 (100 + r), so r = 11.11 a hundred.
  it('counts its own flour in all flour', () => {
    const text =
      'formula Seed:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  scald  remaining\n\nscald:\n  medium rye  10% of all flour\n  water  18% of all flour\n';
    const { flourGrams, overall, yieldDoughGrams } = solved(text);
    const rye = overall.find((row) => row.name === 'medium rye')!.grams!;
    expect(rye / flourGrams!).toBeCloseTo(0.1, 9);
    expect(rye / (flourGrams! - rye)).toBeCloseTo(1 / 9, 9);
    expect(yieldDoughGrams).toBeCloseTo(20_000, 5);
  });

  it('is not known where there is no flour to measure by', () => {
    const text = 'formula Odd:\n  water  20% of all flour\n  salt  2%\n';
    expect(solved(text).flourGrams ?? 0).toBe(0);
  });
});

describe('a cup', () => {
  const cup = (flour: string, bakery = ''): string =>
    `formula Cup:\n  bread flour  ${flour}\n  water  1 cup\n${bakery}`;
  // Water has a density of 1 here: the cup in millilitres is its grams. NIST Handbook 44, appendix C; the metric cup is 250 ml.
  it.each([
    [cup('20 oz'), 236.5882365],
    [cup('1 kg'), 250],
    [cup('20 oz', '\nbakery Quay:\n  cup 240 ml\n'), 240],
  ])('is that of the weights around it', (text, grams) => {
    expect(gramsOf(text, 'water')).toBeCloseTo(grams, 6);
  });
});
