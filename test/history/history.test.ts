import { describe, expect, it } from 'vitest';
import type { FormulaFigures, FormulaMoment } from '../../core/history/formula-figures.ts';
import { formulaNames } from '../../core/history/formula-names.ts';
import { type HistoryRevision, historyOf } from '../../core/history/history.ts';
import { historyAsCsv, historyAsHtml, historyAsText, historyPage } from '../../core/history/history-page.ts';
import { plainSpeaker } from '../../core/words/speak.ts';

const day = 86_400;
/** A formula at a revision, with no more than the figures named. */
function moment(
  figures: Omit<FormulaFigures, 'ingredients'>,
  more: Partial<FormulaMoment> = {},
): FormulaMoment {
  const { ingredients = [] } = figures as Partial<FormulaFigures>;
  return {
    ...{ file: 'tin.dough', formula: 'Harbour Tin', line: 0, trials: [] },
    figures: { ...figures, ingredients },
    ...more,
  };
}
/** A revision on the so-manieth day of 2026. */
function revision(commit: string, on: number, parents: string, at?: FormulaMoment): HistoryRevision {
  return {
    commit,
    parents: parents === '' ? [] : parents.split(' '),
    seconds: 1_767_225_600 + on * day,
    date: `2026-01-${String(on + 1).padStart(2, '0')}`,
    author: 'Baker One',
    words: `Commit ${commit}`,
    ...(at === undefined ? {} : { moment: at }),
  };
}
const told = (revisions: readonly HistoryRevision[]) =>
  historyOf(revisions)?.rows.map(({ commit, fate, changes }) => [
    commit,
    fate,
    ...changes.map(({ figure }) => figure),
  ]);

describe('the rows of a history', () => {
  it('are those where a figure is shown otherwise than before', () => {
    const [a, b] = [
      moment({ hydration: 0.69, saltFraction: 0.02 }),
      moment({ hydration: 0.7, saltFraction: 0.02 }),
    ];
    const c = moment({ hydration: 0.7000001, saltFraction: 0.02 });
    expect(told([revision('a', 0, '', a), revision('b', 1, 'a', b), revision('c', 2, 'b', c)])).toEqual([
      ['a', 'new'],
      ['b', 'kept', 'hydration'],
    ]);
  });

  it('are not those where arithmetic alone moved a last place across the edge of rounding', () => {
    const at = (fraction: number) =>
      moment({ ingredients: [{ name: 'instant yeast', fraction }] } as FormulaFigures);
    expect(
      told([revision('a', 0, '', at(0.00025)), revision('b', 1, 'a', at(0.00024999999999999995))]),
    ).toEqual([['a', 'new']]);
    expect(told([revision('a', 0, '', at(0.00025)), revision('b', 1, 'a', at(0.00024))])).toHaveLength(2);
  });

  it('are none for a state in which a merge is not finished, whose figures hold until it is', () => {
    const base = moment({ saltFraction: 0.02 });
    const torn = moment({}, { unfinishedMerge: true });
    const done = moment({ saltFraction: 0.019 });
    const revisions = [revision('a', 0, '', base), revision('b', 1, 'a', torn)];
    expect(told(revisions)).toEqual([['a', 'new']]);
    expect(historyOf(revisions)?.course).toHaveLength(1);
    expect(told([...revisions, revision('c', 2, 'b', done)])).toEqual([
      ['a', 'new'],
      ['c', 'kept', 'salt'],
    ]);
  });

  it('of a merge are what neither side had', () => {
    const base = moment({ hydration: 0.69, saltFraction: 0.02, costPerKilogram: 1, currency: 'EUR' });
    const his = moment({ hydration: 0.7, saltFraction: 0.02, costPerKilogram: 0.9, currency: 'EUR' });
    const hers = moment({ hydration: 0.69, saltFraction: 0.019, costPerKilogram: 1, currency: 'EUR' });
    const both = moment({ hydration: 0.7, saltFraction: 0.019, costPerKilogram: 0.88, currency: 'EUR' });
    const revisions = [
      revision('base', 0, '', base),
      revision('his', 1, 'base', his),
      revision('hers', 2, 'base', hers),
      revision('merge', 3, 'his hers', both),
    ];
    expect(told(revisions)).toEqual([
      ['base', 'new'],
      ['his', 'kept', 'hydration', 'cost'],
      ['hers', 'kept', 'salt'],
      ['merge', 'kept', 'cost'],
    ]);
    // On the main line her salt holds from the merge on.
    expect(
      historyOf(revisions)?.course.map(({ seconds, figures }) => [
        (seconds - 1_767_225_600) / day,
        figures?.saltFraction,
      ]),
    ).toEqual([
      [0, 0.02],
      [1, 0.02],
      [3, 0.019],
    ]);
  });

  it('tell a formula that came, left, and came again; a merge that follows one side tells nothing', () => {
    const at = moment({ hydration: 0.69 });
    const revisions = [
      revision('a', 0, ''),
      revision('b', 1, 'a', at),
      revision('c', 2, 'b'),
      revision('d', 3, 'b', at),
      revision('e', 4, 'd c'),
      revision('f', 5, 'e', at),
    ];
    expect(told(revisions)).toEqual([
      ['b', 'new'],
      ['c', 'removed'],
      ['f', 'new'],
    ]);
    expect(historyOf([revision('a', 0, '')])).toBeUndefined();
  });

  it('tell another name and another file, an ingredient that came, and allergens', () => {
    const before = moment({ allergens: ['wheat'] });
    const after = moment(
      { allergens: ['milk', 'wheat'], ingredients: [{ name: 'butter', fraction: 0.04 }] } as FormulaFigures,
      { formula: 'Harbour Loaf', file: 'in/tin.dough' },
    );
    const rows = historyOf([revision('a', 0, '', before), revision('b', 1, 'a', after)])!.rows;
    expect(rows[1]).toMatchObject({ renamedFrom: 'Harbour Tin', movedFrom: 'tin.dough' });
    const history = historyOf([revision('a', 0, '', before), revision('b', 1, 'a', after)])!;
    expect(historyPage(history, plainSpeaker).rows[1]!.changes).toEqual([
      'renamed from Harbour Tin',
      'moved from tin.dough',
      'allergens wheat → milk and wheat',
      'butter none → 4%',
    ]);
  });

  it('hold each trial once, with what was computed when its reading came', () => {
    const trial = (celsius: number, computed: number) => ({
      trials: [
        {
          title: '2026-01-02, morning',
          date: '2026-01-02',
          measuredCelsius: celsius,
          predictedCelsius: computed,
        },
      ],
    });
    const revisions = [
      revision('a', 0, '', moment({})),
      revision('b', 4, 'a', moment({}, trial(26, 24))),
      revision('c', 5, 'b', moment({ mixMinutes: 9 }, trial(26, 25))),
    ];
    const history = historyOf(revisions)!;
    expect(history.trials).toMatchObject([{ commit: 'b', measuredCelsius: 26, predictedCelsius: 24 }]);
    // At its own day, not at that of the commit.
    expect(historyPage(history, plainSpeaker).rows.map(({ date, commit }) => [date, commit])).toEqual([
      ['2026-01-01', 'a'],
      ['2026-01-02', undefined],
      ['2026-01-06', 'c'],
    ]);
    const corrected = historyOf([
      ...revisions,
      revision('d', 6, 'c', moment({ mixMinutes: 9 }, trial(25.5, 25))),
    ])!;
    expect(corrected.trials).toMatchObject([{ commit: 'd', measuredCelsius: 25.5 }]);
    const takenBack = historyOf([...revisions, revision('d', 6, 'c', moment({ mixMinutes: 9 }))])!;
    expect(takenBack.trials).toEqual([]);
  });

  it('hold every one of several trials of one day', () => {
    const trials = (...readings: readonly number[]) => ({
      trials: readings.map((measuredCelsius) => ({
        ...{ title: '2026-01-02', date: '2026-01-02', measuredCelsius, predictedCelsius: 24 },
      })),
    });
    const revisions = [
      revision('a', 0, '', moment({})),
      revision('b', 4, 'a', moment({}, trials(26))),
      // The later one stands above the first; then a third reads what the first did.
      revision('c', 5, 'b', moment({}, trials(25, 26))),
      revision('d', 6, 'c', moment({}, trials(25, 26, 26))),
    ];
    expect(
      historyOf(revisions)!.trials.map(({ measuredCelsius, commit }) => [measuredCelsius, commit]),
    ).toEqual([
      [25, 'c'],
      [26, 'b'],
      [26, 'd'],
    ]);
  });
});

describe('what is written of a history', () => {
  const history = historyOf([
    revision('a', 0, '', moment({ hydration: 0.69, endCelsius: 25 })),
    revision('b', 10, 'a', moment({ hydration: 0.7, endCelsius: 25 })),
  ])!;

  it('is a table for people', () => {
    expect(historyAsText(historyPage(history, plainSpeaker))).toBe(
      [
        'Harbour Tin  tin.dough',
        '',
        '  2 revisions with a change, 0 trials',
        '    date        commit  by         in the words of the commit  what changed',
        '    2026-01-01  a       Baker One  Commit a                    new',
        '                                                               hydration 69%',
        '                                                               dough temperature, computed 25 °C',
        '    2026-01-11  b       Baker One  Commit b                    hydration 69% → 70%',
        '',
      ].join('\n'),
    );
  });

  it('is plain numbers for a spreadsheet', () => {
    const [heads, ...rows] = historyAsCsv(history).split('\r\n');
    const column = heads!.split(',').indexOf('hydration');
    expect(rows.filter((row) => row !== '').map((row) => row.split(',')[column])).toEqual(['0.69', '0.7']);
  });

  it('draws the figures that changed, without script, colour or link, and never what a name says', () => {
    const page = historyPage(
      historyOf([
        revision('a', 0, '', moment({ hydration: 0.69 }, { formula: '<script>alert(1)</script>' })),
        revision('b', 10, 'a', moment({ hydration: 0.7 }, { formula: '<script>alert(1)</script>' })),
      ])!,
      plainSpeaker,
    );
    expect(page.charts.map(({ figure }) => figure)).toEqual(['hydration']);
    const html = historyAsHtml(page, 'en');
    expect(html).not.toContain('<script');
    expect(html).toContain('&lt;script&gt;');
    const svg = page.charts[0]!.svg;
    expect(svg).not.toMatch(/#[0-9a-f]{3}|rgb\(|href|NaN|Infinity/);
    // Two revisions are two dots, and the line steps from the one to the other.
    const dots = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    expect(dots).toHaveLength(2);
    expect(dots[1]![0]).toBeGreaterThan(dots[0]![0]!);
    // More hydration stands higher.
    expect(dots[1]![1]).toBeLessThan(dots[0]![1]!);
    const line = /<polyline points="([^"]+)"/
      .exec(svg)![1]!
      .split(' ')
      .map((one) => one.split(',').map(Number));
    expect(line.map(([, y]) => y)).toEqual([dots[0]![1], dots[0]![1], dots[1]![1], dots[1]![1]]);
    expect(line[1]![0]).toBe(line[2]![0]);
    expect(line[2]![0]).toBe(dots[1]![0]);
  });

  it('a figure that is nowhere known has no chart, and one revision alone has one', () => {
    const one = historyOf([revision('a', 0, '', moment({ hydration: 0.69 }))])!;
    expect(historyPage(one, plainSpeaker).charts).toEqual([]);
  });
});

describe('the names of formulas in a text', () => {
  it('are those of its headers, as they are written', () => {
    expect(
      formulaNames('formula Harbour Tin:\n  salt 2%\n\nflour x:\n\nFormula quay rye:\n  salt 2%\n'),
    ).toEqual(['Harbour Tin', 'quay rye']);
    expect(formulaNames('flour x:\n  grain wheat\n')).toEqual([]);
  });
});
