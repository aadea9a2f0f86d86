import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const formula = `formula Harbour Tin:
  yield 24 pieces of 880 g
  dough temperature 25 °C

  strong white       100%
  water              to 68% hydration
  salt               2%
  fresh yeast        0.9%
  butter             2%

process:
  bulk 1 h 30 min at 25 °C
  divide
  bake 34 min at 230 °C, steam
`;

/** A repository whose `main` has the formula, each branch one change of it; all are merged into `main`. */
function merged(changes: readonly ((text: string) => string)[]): { path: string; text: string } {
  const folder = folderWith({ 'tin.dough': formula });
  const git = (...args: string[]): string =>
    execFileSync('git', ['-c', 'user.name=Quay Lane', '-c', 'user.email=quay@lane.invalid', ...args], {
      cwd: folder.path,
      encoding: 'utf8',
      env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  git('init', '--quiet', '--initial-branch=main');
  git('add', '.');
  git('commit', '--quiet', '-m', 'Begin');
  changes.forEach((change, at) => {
    git('checkout', '--quiet', '-b', `baker-${at}`, 'main~0');
    folder.write('tin.dough', change(formula));
    git('commit', '--quiet', '-a', '-m', `Change ${at}`);
    git('checkout', '--quiet', 'main');
  });
  for (const at of changes.keys()) git('merge', '--quiet', '--no-edit', `baker-${at}`);
  return { path: folder.path, text: readFileSync(join(folder.path, 'tin.dough'), 'utf8') };
}

describe('two bakers change one formula, and git merges', () => {
  it.each([
    [
      'different lines',
      (text: string) => text.replace('to 68%', 'to 70%'),
      (text: string) => text.replace('0.9%', '1.1%'),
    ],
    [
      'a line that is longer than its neighbours, and the temperature',
      (text: string) => text.replace('  butter             2%', '  butter of the summer meadows  2%'),
      (text: string) => text.replace('25 °C\n\n', '26 °C\n\n'),
    ],
    [
      'a line more in the dough, and a step more in the process',
      (text: string) => text.replace('  butter ', '  sugar              3%\n  butter '),
      (text: string) => text.replace('  divide\n', '  divide\n  rest 20 min\n'),
    ],
  ])('%s', async (_, one, other) => {
    const { path, text } = merged([one, other]);
    expect(text).toBe(other(one(formula)));
    expect(await doughwright(path, 'format', '--check', '.')).toEqual({ code: 0, stdout: '', stderr: '' });
    expect((await doughwright(path, 'check', '--level', 'error', '.')).code).toBe(0);
  });

  it('each having written as they please: the formatter leaves to git only what they changed', async () => {
    const careless = (change: (text: string) => string) => (text: string) =>
      change(text)
        .replace(/ {2,}(?=\S+%)/g, ' ')
        .replace(/^ +/gm, '\t')
        .replace(/\n\n/g, '\n\n\n');
    const changes = [
      careless((text) => text.replace('to 68%', 'to 70%')),
      careless((text) => text.replace('0.9%', '1.1%')),
    ];
    // What a baker's editor, or a hook, does before a commit.
    const formatted = await Promise.all(
      changes.map(async (change) => {
        const { path } = folderWith({ 'tin.dough': change(formula) });
        expect((await doughwright(path, 'format', 'tin.dough')).code).toBe(0);
        return readFileSync(join(path, 'tin.dough'), 'utf8');
      }),
    );
    const { path, text } = merged(formatted.map((done) => () => done));
    expect(text).toBe(formula.replace('to 68%', 'to 70%').replace('0.9%', '1.1%'));
    expect((await doughwright(path, 'format', '--check', '.')).code).toBe(0);
  });
});
