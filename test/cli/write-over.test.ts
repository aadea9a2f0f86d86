import { readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const tin = 'formula Harbour Tin:\n  yield 10 kg\n  strong white  100%\n  water  65%\n  salt  2%\n';
const plan = 'plan Saturday:\n  ready 06:30\n  Harbour Tin  10 kg\n';
const table = 'strong white,1000\nwater,650\nsalt,20\n';
const files = { 'tin.dough': tin, 'plan.dough': plan, 'table.csv': table, 'notes.json': '{"kept": true}\n' };

describe('what a command writes never lies over a formula', () => {
  it.each([
    ['sheet', ['sheet', 'tin.dough', '--out', 'tin.dough']],
    [
      'sheet, whatever the letters of its ending',
      ['sheet', 'tin.dough', '--format', 'html', '--out', 'new.DOUGH'],
    ],
    ['sheet, by a link', ['sheet', 'tin.dough', '--out', 'link.html']],
    ['plan', ['plan', 'plan.dough', '--out', 'plan.dough']],
    ['export', ['export', '.', '--out', 'tin.dough']],
    ['check', ['check', '.', '--write-baseline', 'tin.dough']],
    ['check with --force', ['check', '.', '--write-baseline', 'tin.dough', '--force']],
  ])('%s', async (_, args) => {
    const { path } = folderWith(files);
    symlinkSync('tin.dough', join(path, 'link.html'));
    const { code, stdout, stderr } = await doughwright(path, ...args);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(
      /: this is a formula file, and what would be written is no formula; name another file\.\n$/,
    );
    expect(readFileSync(join(path, 'tin.dough'), 'utf8')).toBe(tin);
    expect(readFileSync(join(path, 'plan.dough'), 'utf8')).toBe(plan);
  });

  it('an import goes over a formula that is there only when told to', async () => {
    const { path } = folderWith(files);
    const there = await doughwright(path, 'import', 'table.csv', '--name', 'New', '--out', 'tin.dough');
    expect(there.code).toBe(2);
    expect(there.stderr).toMatch(/tin\.dough: this formula file is there already; .*--force/);
    expect(readFileSync(join(path, 'tin.dough'), 'utf8')).toBe(tin);
    expect(
      (await doughwright(path, 'import', 'table.csv', '--name', 'New', '--out', 'new.dough')).code,
    ).toBeLessThan(2);
    const forced = await doughwright(
      path,
      'import',
      'table.csv',
      '--name',
      'New',
      '--out',
      'tin.dough',
      '--force',
    );
    expect(forced.code).toBeLessThan(2);
    expect(readFileSync(join(path, 'tin.dough'), 'utf8')).toContain('formula New:');
  });

  it('a baseline goes over a baseline, and over nothing else unless told to', async () => {
    const { path } = folderWith(files);
    const { code, stderr } = await doughwright(path, 'check', '--write-baseline', 'notes.json');
    expect([code, stderr]).toEqual([
      2,
      'doughwright: notes.json: this is there already and no baseline; name another file, or add --force to write over it.\n',
    ]);
    expect(readFileSync(join(path, 'notes.json'), 'utf8')).toBe(files['notes.json']);
    for (const more of [['known.json'], ['known.json'], ['notes.json', '--force']])
      expect((await doughwright(path, 'check', '--write-baseline', ...more)).code).toBe(0);
  });
});
