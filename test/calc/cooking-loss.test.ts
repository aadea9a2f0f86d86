import { describe, expect, it } from 'vitest';
import { contentsOf } from '../../core/calc/formula/contents.ts';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import type { FormulaInput, SectionInput } from '../../core/calc/formula/formula-input.ts';
import { dough, drawRole, flour, g, milk, part, pct, salt, section, water } from './formula-builder.ts';

const solve = (...sections: SectionInput[]) => {
  const input: FormulaInput = { sections, lossFraction: 0, yield: { kind: 'dough', grams: 20_000 } };
  return solveFormula(input);
};
const scald = (loss: number, ...more: Partial<SectionInput>[]) =>
  section('scald', 'scald', [flour('rye', pct(100)), water(pct(400))], {
    cookingLossFraction: loss,
    ...more[0],
  });
const grams = (rows: readonly { readonly name: string; readonly grams?: number }[], name: string) =>
  rows.find((row) => row.name === name)!.grams!;

describe('what steams away of a scald', () => {
  // By hand: of 1 part of rye and 4 of water 10 % go, half a part, so that 4.5 parts are left, 3.5 of them water.
  it('leaves less than was weighed in, and that less is water', () => {
    const { solved, problems } = solve(
      dough(flour('wheat', pct(100)), water(pct(50)), salt(pct(2)), part('scald', pct(45))),
      scald(0.1),
    );
    expect(problems).toEqual([]);
    const made = solved!.sections[1]!;
    const rye = grams(made.lines, 'rye');
    expect(made.totalGrams! / rye).toBeCloseTo(4.5, 9);
    expect(grams(made.lines, 'water') / rye).toBeCloseTo(4, 9);
    expect(made.steamGrams! / rye).toBeCloseTo(0.5, 9);
    expect(made.hydration).toBeCloseTo(3.5, 9);
    // 45 of 100 wheat: 10 rye and 35 water, so all flour is 110 and all water 85.
    expect(solved!.hydration).toBeCloseTo(85 / 110, 9);
    expect(solved!.doughGrams).toBeCloseTo(20_000, 6);
    expect(solved!.overall.reduce((sum, row) => sum + row.grams!, 0)).toBeCloseTo(20_000, 6);
    const contents = contentsOf(solved!, made)!;
    expect(grams(contents, 'water') / rye).toBeCloseTo(3.5, 9);
  });

  it('is weighed in more where the scald is drawn, and the dough is what the formula says', () => {
    const lines = dough(flour('rye', pct(100)), water(pct(75)), salt(pct(2)));
    const cooked = solve(lines, scald(0.1, { draws: [drawRole('flour', 10)] })).solved!;
    const raw = solve(lines, scald(0, { draws: [drawRole('flour', 10)] })).solved!;
    expect(cooked.hydration).toBeCloseTo(0.75, 9);
    expect(cooked.doughGrams).toBeCloseTo(20_000, 6);
    const [whole] = [cooked.flourGrams!];
    expect(grams(cooked.finalMix.lines, 'water') / whole).toBeCloseTo(0.75 - 0.35, 9);
    expect(grams(raw.finalMix.lines, 'water') / whole).toBeCloseTo(0.75 - 0.4, 9);
    expect(grams(cooked.finalMix.lines, 'scald') / whole).toBeCloseTo(0.45, 9);
  });

  it('goes out of the milk where that is all the water there is', () => {
    const { solved } = solve(
      dough(flour('wheat', pct(100)), water(pct(50)), part('scald', pct(10))),
      section('scald', 'scald', [flour('rye', g(100)), milk(g(500))], { cookingLossFraction: 0.1 }),
    );
    const made = solved!.sections[1]!;
    expect(made.steamGrams! / grams(made.lines, 'milk')).toBeCloseTo(60 / 500, 9);
    expect(made.hydration ?? 0).toBe(0);
  });

  it('cannot be more than there is water, which is told once and then taken for nothing', () => {
    const { solved, problems } = solve(
      dough(flour('wheat', pct(100)), water(pct(50)), part('scald', pct(10))),
      section('scald', 'scald', [flour('rye', pct(100)), water(pct(20))], { cookingLossFraction: 0.3 }),
    );
    expect(problems.map(({ kind, sectionId }) => [kind, sectionId])).toEqual([
      ['impossible-amount', 'scald'],
    ]);
    expect(solved!.sections[1]!.steamGrams).toBeUndefined();
    expect(solved!.doughGrams).toBeCloseTo(20_000, 6);
  });
});
