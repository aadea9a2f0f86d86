import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import type {
  AmountInput,
  FormulaInput,
  SectionInput,
  SectionKind,
  YieldInput,
} from '../../core/calc/formula/formula-input.ts';
import type { SolvedFormula } from '../../core/calc/formula/formula-result.ts';
import { scaleTo } from '../../core/calc/formula/scaling.ts';
import {
  dough,
  drawRole,
  finalGrams,
  flour,
  formula,
  line,
  overallGrams,
  overallPercent,
  part,
  pct,
  salt,
  section,
  water,
  yeast,
} from './formula-builder.ts';

const percentBetween = (least: number, most: number) =>
  fc.double({ min: least, max: most, noNaN: true, noDefaultInfinity: true });

/** A drawn preferment that never outweighs what the formula has. */
const drawn = fc.record({
  waterPercent: percentBetween(60, 90),
  saltPercent: percentBetween(0, 3),
  yeastPercent: percentBetween(0.2, 3),
  ryePercent: percentBetween(0, 60),
  drawnPercent: percentBetween(1, 39),
  prefermentWater: percentBetween(40, 125),
  prefermentYeast: percentBetween(0, 0.4),
  culture: percentBetween(0, 50),
  doughGrams: percentBetween(100, 500_000),
  loss: percentBetween(0, 5),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

function drawnFormula(card: Drawn, scale = 1): FormulaInput {
  return formula(
    [
      dough(
        flour('white', pct(100 - card.ryePercent)),
        flour('rye', pct(card.ryePercent)),
        water(pct(card.waterPercent)),
        salt(pct(card.saltPercent)),
        yeast(pct(card.yeastPercent)),
      ),
      section(
        'preferment',
        'poolish',
        [flour('white', pct(100)), water(pct(card.prefermentWater)), yeast(pct(card.prefermentYeast))],
        {
          draws: [drawRole('flour', card.drawnPercent)],
          ripeCultureFraction: card.culture / 100,
        },
      ),
    ],
    { kind: 'dough', grams: card.doughGrams * scale },
    { lossFraction: card.loss / 100 },
  );
}

const close = (actual: number | undefined, expected: number, what: string): void => {
  expect(Math.abs(actual! - expected), what).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
};

describe('properties of the formula', () => {
  it('mass is kept: final mix, overall formula and dough weigh the same', () => {
    fc.assert(
      fc.property(drawn, (card) => {
        const { solved, problems } = solveFormula(drawnFormula(card));
        expect(problems).toEqual([]);
        const total = solved!.doughGrams!;
        close(total * (1 - card.loss / 100), card.doughGrams, 'yield');
        close(solved!.finalMix.totalGrams, total, 'final mix');
        close(
          solved!.overall.reduce((sum, row) => sum + row.grams!, 0),
          total,
          'overall',
        );
        const poolish = solved!.sections[1]!;
        for (const name of ['white', 'rye', 'water', 'salt', 'yeast']) {
          const inPoolish = poolish.lines.find((row) => row.name === name)?.grams ?? 0;
          const withCulture =
            inPoolish * (poolish.totalGrams! / (poolish.totalGrams! - poolish.cultureGrams!));
          close(finalGrams(solved)[name]! + withCulture, overallGrams(solved)[name]!, name);
        }
        close(solved!.prefermentedFlour, card.drawnPercent / 100, 'prefermented flour');
      }),
    );
  });

  it('scaling is linear', () => {
    fc.assert(
      fc.property(drawn, percentBetween(0.01, 100), (card, factor) => {
        const once = solveFormula(drawnFormula(card)).solved!;
        const scaled = solveFormula(drawnFormula(card, factor)).solved!;
        const target = scaleTo(once, { kind: 'dough', grams: card.doughGrams * factor });
        if (!target.ok) throw new Error(target.failure);
        close(target.factor, factor, 'factor');
        close(target.doughGrams, scaled.doughGrams!, 'dough');
        const before = finalGrams(once);
        for (const [name, grams] of Object.entries(finalGrams(scaled)))
          close(grams, before[name]! * factor, name);
        expect(overallPercent(scaled).water).toBeCloseTo(overallPercent(once).water!, 9);
      }),
    );
  });

  it('drawn or added, the overall percentages are the same', () => {
    fc.assert(
      fc.property(drawn, (card) => {
        const first = solveFormula(drawnFormula(card)).solved!;
        const final = finalGrams(first);
        const base = final.white! + final.rye!;
        const percentOf = (name: string): AmountInput => pct((100 * final[name]!) / base);
        const [, poolish] = drawnFormula(card).sections;
        const added = solveFormula(
          formula(
            [
              dough(
                flour('white', percentOf('white')),
                flour('rye', percentOf('rye')),
                water(percentOf('water')),
                salt(percentOf('salt')),
                yeast(percentOf('yeast')),
                part('poolish', percentOf('poolish')),
              ),
              { ...poolish!, draws: [] },
            ],
            { kind: 'dough', grams: card.doughGrams },
            { lossFraction: card.loss / 100 },
          ),
        );
        expect(added.problems).toEqual([]);
        const before = overallPercent(first);
        for (const [name, percent] of Object.entries(overallPercent(added.solved)))
          close(percent, before[name]!, name);
        close(added.solved!.hydration, first.hydration!, 'hydration');
        close(added.solved!.prefermentedFlour, first.prefermentedFlour!, 'prefermented flour');
        close(added.solved!.flourGrams, first.flourGrams!, 'flour');
      }),
    );
  });
});

const amount: fc.Arbitrary<AmountInput> = fc.oneof(
  fc.record({
    kind: fc.constant('fraction' as const),
    fraction: fc.oneof(fc.double(), fc.constantFrom(0, 0.02, 0.65, 1)),
  }),
  fc.record({
    kind: fc.constant('grams' as const),
    grams: fc.oneof(fc.double(), fc.constantFrom(0, 20, 650, 1000)),
  }),
  fc.record({ kind: fc.constant('perPiece' as const), grams: fc.constantFrom(0, 12, Number.NaN) }),
  fc.record({
    kind: fc.constant('toHydration' as const),
    fraction: fc.constantFrom(0, 0.1, 0.7, 100),
    effective: fc.boolean(),
  }),
  fc.constantFrom<AmountInput>(
    { kind: 'balance' },
    { kind: 'remaining' },
    { kind: 'unknown', reason: 'half-typed' },
  ),
);
const names = ['dough', 'a', 'b', 'c', 'd'];
const anyLine = fc
  .record({ what: fc.nat(9), amount, known: fc.boolean(), id: fc.uuid() })
  .map(({ what, amount, known, id }) => {
    const made = [
      flour('white', amount),
      flour('rye', amount),
      water(amount),
      salt(amount),
      line('milk', amount, 'dairy', { waterFraction: 0.88 }),
      ...names.map((name) => part(name, amount)),
    ][what]!;
    return { ...made, id, known: made.part || known };
  });
const anySection = fc.record({
  kind: fc.constantFrom<SectionKind>('preferment', 'soaker', 'part', 'filling', 'topping', 'bath'),
  lines: fc.array(anyLine, { maxLength: 5 }),
  draws: fc.array(fc.constantFrom(drawRole('flour', 20), drawRole('water', 0), drawRole('salt', 300)), {
    maxLength: 2,
  }),
  culture: fc.option(fc.constantFrom(0, 0.2, -1, Number.NaN), { nil: undefined }),
  keepBack: fc.option(fc.constantFrom(0, 60, 1e9), { nil: undefined }),
});
const anyYield = fc.option(
  fc.oneof(
    fc.record({
      kind: fc.constant('pieces' as const),
      count: fc.constantFrom(0, 1, 24, Number.NaN),
      pieceGrams: fc.constantFrom(0, 880),
      baked: fc.boolean(),
    }),
    fc.record({
      kind: fc.constantFrom('dough' as const, 'baked' as const, 'flour' as const),
      grams: fc.oneof(fc.double(), fc.constant(2000)),
    }),
  ) as fc.Arbitrary<YieldInput>,
  { nil: undefined },
);

/** Every number of the result, with the path to it. */
function numbersIn(value: unknown, path: string): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => numbersIn(inner, `${path}.${name}`));
}

describe('whatever is typed', () => {
  it('never throws, never gives NaN or infinity, never a negative weight, and is serialisable', () => {
    fc.assert(
      fc.property(
        fc.array(anyLine, { maxLength: 7 }),
        fc.array(anySection, { maxLength: 4 }),
        anyYield,
        fc.constantFrom(0, 0.02, 1, -1, Number.NaN),
        fc.option(fc.constantFrom(0, 0.12, 1, Number.NaN), { nil: undefined }),
        (lines, sections, wanted, lossFraction, bakeLoss) => {
          const parts = sections.map(({ culture, keepBack, ...rest }, i): SectionInput => {
            return {
              ...rest,
              id: names[i + 1]!,
              name: names[i + 1]!,
              ...(culture === undefined ? {} : { ripeCultureFraction: culture }),
              ...(keepBack === undefined ? {} : { keepBackGrams: keepBack }),
            };
          });
          const input = formula([dough(...lines), ...parts], wanted, {
            lossFraction,
            ...(bakeLoss === undefined ? {} : { bakeLossFraction: bakeLoss }),
          });
          const { solved, problems } = solveFormula(input);
          for (const [path, number] of numbersIn({ solved, problems }, '')) {
            expect(Number.isFinite(number), `${path} ${number}`).toBe(true);
          }
          for (const row of linesOf(solved)) expect(row.grams ?? 0).toBeGreaterThanOrEqual(0);
          expect(JSON.parse(JSON.stringify({ solved, problems }))).toEqual({
            ...(solved ? { solved } : {}),
            problems,
          });
        },
      ),
      { numRuns: 2000 },
    );
  });
});

function linesOf(solved: SolvedFormula | undefined): { grams?: number }[] {
  if (!solved) return [];
  return [...solved.sections.flatMap((one) => one.lines), ...solved.finalMix.lines, ...solved.overall];
}
