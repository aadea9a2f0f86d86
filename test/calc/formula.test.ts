import { describe, expect, it } from 'vitest';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import {
  balance,
  butter,
  dough,
  drawKey,
  drawRole,
  each,
  finalGrams,
  flour,
  formula,
  g,
  line,
  lineNamed,
  milk,
  overallPercent,
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
const linseed = (percent: number) => line('linseed', pct(percent), 'seeds', { waterFraction: 0.07 });

describe('the Harbour Tin of the Quay Lane bakery', () => {
  const harbourTin = () =>
    solve(
      [
        dough(
          flour('strong white', pct(85)),
          flour('wholemeal', balance),
          water(toHydration(69)),
          salt(pct(2)),
          yeast(pct(0.9)),
          butter(pct(4)),
        ),
        section(
          'preferment',
          'poolish',
          [flour('strong white', pct(100)), water(pct(100)), yeast(pct(0.08))],
          {
            draws: [drawRole('flour', 22)],
          },
        ),
      ],
      pieces(24, 880),
      { lossFraction: 0.015, bakeLossFraction: 0.11 },
    );

  // Arithmetic of the definition (ckbk, Professional Cooking, "Bakers' Percentages"): factor = dough / sum of percent.
  it('is scaled by its yield and its losses', () => {
    const { solved, problems } = harbourTin();
    expect(problems).toEqual([]);
    const weighed = (24 * 880) / 0.985;
    expect(solved!.doughGrams).toBeCloseTo(weighed, 8);
    expect(solved!.flourGrams).toBeCloseTo(weighed / 1.759, 8);
    expect(solved!.yieldDoughGrams).toBeCloseTo(21_120, 8);
    expect(solved!.bakedGrams).toBeCloseTo(21_120 * 0.89, 8);
    expect(solved).toMatchObject({ pieces: 24, assumedScale: false });
    expect(solved!.pieceGrams).toBeCloseTo(880, 9);
    expect(lineNamed(solved, 'dough', 'wholemeal').fraction).toBeCloseTo(0.15, 12);
    expect(lineNamed(solved, 'dough', 'water').fraction).toBeCloseTo(0.69, 12);
  });

  it('leaves for the final mix what the poolish has not taken', () => {
    const { solved } = harbourTin();
    const flourGrams = solved!.flourGrams!;
    const final = finalGrams(solved);
    expect(final['strong white']).toBeCloseTo(0.63 * flourGrams, 7);
    expect(final.water).toBeCloseTo(0.47 * flourGrams, 7);
    expect(final.yeast).toBeCloseTo((0.009 - 0.22 * 0.0008) * flourGrams, 7);
    expect(final.poolish).toBeCloseTo(0.22 * 2.0008 * flourGrams, 7);
    expect(solved!.finalMix.totalGrams).toBeCloseTo(solved!.doughGrams!, 7);
    expect(solved!.prefermentedFlour).toBeCloseTo(0.22, 12);
    expect(solved!.effectiveHydration).toBeCloseTo(0.69 + 0.009 * 0.05 + 0.04 * 0.16, 12);
  });
});

describe('scale', () => {
  it('is 1000 g of flour, and says so, where nothing fixes it', () => {
    const { solved, problems } = solve([
      dough(flour('white', pct(100)), water(pct(65)), part('levain', pct(50))),
      section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))]),
    ]);
    expect(problems).toEqual([]);
    expect(solved!.assumedScale).toBe(true);
    expect(solved!.flourGrams).toBeCloseTo(1000, 9);
    expect(lineNamed(solved, 'dough', 'white').grams).toBeCloseTo(800, 9);
    expect(solved!.hydration).toBeCloseTo(0.72, 12);
  });

  it('comes from flour in grams, percent of it and of other flour mixed', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(800)), flour('rye', pct(20)), water(pct(70)), salt(g(20))),
    ]);
    expect(problems).toEqual([]);
    expect(solved!.flourGrams).toBeCloseTo(1000, 9);
    expect(lineNamed(solved, 'dough', 'white').fraction).toBeCloseTo(0.8, 12);
    expect(solved!.saltFraction).toBeCloseTo(0.02, 12);
  });

  it('comes from a part in grams', () => {
    const { solved, problems } = solve([
      dough(flour('white', pct(100)), water(pct(60)), part('levain', pct(40))),
      section('preferment', 'levain', [flour('white', g(100)), water(g(100))]),
    ]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'white').grams).toBeCloseTo(500, 9);
    expect(solved!.assumedScale).toBe(false);
  });

  it('counts all flour in `from 10 kg flour`', () => {
    const { solved } = solve(
      [
        dough(flour('white', pct(100)), water(pct(60)), part('levain', pct(40))),
        section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))]),
      ],
      { kind: 'flour', grams: 10_000 },
    );
    expect(solved!.flourGrams).toBeCloseTo(10_000, 7);
    expect(lineNamed(solved, 'dough', 'white').grams).toBeCloseTo(10_000 / 1.2, 7);
  });

  it('comes from baked weight and bake loss', () => {
    const { solved } = solve([dough(flour('white', pct(100)), water(pct(60)))], pieces(10, 800, true), {
      bakeLossFraction: 0.12,
      lossFraction: 0.02,
    });
    expect(solved!.doughGrams).toBeCloseTo(8000 / 0.88 / 0.98, 8);
    expect(solved!.bakedPieceGrams).toBeCloseTo(800, 9);
    expect(solved!.pieceGrams).toBeCloseTo(800 / 0.88, 9);
  });

  it('is told for the flour in grams when the yield says otherwise', () => {
    const { solved, problems } = solve([dough(flour('white', g(1000)), water(g(650)))], {
      kind: 'dough',
      grams: 5000,
    });
    expect(problems).toEqual([
      {
        kind: 'two-scales',
        sectionId: 'dough',
        related: [{ sectionId: 'dough', lineId: 'white' }],
        values: { yieldGrams: 5000, linesGrams: 1650 },
      },
    ]);
    expect(solved!.doughGrams).toBe(1650);
  });

  it('may be written twice where both agree to the rounding of a scale', () => {
    const { problems } = solve([dough(flour('white', g(1000)), water(g(650)))], pieces(3, 550.2));
    expect(problems).toEqual([]);
  });

  it('does not follow from other lines in grams', () => {
    const { solved, problems } = solve([dough(flour('white', pct(100)), water(g(650)), salt(pct(2)))]);
    expect(problems).toMatchObject([
      { kind: 'under-determined', sectionId: 'dough', related: [{ lineId: 'water' }] },
    ]);
    expect(lineNamed(solved, 'dough', 'water').grams).toBe(650);
    expect(solved!.hydration).toBeUndefined();
    expect(solved!.saltFraction).toBeCloseTo(0.02, 12);
    expect(lineNamed(solved, 'dough', 'salt').grams).toBeUndefined();
  });
});

describe('flour lines that are not 100 %', () => {
  it('are reported with their sum; each line weighs its percent of the 100 % as written', () => {
    const { solved, problems } = solve(
      [dough(flour('white', pct(85)), flour('rye', pct(10)), water(pct(66.5)))],
      {
        kind: 'flour',
        grams: 950,
      },
    );
    expect(problems).toMatchObject([
      { kind: 'flour-not-hundred', lineId: 'white', related: [{ lineId: 'rye' }] },
    ]);
    expect(problems[0]!.values.sumFraction).toBeCloseTo(0.95, 12);
    expect(lineNamed(solved, 'dough', 'water').grams).toBeCloseTo(665, 9);
    expect(lineNamed(solved, 'dough', 'water').fraction).toBeCloseTo(0.665, 12);
    expect(solved!.hydration).toBeCloseTo(0.7, 12);
    expect(overallPercent(solved).white).toBeCloseTo((100 * 85) / 95, 9);
  });

  it('are accepted where the missing part is rounding: three thirds', () => {
    const { problems } = solve([
      dough(flour('a', pct(33.3)), flour('b', pct(33.3)), flour('c', pct(33.3)), water(pct(65))),
    ]);
    expect(problems).toEqual([]);
  });

  it('are not reported when an ingredient nobody knows may be the missing flour', () => {
    const { problems } = solve([
      dough(flour('white', pct(85)), line('emmer', pct(15), 'other', { known: false }), water(pct(65))),
    ]);
    expect(problems).toEqual([]);
  });

  it('may have flour in grams on top of a full 100 %: that one is reported too', () => {
    const { solved, problems } = solve(
      [dough(flour('white', pct(100)), flour('rye', g(200)), water(pct(65)))],
      {
        kind: 'dough',
        grams: 1850,
      },
    );
    expect(problems).toMatchObject([
      { kind: 'flour-not-hundred', values: { sumFraction: 1, gramsOnTop: 200 } },
    ]);
    expect(lineNamed(solved, 'dough', 'white').grams).toBeCloseTo(1000, 9);
    expect(solved!.flourGrams).toBeCloseTo(1200, 9);
  });
});

describe('a section without flour', () => {
  it('is in percent of its 100 % lines, in any order', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(80)), linseed(10)),
        section('soaker', 'soaker', [water(pct(150)), linseed(100)], { draws: [drawKey('linseed', 100)] }),
      ],
      { kind: 'flour', grams: 1000 },
    );
    expect(problems).toEqual([]);
    expect(finalGrams(solved)).toMatchObject({ linseed: 0 });
    expect(finalGrams(solved).water).toBeCloseTo(650, 9);
    expect(finalGrams(solved).soaker).toBeCloseTo(250, 9);
    expect(sectionNamed(solved, 'soaker').hydration).toBeUndefined();
    expect(solved!.prefermentedFlour).toBe(0);
  });

  it('needs one of them for its percentages', () => {
    const { problems } = solve([
      dough(flour('white', g(1000)), water(g(650)), part('soaker', g(100))),
      section('soaker', 'soaker', [water(pct(150)), line('linseed', g(40), 'seeds')]),
    ]);
    expect(problems).toMatchObject([{ kind: 'no-flour', sectionId: 'soaker', lineId: 'water' }]);
  });
});

describe('parts', () => {
  it('nest, and a part inside a drawing part leaves the totals with it', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(70))),
        section(
          'preferment',
          'levain',
          [flour('white', pct(100)), water(pct(80)), part('starter', pct(20))],
          {
            draws: [drawRole('flour', 22)],
          },
        ),
        section('preferment', 'starter', [flour('white', pct(100)), water(pct(100))]),
      ],
      { kind: 'flour', grams: 1000 },
    );
    expect(problems).toEqual([]);
    // Starter 20 of fed flour 100: ten of flour and ten of water, so 110 of flour and 90 of water in 200.
    const levain = sectionNamed(solved, 'levain');
    expect(levain.flourGrams).toBeCloseTo(220, 9);
    expect(levain.waterGrams).toBeCloseTo(180, 9);
    expect(lineNamed(solved, 'levain', 'white').grams).toBeCloseTo(200, 9);
    expect(sectionNamed(solved, 'starter').totalGrams).toBeCloseTo(40, 9);
    expect(finalGrams(solved)).toMatchObject({
      white: expect.closeTo(780, 8),
      water: expect.closeTo(520, 8),
    });
    expect(solved!.prefermentedFlour).toBeCloseTo(0.22, 12);
  });

  it('feed several others, each taking its share', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(50)), part('sponge', pct(30)), part('levain', pct(10))),
        section('preferment', 'sponge', [flour('white', pct(100)), water(pct(60)), part('levain', pct(10))]),
        section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))]),
      ],
      { kind: 'dough', grams: 1900 },
    );
    expect(problems).toEqual([]);
    const sponge = lineNamed(solved, 'sponge', 'levain').grams!;
    const levain = lineNamed(solved, 'dough', 'levain').grams!;
    expect(levain).toBeCloseTo(100, 9);
    expect(sponge).toBeCloseTo((300 * 10) / 170, 9);
    expect(sectionNamed(solved, 'levain').totalGrams).toBeCloseTo(sponge + levain, 9);
  });

  it('give `remaining` to the one that takes the rest', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600)), part('sponge', g(160)), part('levain', remaining)),
      section('preferment', 'sponge', [flour('white', g(100)), water(g(30)), part('levain', g(30))]),
      section('preferment', 'levain', [flour('white', g(150)), water(g(150))], { keepBackGrams: 60 }),
    ]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'levain').grams).toBeCloseTo(210, 9);
    expect(solved!.doughGrams).toBeCloseTo(1970, 9);
  });

  it('count ripe culture as flour and water of their own composition', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(70))),
        section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))], {
          draws: [drawRole('flour', 20)],
          ripeCultureFraction: 0.2,
        }),
      ],
      { kind: 'flour', grams: 1100 },
    );
    expect(problems).toEqual([]);
    // Fed 200 of flour and water each: 40 g of culture, that is 20 of flour, 220 in all = 20 % of 1100.
    const levain = sectionNamed(solved, 'levain');
    expect(levain.baseGrams).toBeCloseTo(200, 9);
    expect(levain.cultureGrams).toBeCloseTo(40, 9);
    expect(levain.flourGrams).toBeCloseTo(220, 9);
    expect(levain.totalGrams).toBeCloseTo(440, 9);
    expect(levain.hydration).toBeCloseTo(1, 12);
  });

  it('make what is kept back on top of what is used', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(70))),
        section('preferment', 'levain', [flour('white', pct(100)), water(pct(100))], {
          draws: [drawRole('flour', 20)],
          keepBackGrams: 60,
        }),
      ],
      { kind: 'flour', grams: 1000 },
    );
    expect(problems).toEqual([]);
    expect(sectionNamed(solved, 'levain')).toMatchObject({
      totalGrams: expect.closeTo(460, 9),
      usedGrams: expect.closeTo(400, 9),
      keepBackGrams: 60,
    });
    expect(solved!.finalMix.totalGrams).toBeCloseTo(1700, 9);
  });

  it('keep the composition that their grams give at the size they are made', () => {
    // Yeast by the pinch: 1 g whatever the size; the sponge weighs 160 % + 1 g = 801 g, so its flour is 500 g.
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(500)), part('sponge', g(801))),
      section('preferment', 'sponge', [flour('white', pct(100)), water(pct(60)), yeast(g(1))]),
    ]);
    expect(problems).toEqual([]);
    expect(solved!.flourGrams).toBeCloseTo(1500, 8);
    expect(solved!.waterGrams).toBeCloseTo(800, 8);
    expect(solved!.overall.find((row) => row.name === 'yeast')!.grams).toBeCloseTo(1, 10);
  });

  it('add what the formula lacks, with a hint', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(65))),
        section(
          'preferment',
          'poolish',
          [flour('white', pct(100)), water(pct(100)), line('instant yeast', pct(0.1), 'yeast')],
          {
            draws: [drawRole('flour', 30)],
          },
        ),
      ],
      { kind: 'flour', grams: 1000 },
    );
    expect(problems).toMatchObject([
      { kind: 'added-by-part', sectionId: 'poolish', lineId: 'instant yeast', values: { part: 'poolish' } },
    ]);
    expect(problems[0]!.values.grams).toBeCloseTo(0.3, 9);
    expect(solved!.doughGrams).toBeCloseTo(1650.3, 8);
    expect(solved!.finalMix.totalGrams).toBeCloseTo(1650.3, 8);
  });
});

describe('hydration', () => {
  it('is reached over the whole formula', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(toHydration(75)), part('levain', pct(40))),
        section('preferment', 'levain', [flour('white', pct(100)), water(toHydration(60))]),
      ],
      { kind: 'flour', grams: 1000 },
    );
    expect(problems).toEqual([]);
    expect(solved!.hydration).toBeCloseTo(0.75, 12);
    expect(sectionNamed(solved, 'levain').hydration).toBeCloseTo(0.6, 12);
  });

  it('counts the water inside the others when effective', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), milk(g(300)), water(toHydration(60, true))),
    ]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'water').grams).toBeCloseTo(600 - 264, 9);
    expect(solved!.effectiveHydration).toBeCloseTo(0.6, 12);
    expect(solved!.hydration).toBeCloseTo(0.336, 12);
  });

  it('may be reached with milk, by its water', () => {
    const { solved, problems } = solve([dough(flour('white', g(1000)), milk(toHydration(66, true)))]);
    expect(problems).toEqual([]);
    expect(lineNamed(solved, 'dough', 'milk').grams).toBeCloseTo(750, 9);
  });

  it('cannot be less than what is in the milk already', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), milk(g(800)), water(toHydration(60, true))),
    ]);
    expect(problems).toMatchObject([
      {
        kind: 'below-own-water',
        sectionId: 'dough',
        lineId: 'water',
        values: { fraction: 0.6, effective: 'yes' },
      },
    ]);
    expect(problems[0]!.values.ownFraction).toBeCloseTo(0.704, 12);
    expect(problems[0]!.values.overGrams).toBeCloseTo(104, 9);
    expect(lineNamed(solved, 'dough', 'water').grams).toBeUndefined();
    expect(lineNamed(solved, 'dough', 'water').unsolved).toMatchObject({ code: 'reported' });
    expect(solved!.doughGrams).toBeCloseTo(1800, 9);
  });

  it('cannot be less than what an added preferment brings', () => {
    const { problems } = solve([
      dough(flour('white', pct(100)), water(toHydration(30)), part('poolish', pct(200))),
      section('preferment', 'poolish', [flour('white', pct(100)), water(pct(100))]),
    ]);
    expect(problems).toMatchObject([{ kind: 'below-own-water', values: { effective: 'no' } }]);
    expect(problems[0]!.values.ownFraction).toBeCloseTo(0.5, 12);
  });
});

describe('fillings, toppings and baths', () => {
  it('stay out of the bowl and count a piece', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), milk(pct(60))),
        section('filling', 'poppy filling', [line('poppy seed', each(12), 'seeds'), milk(each(18))]),
        section('bath', 'lye', [water(g(1000)), line('lye', g(40), 'other')]),
      ],
      pieces(50, 80),
    );
    expect(problems).toEqual([]);
    expect(solved!.doughGrams).toBeCloseTo(4000, 9);
    expect(solved!.overall.map((row) => row.name)).toEqual(['white', 'milk']);
    expect(sectionNamed(solved, 'poppy filling')).toMatchObject({
      totalGrams: 1500,
      gramsPerPiece: 30,
      inBowl: false,
    });
    expect(sectionNamed(solved, 'lye').totalGrams).toBe(1040);
    expect(solved!.hydration).toBe(0);
  });

  it('may be measured out by a line of the dough that adds nothing to it', () => {
    const { solved, problems } = solve(
      [
        dough(flour('white', pct(100)), water(pct(60)), part('streusel', each(20))),
        section('topping', 'streusel', [
          flour('white', pct(100)),
          butter(pct(50)),
          line('sugar', pct(50), 'sugar'),
        ]),
      ],
      pieces(10, 80),
    );
    expect(problems).toEqual([]);
    expect(solved!.doughGrams).toBeCloseTo(800, 9);
    expect(lineNamed(solved, 'streusel', 'white').grams).toBeCloseTo(100, 9);
    expect(solved!.finalMix.lines.map((row) => row.name)).toEqual(['white', 'water']);
  });

  it('without any weight are told in percent only', () => {
    const { solved, problems } = solve([
      dough(flour('white', g(1000)), water(g(600))),
      section('filling', 'curd', [line('quark', pct(100), 'dairy'), line('sugar', pct(20), 'sugar')]),
    ]);
    expect(problems).toMatchObject([{ kind: 'under-determined', sectionId: 'curd' }]);
    expect(lineNamed(solved, 'curd', 'sugar').fraction).toBeCloseTo(0.2, 12);
    expect(lineNamed(solved, 'curd', 'sugar').grams).toBeUndefined();
  });
});
