import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Comparison, comparePortraits, createService, type Service } from '../../core/index.ts';
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
        by: '−0.2%',
      },
    ]);
    expect(told(comparison)).toContain('dough: salt 2% → 1.8% (−0.2%)');
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
        'dough: hydration 69% → 72% (+3%)',
        'ingredients: water 69% → 72% (+3%)',
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
    expect(lines).toContain('ingredients: fresh yeast 12.3% → 12.4% (+0.02%)');
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
    expect(lines).toEqual(['process: rest  → 20 min']);
    expect(told(edited('55 min at 28', '70 min at 26'))).toEqual([
      'process: proof 55 min at 28 °C → 70 min at 26 °C',
    ]);
  });

  it('tells a preferment: its share, its ripening, and the flour in it', () => {
    const lines = told(edited('draws 22%', 'draws 30%'));
    expect(lines).toEqual(
      expect.arrayContaining([
        'night poolish (preferment): draws 22% of flour → 30% of flour',
        'dough: prefermented flour 22% → 30% (+8%)',
      ]),
    );
    // A cooler poolish wants warmer water.
    expect(told(edited('12 h at 18', '14 h at 16'))).toEqual([
      'night poolish (preferment): ferment 12 h at 18 °C → 14 h at 16 °C',
      expect.stringMatching(/^temperatures: water .* \(\+/),
    ]);
    const gone = bakery().compare(
      uri,
      tin,
      tin.replace(/preferment[\s\S]*?\n\n/, '').replace(', night poolish', ''),
    );
    expect(told(gone)).toEqual(
      expect.arrayContaining([
        'night poolish (preferment): section preferment night poolish → ',
        'dough: prefermented flour 22% → 0% (−22%)',
      ]),
    );
  });

  it('tells new findings and those that are gone', () => {
    const salty = edited('salt               2%', 'salt               4%').formulas[0]!;
    const found = salty.groups.find(({ subject }) => subject === 'findings')!.changes;
    expect(found).toEqual([
      { name: 'salt-range', after: { text: expect.stringMatching(/^warning: /), line: 8 } },
      // That much salt slows the yeast.
      {
        name: 'fermentation-time',
        after: { text: expect.stringMatching(/^info: /), line: expect.any(Number) },
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

  it('tells a trial that was added', () => {
    const trial = '\ntrial 2026-03-14:\n  end 25.4 °C\n';
    expect(told(bakery().compare(uri, tin, tin + trial))).toContain(
      'trials: trial 2026-03-14  → end 25.4 °C',
    );
  });

  it('keeps what it does not know as not known', () => {
    const lines = told(edited('water              to 69% hydration', 'water'));
    expect(lines).toContain('dough: hydration 69% → not known');
    expect(lines.join()).not.toMatch(/NaN|undefined|Infinity/);
  });
});

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
    const [before, after] = sides.map((service) => service.uris().map((one) => service.portrait(one)!));
    const comparison = comparePortraits(before!, after!);
    expect(told(comparison)).toContain('flour strong white: price 0.80 EUR per kg → 0.95 EUR per kg');
    expect(
      comparison.formulas.map(({ formula, groups }) => [formula, groups.map(({ subject }) => subject)]),
    ).toEqual([['Harbour Tin', ['cost']]]);
  });

  it('follows a formula into another file', () => {
    const before = bakery({ 'a.dough': tin }).portrait(`${root}a.dough`, 'a.dough')!;
    const after = bakery({ 'b.dough': tin }).portrait(`${root}b.dough`, 'b.dough')!;
    expect(comparePortraits([before], [after])).toMatchObject({
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
