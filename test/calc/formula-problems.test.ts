import { describe, expect, it } from 'vitest';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import type { YieldInput } from '../../core/calc/formula/formula-input.ts';
import {
  balance,
  dough,
  drawKey,
  drawRole,
  each,
  finalGrams,
  flour,
  formula,
  g,
  halfTyped,
  line,
  lineNamed,
  milk,
  part,
  pct,
  pieces,
  remaining,
  salt,
  section,
  sectionNamed,
  toHydration,
  water,
  yeast,
} from './formula-builder.ts';

const solve = (...args: Parameters<typeof formula>) => solveFormula(formula(...args));
const poolish = (percent: number, waterPercent = 100) =>
  section('preferment', 'poolish', [flour('white', pct(100)), water(pct(waterPercent))], {
    draws: [drawRole('flour', percent)],
  });

describe('a preferment wetter than the formula', () => {
  it('is reported on the formula line, with what it brings and how much that is too much', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(280)), salt(g(20))),
      poolish(32),
    ]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      kind: 'negative-remainder',
      sectionId: 'dough',
      lineId: 'water',
      related: [{ sectionId: 'poolish', lineId: 'water' }],
      values: { name: 'water', parts: ['poolish'], formulaGrams: 280 },
    });
    expect(problems[0]!.values.broughtGrams).toBeCloseTo(320, 9);
    expect(problems[0]!.values.overGrams).toBeCloseTo(40, 9);
    expect(problems[0]!.values.fittingShare).toBeCloseTo(0.875, 12);
    expect(finalGrams(solved)).toMatchObject({ water: undefined, white: expect.closeTo(680, 9), salt: 20 });
    expect(solved!.doughGrams).toBe(1300);
  });

  it('takes the water of two lines together', () => {
    const again = { ...water(g(200)), id: 'second water' };
    const { solved, problems } = solve([dough(flour('white', g(1000)), water(g(300)), again), poolish(32)]);
    expect(problems).toEqual([]);
    const waters = solved!.finalMix.lines.filter((row) => row.name === 'water').map((row) => row.grams);
    expect(waters).toEqual([0, expect.closeTo(180, 9)]);
  });
});

describe('amounts found by the others', () => {
  it('two balances: the first takes all, the second is reported', () => {
    const { solved, problems } = solve([
      dough(flour('white', pct(80)), flour('rye', balance), flour('spelt', balance), water(pct(65))),
    ]);
    expect(problems).toMatchObject([{ kind: 'two-balances', lineId: 'spelt', related: [{ lineId: 'rye' }] }]);
    expect(lineNamed(solved, 'dough', 'rye').fraction).toBeCloseTo(0.2, 12);
    expect(lineNamed(solved, 'dough', 'spelt').fraction).toBeUndefined();
    expect(solved!.flourGrams).toBeCloseTo(1000, 9);
  });

  it('nothing left for balance', () => {
    const { solved, problems } = solve([
      dough(flour('white', pct(110)), flour('rye', balance), water(pct(65))),
    ]);
    expect(problems).toMatchObject([
      { kind: 'nothing-left-for-balance', lineId: 'rye', related: [{ lineId: 'white' }] },
    ]);
    expect(problems[0]!.values.sumFraction).toBeCloseTo(1.1, 12);
    expect(lineNamed(solved, 'dough', 'rye').grams).toBeUndefined();
  });

  it('two hydrations, and amounts on lines that cannot have them', () => {
    const kinds = (...lines: Parameters<typeof dough>) =>
      solve([dough(...lines)]).problems.map((problem) => problem.kind);
    const second = { ...water(toHydration(70)), id: 'again' };
    expect(kinds(flour('white', pct(100)), water(toHydration(65)), second)).toEqual(['two-hydrations']);
    expect(kinds(flour('white', pct(100)), milk(toHydration(65)))).toEqual(['hydration-not-water']);
    expect(kinds(flour('white', pct(100)), salt(balance))).toEqual(['balance-not-flour']);
    expect(kinds(flour('white', pct(100)), salt(remaining))).toEqual(['remaining-not-part']);
  });

  it('balance on an ingredient nobody knows is flour, and needs no second report', () => {
    const { solved, problems } = solve([
      dough(flour('white', pct(80)), line('emmer', balance, 'other', { known: false }), water(pct(65))),
    ]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'emmer').fraction).toBeCloseTo(0.2, 12);
  });

  it('hydration without flour', () => {
    const { problems } = solve([dough(water(toHydration(65)), salt(pct(2)))]);
    expect(problems.map((problem) => problem.kind)).toEqual(['no-flour']);
  });
});

describe('loops', () => {
  it('are named', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('a', g(100))),
      section('preferment', 'a', [flour('white', pct(100)), part('b', pct(10))]),
      section('preferment', 'b', [flour('white', pct(100)), part('c', pct(10))]),
      section('preferment', 'c', [flour('white', pct(100)), part('a', pct(10))]),
    ]);
    expect(problems).toMatchObject([
      { kind: 'loop', sectionId: 'c', lineId: 'a', values: { loop: ['a', 'b', 'c', 'a'] } },
    ]);
    expect(problems[0]!.related).toHaveLength(2);
    expect(solved!.doughGrams).toBe(1700);
    expect(solved!.flourGrams).toBeUndefined();
  });

  it('of a part in itself, and of a dough in its part', () => {
    const itself = solve([
      dough(flour('white', g(1000)), part('a', g(100))),
      section('part', 'a', [flour('white', pct(100)), part('a', pct(10))]),
    ]);
    expect(itself.problems).toMatchObject([{ kind: 'loop', values: { loop: ['a', 'a'] } }]);
    const back = solve([
      dough(flour('white', g(1000)), part('a', g(100))),
      section('part', 'a', [flour('white', pct(100)), part('dough', pct(10))]),
    ]);
    expect(back.problems).toMatchObject([{ kind: 'loop', values: { loop: ['dough', 'a', 'dough'] } }]);
  });
});

describe('parts that do not fit', () => {
  it('made and taken in different weights', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('levain', g(150))),
      section('preferment', 'levain', [flour('white', g(100)), water(g(100))]),
    ]);
    expect(problems).toMatchObject([
      {
        kind: 'part-amounts-differ',
        sectionId: 'dough',
        lineId: 'levain',
        values: { madeGrams: 200, takenGrams: 150 },
      },
    ]);
    expect(solved!.flourGrams).toBeCloseTo(1075, 9);
    expect(sectionNamed(solved, 'levain').totalGrams).toBe(200);
  });

  it('two draws that cannot both hold', () => {
    const { problems } = solve([
      dough(flour('white', g(600)), flour('rye', g(400)), water(g(700))),
      section('preferment', 'sour', [flour('white', pct(50)), flour('rye', pct(50)), water(pct(80))], {
        draws: [drawKey('rye', 50), drawKey('white', 50)],
      }),
    ]);
    expect(problems).toMatchObject([
      { kind: 'contradiction', sectionId: 'sour', values: { drawId: 'draws white', wantedGrams: 300 } },
    ]);
    expect(problems[0]!.values.broughtGrams).toBeCloseTo(200, 9);
  });

  it('draws of what is not there', () => {
    const drawing = (key: string, lines = [flour('rye', pct(100)), water(pct(100))]) =>
      solve([
        dough(flour('white', g(600)), flour('rye', g(400)), salt(g(20)), water(g(700))),
        section('preferment', 'sour', lines, { draws: [drawKey(key, 50)] }),
      ]).problems.map((problem) => problem.kind);
    expect(drawing('spelt')).toEqual(['drawn-not-in-formula']);
    expect(drawing('salt')).toEqual(['drawn-not-in-part']);
    expect(drawing('rye', [flour('rye', halfTyped), water(pct(100))])).toEqual([]);
  });

  it('drawn and added at once: the draw counts', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(700)), part('poolish', pct(30))),
      poolish(20),
    ]);
    expect(problems).toMatchObject([{ kind: 'drawn-and-added', sectionId: 'dough', lineId: 'poolish' }]);
    expect(solved!.doughGrams).toBe(1700);
    expect(finalGrams(solved).poolish).toBeCloseTo(400, 9);
  });

  it('unused parts, unless the name of one may be misspelt', () => {
    const levain = section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))]);
    const lines = [flour('white', g(1000)), water(g(600))];
    expect(solve([dough(...lines), levain]).problems).toMatchObject([
      { kind: 'unused-part', sectionId: 'levain' },
    ]);
    const misspelt = line('levian', g(100), 'other', { known: false });
    expect(solve([dough(...lines, misspelt), levain]).problems).toEqual([]);
  });

  it('keeps back more than it makes: solved as if nothing were kept back', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('levain', g(200))),
      section('preferment', 'levain', [flour('white', g(100)), water(g(100))], { keepBackGrams: 300 }),
    ]);
    expect(problems).toMatchObject([
      { kind: 'keep-back-exceeds-made', sectionId: 'levain', values: { madeGrams: 200, keepBackGrams: 300 } },
    ]);
    expect(sectionNamed(solved, 'levain')).toMatchObject({ totalGrams: 200, usedGrams: 200 });
  });

  it('leaves less than nothing for `remaining`', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('sponge', g(250)), part('levain', remaining)),
      section('preferment', 'sponge', [flour('white', g(100)), part('levain', g(250))]),
      section('preferment', 'levain', [flour('white', g(100)), water(g(100))]),
    ]);
    expect(problems[0]).toMatchObject({
      kind: 'part-amounts-differ',
      sectionId: 'dough',
      lineId: 'levain',
      values: { madeGrams: 200, takenGrams: 250 },
    });
    expect(lineNamed(solved, 'dough', 'levain').grams).toBeUndefined();
  });

  it('lines in grams that outweigh what is taken of the part', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('sponge', g(100))),
      section('preferment', 'sponge', [flour('white', pct(100)), water(g(150))]),
    ]);
    expect(problems).toMatchObject([
      { kind: 'grams-exceed-total', sectionId: 'sponge', values: { linesGrams: 150, totalGrams: 100 } },
    ]);
    expect(lineNamed(solved, 'sponge', 'white').grams).toBeUndefined();
    expect(solved!.doughGrams).toBe(1700);
    expect(solved!.flourGrams).toBeUndefined();
  });

  it('lines in grams that outweigh the yield', () => {
    const { solved, problems } = solve(
      [dough(flour('white', pct(100)), water(pct(60)), milk(g(900)))],
      pieces(1, 500),
    );
    expect(problems).toMatchObject([
      {
        kind: 'grams-exceed-total',
        sectionId: 'dough',
        related: [{ lineId: 'milk' }],
        values: { linesGrams: 900, totalGrams: 500 },
      },
    ]);
    expect(lineNamed(solved, 'dough', 'white').grams).toBeUndefined();
    expect(lineNamed(solved, 'dough', 'milk').grams).toBe(900);
  });
});

describe('yields that cannot be used', () => {
  const lines = [flour('white', pct(100)), water(pct(60))];
  it.each<[string, YieldInput, string]>([
    ['no piece weight', { kind: 'pieces', count: 12, baked: false }, 'no-piece-weight'],
    ['no pieces', pieces(0, 500), 'impossible-yield'],
    ['negative weight', { kind: 'dough', grams: -5 }, 'impossible-yield'],
    ['no number', { kind: 'flour', grams: Number.NaN }, 'impossible-yield'],
    ['baked without bake loss', pieces(12, 500, true), 'bake-loss-unknown'],
  ])('%s', (_, wanted, kind) => {
    const { solved, problems } = solve([dough(...lines)], wanted);
    expect(problems.map((problem) => problem.kind)).toEqual([kind]);
    expect(solved!.doughGrams).toBeUndefined();
    expect(solved!.unsolved).toBeDefined();
    expect(solved!.hydration).toBeCloseTo(0.6, 12);
    expect(solved!.totalFraction).toBeCloseTo(1.6, 12);
  });

  it('pieces without weight are no mistake where grams fix the scale', () => {
    const { solved, problems } = solve([dough(flour('white', g(1000)), water(g(600)))], {
      kind: 'pieces',
      count: 4,
      baked: false,
    });
    expect(problems).toEqual([]);
    expect(solved!.pieceGrams).toBe(400);
  });

  it('losses beyond the whole', () => {
    const { problems } = solve([dough(...lines)], pieces(12, 500), { lossFraction: 1 });
    expect(problems).toMatchObject([{ kind: 'impossible-loss', values: { property: 'loss' } }]);
  });

  it('grams a piece without pieces are told once', () => {
    const { problems } = solve(
      [dough(...lines), section('filling', 'filling', [milk(each(10)), line('sugar', each(5), 'sugar')])],
      { kind: 'dough', grams: 1000 },
    );
    expect(problems).toMatchObject([{ kind: 'no-pieces', lineId: 'milk', related: [{ lineId: 'sugar' }] }]);
  });
});

describe('a half-typed amount gives no problem and leaves what hangs on it absent', () => {
  it('salt: no weights, but percentages and hydration', () => {
    const { solved, problems } = solve(
      [dough(flour('white', pct(100)), water(pct(65)), salt(halfTyped))],
      pieces(10, 500),
    );
    expect(problems).toEqual([]);
    expect(solved!.hydration).toBeCloseTo(0.65, 12);
    expect(solved!.doughGrams).toBeUndefined();
    expect(solved!.flourGrams).toBeUndefined();
    expect(solved!.saltFraction).toBeUndefined();
    expect(solved!.unsolved).toEqual({
      code: 'unknown-amount',
      sectionId: 'dough',
      lineId: 'salt',
    });
    expect(lineNamed(solved, 'dough', 'water')).toMatchObject({
      fraction: 0.65,
      unsolved: { lineId: 'salt' },
    });
  });

  it('flour in a formula in grams: the other grams stay', () => {
    const { solved, problems } = solve([
      dough(flour('white', halfTyped), flour('rye', g(200)), water(g(650)), salt(pct(2))),
    ]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'rye').grams).toBe(200);
    expect(lineNamed(solved, 'dough', 'salt').grams).toBeUndefined();
    expect(solved!.hydration).toBeUndefined();
  });

  it('in a drawn part: the dough keeps its weights, the final mix loses those of the part', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(65)), salt(pct(2))),
        section('preferment', 'poolish', [flour('white', pct(100)), water(halfTyped)], {
          draws: [drawRole('flour', 20)],
        }),
      ],
      pieces(10, 501),
    );
    expect(problems).toEqual([]);
    expect(solved!.doughGrams).toBeCloseTo(5010, 9);
    expect(finalGrams(solved)).toEqual({
      white: undefined,
      water: undefined,
      salt: expect.closeTo(60, 9),
      poolish: undefined,
    });
    expect(solved!.prefermentedFlour).toBeUndefined();
  });

  it('in an added part: the part line keeps its weight', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(50)), part('levain', pct(50))),
        section('preferment', 'levain', [flour('white', pct(100)), water(halfTyped)]),
      ],
      { kind: 'dough', grams: 2000 },
    );
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'levain').grams).toBeCloseTo(500, 9);
    expect(solved!.hydration).toBeUndefined();
  });

  it('a part just begun, without lines', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(50)), part('levain', pct(50))),
        section('preferment', 'levain', []),
      ],
      {
        kind: 'dough',
        grams: 2000,
      },
    );
    expect(problems).toEqual([]);
    expect(solved!.doughGrams).toBeCloseTo(2000, 9);
  });
});

describe('bad input', () => {
  it('no sections, or a dough without lines', () => {
    expect(solveFormula(formula([]))).toEqual({ solved: undefined, problems: [] });
    expect(solveFormula(formula([dough()]))).toEqual({ solved: undefined, problems: [] });
  });

  it.each([
    ['0 %', pct(0)],
    ['0 g', g(0)],
  ])('flour of %s', (_, amount) => {
    const { solved, problems } = solve([dough(flour('white', amount), water(pct(65)), salt(g(20)))]);
    expect(problems.filter((problem) => problem.kind === 'no-flour')).toHaveLength(1);
    expect(solved!.hydration).toBeUndefined();
    expect(JSON.stringify(solved)).not.toContain('null');
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY, 1e300])('an amount of %d', (value) => {
    for (const amount of [pct(value), g(value)]) {
      const { solved, problems } = solve([dough(flour('white', pct(100)), water(amount))], pieces(10, 500));
      expect(problems).toMatchObject([{ kind: 'impossible-amount', lineId: 'water' }]);
      expect(solved!.doughGrams).toBeUndefined();
    }
  });

  it('10,000 % is a lot, but arithmetic', () => {
    const { solved, problems } = solve([dough(flour('white', pct(100)), water(pct(10_000)))], {
      kind: 'dough',
      grams: 1010,
    });
    expect(problems).toEqual([]);
    expect(solved!.flourGrams).toBeCloseTo(10, 9);
    expect(solved!.hydration).toBeCloseTo(100, 9);
  });

  it('a line of 0 % is nothing, and known', () => {
    const { solved, problems } = solve([dough(flour('white', pct(100)), water(pct(60)), yeast(pct(0)))]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'yeast')).toMatchObject({ fraction: 0, grams: 0 });
  });

  it('negative culture and keep back', () => {
    const { problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('levain', g(100))),
      section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))], {
        ripeCultureFraction: -1,
        keepBackGrams: -5,
      }),
    ]);
    expect(problems.map((problem) => problem.values.property)).toEqual(['ripeCulture', 'keepBack']);
  });
});
