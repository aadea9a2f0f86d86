import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { partsOf, tablesIn } from '../sheet/parts.ts';
import { doughwright } from './run.ts';

const tin = `formula Quay Tin:
  yield 10 pieces of 1 kg
  bread flour  100%
  water  66%
  salt  2%
`;
const files = {
  'bakery.dough': 'bakery Quay Lane:\n  room 21 °C\n  scale step 1 g\n',
  'two.dough': `${tin}\nformula Quay Rye:\n  yield 4 kg\n  rye flour  100%\n  water  80%\n  salt  2%\n`,
  'held.dough': 'formula Quay Bun:\n  yield 2 kg\n  bread flour  100%\n  water  60\n  salt  2%\n',
};

describe('doughwright sheet', () => {
  it('writes all formulas of a file for a terminal, or the one that is named', async () => {
    const { path } = folderWith(files);
    const both = await doughwright(path, 'sheet', 'two.dough');
    expect([both.code, both.stderr]).toEqual([0, '']);
    expect(both.stdout).toMatch(/^Quay Tin\n[\s\S]*\n\nQuay Rye\n/);
    const one = await doughwright(path, 'sheet', 'two.dough', '--formula', 'quay  rye');
    expect(one.stdout).toMatch(/^Quay Rye\n/);
    expect(one.stdout).not.toContain('Quay Tin');
  });

  it('takes a size as a baker writes it', async () => {
    const { path } = folderWith(files);
    // By hand: 168 % in all, so 20 kg of dough take 20 000 g / 1.68 of flour.
    const flour = 20_000 / 1.68;
    for (const size of [
      ['--dough', '20kg'],
      ['--pieces', '20'],
      ['--flour', `${flour} g`],
      ['--on-hand', `water=${flour * 0.66} g`],
    ]) {
      const { stdout, code, stderr } = await doughwright(
        path,
        'sheet',
        'two.dough',
        '--formula',
        'Quay Tin',
        '--format',
        'json',
        ...size,
      );
      expect([code, stderr]).toEqual([0, '']);
      const [sheet] = JSON.parse(stdout);
      expect(sheet).toMatchObject({ file: 'two.dough', formula: 'Quay Tin', line: 1, tried: true });
      const [first] = tablesIn(sheet.sections, 'bowl')[0]!.rows;
      expect(first!.cells.weigh!.grams, size[0]!).toBeCloseTo(flour, 3);
      expect(first!.line).toBe(3);
    }
  });

  it('takes the day and the clock', async () => {
    const { path } = folderWith({
      ...files,
      'two.dough': `${tin}\nprocess:\n  bulk 2 h\n  bake 40 min at 230 °C\n`,
    });
    const day = [
      '--room',
      '27C',
      '--flour-temp',
      '68 °F',
      '--tap',
      '9 °C',
      '--scale-step',
      '10g',
      '--ready',
      '06:00',
    ];
    const { stdout } = await doughwright(path, 'sheet', 'two.dough', '--format', 'json', ...day);
    const [sheet] = JSON.parse(stdout);
    const { conditions, moments } = partsOf(sheet);
    expect(Object.fromEntries(conditions.map(({ key, figure }) => [key, figure]))).toMatchObject({
      room: 27,
      flour: 20,
      'tap water': 9,
      'scale step': 10,
    });
    const bulk = moments.find(({ text }) => text === 'bulk 2 h');
    expect(bulk!.clock!.time).toBe('03:20');
  });

  it('writes each format into a file, whole or not at all, by the ending of its name', async () => {
    const { path } = folderWith(files);
    const begins = { html: /^<!doctype html>/, md: /^# Quay Tin\n/, csv: /^formula,part,/, json: /^\[/ };
    for (const [ending, begin] of Object.entries(begins)) {
      const { code, stdout } = await doughwright(path, 'sheet', 'two.dough', '--out', `sheet.${ending}`);
      expect([code, stdout]).toEqual([0, '']);
      expect(readFileSync(join(path, `sheet.${ending}`), 'utf8')).toMatch(begin);
    }
    const html = readFileSync(join(path, 'sheet.html'), 'utf8');
    expect(html.match(/<article/g)).toHaveLength(2);
    expect(html.match(/<!doctype/g)).toHaveLength(1);
    const none = await doughwright(path, 'sheet', 'two.dough', '--out', 'no/such/sheet.html');
    expect(none.code).toBe(2);
    expect(none.stderr).toBe(
      'doughwright: no/such/sheet.html: this cannot be written: there is no such folder; make it, or name another file.\n',
    );
    expect(readdirSync(path).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it('says which commit it stands on, and whether formulas have changed since', async () => {
    const { path, write } = folderWith(files);
    const git = (...words: string[]) =>
      execFileSync('git', ['-c', 'user.name=Quay Lane', '-c', 'user.email=bakery@quay.test', ...words], {
        cwd: path,
        encoding: 'utf8',
      }).trim();
    const revision = async () => {
      const { stdout } = await doughwright(
        path,
        'sheet',
        'two.dough',
        '--formula',
        'Quay Tin',
        '--format',
        'html',
      );
      return /<p class="from"[^>]*>([^<]*)</.exec(stdout)![1];
    };
    expect(await revision()).toMatch(/^two\.dough · \d{4}-\d{2}-\d{2}$/);
    git('init', '--quiet');
    git('add', '.');
    git('commit', '--quiet', '--message', 'Bake');
    const commit = git('rev-parse', '--short=8', 'HEAD');
    write('note.txt', 'no formula');
    expect(await revision()).toMatch(new RegExp(`^two\\.dough · revision ${commit} · \\d`));
    write('bakery.dough', 'bakery Quay Lane:\n  room 22 °C\n');
    expect(await revision()).toMatch(
      new RegExp(`^two\\.dough · revision ${commit}, with changes since · \\d`),
    );
  });

  it('ends with 1 where a formula does not resolve, or cannot be made as asked, and says why', async () => {
    const { path } = folderWith(files);
    const held = await doughwright(path, 'sheet', 'held.dough');
    expect(held.code).toBe(1);
    expect(held.stdout).toMatch(/^Quay Bun\n/);
    expect(held.stderr).toMatch(/^doughwright: held\.dough:4: Quay Bun: .*Write a unit.*\n$/);
    const unsized = await doughwright(path, 'sheet', 'two.dough', '--formula', 'Quay Rye', '--pieces', '9');
    expect(unsized.code).toBe(1);
    expect(unsized.stderr).toMatch(
      /^doughwright: two\.dough:7: Quay Rye: It cannot be sized in pieces: .*\n$/,
    );
  });

  it.each([
    [['--dough', '20'], '--dough 20: write a unit behind the number, for example 20 kg or 20 g.'],
    [['--flour', '1,000g'], '--flour 1,000g: that can be read in more ways than one: write 1000g or 1g.'],
    [
      ['--on-hand', 'flour'],
      '--on-hand flour: write the ingredient and its weight, for example "bread flour=12 kg".',
    ],
    [['--ready', '6'], '--ready 6: write a time of day from 00:00 to 23:59, for example 05:00.'],
    [
      ['--formula', 'Nowhere'],
      'two.dough: no formula “Nowhere” in here; there is “Quay Tin” and “Quay Rye”.',
    ],
  ])('%j: one line with the cure, and 2', async (words, message) => {
    const { path } = folderWith(files);
    const { code, stdout, stderr } = await doughwright(path, 'sheet', 'two.dough', ...words);
    expect([code, stdout, stderr]).toEqual([2, '', `doughwright: ${message}\n`]);
  });

  it('takes one size, not two', async () => {
    const { path } = folderWith(files);
    const { code, stdout, stderr } = await doughwright(
      path,
      'sheet',
      'two.dough',
      '--pieces',
      '4',
      '--dough',
      '3kg',
    );
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^doughwright: [^\n]*--pieces[^\n]*--dough[^\n]*\n$/);
  });

  it('says where there is nothing to write', async () => {
    const { path } = folderWith(files);
    const none = await doughwright(path, 'sheet', 'bakery.dough');
    expect([none.code, none.stdout, none.stderr]).toEqual([
      2,
      '',
      'doughwright: bakery.dough: no formula in here; a formula begins with a line “formula NAME:”.\n',
    ]);
    const missing = await doughwright(path, 'sheet', 'nowhere.dough');
    expect([missing.code, missing.stdout]).toEqual([2, '']);
    expect(missing.stderr).toBe(
      'doughwright: nowhere.dough: there is no such file or folder; look at the spelling.\n',
    );
  });

  it('counts a part of a part back to when it must begin, as the clock does', async () => {
    const { path } = folderWith({
      'a.dough':
        'formula Quay Rye:\n  yield 10 kg\n  rye 1150 100%\n  water 70%\n  salt 2%\n  full sour 60%\n' +
        'preferment basic sour:\n  rye 1150 100%\n  water 60%\n  ripe culture 10%\n  ferment 8 h at 24 °C\n' +
        'preferment full sour:\n  rye 1150 100%\n  water 100%\n  basic sour 50%\n  ferment 3 h at 30 °C\n' +
        'process:\n  bulk 15 min\n',
    });
    const { stdout } = await doughwright(path, 'sheet', 'a.dough');
    expect(stdout).toMatch(/^ +basic sour, 11 h before: ferment 8 h at 24 °C$/m);
    expect(stdout).toMatch(/^ +full sour, 3 h before, at 30 °C$/m);
    expect(stdout).toMatch(/11 h before +basic sour/);
  });

  it('leads from the bowl to what is sold, with what is folded in and put on', async () => {
    const { path } = folderWith({
      'a.dough':
        'formula Quay Crescent:\n  yield 20 pieces of 98 g\n  loss 2%\n  bake loss 10%\n' +
        '  bread flour 100%\n  water 50%\n  sheet of butter 50%\n' +
        'part sheet of butter:\n  butter 100%\ntopping wash:\n  egg 2 g a piece\n' +
        'mix by hand:\n  load flour, water\n  knead 6 min\nprocess:\n  enclose sheet of butter\n',
    });
    const { stdout } = await doughwright(path, 'sheet', 'a.dough');
    // 1960 g divided are 2 kg less 2 %; they bake to 1764 g, and 40 g of egg go on them: 90.2 g a piece.
    expect(stdout).toMatch(/Into the bowl +1\.5 kg/);
    expect(stdout).toMatch(/Folded in +500 g/);
    expect(stdout).toMatch(/Stays in bowl and on bench +2% +40 g/);
    expect(stdout).toMatch(/Dough divided +1\.96 kg/);
    expect(stdout).toMatch(/Baked +1\.76 kg +88 g each/);
    expect(stdout).toMatch(/With fillings and toppings +1\.8 kg +90 g each/);
    expect(stdout).toMatch(/^ +Mixing, 6 min by hand$/m);
  });

  it('keeps a whole batch within half a step of the scale, however often something is added', async () => {
    const { path } = folderWith({
      'bakery.dough': 'bakery Quay Lane:\n  scale step 10 g\n',
      'a.dough':
        'formula Quay Bun:\n  yield 10 pieces of 900 g\n  bread flour 100%\n  water 61%\n  butter 13%\n  sugar 9%\n  salt 2%\n' +
        'mix by hand:\n  load flour, water\n  knead 3 min\n  add sugar\n  knead 3 min\n  add butter 7%\n  knead 1 min\n' +
        '  add remaining butter\n  knead 1 min\n  add salt\n  knead 1 min\n',
    });
    for (let pieces = 7; pieces <= 19; pieces++) {
      const { stdout } = await doughwright(
        path,
        'sheet',
        'a.dough',
        '--pieces',
        `${pieces}`,
        '--format',
        'json',
      );
      const sheet = JSON.parse(stdout)[0] ?? JSON.parse(stdout);
      const rows = tablesIn(sheet.sections, 'bowl', 'later').flatMap((section) => section.rows);
      const { text, unit } = rows.at(-1)!.cells.reads!;
      const grams = Number(text) * (unit === 'kg' ? 1000 : 1);
      expect(Math.abs(grams - pieces * 900)).toBeLessThanOrEqual(5 + 1e-9);
    }
  });

  it('makes what the ripe preferment or all the flour on hand is enough for', async () => {
    const { path } = folderWith({
      'a.dough':
        'formula Quay Tin:\n  yield 10 kg\n  bread flour 80%\n  medium rye 20%\n  water 70%\n  salt 2%\n' +
        'preferment pool:\n  draws 20% of bread flour\n  bread flour 100%\n  water 100%\n',
    });
    // A fifth of 80 parts is 16, with as much water 32 parts of 172; 3.2 kg of it make 17.2 kg of dough.
    expect((await doughwright(path, 'sheet', 'a.dough', '--on-hand', 'pool=3.2kg')).stdout).toMatch(
      /Makes +17\.2 kg/,
    );
    expect((await doughwright(path, 'sheet', 'a.dough', '--on-hand', 'flour=5kg')).stdout).toMatch(
      /Makes +8\.6 kg/,
    );
  });
});
