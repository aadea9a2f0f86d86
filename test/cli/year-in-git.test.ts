import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { commandLineProgram } from '../editors/places.ts';
import { folderAt } from '../server/places.ts';
import { gitEnvironment, type Repository, repositoryIn } from './repository.ts';
import { doughwright } from './run.ts';

/**
 * A year of the bakery in git, two bakers at it: every test goes on from what the one before left. Real git, the real
 * command line, and git calling it.
 */
const flours = `flour quay white:
  grain wheat
  protein 12.4%
  price 0.80 EUR per kg
`;
const bakery = `bakery Quay Lane:
  room 21 °C
  flour 19 °C
  tap water 12 °C
  currency EUR
`;
const tin = `formula Harbour Tin:
  yield 24 pieces of 880 g
  dough temperature 25 °C

  quay white         100%
  water              to 69% hydration
  salt               2%
  fresh yeast        0.9%
  butter             4%
  egg                5%

mix in spiral:
  load flour, water, egg
  speed 1 for 4 min
  add salt, fresh yeast, butter
  speed 2 for 3 min

process:
  bulk 1 h 30 min at 25 °C
  divide
  bake 34 min at 230 °C, steam
`;
const rye =
  'formula Quay Rye:\n  yield 12 kg\n  medium rye         100%\n  water              78%\n  salt               2%\n';

// Git starts a program for every state of a file: on a busy machine a history takes its time.
vi.setConfig({ testTimeout: 180_000 });

const [one, two] = ['Baker One', 'Baker Two'];
const top = realpathSync(mkdtempSync(join(tmpdir(), 'doughwright-year-')));
afterAll(() => rmSync(top, { recursive: true, force: true }));

let home: Repository;
const read = (name: string): string => readFileSync(join(home.path, name), 'utf8');
const edit = (name: string, from: string, to: string): void => {
  expect(read(name)).toContain(from);
  home.write(
    name,
    read(name).replace(from, () => to),
  );
};
/** Each baker's change on a branch of their own from here, then merged into main; answers what git said of the merge. */
const together = (mine: () => void, yours: () => void): { code: number; out: string } => {
  home.git('checkout', '--quiet', '-B', 'hers');
  yours();
  home.commit('Hers', two);
  home.git('checkout', '--quiet', 'main');
  mine();
  home.commit('His', one);
  return home.gitTold('merge', '--no-edit', 'hers');
};

beforeAll(async () => {
  home = repositoryIn(folderAt(join(top, 'bakery')));
  for (const [name, text] of Object.entries({
    'bakery.dough': bakery,
    'flours.dough': flours,
    'formulas/tin.dough': tin,
    'formulas/rye.dough': rye,
  }))
    home.write(name, text);
  home.git('init', '--quiet', '--initial-branch=main');
  expect((await doughwright(home.path, 'git-setup', '--yes')).code).toBe(0);
  home.commit('Start', one);
  home.git('tag', 'v1');
});

describe('January: neighbours are no conflict', () => {
  it.each<[string, string, string, string, string]>([
    ['water beside salt', 'to 69%', 'to 70%', 'salt               2%', 'salt               1.9%'],
    [
      'egg beside butter',
      'egg                5%',
      'egg                6%',
      'butter             4%',
      'butter             3%',
    ],
  ])('%s', (_, from, to, from2, to2) => {
    const merge = together(
      () => edit('formulas/tin.dough', from, to),
      () => edit('formulas/tin.dough', from2, to2),
    );
    expect([merge.code, merge.out]).toEqual([0, expect.not.stringContaining('CONFLICT')]);
    expect(read('formulas/tin.dough')).toContain(to);
    expect(read('formulas/tin.dough')).toContain(to2);
    expect(home.git('status', '--short')).toBe('');
  });

  it('two trials at the end', async () => {
    const trial = (day: number) => `\ntrial 2026-01-0${day}:\n  end 25.${day} °C\n`;
    const before = read('formulas/tin.dough');
    const merge = together(
      () => home.write('formulas/tin.dough', before + trial(3)),
      () => home.write('formulas/tin.dough', before + trial(4)),
    );
    expect(merge.code).toBe(0);
    expect(read('formulas/tin.dough')).toBe(before + trial(3) + trial(4));
    expect((await doughwright(home.path, 'check', '--level', 'error', '.')).code).toBe(0);
  });
});

describe('February: two opinions on salt are a conflict', () => {
  it('of that one line; what is shown meanwhile says so and adds nothing up; then they agree', async () => {
    const merge = together(
      () => edit('formulas/tin.dough', 'salt               1.9%', 'salt               1.8%'),
      () => edit('formulas/tin.dough', 'salt               1.9%', 'salt               2.2%'),
    );
    expect([merge.code, merge.out]).toEqual([1, expect.stringContaining('CONFLICT')]);
    const marked = read('formulas/tin.dough');
    expect(marked).toMatch(
      /<<<<<<< \S.*\n {2}salt +1\.8%\n=======\n {2}salt +2\.2%\n>>>>>>> \S.*\n {2}fresh yeast/,
    );
    const shown = await doughwright(home.path, 'textconv', 'formulas/tin.dough');
    expect(shown.stdout).toMatch(
      /^formula Harbour Tin: {2}#= a merge is not finished here: nothing is added up\n/,
    );
    expect(shown.stdout).not.toMatch(/salt 4%/);
    const compared = await doughwright(home.path, 'compare', '--since', 'v1', 'formulas/tin.dough');
    expect(compared.stdout).toMatch(/merge +finished → not finished: decide on its marked lines/);
    expect(compared.stdout).not.toMatch(/4%|hydration/);
    expect((await doughwright(home.path, 'check', '.')).code).toBe(1);
    for (const command of ['totals', 'sheet', 'export']) {
      const told = await doughwright(home.path, command, 'formulas/tin.dough');
      expect([told.code, told.stdout]).toEqual([1, expect.not.stringMatching(/ salt|salt,|hydration \d/i)]);
    }
    home.write(
      'formulas/tin.dough',
      marked.replace(/<<<<<<<[\s\S]*?>>>>>>> .*\n/, '  salt               2%\n'),
    );
    home.commit('Agree on salt', one);
  });
});

describe('March: a rebase and a revert', () => {
  it('puts a branch behind what came meanwhile, and takes a change back beside a later one', () => {
    home.git('checkout', '--quiet', '-b', 'yeast');
    edit('formulas/tin.dough', 'fresh yeast        0.9%', 'fresh yeast        0.8%');
    home.commit('Less yeast', two);
    home.git('checkout', '--quiet', 'main');
    edit('formulas/tin.dough', 'butter             3%', 'butter             3.5%');
    home.commit('More butter', one);
    home.git('checkout', '--quiet', 'yeast');
    expect(home.gitTold('rebase', 'main').code).toBe(0);
    home.git('checkout', '--quiet', 'main');
    home.git('merge', '--quiet', '--ff-only', 'yeast');
    expect(home.gitTold('revert', '--no-edit', 'HEAD~1').code).toBe(0);
    expect(read('formulas/tin.dough')).toMatch(/fresh yeast +0\.8%\n {2}butter +3%\n/);
  });
});

describe('April: what is shown of the history', () => {
  it('keeps the number of lines, so that blame is that of the lines; only headers tell their figures', () => {
    const blame = (...more: string[]) =>
      home
        .git('blame', '-s', ...more, 'formulas/tin.dough')
        .trimEnd()
        .split('\n');
    const [shown, plain] = [blame(), blame('--no-textconv')];
    expect(shown).toHaveLength(plain.length);
    const others = plain.flatMap((line, at) => (/\) formula /.test(line) ? [] : [[line, shown[at]]]));
    expect(others.length).toBeGreaterThan(20);
    for (const [line, same] of others) expect(same).toBe(line);
    expect(shown[0]).toMatch(/formula Harbour Tin: {2}#= hydration [\d.]+%, salt 2%/);
  });

  it('is kept once it was shown, and the same without the program; a flour that changed is looked up again', () => {
    const log = () => home.git('log', '-p', '--format=%s', '--', '*.dough');
    const [first, second] = [log(), log()];
    expect(second).toBe(first);
    const kept = join(home.path, '.git/doughwright/shown');
    expect(readdirSync(join(kept, readdirSync(kept)[0]!)).length).toBeGreaterThan(8);
    const script = join(home.path, '.git/doughwright/git.sh');
    const own = readFileSync(script, 'utf8');
    writeFileSync(script, own.replace(/^ {2}'.*"\$@"$/m, '  false'));
    expect(log()).toBe(first);
    writeFileSync(script, own);
    edit('flours.dough', 'flour quay white', 'flour old white');
    expect(log()).toContain('not known, counted as neither flour nor water: quay white');
    home.git('checkout', '--quiet', 'flours.dough');
    expect(log()).toBe(first);
  });

  it('is shown by a git that finds neither Node nor us on its path, and by one where we are gone', () => {
    const called = (path: string, ...args: string[]): string =>
      execFileSync('git', ['--no-pager', ...args], {
        cwd: home.path,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
        env: { ...gitEnvironment(top), PATH: path },
      });
    edit('formulas/tin.dough', 'salt               2%', 'salt               2.1%');
    // The folders of git and of the shell’s own programs alone.
    const bare = ['/usr/bin', '/bin'].join(':');
    expect(called(bare, 'diff')).toMatch(/^formulas\/tin\.dough\nHarbour Tin/);
    const script = join(home.path, '.git/doughwright/git.sh');
    const own = readFileSync(script, 'utf8');
    for (const broken of [own.replaceAll(commandLineProgram(), '/no/such/program'), undefined]) {
      if (broken === undefined) rmSync(script);
      else writeFileSync(script, broken);
      expect(called(bare, 'diff')).toMatch(/^\+ {2}salt +2\.1%$/m);
      expect(called(bare, 'diff', '--no-ext-diff')).toMatch(/^\+ {2}salt +2\.1%$/m);
      expect(called(bare, 'log', '-p', '-1', '--all')).toContain('\n@@');
    }
    writeFileSync(script, own);
    home.git('checkout', '--quiet', '.');
  });

  it('merges line by line where we are gone', () => {
    const script = join(home.path, '.git/doughwright/git.sh');
    const own = readFileSync(script, 'utf8');
    for (const broken of [own.replaceAll(commandLineProgram(), '/no/such/program'), undefined]) {
      if (broken === undefined) rmSync(script);
      else writeFileSync(script, broken);
      const merge = together(
        () => edit('formulas/tin.dough', 'salt               2%', 'salt               1.8%'),
        () => edit('formulas/tin.dough', 'salt               2%', 'salt               2.2%'),
      );
      expect(merge.code).toBe(1);
      expect(read('formulas/tin.dough')).toMatch(
        /<<<<<<< .*\n {2}salt +1\.8%\n=======\n {2}salt +2\.2%\n>>>>>>> /,
      );
      home.git('reset', '--quiet', '--hard', 'HEAD~1');
      writeFileSync(script, own);
    }
  });
});

describe('May: a file moves', () => {
  it('and is told as moved, also where its new place alone is asked for', async () => {
    home.git('mv', 'formulas/rye.dough', 'rye.dough');
    edit('rye.dough', 'salt               2%', 'salt               1.9%');
    home.commit('Move the rye', two);
    const { code, stdout } = await doughwright(home.path, 'compare', '--since', 'v1', 'rye.dough');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Quay Rye {2}rye\.dough:1 {2}moved from formulas\/rye\.dough\n/);
    expect(stdout).toMatch(/salt +2% → 1\.9% +−0\.1 points/);
    expect(stdout).not.toContain('Harbour Tin');
    const old = await doughwright(home.path, 'compare', '--between', 'v1', 'HEAD', 'formulas/rye.dough');
    expect(old.stdout).toMatch(/moved from formulas\/rye\.dough/);
  });
});

describe('June: the hook', () => {
  it('does not let a renamed flour pass whose formulas are not in the commit', async () => {
    edit('flours.dough', 'flour quay white', 'flour harbour white');
    home.git('add', 'flours.dough');
    const { code, stdout } = await doughwright(home.path, 'check', '--level', 'error', '--staged');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^formulas\/tin\.dough:5:3: error: .*quay white/m);
    expect((await doughwright(home.path, 'check', '--level', 'error', 'flours.dough')).code).toBe(0);
    home.git('rm', '--quiet', '--force', 'flours.dough');
    expect((await doughwright(home.path, 'check', '--level', 'error', '--staged')).code).toBe(1);
    home.git('reset', '--quiet', '--hard');
    // The formula has the new name, but that is not in the commit.
    edit('flours.dough', 'flour quay white', 'flour harbour white');
    edit('formulas/tin.dough', '  quay white   ', '  harbour white');
    home.git('add', 'flours.dough');
    const half = await doughwright(home.path, 'check', '--level', 'error', '--staged');
    expect([half.code, half.stdout]).toEqual([1, stdout]);
    expect(half.stderr).toBe(
      'doughwright: formulas/tin.dough is other on disk than what is staged, and what is staged was checked; if it is right on disk, stage it: git add\n',
    );
    home.git('add', '.');
    expect(await doughwright(home.path, 'check', '--level', 'error', '--staged')).toMatchObject({
      code: 0,
      stderr: '',
    });
    home.git('reset', '--quiet', '--hard');
    home.write('notes.dough', 'formula Half:\n  salt\n  nonsense 3\n');
    // What is not staged, and does not use what is, does not hold a commit up.
    edit('flours.dough', '0.80', '0.85');
    home.git('add', 'flours.dough');
    expect((await doughwright(home.path, 'check', '--level', 'error', '--staged')).code).toBe(0);
    home.git('reset', '--quiet', '--hard');
    home.remove('notes.dough');
    expect((await doughwright(home.path, 'check', '--staged')).code).toBe(0);
  });
});

describe('July: another worktree', () => {
  it('shows and merges as the first one does', async () => {
    const path = join(top, 'beside');
    home.git('worktree', 'add', '--quiet', '-b', 'beside', path);
    const there = repositoryIn(folderAt(path));
    there.write('rye.dough', rye.replace('78%', '80%'));
    expect(there.git('diff')).toMatch(/^rye\.dough\nQuay Rye/);
    there.commit('Wetter', two);
    edit('rye.dough', 'salt               1.9%', 'salt               1.85%');
    home.commit('Salt', one);
    const merge = there.gitTold('merge', '--no-edit', 'main');
    expect([merge.code, merge.out]).toEqual([1, expect.stringContaining('CONFLICT')]);
    there.git('merge', '--abort');
    there.write(
      'rye.dough',
      rye.replace('78%', '80%').replace('salt               2%', 'salt               1.9%'),
    );
    there.commit('Salt as it was', two);
    expect(there.gitTold('merge', '--no-edit', 'main').code).toBe(0);
    expect(readFileSync(join(path, 'rye.dough'), 'utf8')).toMatch(/water +80%\n {2}salt +1\.85%\n/);
    home.git('worktree', 'remove', '--force', path);
  });
});

describe('August: flours in a submodule', () => {
  it('count in every revision with what they were then; where they are missing that is told', async () => {
    const mill = repositoryIn(folderAt(join(top, 'mill')));
    mill.write('mill.dough', 'flour mill rye:\n  grain rye\n  price 0.90 EUR per kg\n');
    mill.git('init', '--quiet', '--initial-branch=main');
    mill.commit('Mill', two);
    home.git('submodule', '--quiet', 'add', mill.path, 'mill');
    edit('rye.dough', 'medium rye         100%', 'mill rye           100%');
    home.commit('Rye of the mill', one);
    home.git('tag', 'v2');
    mill.write('mill.dough', 'flour mill rye:\n  grain rye\n  price 1.10 EUR per kg\n');
    mill.commit('Dearer', two);
    const within = repositoryIn(folderAt(join(home.path, 'mill')));
    within.git('pull', '--quiet');
    home.commit('Newer flours', one);
    const { code, stdout, stderr } = await doughwright(home.path, 'compare', '--between', 'v2', 'HEAD');
    expect([code, stderr]).toEqual([1, '']);
    expect(stdout).toMatch(/^flour mill rye {2}mill\/mill\.dough:1\n {2}price +0\.90 EUR per kg → 1\.10/);
    expect(stdout).toMatch(/^Quay Rye {2}rye\.dough:1\n {2}cost\n/m);
    expect((await doughwright(home.path, 'compare', '--since', 'HEAD')).code).toBe(0);
    const clone = join(top, 'clone');
    home.git('clone', '--quiet', home.path, clone);
    const missing = await doughwright(clone, 'compare', '--between', 'v2', 'HEAD');
    expect(missing.code).toBe(2);
    expect(missing.stderr).toMatch(
      /^doughwright: mill of v2: this submodule is not here at [0-9a-f]{8}; run “git submodule update/,
    );
  });
});

describe('September: without files on disk, and without all of the history', () => {
  it('a bare repository compares its revisions, and shows its history', async () => {
    const path = join(top, 'bare.git');
    home.git('clone', '--quiet', '--bare', home.path, path);
    const { code, stdout } = await doughwright(path, 'compare', '--between', 'v1', 'main', 'formulas');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Harbour Tin {2}formulas\/tin\.dough:1\n/m);
    const since = await doughwright(path, 'compare', '--since', 'v1');
    expect([since.code, since.stderr]).toEqual([
      2,
      'doughwright: this repository has no files on disk; compare two revisions with --between OLD NEW.\n',
    ]);
    expect((await doughwright(path, 'git-setup', '--yes')).code).toBe(0);
    expect(repositoryIn(folderAt(path)).git('log', '-p', '--format=%s', 'v1')).toContain('#= hydration');
    expect((await doughwright(path, 'git-setup', '--undo', '--yes')).code).toBe(0);
  });

  it('a shallow clone says which revision it has not got', async () => {
    const path = join(top, 'shallow');
    home.git('clone', '--quiet', '--depth', '1', `file://${home.path}`, path);
    const { code, stderr } = await doughwright(path, 'compare', '--since', 'v1');
    expect([code, stderr]).toEqual([2, 'doughwright: there is no such revision: v1\n']);
    expect((await doughwright(path, 'compare', '--since', 'HEAD', 'formulas')).code).toBe(0);
  });
});

describe('October: the year as one history', () => {
  const told = async (folder: string, ...args: string[]) => {
    const { code, stdout, stderr } = await doughwright(folder, 'history', ...args, '--format', 'json');
    expect([code, stderr]).toEqual([0, '']);
    return (
      JSON.parse(stdout) as {
        revisions: {
          words: string;
          changed: string[];
          movedFrom?: string;
          author: string;
          figures: object;
        }[];
        trials: { title: string }[];
      }
    ).revisions;
  };

  it('follows the rye through its move, a merge, and the flours of the submodule as they were then', async () => {
    const revisions = await told(home.path, 'Quay Rye');
    const of = (words: string) => revisions.find((one) => one.words === words);
    expect(revisions[0]?.words).toBe('Start');
    expect(of('Move the rye')).toMatchObject({
      movedFrom: 'formulas/rye.dough',
      changed: ['salt'],
      author: two,
    });
    expect(of('Newer flours')?.changed).toEqual(['cost']);
    // Each price is that of its own revision.
    expect(of('Rye of the mill')?.figures).not.toEqual(of('Newer flours')?.figures);
    // The flour of June that was never committed, and worktrees that are gone, are in no history.
    expect(revisions.map(({ words }) => words)).not.toContain('Wetter');
  });

  it('tells every change of the tin once, whoever merged it, and what was put back too', async () => {
    const revisions = await told(home.path, 'Harbour Tin');
    const salts = revisions.filter(({ changed }) => changed.includes('salt'));
    // His and hers on two branches, and what they agreed on, which is as on neither side.
    expect(salts.map(({ words }) => words)).toEqual(expect.arrayContaining(['His', 'Hers', 'Agree on salt']));
    expect(revisions.filter(({ words }) => words === 'More butter')).toHaveLength(1);
    expect(revisions.find(({ words }) => words.startsWith('Revert "More butter"'))?.changed).toContain(
      'ingredient: butter',
    );
    // A merge has a row only for what comes of both sides together, such as the cost; never for what one of them wrote.
    const merges = revisions.filter(({ words }) => words.startsWith('Merge branch'));
    for (const { changed } of merges)
      expect(changed.filter((figure) => !['cost', 'water-temperature'].includes(figure))).toEqual([]);
  });

  it('reads any revision as it was: sheet and totals of v1 know nothing of what came later', async () => {
    const { stdout } = await doughwright(home.path, 'totals', '--json', '--at', 'v1', 'formulas/rye.dough');
    expect(JSON.parse(stdout)).toMatchObject([{ formula: 'Quay Rye', hydration: 0.78, saltFraction: 0.02 }]);
    const sheet = await doughwright(home.path, 'sheet', '--at', 'v1', 'formulas/rye.dough');
    expect(sheet.stdout).toContain(home.git('rev-parse', '--short=8', 'v1').trim());
    expect((await doughwright(home.path, 'totals', '--at', 'v1', 'rye.dough')).stderr).toBe(
      'doughwright: rye.dough: v1 has no formula file of this name, or below it.\n',
    );
  });
});

describe('November: a cherry-pick and what a branch changed', () => {
  it('picks a change beside others by section and line, and checks what is other than at a tag', async () => {
    home.git('checkout', '--quiet', '-b', 'sweet');
    edit('formulas/tin.dough', 'egg                6%', 'egg                7%');
    home.commit('More egg', two);
    home.git('checkout', '--quiet', 'main');
    edit('formulas/tin.dough', 'butter             3%', 'butter             2.5%');
    home.commit('Less butter', one);
    expect(home.gitTold('cherry-pick', 'sweet').code).toBe(0);
    expect(read('formulas/tin.dough')).toMatch(/butter +2\.5%\n {2}egg +7%\n/);
    edit('rye.dough', 'salt               1.85%', 'salt               5%');
    const since = await doughwright(home.path, 'check', '--since', 'HEAD');
    expect(since.stdout).toMatch(/^rye\.dough:\d+:.*\[salt-range\]/m);
    expect(since.stdout).not.toContain('tin.dough');
    home.git('checkout', '--quiet', 'rye.dough');
  });
});
