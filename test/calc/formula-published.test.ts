import { describe, expect, it } from 'vitest';
import { solveFormula } from '../../core/calc/formula/formula.ts';
import {
  dough,
  drawRole,
  finalGrams,
  flour,
  formula,
  g,
  line,
  lineNamed,
  overallGrams,
  overallPercent,
  part,
  pct,
  salt,
  section,
  sectionNamed,
  water,
  yeast,
} from './formula-builder.ts';

const solve = (...args: Parameters<typeof formula>) => solveFormula(formula(...args));

describe("baker's percentage", () => {
  // Wikipedia, "Baker percentage" (mirrored at theinfolist.com, liquisearch.com): 10 lb flour, 5 lb water.
  it('of flour and water', () => {
    const { solved, problems } = solve([dough(flour('flour', g(10)), water(g(5)))]);
    expect(problems).toEqual([]);
    expect(overallPercent(solved)).toEqual({ flour: 100, water: 50 });
  });

  // Hobart HL600 Legacy mixer manual, p. 22–23 (easymanua.ls/hobart/legacy-hl600): two doughs and their totals.
  it.each([
    ['heavy bread dough', [55, 2, 2.5, 5, 5, 6], 175.5],
    ['raised donut dough', [65, 5, 2.5, 15, 15, 8], 210.5],
  ])('adds up for %s', (_, percents, total) => {
    const [w, y, s, sugar, shortening, nfdm] = percents as [number, number, number, number, number, number];
    const { solved, problems } = solve([
      dough(
        flour('flour', pct(100)),
        water(pct(w)),
        yeast(pct(y)),
        salt(pct(s)),
        line('sugar', pct(sugar), 'sugar'),
        line('shortening', pct(shortening), 'fat'),
        line('nfdm', pct(nfdm), 'dairy'),
      ),
    ]);
    expect(problems).toEqual([]);
    expect(100 * solved!.totalFraction!).toBeCloseTo(total, 9);
    expect(solved!.assumedScale).toBe(true);
    expect(solved!.doughGrams).toBeCloseTo(10 * total, 8);
    expect(solved!.waterUnknown).toEqual(['sugar', 'shortening', 'nfdm']);
  });

  // Wikipedia (de), "Teigausbeute" (de.zxc.wiki/wiki/Teigausbeute): 10 kg flour with 5 kg is 150, with 5.8 kg 158.
  it.each([
    [5, 150],
    [5.8, 158],
  ])('net dough yield of 10 kg flour and %d kg liquid is %d', (kg, expected) => {
    const { solved } = solve([dough(flour('flour', g(10_000)), water(g(1000 * kg)))]);
    expect(solved!.netDoughYield).toBeCloseTo(expected, 9);
  });

  // The same article: 10 kg flour and 4.5 kg of all the rest give a gross dough yield of 145.
  it('gross dough yield counts everything', () => {
    const { solved } = solve([dough(flour('flour', g(10_000)), water(g(4000)), salt(g(200)), yeast(g(300)))]);
    expect(solved!.grossDoughYield).toBeCloseTo(145, 9);
  });
});

describe('preferments in published formulas', () => {
  // Wild Yeast blog, Baker's Percentage part 4 (wildyeastblog.com/bakers-percentage-4).
  const poolishLines = [flour('flour', g(468)), water(g(468)), yeast(g(0.3))];
  const wildYeast = () =>
    solve([
      dough(flour('flour', g(900)), water(g(468)), yeast(g(9)), salt(g(27)), part('poolish', g(936.3))),
      section('preferment', 'poolish', poolishLines),
    ]);

  it('final dough in percent of its own flour', () => {
    const { solved, problems } = wildYeast();
    expect(problems).toEqual([]);
    const percents = solved!.finalMix.lines.map(
      (row) => [row.name, 100 * row.fractionOfFinalFlour!] as const,
    );
    const expected = { flour: 100, water: 52, yeast: 1, salt: 3, poolish: 104 };
    for (const [name, percent] of percents) {
      expect(Math.abs(percent - expected[name as keyof typeof expected]), name).toBeLessThan(0.5);
    }
    // The source rounds the dough to 2340 g; its yeast of 0.3 g in the poolish makes 2340.3.
    expect(Math.abs(solved!.doughGrams! - 2340)).toBeLessThan(0.5);
    expect(100 * lineNamed(solved, 'poolish', 'yeast').fraction!).toBeCloseTo(0.06, 2);
    const poolish = sectionNamed(solved, 'poolish');
    expect((100 * poolish.totalGrams!) / poolish.flourGrams!).toBeCloseTo(200, 0);
  });

  // Totals computed from the same page; 34 % prefermented flour at thefreshloaf.com node/31317.
  it('overall formula', () => {
    const { solved } = wildYeast();
    expect(solved!.flourGrams).toBeCloseTo(1368, 6);
    expect(solved!.waterGrams).toBeCloseTo(936, 6);
    expect(100 * solved!.hydration!).toBeCloseTo(68.42, 2);
    expect(100 * solved!.saltFraction!).toBeCloseTo(1.974, 3);
    expect(overallPercent(solved).yeast).toBeCloseTo(0.68, 2);
    expect(100 * solved!.prefermentedFlour!).toBeCloseTo(34, 0);
  });

  const published = [
    {
      // BakeMag, French Bread with Poolish (bakemag.com/articles/10807-french-bread-with-poolish); kg.
      name: 'French bread with poolish, kg',
      preferment: [3.3, 3.3, 0.007],
      final: [6.7, 3.4, 0.2, 0.103],
      overall: { flour: 10, water: 6.7, salt: 0.2, yeast: 0.11 },
      percent: { water: 67, salt: 2, yeast: 1.1 },
      total: 17.01,
      totalPercent: 170.1,
      prefermented: 33,
    },
    {
      // King Arthur Flour bakery formula sheet (scribd 235242877), French bread with poolish, US column; lb.
      name: 'French bread with poolish, lb',
      preferment: [6.6, 6.6, 0.01],
      final: [13.4, 6.6, 0.4, 0.21],
      overall: { flour: 20, water: 13.2, salt: 0.4, yeast: 0.22 },
      percent: { water: 66, salt: 2, yeast: 1.1 },
      total: 33.82,
      totalPercent: 169.1,
      prefermented: 33,
    },
    {
      // The same sheet, ciabatta with biga, US column; lb.
      name: 'ciabatta with biga, lb',
      preferment: [4, 2.4, 0],
      final: [16, 12.2, 0.4, 0.24],
      overall: { flour: 20, water: 14.6, salt: 0.4, yeast: 0.24 },
      percent: { water: 73, salt: 2, yeast: 1.2 },
      total: 35.24,
      totalPercent: 176.2,
      prefermented: 20,
    },
    {
      // King Arthur Flour, ciabatta with a biga of 160.1 % in a dough of 17.92 kg, 30 % prefermented; kg.
      name: 'ciabatta with biga, kg',
      preferment: [3, 1.8, 0.003],
      final: [7, 5.8, 0.2, 0.117],
      overall: { flour: 10, water: 7.6, salt: 0.2, yeast: 0.12 },
      percent: { water: 76, salt: 2, yeast: 1.2 },
      total: 17.92,
      totalPercent: 179.2,
      prefermented: 30,
    },
  ] as const;

  it.each(published)('$name: added', (source) => {
    const [pf, pw, py] = source.preferment;
    const [ff, fw, fs, fy] = source.final;
    const total = 1000 * (pf + pw + py);
    const { solved, problems } = solve([
      dough(
        flour('flour', g(ff * 1000)),
        water(g(fw * 1000)),
        salt(g(fs * 1000)),
        yeast(g(fy * 1000)),
        part('preferment', g(total)),
      ),
      section('preferment', 'preferment', [
        flour('flour', g(pf * 1000)),
        water(g(pw * 1000)),
        yeast(g(py * 1000)),
      ]),
    ]);
    expect(problems).toEqual([]);
    const grams = overallGrams(solved);
    for (const [name, kg] of Object.entries(source.overall))
      expect(grams[name]! / 1000, name).toBeCloseTo(kg, 2);
    const percents = overallPercent(solved);
    for (const [name, percent] of Object.entries(source.percent)) {
      expect(percents[name]!, name).toBeCloseTo(percent, 1);
    }
    expect(solved!.doughGrams! / 1000).toBeCloseTo(source.total, 2);
    expect(100 * solved!.totalFraction!).toBeCloseTo(source.totalPercent, 1);
    expect(100 * solved!.prefermentedFlour!).toBeCloseTo(source.prefermented, 6);
  });

  // The same formulas the other way round: the overall percentages are written, and the final mix has to come out.
  it.each(published)('$name: drawn', (source) => {
    const [pf, pw, py] = source.preferment;
    const [ff, fw, fs, fy] = source.final;
    const percentOfTotal = (amount: number) => pct((100 * amount) / (pf + ff));
    const { solved, problems } = solve(
      [
        dough(
          flour('flour', pct(100)),
          water(percentOfTotal(pw + fw)),
          salt(percentOfTotal(fs)),
          yeast(percentOfTotal(py + fy)),
        ),
        section(
          'preferment',
          'preferment',
          [flour('flour', pct(100)), water(pct((100 * pw) / pf)), yeast(pct((100 * py) / pf))],
          {
            draws: [drawRole('flour', source.prefermented)],
          },
        ),
      ],
      { kind: 'flour', grams: 1000 * (pf + ff) },
    );
    expect(problems).toEqual([]);
    const grams = finalGrams(solved);
    expect(grams.flour).toBeCloseTo(ff * 1000, 6);
    expect(grams.water).toBeCloseTo(fw * 1000, 6);
    expect(grams.salt).toBeCloseTo(fs * 1000, 6);
    expect(grams.yeast).toBeCloseTo(fy * 1000, 6);
    expect(grams.preferment).toBeCloseTo(1000 * (pf + pw + py), 6);
  });

  // King Arthur Flour, professional formulas, deli rye (kingarthurflour.com/professional/formulas.html); kg.
  it('deli rye: 17.45 kg, 174.5 %, a fifth of the flour prefermented', () => {
    const { solved, problems } = solve([
      dough(
        flour('white flour', g(8000)),
        flour('whole rye', g(2000)),
        water(g(7000)),
        salt(g(200)),
        yeast(g(125)),
        line('caraway', g(125), 'seeds', { waterFraction: 0.1 }),
      ),
      // The source says how much flour is prefermented; the sour's water is our own invention.
      section('preferment', 'sour', [flour('whole rye', pct(100)), water(pct(83))], {
        draws: [drawRole('flour', 20)],
      }),
    ]);
    expect(problems).toEqual([]);
    expect(solved!.doughGrams).toBeCloseTo(17_450, 8);
    expect(100 * solved!.totalFraction!).toBeCloseTo(174.5, 9);
    const percents = overallPercent(solved);
    expect(percents).toMatchObject({ 'whole rye': 20, water: 70, yeast: 1.25, caraway: 1.25 });
    expect(100 * solved!.prefermentedFlour!).toBeCloseTo(20, 9);
    expect(finalGrams(solved)['whole rye']).toBeCloseTo(0, 6);
  });

  // Hamelman, Bread, p. 105, as worked at thefreshloaf.com node/60712: 600 g at 170.4 %, half the flour prefermented.
  it('600 g of dough at 170.4 %: flour 352 g, prefermented 176 g, preferment water 105.6 g', () => {
    const { solved, problems } = solve(
      [
        dough(flour('flour', pct(100)), water(pct(68)), salt(pct(1.8)), yeast(pct(0.6))),
        section('preferment', 'biga', [flour('flour', pct(100)), water(pct(60))], {
          draws: [drawRole('flour', 50)],
        }),
      ],
      // The source rounds its factor 3.5211 to 3.52, which makes 599.8 g.
      { kind: 'dough', grams: 3.52 * 170.4 },
    );
    expect(problems).toEqual([]);
    expect(solved!.flourGrams).toBeCloseTo(352, 9);
    expect(lineNamed(solved, 'biga', 'flour').grams).toBeCloseTo(176, 9);
    expect(lineNamed(solved, 'biga', 'water').grams).toBeCloseTo(105.6, 9);
  });
});

describe('misprints in published formulas show', () => {
  // BakeMag, French Bread with Poolish, prints the poolish's yeast as 20 % and its total as 220 %.
  it('yeast of 0.007 kg on 3.3 kg flour is 0.212 %, not 20 %, and the total 200.21 %, not 220 %', () => {
    const { solved } = solve([
      dough(flour('flour', g(6700)), water(g(3400)), part('poolish', g(6607))),
      section('preferment', 'poolish', [flour('flour', g(3300)), water(g(3300)), yeast(g(7))]),
    ]);
    const poolish = sectionNamed(solved, 'poolish');
    expect(100 * lineNamed(solved, 'poolish', 'yeast').fraction!).toBeCloseTo(0.212, 3);
    expect((100 * poolish.totalGrams!) / poolish.baseGrams!).toBeCloseTo(200.21, 2);
  });

  // King Arthur Flour, slow-rise baguettes (from Hamelman, Bread), prints 0.75 kg yeast, 0.75 % and 17.275 kg.
  it('only 0.075 kg of yeast gives the printed 0.75 % and 17.275 kg', () => {
    const baguettes = (yeastGrams: number) =>
      solve([dough(flour('flour', g(10_000)), water(g(7000)), salt(g(200)), yeast(g(yeastGrams)))]).solved!;
    const right = baguettes(75);
    expect(right.doughGrams).toBeCloseTo(17_275, 6);
    expect(100 * right.totalFraction!).toBeCloseTo(172.75, 9);
    expect(100 * right.fractionByRole.yeast!).toBeCloseTo(0.75, 9);
    const printed = baguettes(750);
    expect(100 * printed.fractionByRole.yeast!).toBeCloseTo(7.5, 9);
    expect(printed.doughGrams).toBeCloseTo(17_950, 6);
  });
});
