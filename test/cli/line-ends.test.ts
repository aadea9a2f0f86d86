import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFolder } from '../editors/places.ts';
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
