import { chmodSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderAt, folderWith } from '../server/places.ts';
import { type Repository, repositoryIn, repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

vi.setConfig({ testTimeout: 60_000 });

const flour = (name: string): string => `flour ${name}:\n  grain wheat\n  protein 12%\n`;
const tin = (white: string, salt = '2%'): string =>
  `formula Harbour Tin:\n  ${white}  100%\n  water  68%\n  salt  ${salt}\n  fresh yeast  2%\n`;
const start = { 'flours.dough': flour('quay white'), 'formulas/tin.dough': tin('quay white') };
const salty = 'formulas/tin.dough:4:9: warning: ';
const staged = ['check', '--level', 'error', '--staged'];

/** Lets git call the check before each commit. */
function withHook({ path }: { readonly path: string }, level = 'warning'): void {
  const hook = join(path, '.git/hooks/pre-commit');
  mkdirSync(join(path, '.git/hooks'), { recursive: true });
  writeFileSync(
    hook,
    `#!/bin/sh\nexec '${nodeProgram}' '${commandLineProgram()}' check --level ${level} --staged\n`,
  );
  chmodSync(hook, 0o755);
}

describe('what is staged is checked, not what is on disk', () => {
  it('does not let through what only the disk has mended, and says so', async () => {
    const { path, write, git } = repositoryWith(start);
    write('formulas/tin.dough', tin('quay white', '20%'));
    git('add', '.');
    write('formulas/tin.dough', `# mended\n\n${tin('quay white')}`);
    const { code, stdout, stderr } = await doughwright(path, 'check', '--staged');
    expect(code).toBe(1);
    expect(stdout).toMatch(new RegExp(`^${salty}`));
    expect(stderr).toBe(
      'doughwright: formulas/tin.dough is other on disk than what is staged, and what is staged was checked; if it is right on disk, stage it: git add\n',
    );
    git('add', '.');
    expect(await doughwright(path, 'check', '--staged')).toEqual({ code: 0, stdout: '', stderr: '' });
  });

  it('does not refuse what only the disk has broken', async () => {
    const { path, write, git, remove } = repositoryWith(start);
    write('formulas/tin.dough', tin('quay white', '2.1%'));
    git('add', '.');
    write('formulas/tin.dough', 'formula Harbour Tin:\n  quay white\n  nonsense 3\n');
    write('flours.dough', flour('another white'));
    write('draft.dough', 'formula Half:\n  nonsense 3\n');
    expect(await doughwright(path, 'check', '--staged')).toEqual({ code: 0, stdout: '', stderr: '' });
    remove('formulas/tin.dough');
    expect(await doughwright(path, 'check', '--staged')).toEqual({ code: 0, stdout: '', stderr: '' });
  });

  it('does not see a flour that nobody added, nor one that is taken out of the index alone', async () => {
    const { path, write, git } = repositoryWith(start);
    write('formulas/tin.dough', tin('harbour white'));
    write('more.dough', flour('harbour white'));
    git('add', 'formulas');
    const untracked = await doughwright(path, 'check', '--staged');
    expect(untracked.stdout).toMatch(/^formulas\/tin\.dough:2:3: warning: .*harbour white/);
    expect(untracked.stderr).toContain('doughwright: more.dough is other on disk than what is staged');
    // Only announced, it is in no commit.
    git('add', '--intent-to-add', 'more.dough');
    expect((await doughwright(path, 'check', '--staged')).stdout).toBe(untracked.stdout);
    git('add', '.');
    expect((await doughwright(path, 'check', '--staged')).code).toBe(0);
    git('commit', '--quiet', '--message=Another flour');
    git('rm', '--quiet', '--cached', 'more.dough');
    const gone = await doughwright(path, ...staged);
    expect([gone.code, gone.stdout]).toEqual([
      1,
      expect.stringMatching(/^formulas\/tin\.dough:2:3: error: /),
    ]);
  });

  it('sees what is committed and not on disk, as in a sparse checkout', async () => {
    const { path, write, git } = repositoryWith({ ...start, 'rye/rye.dough': tin('quay white') });
    git('sparse-checkout', 'set', 'rye');
    git('sparse-checkout', 'reapply', '--sparse-index');
    write('rye/rye.dough', tin('quay white', '1.9%'));
    git('add', '.');
    expect(await doughwright(path, 'check', '--staged')).toEqual({ code: 0, stdout: '', stderr: '' });
    git('sparse-checkout', 'disable');
    write('flours.dough', flour('harbour white'));
    git('add', '.');
    git('sparse-checkout', 'set', 'rye');
    const { stdout } = await doughwright(path, ...staged);
    expect(stdout).toMatch(/^formulas\/tin\.dough:2:3: error: /m);
  });

  it('works before the first commit, from a folder below, and in files of other letters', async () => {
    const { path, write, git } = repositoryIn(folderWith(start));
    git('init', '--quiet');
    expect(await doughwright(path, 'check', '--staged')).toEqual({ code: 0, stdout: '', stderr: '' });
    write('formulas/tin.dough', tin('quay white', '20%'));
    git('add', '.');
    write('formulas/tin.dough', tin('quay white'));
    expect((await doughwright(path, 'check', '--staged')).stdout).toMatch(new RegExp(`^${salty}`));
    const below = await doughwright(join(path, 'formulas'), 'check', '--staged');
    expect([below.code, below.stdout]).toEqual([1, expect.stringMatching(/^tin\.dough:4:9: warning: /)]);
    git('add', '.');
    writeFileSync(join(path, 'bun.dough'), Buffer.from('formula K\xe4se:\n  flour 1 kg\n', 'latin1'));
    git('add', '.');
    writeFileSync(join(path, 'bun.dough'), 'formula Bun:\n  flour 1 kg\n');
    const other = await doughwright(path, 'check', '--staged');
    expect([other.code, other.stderr]).toEqual([
      2,
      expect.stringMatching(/^doughwright: bun\.dough: .*UTF-8/),
    ]);
  });

  it('refuses a merge that is not settled, by name', async () => {
    const { path, write, git, gitTold, commit } = repositoryWith(start);
    git('checkout', '--quiet', '-b', 'other');
    write('formulas/tin.dough', tin('quay white', '1.8%'));
    commit('Less salt');
    git('checkout', '--quiet', 'main');
    write('formulas/tin.dough', tin('quay white', '2.2%'));
    commit('More salt');
    expect(gitTold('merge', 'other').code).toBe(1);
    write('formulas/tin.dough', tin('quay white'));
    expect(await doughwright(path, 'check', '--staged')).toEqual({
      code: 2,
      stdout: '',
      stderr: 'doughwright: formulas/tin.dough: in conflict; decide on its marked lines, then “git add”.\n',
    });
    git('add', '.');
    expect((await doughwright(path, 'check', '--staged')).code).toBe(0);
  });

  it('says that nothing is staged in a repository without files', async () => {
    const { path } = folderWith();
    repositoryIn(folderAt(path)).git('init', '--quiet', '--bare');
    expect(await doughwright(path, 'check', '--staged')).toEqual({
      code: 2,
      stdout: '',
      stderr: 'doughwright: this repository has no files on disk, so that nothing is staged in it.\n',
    });
  });

  it('goes by the project file that is staged, and checks all that its levels hold for', async () => {
    const { path, write, git, commit } = repositoryWith({
      ...start,
      'formulas/tin.dough': tin('quay white', '20%'),
      'doughwright.json': '{ "rules": { "salt-range": "off" } }',
    });
    write('doughwright.json', '{}');
    write('formulas/tin.dough', tin('quay white', '21%'));
    git('add', 'formulas');
    expect((await doughwright(path, 'check', '--staged')).code).toBe(0);
    commit('Weigh the salt');
    git('rm', '--quiet', '--cached', 'doughwright.json');
    const { code, stdout } = await doughwright(path, 'check', '--staged');
    expect([code, stdout]).toEqual([1, expect.stringMatching(new RegExp(`^${salty}`))]);
    git('reset', '--quiet');
    write('doughwright.json', '{ "rules": { "salt-range": "loud" } }');
    git('add', '.');
    write('doughwright.json', '{}');
    const bad = await doughwright(path, 'check', '--staged');
    expect([bad.code, bad.stderr]).toEqual([2, expect.stringMatching(/^doughwright: doughwright\.json:1: /)]);
  });
});

describe('a hook', () => {
  const cases: readonly (readonly [name: string, words: readonly string[], passes: boolean])[] = [
    ['takes the index for a commit', ['commit', '-qm', 'x'], false],
    ['takes the disk for a commit of all', ['commit', '-qam', 'x'], true],
    [
      'takes one file of the disk for a commit of it',
      ['commit', '-qm', 'x', '--', 'formulas/tin.dough'],
      true,
    ],
    ['does not take what such a commit leaves', ['commit', '-qm', 'x', '--', 'flours.dough'], true],
  ];
  it.each(cases)('%s', (_, words, passes) => {
    const repository = repositoryWith(start);
    const { write, git, gitTold } = repository;
    withHook(repository);
    write('formulas/tin.dough', tin('quay white', '20%'));
    git('add', '.');
    write('formulas/tin.dough', tin('quay white', '2.1%'));
    write('flours.dough', `${flour('quay white')}  ash 0.55%\n`);
    const { code, out } = gitTold(...words);
    expect([code === 0, out.includes(salty)]).toEqual([passes, !passes]);
  });

  it('sees the flours of a submodule as they are staged, in another worktree too', () => {
    const library = repositoryWith({ 'mill.dough': flour('mill white') });
    const main = repositoryWith({ 'tin.dough': tin('mill white') });
    main.git('submodule', '--quiet', 'add', library.path, 'mill');
    main.commit('The flours of the mill');
    const beside = join(folderWith().path, 'beside');
    main.git('worktree', 'add', '--quiet', '-b', 'beside', beside);
    const other: Repository = repositoryIn(folderAt(beside));
    other.git('submodule', '--quiet', 'update', '--init');
    withHook(main, 'error');
    other.write('tin.dough', tin('mill white', '2.1%'));
    other.git('add', '.');
    expect(other.gitTold('commit', '-qm', 'More salt')).toEqual({ code: 0, out: '' });
    library.write('mill.dough', flour('mill strong'));
    library.commit('Another name');
    const inside = repositoryIn(folderAt(join(beside, 'mill')));
    inside.git('fetch', '--quiet');
    inside.git('checkout', '--quiet', 'origin/main');
    other.git('add', 'mill');
    const refused = other.gitTold('commit', '-qm', 'Newer flours');
    expect([refused.code, refused.out]).toEqual([
      1,
      expect.stringMatching(/tin\.dough:2:3: error: .*mill white/),
    ]);
    // What is not here is not known, and not gone.
    renameSync(join(beside, 'mill'), join(beside, 'elsewhere'));
    expect(other.gitTold('commit', '-qm', 'Newer flours').code).toBe(0);
  });
});
