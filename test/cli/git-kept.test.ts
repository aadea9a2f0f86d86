import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

// Git starts a program for every file: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 180_000 });

const flour = 'flour quay white:\n  grain wheat\n  protein 12%\n';
const tin = (name: string, salt = '2%'): string =>
  `formula ${name}:\n  quay white  100%\n  water  68%\n  salt  ${salt}\n  fresh yeast  2%\n`;
const names = ['A', 'B', 'C', 'D', 'E', 'F'];

describe('what git shows of several files', () => {
  it('is worked out at once, is the same as alone, and follows every file on disk', async () => {
    const repository = repositoryWith({
      'flours.dough': flour,
      ...Object.fromEntries(names.map((name) => [`${name}.dough`, tin(name)])),
    });
    const { path, write, remove, git } = repository;
    const outside = folderWith();
    const calls = join(outside.path, 'calls');
    const counted = join(outside.path, 'counted.sh');
    writeFileSync(counted, `echo "$1" >> '${calls}'\nexec '${nodeProgram}' '${commandLineProgram()}' "$@"\n`);
    await doughwright(path, 'git-setup', '--yes', '--program', `sh '${counted}'`);
    const starts = (): number => {
      const count = readFileSync(calls, 'utf8').trim().split('\n').length;
      rmSync(calls);
      return count;
    };
    const forget = (): void => {
      for (const kept of ['changes', 'shown'])
        rmSync(join(path, '.git/doughwright', kept), { recursive: true, force: true });
    };
    for (const name of names) write(`${name}.dough`, tin(name, name === 'B' ? '1.8%' : '2.1%'));
    git('add', 'B.dough');
    write('B.dough', tin('B', '1.9%'));
    write('C.dough', tin('C', '2.2%').replaceAll('\n', '\r\n'));
    remove('D.dough');
    for (const words of [
      ['diff', '--', '*.dough'],
      ['diff', '--no-ext-diff', '--', '*.dough'],
      ['diff', 'HEAD', '--', '*.dough'],
      ['diff', '--cached', '--', '*.dough'],
    ]) {
      forget();
      const shown = git(...words);
      const files = git(...words.slice(0, -2), '--name-only')
        .trim()
        .split('\n');
      const changed = files.filter((one) => one.endsWith('.dough'));
      expect([words, starts() <= 3]).toEqual([words, true]);
      expect([words, git(...words)]).toEqual([words, shown]);
      const alone = changed.map((file) => {
        forget();
        return git(...words.slice(0, -1), file);
      });
      expect([words, alone.join('')]).toEqual([words, shown]);
      starts();
    }
    forget();
    git('diff', '--', '*.dough');
    const [state = ''] = readdirSync(join(path, '.git/doughwright/changes'));
    expect(readdirSync(join(path, '.git/doughwright/changes', state))).toHaveLength(names.length);
    // A flour that no commit knows is looked up all the same.
    write('E.dough', tin('E').replace('quay white', 'pier white'));
    write('new.dough', flour.replace('quay', 'pier').replace('12%', '11%'));
    const shown = git('diff', '--no-ext-diff', '--', 'E.dough');
    expect(shown).not.toContain('not known');
    write('new.dough', flour.replace('quay', 'harbour'));
    expect(git('diff', '--no-ext-diff', '--', 'E.dough')).toMatch(
      /^\+formula E: {2}#= .*not known.*pier white/m,
    );
  });
});
