import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram, projectFolder } from '../editors/places.ts';
import { type Repository, repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

/** The demo bakery as it is, and as an editor on Windows saves it: with a mark at the beginning and CRLF at every line. */
const folder = mkdtempSync(join(tmpdir(), 'doughwright-line-ends-'));
const [plain, windows] = [join(folder, 'plain'), join(folder, 'windows')];
let names: string[] = [];

beforeAll(() => {
  for (const to of [plain, windows])
    cpSync(join(projectFolder, 'examples'), join(to, 'quay'), { recursive: true });
  names = readdirSync(windows, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.dough'));
  for (const name of names) {
    const text = readFileSync(join(windows, name), 'utf8');
    writeFileSync(join(windows, name), `\uFEFF${text.replace(/\r?\n/g, '\r\n')}`);
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('files as Windows writes them', () => {
  it.each([
    ['check', '--format', 'json', '--level', 'info'],
    ['totals', '--json', 'quay'],
    ['sheet', 'quay/formulas/ferry-loaf.dough', '--format', 'json'],
    ['export', 'quay', '--format', 'json'],
    ['format', '--check', 'quay'],
  ])('%s says the same of them', async (...words) => {
    const [one, other] = [await doughwright(plain, ...words), await doughwright(windows, ...words)];
    expect(names.length).toBeGreaterThan(8);
    expect(other).toEqual(one);
    expect([one.code === 2, one.stderr]).toEqual([false, '']);
  });

  it('are no change to those with plain line ends', async () => {
    expect(await doughwright(folder, 'compare', 'plain', 'windows')).toMatchObject({ code: 0, stderr: '' });
  });
});

// Git for Windows checks out with core.autocrlf: CRLF on disk, LF in the repository.
describe('a checkout with the line ends of Windows', () => {
  const tin = 'formula Quay Tin:\n  strong white  100%\n  water  66%\n  butter  3%\n  salt  2%\n';
  const checkout = async (): Promise<Repository> => {
    const home = repositoryWith({ 'tin.dough': tin });
    home.write('tin.dough', tin.replace('2%', '1.9%'));
    home.commit('Less salt', 'Baker Two');
    home.git('config', 'core.autocrlf', 'true');
    home.remove('tin.dough');
    home.git('checkout', '--quiet', '--', 'tin.dough');
    expect(readFileSync(join(home.path, 'tin.dough'), 'utf8')).toContain('1.9%\r\n');
    const program = `'${nodeProgram}' '${commandLineProgram()}'`;
    await doughwright(home.path, 'git-setup', '--yes', '--program', program);
    return home;
  };

  it('differs from its commit in nothing, and blame tells who wrote each line', async () => {
    const home = await checkout();
    expect(await doughwright(home.path, 'compare', '--since', 'HEAD')).toMatchObject({ code: 0, stderr: '' });
    const { stdout } = await doughwright(home.path, 'history', 'Quay Tin');
    expect([stdout.match(/salt 2% → 1\.9%/g)?.length, stdout.includes('not committed yet')]).toEqual([
      1,
      false,
    ]);
    const authors = (...more: string[]): string[] =>
      [...home.git('blame', '--line-porcelain', ...more, 'tin.dough').matchAll(/^author (.*)/gm)].map(
        ([, name]) => name!,
      );
    // Of a header whoever changed its figures last.
    expect(authors()).toEqual(['Baker Two', 'A Baker', 'A Baker', 'A Baker', 'Baker Two']);
    expect(authors().slice(1)).toEqual(authors('--no-textconv').slice(1));
  });

  it('merges two edits, and keeps its line ends', async () => {
    const home = await checkout();
    const edit = (from: string, to: string): void => {
      const text = readFileSync(join(home.path, 'tin.dough'), 'utf8');
      home.write('tin.dough', text.replace(from, to));
      home.git('commit', '--quiet', '--all', `--message=${to}`);
    };
    home.git('checkout', '--quiet', '-b', 'wetter');
    edit('66%', '68%');
    home.git('checkout', '--quiet', 'main');
    edit('butter  3%', 'butter  4%');
    home.git('merge', '--quiet', '--no-edit', 'wetter');
    const merged = tin.replace('66%', '68%').replace('butter  3%', 'butter  4%').replace('2%', '1.9%');
    expect(home.git('show', '--no-textconv', 'HEAD:tin.dough')).toBe(merged);
    expect(readFileSync(join(home.path, 'tin.dough'), 'utf8')).toBe(merged.replaceAll('\n', '\r\n'));
  });
});
