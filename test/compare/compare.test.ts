import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Comparison,
  compareSummaries,
  comparisonPage,
  createService,
  type Service,
} from '../../core/index.ts';
import { plainSpeaker } from '../../core/words/speak.ts';
import { filesIn, project } from '../tidy/imports.ts';

const root = 'file:///bakery/';
const uri = `${root}tin.dough`;
const flours = 'flour strong white:\n  grain wheat\n  protein 12.9%\n  price 0.80 EUR per kg\n';
const tin = `formula Harbour Tin:
  yield 24 pieces of 880 g
  loss 1.5%
  dough temperature 25 °C

  strong white       85%
  wholemeal wheat    balance
  water              to 69% hydration
  salt               2%
  fresh yeast        0.9%
  butter             4%, at 8 °C

preferment night poolish:
  draws 22% of flour
  strong white       100%
  water              100%
  instant yeast      0.08%
  ferment 12 h at 18 °C

mix in spiral:
  load flour, water, night poolish
  speed 1 for 3 min
  rest 20 min
  add salt, fresh yeast, butter
  speed 2 for 3 min

process:
  bulk 1 h 30 min at 25 °C, fold at 45 min
  shape
  proof 55 min at 28 °C
  bake 34 min at 230 °C, steam
`;

function bakery(files: Readonly<Record<string, string>> = {}): Service {
  const service = createService();
  for (const [name, text] of Object.entries({ 'flours.dough': flours, ...files }))
    service.setText(root + name, text);
  service.setRoots([root]);
  return service;
}

/** Each change in one line: `dough: hydration 69% → 70% (+1%)`. */
function told({ formulas, definitions }: Comparison): string[] {
  const line = (title: string, { name, before, after, by }: (typeof changes)[number]): string =>
    `${title}: ${name} ${before?.text ?? ''} → ${after?.text ?? ''}${by === undefined ? '' : ` (${by})`}`;
  const changes = formulas.flatMap(({ groups }) => groups.flatMap((group) => group.changes));
  return [
    ...formulas.flatMap(({ groups }) =>
      groups.flatMap((group) => group.changes.map((change) => line(group.title, change))),
    ),
    ...definitions.flatMap(({ kind, name, changes: own }) => own.map((one) => line(`${kind} ${name}`, one))),
  ];
}

const edited = (from: string, to: string): Comparison => {
  expect(tin).toContain(from);
  return bakery().compare(uri, tin, tin.replace(from, to));
};

describe('what changed in a formula', () => {
  it('says nothing of the same text', () => {
    expect(bakery().compare(uri, tin, tin)).toEqual({ verdict: 'same', formulas: [], definitions: [] });
  });

  it('tells layout and comments from change', () => {
    const other = `# weekday bread\n\n${tin.replaceAll(/ {2,}/g, '\t').replace('salt', '# sea\n salt')}\n\n`;
    const { verdict, formulas } = bakery().compare(uri, tin, other);
    expect([verdict, formulas.map(({ groups }) => groups)]).toEqual(['layout', [[]]]);
  });

  it('does not take another spelling of a figure for a change', () => {
    expect(edited('880 g', '0.88 kg').verdict).toBe('layout');
    expect(edited('1 h 30 min', '90 min').verdict).toBe('layout');
    expect(edited('0.9%', '0,90 %').verdict).toBe('layout');
  });

  it('tells other words for the same figures from change', () => {
    const comparison = edited('balance', '15%');
    expect(comparison.verdict).toBe('wording');
    expect(told(comparison)).toEqual(['written differently: wholemeal wheat balance → 15%']);
  });

  it('tells a new order of the same lines as wording', () => {
    const salt = '  salt               2%\n';
    const comparison = bakery().compare(
      uri,
      tin,
      tin.replace(salt, '').replace('  butter', `${salt}  butter`),
    );
    expect([comparison.verdict, told(comparison)]).toEqual(['wording', []]);
  });

  it('tells salt in percent and in grams, and what follows from it', () => {
    const comparison = edited('salt               2%', 'salt               1.8%');
    const [formula] = comparison.formulas;
    expect(formula!.groups.find(({ subject }) => subject === 'ingredients')!.changes).toEqual([
      {
        name: 'salt',
        before: { text: '2%', fraction: 0.02, grams: expect.closeTo(243.8, 0), beside: '244 g' },
        after: {
          text: '1.8%',
          fraction: expect.closeTo(0.018, 9),
          grams: expect.closeTo(219.7, 0),
          beside: '220 g',
        },
        by: '−0.2 points',
      },
    ]);
    expect(told(comparison)).toContain('dough: salt 2% → 1.8% (−0.2 points)');
    expect(told(comparison).filter((line) => line.startsWith('written'))).toEqual([]);
  });

  // 24 × 880 g = 21.12 kg divided; by 1 − 0.015 is 21.44 kg in the bowl. Worked by hand.
  it('tells another yield once, not again at every ingredient', () => {
    const comparison = edited('24 pieces of 880 g', '48 pieces of 880 g');
    expect(comparison.formulas[0]!.groups.map(({ subject }) => subject)).not.toContain('ingredients');
    expect(told(comparison)).toEqual(
      expect.arrayContaining([
        'makes: yield 24 pieces of 880 g → 48 pieces of 880 g',
        'makes: dough in the bowl 21.44 kg → 42.88 kg (+21.44 kg)',
      ]),
    );
  });

  it('tells hydration, and the water it takes', () => {
    const lines = told(edited('to 69% hydration', 'to 72% hydration'));
    expect(lines).toEqual(
      expect.arrayContaining([
        'dough: hydration 69% → 72% (+3 points)',
        'ingredients: water 69% → 72% (+3 points)',
        expect.stringMatching(/^dough: effective hydration /),
      ]),
    );
  });

  it('tells an ingredient added and one removed', () => {
    const lines = told(edited('butter             4%, at 8 °C', 'olive oil          3%'));
    expect(lines).toEqual(
      expect.arrayContaining(['ingredients: olive oil  → 3%', 'ingredients: butter 4% → ']),
    );
  });

  it('tells a small change of a small amount with as many places as show it', () => {
    const more = tin.replace('0.9%', '12.34%');
    const lines = told(bakery().compare(uri, more, more.replace('12.34%', '12.36%')));
    expect(lines).toContain('ingredients: fresh yeast 12.34% → 12.36% (+0.02 points)');
  });

  it('tells the mixing line by line, its outlook, and the temperatures', () => {
    const lines = told(edited('speed 2 for 3 min', 'speed 2 for 6 min'));
    expect(lines).toEqual(
      expect.arrayContaining([
        'mixing: speed 2 3 min → 6 min',
        'mixing outlook: programme 26 min → 29 min (+3 min)',
        expect.stringMatching(/^mixing outlook: slow minutes /),
        expect.stringMatching(/^temperatures: water \S+ °C → \S+ °C/),
      ]),
    );
    expect(told(edited('spiral', 'planetary'))).toContain('mixing: section mix in spiral → mix in planetary');
    expect(told(edited('dough temperature 25', 'dough temperature 23'))).toEqual(
      expect.arrayContaining(['temperatures: dough temperature 25 °C → 23 °C']),
    );
    expect(told(edited('at 8 °C', 'at 12 °C'))).toContain('temperatures: butter 4%, at 8 °C → 4%, at 12 °C');
  });

  it('tells the process step by step', () => {
    const lines = told(edited('  shape\n', '  rest 20 min\n  shape\n'));
    // 12 h of poolish, 26 min of mixing, 90 + 55 + 34 min of steps: 925 min. Worked by hand.
    expect(lines).toEqual([
      'process: rest  → 20 min',
      'process: from first work to ready 15 h 25 min → 15 h 45 min (+20 min)',
      'process: from mixing to ready 3 h 25 min → 3 h 45 min (+20 min)',
    ]);
    expect(told(edited('55 min at 28', '70 min at 26'))[0]).toBe(
      'process: proof 55 min at 28 °C → 70 min at 26 °C',
    );
  });

  it('tells a preferment: its share, its ripening, and the flour in it', () => {
    const lines = told(edited('draws 22%', 'draws 30%'));
    expect(lines).toEqual(
      expect.arrayContaining([
        'night poolish (preferment): draws 22% of flour → 30% of flour',
        'dough: prefermented flour 22% → 30% (+8 points)',
      ]),
    );
    // A cooler poolish wants warmer water.
    expect(told(edited('12 h at 18', '14 h at 16'))).toEqual([
      'night poolish (preferment): ferment 12 h at 18 °C → 14 h at 16 °C',
      expect.stringMatching(/^temperatures: water .* \(\+/),
      'process: from first work to ready 15 h 25 min → 17 h 25 min (+2 h)',
    ]);
    const gone = bakery().compare(
      uri,
      tin,
      tin.replace(/preferment[\s\S]*?\n\n/, '').replace(', night poolish', ''),
    );
    expect(told(gone)).toEqual(
      expect.arrayContaining([
        'night poolish (preferment): section preferment night poolish → ',
        'dough: prefermented flour 22% → 0% (−22 points)',
      ]),
    );
  });

  it('tells new findings and those that are gone', () => {
    const salty = edited('salt               2%', 'salt               4%').formulas[0]!;
    const found = salty.groups.find(({ subject }) => subject === 'findings')!.changes;
    expect(found).toEqual([
      { name: 'salt-range', after: { text: expect.stringMatching(/^warning: /), line: 8, level: 'warning' } },
      // That much salt slows the yeast.
      {
        name: 'fermentation-time',
        after: { text: expect.stringMatching(/^information: /), line: expect.any(Number), level: 'info' },
      },
    ]);
    const back = bakery().compare(uri, tin.replace('2%', '2'), tin);
    expect(told(back)).toContainEqual(expect.stringMatching(/^findings: missing-unit error: .* → $/));
  });

  it('tells what became of a programme that a trial keeps as a change of the trial', () => {
    const trial =
      '\ntrial 2026-03-14:\n  mixed in spiral\n  load flour, water\n  speed 1 for 3 min\n  add salt\n  speed 2 for 5 min\n  end 25.4 °C\n';
    const changes = (now: string): string[] =>
      told(bakery().compare(uri, tin + trial, tin + now)).filter((one) => !one.startsWith('findings'));
    expect(changes(trial.replace('for 5 min', '12 min'))).toEqual([
      'trials: trial 2026-03-14: speed 2 5 min → 12 min',
    ]);
    expect(changes(trial.replace('in spiral', 'by hand'))).toEqual([
      'trials: trial 2026-03-14: mixed in spiral → by hand',
    ]);
    expect(changes(trial.replace('25.4 °C', '25.4 °C, developed'))).toEqual([
      'trials: trial 2026-03-14: end 25.4 °C → 25.4 °C, developed',
    ]);
    // The order of what was run is what was run; that of what was measured is not.
    const swapped = trial.replace('  add salt\n  speed 2 for 5 min\n', '  speed 2 for 5 min\n  add salt\n');
    expect(changes(swapped).length).toBeGreaterThan(0);
    expect(changes(swapped).every((one) => one.startsWith('trials: trial 2026-03-14: '))).toBe(true);
    const moved = trial.replace('  end 25.4 °C\n', '').replace('  mixed', '  end 25.4 °C\n  mixed');
    expect(changes(moved)).toEqual([]);
  });

  it('tells of several trials of one day which one is new, gone or read on, wherever it stands', () => {
    const trial = (lines: string): string => `\ntrial 2026-03-14:\n${lines}`;
    const [first, second] = [trial('  room 20 °C\n  end 24 °C\n'), trial('  room 22 °C\n  end 25 °C\n')];
    const changes = (before: string, now: string) =>
      told(bakery().compare(uri, tin + before, tin + now)).filter((one) => one.startsWith('trials'));
    expect(changes(first, second + first)).toEqual(['trials: trial 2026-03-14  → room 22 °C; end 25 °C']);
    expect(changes(first + second, second)).toEqual(['trials: trial 2026-03-14 room 20 °C; end 24 °C → ']);
    expect(changes(first + second, `${second}  baked 9 kg\n${first}`)).toEqual([
      'trials: trial 2026-03-14: baked  → 9 kg',
    ]);
    expect(changes(first, second)).toHaveLength(2);
  });

  it('tells a trial that was added', () => {
    const trial = '\ntrial 2026-03-14:\n  end 25.4 °C\n';
    expect(told(bakery().compare(uri, tin, tin + trial))).toContain(
      'trials: trial 2026-03-14  → end 25.4 °C',
    );
  });

  it('tells steps that changed places as moved, not as gone and new', () => {
    expect(told(edited('  shape\n  proof 55 min at 28 °C\n', '  proof 55 min at 28 °C\n  shape\n'))).toEqual([
      'process: shape shape → shape (moved: now after “proof 55 min at 28 °C”)',
    ]);
  });

  // 1 : 0.33 after Hamelman, Bread (2004): 0.9 + 0.0176 / 0.33 and 0.6 / 0.33, the poolish drawn from it.
  it('compares fresh and instant yeast in their strength', () => {
    const dough = (to: string) =>
      told(edited('fresh yeast        0.9%', to)).filter((line) => line.startsWith('dough: yeast'));
    expect(dough('instant yeast      0.3%')).toEqual([]);
    expect(dough('instant yeast      0.6%')).toEqual([
      'dough: yeast, as fresh yeast 0.95% → 1.82% (+0.87 points)',
    ]);
  });

  it('works out a difference from the two figures as they are shown', () => {
    const lines = told(edited('salt               2%', 'salt               2.3%')).join('\n');
    for (const [, one, other, by] of lines.matchAll(/([\d.]+) (?:EUR|kg|g|%) → ([\d.]+).*\([+−]([\d.]+) /g))
      expect(Math.abs(Number(other) - Number(one))).toBeCloseTo(Number(by), 9);
    expect(lines).not.toMatch(/0\.00\d{3}/);
  });

  it('tells a finding that rises, and one that was accepted with its reason', () => {
    const service = bakery({ 'tin.dough': tin.replace('salt               2%', 'salt               4%') });
    service.setSettings({ rules: { 'salt-range': 'info' } });
    const before = service.summary(uri)!;
    service.setSettings({ rules: {} });
    const raised = compareSummaries([before], [service.summary(uri)!]);
    expect(told(raised)).toEqual([
      expect.stringMatching(/^findings: salt-range information: .* → warning: /),
    ]);
    const salty = tin.replace('salt               2%', 'salt               4%');
    const accepted = salty.replace('4%\n', '4%   # accept salt-range: a ship’s biscuit\n');
    expect(told(bakery().compare(uri, salty, accepted)).filter((line) => /salt-range/.test(line))).toEqual([
      expect.stringMatching(/^findings: salt-range warning: .* → accepted: a ship’s biscuit$/),
    ]);
  });

  it('tells why the water is no other, or that its temperature makes no difference', () => {
    const mixed = (minutes: number, tap: string, wanted = '25 °C') => {
      const service = bakery({
        'tin.dough': tin
          .replace('speed 2 for 3 min', `speed 2 for ${minutes} min`)
          .replace('dough temperature 25 °C', `dough temperature ${wanted}`),
        'bakery.dough': `bakery Quay Lane:\n  room 24 °C\n  tap water ${tap}\n`,
      });
      return service.summary(uri)!;
    };
    const water = (...sides: Parameters<typeof mixed>[]): string[] => {
      const [before, after] = sides.map((side) => mixed(...side));
      return told(compareSummaries([before!], [after!])).filter((one) => / water .* → /.test(one));
    };
    expect(water([3, '8 °C'], [3, '8 °C'])).toEqual([]);
    expect(water([3, '8 °C'], [3, '26 °C'])).toEqual([
      expect.stringMatching(
        /^temperatures: water [\d.]+ °C → from the tap at 26 °C, too warm \(\+[\d.]+ °C\)$/,
      ),
    ]);
    expect(water([3, '8 °C'], [3, '8 °C', '45 °C'])).toEqual([
      expect.stringMatching(/^temperatures: water [\d.]+ °C → 60 °C, not warm enough \(\+[\d.]+ °C\)$/),
    ]);
    expect(water([3, '8 °C'], [600, '8 °C'])).toEqual([
      expect.stringMatching(
        /^temperatures: water [\d.]+ °C → from the tap: its temperature makes no difference$/,
      ),
    ]);
  });

  it('shows computed figures as the reader has asked for them, differences too', () => {
    const service = bakery();
    service.setSettings({ display: { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' } });
    const lines = told(
      service.compare(uri, tin, tin.replace('salt               2%', 'salt               1.8%')),
    );
    expect(lines).toContain('dough: salt 2% → 1,8% (−0,2 points)');
    expect(lines.join('\n')).toMatch(/^makes: flour [\d,]+ lb → [\d,]+ lb \(\+[\d,]+ lb\)$/m);
  });

  it('keeps what it does not know as not known', () => {
    const lines = told(edited('water              to 69% hydration', 'water'));
    expect(lines).toContain('dough: hydration 69% → not known');
    expect(lines.join()).not.toMatch(/NaN|undefined|Infinity/);
  });
});

// Annex II of Regulation (EU) 1169/2011 and the nine major food allergens of the United States.
describe('what changed on the label', () => {
  const label = (before: Service, after: Service) => {
    const { formulas } = compareSummaries([before.summary(uri)!], [after.summary(uri)!]);
    const group = formulas[0]?.groups[0];
    return {
      first: group?.subject,
      told: told({ verdict: 'changed', formulas, definitions: [] }).filter((one) =>
        one.startsWith('label: '),
      ),
    };
  };
  const at = (text: string, files = {}) => bakery({ 'tin.dough': text, ...files });

  it('stands first, and tells an allergen come and one gone', () => {
    const nuts = tin.replace('butter             4%, at 8 °C', 'hazelnuts          4%');
    const { first, told: lines } = label(at(tin), at(nuts));
    expect(first).toBe('label');
    expect(lines).toEqual([
      'label: allergen  → hazelnut',
      'label: allergen milk → ',
      expect.stringMatching(/^label: ingredient list .*butter \(MILK\).* → .*HAZELNUTS/),
    ]);
  });

  it('tells another nut, though the list has one word for all', () => {
    const nuts = (name: string) => at(tin.replace('butter             4%, at 8 °C', `${name}  4%`));
    const { told: lines } = label(nuts('hazelnuts'), nuts('walnuts'));
    expect(lines.slice(0, 2)).toEqual(['label: allergen  → walnut', 'label: allergen hazelnut → ']);
  });

  it('tells it in a formula nobody touched, where a flour or an ingredient says it', () => {
    const paste = (contains: string) =>
      at(tin.replace('butter  ', 'paste   '), { 'paste.dough': `ingredient paste:\n  fat 50%\n${contains}` });
    const { first, told: lines } = label(paste('  contains none\n'), paste('  contains sesame\n'));
    expect([first, lines[0]]).toEqual(['label', 'label: allergen  → sesame']);
    expect(label(paste('  contains none\n'), paste('')).told).toEqual([
      'label: allergens not stated for  → paste',
    ]);
  });

  it('tells the order of the ingredient list where weights change places', () => {
    const sugar = tin.replace('  butter ', '  sugar              3%\n  butter ');
    const { told: lines } = label(
      at(sugar),
      at(sugar.replace('sugar              3%', 'sugar              5%')),
    );
    expect(lines).toEqual([
      expect.stringMatching(/^label: ingredient list .*butter.*sugar.* → .*sugar.*butter/),
    ]);
  });

  it('tells the allergens of a formula that came', () => {
    const { formulas } = bakery().compare(uri, '', tin);
    expect(formulas[0]!.groups[0]).toMatchObject({
      subject: 'label',
      changes: [{ after: { text: 'wheat' } }, { after: { text: 'milk' } }],
    });
  });
});

/** So many formulas that follow from something, of all but one of which the dough changed too. */
function comparisonOf(count: number): Comparison {
  const group = (subject: 'cost' | 'dough') => ({ subject, title: subject, changes: [] });
  return {
    verdict: 'changed',
    definitions: [],
    formulas: Array.from({ length: count }, (_, at) => ({
      formula: `F${at}`,
      fate: 'kept' as const,
      verdict: 'changed' as const,
      follows: true as const,
      after: { file: 'a.dough', line: at },
      groups: [group('cost'), ...(at === count - 1 ? [] : [group('dough')])],
    })),
  };
}

describe('what changed among formulas', () => {
  const two = `${tin}\nformula Quay Rye:\n  medium rye 100%\n  water 78%\n  salt 2%\n`;

  it('knows a renamed formula by its lines', () => {
    const comparison = bakery().compare(
      uri,
      two,
      two.replace('Harbour Tin', 'Weekday Tin').replace('0.9%', '1%'),
    );
    expect(comparison.formulas.map(({ formula, renamedFrom, fate }) => [formula, renamedFrom, fate])).toEqual(
      [['Weekday Tin', 'Harbour Tin', 'kept']],
    );
  });

  it('tells a formula that came and one that went', () => {
    const comparison = bakery().compare(uri, tin, two);
    expect(comparison.formulas.map(({ formula, fate }) => [formula, fate])).toEqual([['Quay Rye', 'added']]);
    expect(told(comparison)).toContain('dough: hydration  → 78%');
    expect(bakery().compare(uri, two, tin).formulas[0]!.fate).toBe('removed');
  });

  it('tells the figures of a flour, and what they do to a formula nobody touched', () => {
    const sides = [
      bakery({ 'tin.dough': tin }),
      bakery({ 'tin.dough': tin, 'flours.dough': flours.replace('0.80', '0.95') }),
    ];
    const [before, after] = sides.map((service) => service.uris().map((one) => service.summary(one)!));
    const comparison = compareSummaries(before!, after!);
    expect(told(comparison)).toContain('flour strong white: price 0.80 EUR per kg → 0.95 EUR per kg');
    expect(
      comparison.formulas.map(({ formula, groups }) => [formula, groups.map(({ subject }) => subject)]),
    ).toEqual([['Harbour Tin', ['cost']]]);
    expect(comparison.formulas[0]!.follows).toBe(true);
  });

  it('names in its summary the allergens that came and went in formulas nobody touched', () => {
    const bread = (name: string) => `formula ${name}:\n  strong white 100%\n  water 60%\n`;
    const files = { 'a.dough': bread('Tin'), 'b.dough': bread('Loaf'), 'c.dough': tin };
    const sides = ['', '  contains wheat, soya\n'].map((more) =>
      bakery({ ...files, 'flours.dough': flours + more }),
    );
    const [before, after] = sides.map((service) => service.uris().map((one) => service.summary(one)!));
    const page = comparisonPage(compareSummaries(before!, after!), plainSpeaker);
    expect(page.following?.rows[0]).toEqual({ what: 'allergen + soya', formulas: 'all 3' });
    const back = comparisonPage(compareSummaries(after!, before!), plainSpeaker);
    expect(back.following?.rows[0]).toEqual({ what: 'allergen − soya', formulas: 'all 3' });
  });

  it('names no more than a dozen formulas in a row of its summary, and counts the others', () => {
    const rows = (count: number) => comparisonPage(comparisonOf(count), plainSpeaker).following?.rows;
    expect(rows(20)).toEqual([
      { what: 'cost', formulas: 'all 20' },
      { what: 'dough', formulas: expect.stringMatching(/^F0, F1, .*F11 and 7 more$/) },
    ]);
    // One more would take as much room as its name.
    expect(rows(14)?.[1]?.formulas).toMatch(/F11 and F12$/);
  });

  it('knows a flour that was only renamed, and takes none for another of which nothing tells it', () => {
    const compared = (old: string, now: string) => {
      const { definitions, verdict } = bakery().compare(`${root}flours.dough`, old, now);
      return [verdict, ...definitions.map(({ name, fate, renamedFrom }) => [name, fate, renamedFrom])];
    };
    const pier = flours.replace('strong white', 'pier white');
    expect(compared(flours, pier)).toEqual(['changed', ['pier white', 'kept', 'strong white']]);
    expect(compared(flours, pier.replace('12.9', '12.1'))).toEqual([
      'changed',
      ['pier white', 'added', undefined],
      ['strong white', 'removed', undefined],
    ]);
    const alike = (name: string) => flours.replace('strong white', name);
    expect(compared(alike('a') + alike('b'), alike('c') + alike('d'))).toHaveLength(5);
    expect(compared('ingredient one:\n', 'ingredient two:\n')).toHaveLength(3);
  });

  it('tells a flour of the same file that got another name once, and what else changed beside it', () => {
    const own =
      flours.replace('strong white', 'quay white') + tin.replaceAll('strong white ', 'quay white   ');
    const service = bakery();
    service.setText(uri, own);
    const now = own.replaceAll('quay white ', 'pier white ').replace('quay white:', 'pier white:');
    const { formulas, definitions } = service.compare(uri, own, now);
    expect([
      formulas,
      definitions.map(({ name, renamedFrom, namedIn }) => [name, renamedFrom, namedIn]),
    ]).toEqual([[], [['pier white', 'quay white', { formulas: 1, ingredientLists: 1 }]]]);
    const saltier = service.compare(
      uri,
      own,
      now.replace('salt               2%', 'salt               2.1%'),
    );
    expect(told(saltier).filter((line) => !line.startsWith('findings'))).toEqual(
      expect.arrayContaining(['ingredients: salt 2% → 2.1% (+0.1 points)']),
    );
    expect(told(saltier).join()).not.toMatch(/white/);
    expect(service.lines(uri).join('\n')).toBe(own);
  });

  it('reads the text before among the files of its time, where these are given', () => {
    const old = tin.replaceAll('strong white', 'quay white  ');
    const service = bakery({ 'flours.dough': flours.replace('strong white', 'pier white') });
    const now = tin.replaceAll('strong white', 'pier white  ');
    service.setText(uri, now);
    expect([service.lacksNames(uri, old), service.lacksNames(uri, now)]).toEqual([true, false]);
    const among = [[`${root}flours.dough`, flours.replace('strong white', 'quay white')]] as const;
    expect(told(service.compare(uri, old, undefined, among)).filter((line) => !/white/.test(line))).toEqual(
      [],
    );
    expect(told(service.compare(uri, old)).join('\n')).toMatch(/allergen|hydration/);
  });

  it('tells what is wrong with a formula that came, and nothing of one that went', () => {
    const faulty = 'formula Quay Rye:\n  medium rye 90%\n  water 78%\n';
    const found = (one: Comparison) => one.formulas[0]?.groups.find(({ subject }) => subject === 'findings');
    expect(found(bakery().compare(uri, '', faulty))?.changes).toContainEqual(
      expect.objectContaining({
        name: 'flour-not-hundred',
        after: expect.objectContaining({ level: 'error' }),
      }),
    );
    expect(found(bakery().compare(uri, faulty, ''))).toBeUndefined();
    expect(found(bakery().compare(uri, '', tin))).toBeUndefined();
  });

  it('does not say that all has a price where no cost is known any more', () => {
    const bread = 'formula Tin:\n  yield 10 kg\n  strong white 100%\n  water 60%\n  butter 3%\n';
    const lines = told(bakery().compare(uri, bread, bread.replace('strong white', 'no such flour')));
    expect(lines.filter((line) => line.startsWith('cost: without a price'))).toEqual([]);
    expect(lines).toContainEqual(expect.stringMatching(/^cost: .* → not known/));
  });

  it('follows a formula into another file', () => {
    const before = bakery({ 'a.dough': tin }).summary(`${root}a.dough`, 'a.dough')!;
    const after = bakery({ 'b.dough': tin }).summary(`${root}b.dough`, 'b.dough')!;
    expect(compareSummaries([before], [after])).toMatchObject({
      verdict: 'layout',
      formulas: [{ formula: 'Harbour Tin', movedFrom: 'a.dough', groups: [] }],
    });
  });

  it('leaves the files as they are', () => {
    const service = bakery({ 'tin.dough': tin });
    const before = service.totals(uri);
    service.compare(uri, 'formula Other:\n  flour 100%\n', 'flour strong white:\n  protein 9%\n');
    expect(service.totals(uri)).toEqual(before);
  });
});

describe('any two texts', () => {
  const examples = filesIn('examples', '.dough').map((file) => readFileSync(join(project, file), 'utf8'));
  const line = fc.constantFrom(
    ...examples.flatMap((text) => text.split('\n')),
    'salt',
    '  2%',
    'mix',
    'formula :',
    '"',
  );

  it('compare without throwing, as plain data, and never hide a line that says something else', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.nat(),
        fc.array(line, { maxLength: 4 }),
        fc.nat({ max: 4 }),
        (text, at, put, out) => {
          const lines = text.split('\n');
          lines.splice(at % lines.length, out, ...put);
          const service = bakery();
          const comparison = service.compare(uri, text, lines.join('\n'));
          expect(JSON.parse(JSON.stringify(comparison))).toEqual(comparison);
          const meaning = (all: string): string[] =>
            all
              .split('\n')
              .map((one) =>
                one
                  .replace(/(^|\s)#.*/, '')
                  .replace(/\s+/g, ' ')
                  .trim(),
              )
              .filter(Boolean);
          const same = meaning(text).join('\n') === meaning(lines.join('\n')).join('\n');
          if (!same && comparison.verdict === 'same') throw new Error(`hidden: ${put.join(' / ')}`);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('the reverse comparison swaps the sides', () => {
    for (const text of examples.slice(0, 6)) {
      const other = text.replace(/(\d)%/, '$17%');
      const one = bakery().compare(uri, text, other);
      const back = bakery().compare(uri, other, text);
      expect(told(back).length).toBe(told(one).length);
      expect(back.verdict).toBe(one.verdict);
    }
  });
});
