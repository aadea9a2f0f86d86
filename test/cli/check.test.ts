import { spawn } from 'node:child_process';
import { chmodSync, constants, symlinkSync } from 'node:fs';
import { access } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const sound = 'formula Harbour Tin:\n  strong white   100%\n  water          65%\n  salt           2%\n';
/** The unit of the salt is forgotten. */
const unsound = sound.replace('2%', '2');

/** The files that findings stand in, one a finding. */
const filesIn = (stdout: string): string[] =>
  stdout.split('\n').flatMap((line) => (/^\S.*?\.dough(?=:)/.exec(line) ?? []).slice(0, 1));

describe('doughwright check', () => {
  it('says nothing and ends with 0 where nothing is wrong', async () => {
    const { path } = folderWith({ 'a.dough': sound });
    expect(await doughwright(path, 'check', '--level', 'error', 'a.dough')).toEqual({
      code: 0,
      stdout: '',
      stderr: '',
    });
  });

  it('tells file, line, column, level and code, and ends with 1', async () => {
    const { path } = folderWith({ 'a.dough': unsound });
    const { code, stdout, stderr } = await doughwright(path, 'check', '--level', 'error', 'a.dough');
    expect(code).toBe(1);
    expect(stdout).toMatch(
      /^a\.dough:4:\d+: error: \S.* \[[a-z-]+\]\n {2}4 │ {3}salt {11}2\n {4}│ {18}\^\n1 error in 1 of 1 file\.\n$/,
    );
    expect(stderr).toBe('');
  });

  it('writes the same as JSON', async () => {
    const { path } = folderWith({ 'in/a.dough': unsound });
    const { code, stdout } = await doughwright(path, 'check', '--level', 'error', '--format', 'json', 'in');
    expect(code).toBe(1);
    expect(JSON.parse(stdout)).toEqual([
      {
        file: 'in/a.dough',
        line: 4,
        column: expect.any(Number),
        endColumn: expect.any(Number),
        level: 'error',
        code: expect.stringMatching(/^[a-z-]+$/),
        message: expect.stringMatching(/\S/),
      },
    ]);
  });

  it('writes an empty list as JSON where nothing is wrong', async () => {
    const { path } = folderWith({ 'a.dough': sound });
    const { code, stdout } = await doughwright(path, 'check', '--level', 'error', '--format', 'json');
    expect([code, JSON.parse(stdout)]).toEqual([0, []]);
  });

  it('walks folders in order, without hidden ones, node_modules and what git ignores', async () => {
    const { path } = folderWith({
      'b.dough': unsound,
      'a.dough': unsound,
      'deep/er/c.dough': unsound,
      'deep/old/d.dough': unsound,
      'deep/old/kept.dough': unsound,
      'deep/.gitignore': 'old/*\n!old/kept.dough\n',
      '.gitignore': 'scratch/\n*.tmp.dough\n',
      'scratch/e.dough': unsound,
      'f.tmp.dough': unsound,
      '.hidden/g.dough': unsound,
      'node_modules/h/h.dough': unsound,
      'readme.md': 'salt 2',
    });
    const { stdout } = await doughwright(path, 'check', '--level', 'error');
    expect(filesIn(stdout)).toEqual(['a.dough', 'b.dough', 'deep/er/c.dough', 'deep/old/kept.dough']);
  });

  it('heeds the rules of git above the folder it is given', async () => {
    const folder = folderWith({
      '.git/HEAD': '',
      '.gitignore': 'in/scratch\n',
      'in/a.dough': unsound,
      'in/scratch/b.dough': unsound,
    });
    const { stdout } = await doughwright(folder.path, 'check', '--level', 'error', 'in');
    expect(filesIn(stdout)).toEqual(['in/a.dough']);
  });

  it('finds names in the other files below the root, and tells only of those asked for', async () => {
    const formula = 'formula A:\n  quayside mill special   100%\n  water   60%\n  salt   2%\n';
    const flour = 'flour quayside mill special:\n  grain wheat\n';
    const { path } = folderWith({
      '.git/HEAD': '',
      'flours.dough': flour,
      'in/a.dough': formula,
      'b.dough': unsound,
    });
    const { stdout } = await doughwright(path, 'check', 'in/a.dough');
    expect(stdout).not.toContain('a.dough:2:');
    expect(stdout).not.toContain('b.dough');
    const alone = folderWith({ 'a.dough': formula });
    expect((await doughwright(alone.path, 'check', 'a.dough')).stdout).toContain('a.dough:2:');
  });

  it('gives a rule another level, or none, as the setting of the editor does', async () => {
    const { path } = folderWith({ 'a.dough': 'formula A:\n  bread flour  100%\n  water  65%\n  salt  9%\n' });
    expect((await doughwright(path, 'check')).stdout).toMatch(/^a\.dough:4:\d+: warning: .*\[salt-range\]$/m);
    const worse = await doughwright(path, 'check', '--level', 'error', '--rule', 'salt-range=error');
    expect([worse.code, worse.stdout]).toEqual([1, expect.stringMatching(/^a\.dough:4:\d+: error: /)]);
    const off = await doughwright(path, 'check', '--rule', 'salt-range=off', '--rule', 'no-salt=off');
    expect(off).toEqual({ code: 0, stdout: '', stderr: '' });
  });

  it('shows a file whose name begins with two points by that name', async () => {
    const { path } = folderWith({ '..a.dough': 'formula A\n' });
    expect((await doughwright(path, 'check')).stdout).toMatch(/^\.\.a\.dough:1:/);
  });

  it('counts columns behind the mark of UTF-8 as an editor does', async () => {
    const { path } = folderWith({ 'a.dough': '\ufeffformula A\n  bread flour 1 kg\n' });
    expect((await doughwright(path, 'check')).stdout).toMatch(/^a\.dough:1:9: error: .*\[missing-colon\]/);
  });

  it('tells at most as many findings as asked for, and how many more there are', async () => {
    const { path } = folderWith({ 'a.dough': unsound, 'b.dough': unsound, 'c.dough': unsound });
    const { code, stdout } = await doughwright(path, 'check', '--level', 'error', '--max-findings', '1');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^a\.dough[\s\S]*\nand 2 more\n3 errors in 3 of 3 files\.\n$/);
  });

  it('tells a file once that is asked for twice', async () => {
    const { path } = folderWith({ 'a.dough': unsound });
    const { stdout } = await doughwright(path, 'check', '--level', 'error', 'a.dough', '.', './a.dough');
    expect(stdout.match(/a\.dough/g)).toHaveLength(1);
  });

  it('writes no colours into a pipe', async () => {
    const { path } = folderWith({ 'a.dough': unsound });
    expect((await doughwright(path, 'check')).stdout).not.toContain('\u001b');
  });

  it('ends quietly when nobody reads its output', async () => {
    const { path } = folderWith({ 'a.dough': 'salt 2\n'.repeat(20_000) });
    const child = spawn(nodeProgram, [commandLineProgram(), 'check', '--level', 'info'], {
      cwd: path,
      stdio: 'pipe',
    });
    let stderr = '';
    child.stderr.on('data', (data) => {
      stderr += data;
    });
    child.stdout.once('data', () => child.stdout.destroy());
    await new Promise((resolve) => child.once('close', resolve));
    expect(stderr).toBe('');
  });
});

describe('many files', () => {
  it('are shared among threads, told in order, with the names of all', async () => {
    const files: Record<string, string> = { '.git/HEAD': '' };
    for (let index = 0; index < 420; index++) {
      const name = String(index).padStart(3, '0');
      files[`${name}.dough`] = `formula Loaf ${index}:\n  mill ${419 - index}  100%\n  water 60%\n  salt 2\n`;
      files[`mills/${name}.dough`] = `flour mill ${index}:\n  grain wheat\n`;
    }
    const { path } = folderWith(files);
    const { code, stdout, stderr } = await doughwright(path, 'check', '--format', 'json');
    expect([code, stderr]).toEqual([1, '']);
    const told = JSON.parse(stdout) as { file: string; code: string }[];
    const units = told.filter((one) => one.code === 'missing-unit').map(({ file }) => file);
    expect(units).toEqual(Object.keys(files).filter((file) => /^\d+\.dough$/.test(file)));
    expect(told.filter((one) => one.code === 'unknown-ingredient')).toEqual([]);
  });
});

describe('what cannot be checked', () => {
  it.each([
    ['a missing file', 'nope.dough', /^doughwright: nope\.dough: there is no such file/],
    ['a folder without formulas', 'empty', /^doughwright: empty: no \.dough file/],
    ['a binary file', 'binary.dough', /^doughwright: binary\.dough: line 1: .*not plain text/],
    ['a file above 4 MiB', 'large.dough', /^doughwright: large\.dough: .*4 MiB; divide/],
  ])('%s is told in one line, and the rest is done', async (_, name, message) => {
    const { path } = folderWith({
      'a.dough': unsound,
      'empty/readme.md': '',
      'binary.dough': new Uint8Array([0x66, 0, 0x01]),
      'large.dough': '#'.repeat(4 * 1024 * 1024 + 1),
    });
    const { code, stdout, stderr } = await doughwright(path, 'check', '--level', 'error', name, 'a.dough');
    expect(code).toBe(2);
    expect(stderr).toMatch(message);
    expect(stderr.split('\n')).toHaveLength(2);
    expect(stdout).toMatch(/^a\.dough:4:/);
  });

  it('a link that leads nowhere is told in one line', async () => {
    const { path } = folderWith({ 'a.dough': sound });
    symlinkSync('ring.dough', `${path}/ring.dough`);
    const { code, stderr } = await doughwright(path, 'check', '--level', 'error', '.');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^doughwright: ring\.dough: this cannot be read; .*\n$/);
  });

  it('a file is told that the user may not read, and only then', async () => {
    const { path } = folderWith({ 'a.dough': sound });
    chmodSync(`${path}/a.dough`, 0);
    // The superuser may read it all the same.
    const mayRead = await access(`${path}/a.dough`, constants.R_OK).then(
      () => true,
      () => false,
    );
    const { code, stderr } = await doughwright(path, 'check', '--level', 'error', 'a.dough');
    expect(code).toBe(mayRead ? 0 : 2);
    expect(stderr).toMatch(mayRead ? /^$/ : /^doughwright: a\.dough: you may not read this; /);
  });

  it.each([
    ['an unknown format', ['check', '--format', 'ruled'], /text, json/],
    ['an unknown level', ['check', '--level', 'loud'], /error, warning, info/],
    ['no number', ['check', '--max-findings', 'many'], /whole number/],
    ['an unknown command', ['bake'], /bake/],
    ['an unknown option', ['check', '--loud'], /--loud/],
    ['no path', ['totals'], /paths/],
    ['serving without a channel', ['serve'], /--stdio/],
  ])('%s ends with 2 and says what there is', async (_, args, message) => {
    const { path } = folderWith({ 'a.dough': sound });
    const { code, stdout, stderr } = await doughwright(path, ...args);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^doughwright: /);
    expect(stderr).toMatch(message);
  });
});

describe('help', () => {
  it.each(
    [['--help'], ['check', '--help'], ['totals', '--help'], ['rules', '--help'], ['serve', '--help']].map(
      (args) => ({ args }),
    ),
  )('$args tells of itself and ends with 0', async ({ args }) => {
    const { code, stdout, stderr } = await doughwright('.', ...args);
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Usage: doughwright/);
  });

  it('--version is the version of the package', async () => {
    const { version } = await import('../../package.json');
    expect(await doughwright('.', '--version')).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
  });

  it('the rules are listed with level and title', async () => {
    const { code, stdout } = await doughwright('.', 'rules');
    expect(code).toBe(0);
    for (const line of stdout.trimEnd().split('\n')) {
      expect(line).toMatch(/^[a-z]+(-[a-z]+)* +(error|warning|info|hint) +\S/);
    }
  });
});
