import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { folderAt } from '../server/places.ts';
import { type Repository, repositoryIn } from './repository.ts';
import { doughwright } from './run.ts';

vi.setConfig({ hookTimeout: 60_000 });

const bakery = 'bakery Quay Lane:\n  room 21 °C\n  flour 19 °C\n  tap water 12 °C\n  currency EUR\n';
const flours = 'flour quay white:\n  grain wheat\n  protein 12.4%\n  price 0.80 EUR per kg\n';
const tin = `formula Harbour Tin:
  yield 24 pieces of 880 g
  dough temperature 25 °C

  quay white         100%
  water              to 69% hydration
  salt               2%
  fresh yeast        0.9%
  butter             4%

mix in spiral:
  load flour, water
  speed 1 for 4 min
  add salt, fresh yeast, butter
  speed 2 for 3 min
`;
const rye =
  'formula Quay Rye:\n  medium rye         100%\n  water              78%\n  salt               2%\n';

const top = realpathSync(mkdtempSync(join(tmpdir(), 'doughwright-history-')));
afterAll(() => rmSync(top, { recursive: true, force: true }));
let home: Repository;

interface Told {
  readonly formula: string;
  readonly file: string;
  readonly revisions: readonly {
    readonly commit: string;
    readonly words: string;
    readonly fate: string;
    readonly file: string;
    readonly formula: string;
    readonly renamedFrom?: string;
    readonly movedFrom?: string;
    readonly changed: readonly string[];
    readonly figures?: Readonly<Record<string, unknown>>;
  }[];
  readonly trials: readonly Readonly<Record<string, unknown>>[];
}
const told = async (folder: string, ...args: string[]): Promise<Told> => {
  const { code, stdout, stderr } = await doughwright(folder, 'history', ...args, '--format', 'json');
  expect([code, stderr]).toEqual([0, '']);
  return JSON.parse(stdout) as Told;
};
const rows = ({ revisions }: Told) => revisions.map(({ words, changed }) => [words, changed.join(', ')]);

/** Two bakers at it: a branch and its merge, a dearer flour, a trial, another name in another file, and back again. */
beforeAll(() => {
  home = repositoryIn(folderAt(join(top, 'bakery')));
  const { write, commit, git } = home;
  git('init', '--quiet', '--initial-branch=main');
  const texts = { 'bakery.dough': bakery, 'flours.dough': flours, 'tin.dough': tin, 'rye.dough': rye };
  for (const [name, text] of Object.entries(texts)) write(name, text);
  commit('Start');
  let now = tin;
  const change = (from: string, to: string, words: string, baker?: string): void => {
    expect(now).toContain(from);
    now = now.replace(from, () => to);
    write('tin.dough', now);
    commit(words, baker);
  };
  change('to 69%', 'to 70%', 'Softer crumb');
  write('readme.txt', 'Nothing of dough');
  commit('A note');
  write('rye.dough', rye.replace('78%', '80%'));
  commit('Another formula');
  change('  salt               2%', '  salt 2 %', 'Only the layout');
  const before = now;
  git('checkout', '--quiet', '-b', 'hers');
  change('  salt 2 %', '  salt 1.9 %', 'Less salt, as customers asked', 'Baker Two');
  git('checkout', '--quiet', 'main');
  now = before;
  change('butter             4%', 'butter             5%', 'More butter');
  git('merge', '--quiet', '--no-edit', 'hers');
  now = now.replace('  salt 2 %', '  salt 1.9 %');
  write('flours.dough', flours.replace('0.80', '0.95'));
  commit('Dearer flour');
  now += '\ntrial 2026-03-14, morning:\n  water 20 °C\n  end 26.2 °C\n';
  write('tin.dough', now);
  commit('A trial');
  git('tag', 'v1');
  git('mv', 'tin.dough', 'moved.dough');
  commit('Only moved');
  write('moved.dough', now.replace('Harbour Tin', 'Harbour Loaf'));
  commit('Another name');
  git('revert', '--no-edit', 'HEAD');
  now = now.replace('speed 2 for 3 min', 'speed 2 for 5 min');
  write('moved.dough', now);
  commit('Mix longer', 'Baker Two');
});

describe('doughwright history', () => {
  it('has a row for each revision where a figure changed, through a merge, a move and another name and back', async () => {
    const history = await told(home.path, 'harbour tin');
    expect(rows(history)).toEqual([
      ['Start', ''],
      ['Softer crumb', 'hydration'],
      ['Less salt, as customers asked', 'salt'],
      ['More butter', expect.stringMatching(/ingredient: butter$/)],
      ['Dearer flour', 'cost'],
      ['Only moved', ''],
      ['Another name', ''],
      [expect.stringMatching(/^Revert/), ''],
      ['Mix longer', expect.stringContaining('mix-minutes')],
    ]);
    expect(history.revisions[5]).toMatchObject({ movedFrom: 'tin.dough', file: 'moved.dough' });
    expect(history.revisions[6]).toMatchObject({ renamedFrom: 'Harbour Tin', formula: 'Harbour Loaf' });
    expect(history.revisions[7]).toMatchObject({ renamedFrom: 'Harbour Loaf', formula: 'Harbour Tin' });
  });

  it('works out each revision as totals at that revision do, with all of its files', async () => {
    const { revisions } = await told(home.path, 'Harbour Tin');
    for (const { commit, file, figures } of revisions) {
      const { stdout } = await doughwright(home.path, 'totals', '--json', '--at', commit, file);
      const [totals] = JSON.parse(stdout) as [
        {
          readonly hydration: number;
          readonly saltFraction: number;
          readonly water: { readonly celsius: number };
          readonly mixing: { readonly endCelsius: number };
          readonly cost: { readonly atLeast: number };
          readonly doughGrams: number;
          readonly label: { readonly allergens: { readonly words: readonly string[] } };
        },
      ];
      expect(figures).toMatchObject({
        hydration: totals.hydration,
        saltFraction: totals.saltFraction,
        waterCelsius: totals.water.celsius,
        endCelsius: totals.mixing.endCelsius,
        costPerKilogram: expect.closeTo((totals.cost.atLeast / totals.doughGrams) * 1000, 9),
        allergens: [...totals.label.allergens.words].sort(),
      });
    }
  });

  it('sets a trial beside what was computed when it was written down', async () => {
    const { trials } = await told(home.path, 'Harbour Tin');
    const [trial] = trials;
    expect(trials).toHaveLength(1);
    expect(trial).toMatchObject({
      ...{ title: '2026-03-14, morning', date: '2026-03-14', measuredCelsius: 26.2 },
      commit: home.git('rev-parse', 'v1').trim(),
    });
    // Mixed longer since then, the dough would come out warmer: what was computed then stays.
    const { stdout } = await doughwright(home.path, 'sheet', '--at', 'v1', '--format', 'json', 'tin.dough');
    expect(JSON.stringify(JSON.parse(stdout))).toContain('26.2');
    const later = await told(home.path, 'Harbour Tin', '--at', 'v1');
    expect(later.trials[0]!.predictedCelsius).toBe(trial!.predictedCelsius);
  });

  it('follows one figure, or one ingredient, and says which there are', async () => {
    expect(rows(await told(home.path, 'Harbour Tin', '--figure', 'salt')).flat()).toEqual([
      ...['Start', '', 'Less salt, as customers asked', 'salt', 'Only moved', '', 'Another name', ''],
      ...[expect.stringMatching(/^Revert/), ''],
    ]);
    const butter = await doughwright(home.path, 'history', 'Harbour Tin', '--figure', 'butter');
    expect(butter.stdout).toMatch(/More butter +butter 4% → 5%\n/);
    const none = await doughwright(home.path, 'history', 'Harbour Tin', '--figure', 'softness');
    expect([none.code, none.stdout]).toEqual([2, '']);
    expect(none.stderr).toMatch(/^doughwright: no figure “softness”; there is hydration, salt, .*\n$/);
  });

  it('ends at a revision that is named; a bare repository, a worktree and a shallow clone have one too', async () => {
    expect((await told(home.path, 'Harbour Tin', '--at', 'v1')).revisions).toHaveLength(5);
    const bare = join(top, 'bare.git');
    home.git('clone', '--quiet', '--bare', home.path, bare);
    expect(rows(await told(bare, 'Harbour Tin'))).toEqual(rows(await told(home.path, 'Harbour Tin')));
    const setup = await doughwright(bare, 'git-setup', '--yes');
    expect(setup.stdout).toMatch(/^ {2}info\/attributes +add .*\n {2}doughwright\/git\.sh .*\n {2}config /m);
    const beside = join(top, 'beside');
    home.git('worktree', 'add', '--quiet', beside, 'v1');
    expect((await told(beside, 'Harbour Tin', 'tin.dough')).revisions).toHaveLength(5);
    const shallow = join(top, 'shallow');
    home.git('clone', '--quiet', '--depth', '3', `file://${home.path}`, shallow);
    const { code, stdout, stderr } = await doughwright(shallow, 'history', 'Harbour Tin', '--format', 'csv');
    expect(code).toBe(0);
    expect(stderr).toMatch(/^doughwright: this clone is shallow: its history begins at [0-9a-f]{8};/);
    expect(stdout.split('\r\n')[1]).toMatch(/^revision,.*,new,/);
  });

  it('writes a page with charts, and a table', async () => {
    const page = join(top, 'history.html');
    expect((await doughwright(home.path, 'history', 'Harbour Tin', '--out', page)).code).toBe(0);
    const { stdout } = await doughwright(home.path, 'history', 'Harbour Tin', '--language', 'de');
    expect(stdout).toMatch(/Hydration 69\u00a0% → 70\u00a0%|Hydration 69 % → 70 %/);
    const csv = await doughwright(home.path, 'history', 'Harbour Tin', '--format', 'csv', '--language', 'de');
    expect(csv.stdout.split('\r\n')[2]).toContain(',0.7,');
  });

  it.each([
    ['no such formula', ['Harbour Tun'], /^doughwright: no formula “Harbour Tun” in the history of HEAD/],
    ['no such revision', ['Harbour Tin', '--at', 'nope'], /^doughwright: there is no such revision: nope\n$/],
    [
      'an option as a revision',
      ['Harbour Tin', '--at=--output=x'],
      /^doughwright: there is no such revision/,
    ],
    ['a path outside', ['Harbour Tin', '..'], /outside of the repository|not a git repository/],
  ])('%s ends with 2 and one line', async (_, args, words) => {
    const { code, stdout, stderr } = await doughwright(home.path, 'history', ...args);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(words);
    expect(stderr.split('\n')).toHaveLength(2);
  });

  it('a repository before its first commit has none, and is told so', async () => {
    const fresh = repositoryIn(folderAt(join(top, 'fresh')));
    fresh.git('init', '--quiet');
    fresh.write('tin.dough', tin);
    for (const command of [
      ['history', 'Harbour Tin'],
      ['totals', '--at', 'HEAD', 'tin.dough'],
      ['compare', '--since', 'HEAD'],
    ]) {
      const { code, stderr } = await doughwright(fresh.path, ...command);
      expect([command[0], code, stderr]).toEqual([
        command[0],
        2,
        expect.stringContaining('this repository has no commit yet'),
      ]);
    }
  });

  it('ends with the text as it stands, where that is other than in the last commit', async () => {
    const here = repositoryIn(folderAt(join(top, 'now')));
    const bread = tin.replace('quay white ', 'bread flour');
    here.write('tin.dough', bread);
    here.git('init', '--quiet', '--initial-branch=main');
    here.commit('Start');
    const last = async (...args: string[]) => (await told(here.path, ...args)).revisions.at(-1)!;
    expect(await last('Harbour Tin')).toMatchObject({ words: 'Start', fate: 'new' });
    // Another name, another file and less salt, none of it in git.
    here.write('tin.dough', '');
    const now = bread
      .replace('Harbour Tin', 'Harbour Loaf')
      .replace('salt               2%', 'salt               1.8%');
    here.write('loaf.dough', `${now}\ntrial 2026-03-14, morning:\n  water 20 °C\n  end 26.2 °C\n`);
    const row = { commit: '', uncommitted: true, author: '', words: '', fate: 'kept', changed: ['salt'] };
    const moved = {
      formula: 'Harbour Loaf',
      renamedFrom: 'Harbour Tin',
      movedFrom: 'tin.dough',
      file: 'loaf.dough',
    };
    const history = await told(here.path, 'harbour loaf');
    expect(history.revisions).toHaveLength(2);
    expect(history.revisions[1]).toMatchObject({ ...row, ...moved });
    expect(history.revisions[1]).toMatchObject({ date: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) });
    expect(history.trials).toMatchObject([{ measuredCelsius: 26.2, commit: '' }]);
    const { stdout } = await doughwright(here.path, 'history', 'Harbour Loaf');
    expect(stdout).toMatch(
      /\d {2,}not committed yet +renamed from Harbour Tin\n.*moved from tin\.dough\n.*salt 2% → 1\.8%/,
    );
    expect(stdout).toContain('at its end 26.2 °C; computed now ');
    const csv = await doughwright(here.path, 'history', 'Harbour Loaf', '--format', 'csv');
    expect(csv.stdout.split('\r\n')[2]).toMatch(
      /^uncommitted,\d{4}-\d\d-\d\d,,,,Harbour Loaf,loaf\.dough,kept,salt,/,
    );
    // A revision that is named is what it is, and what git ignores but has is not gone.
    expect((await told(here.path, 'Harbour Tin', '--at', 'HEAD')).revisions).toHaveLength(1);
    here.write('.gitignore', 'tin.dough\n');
    here.write('tin.dough', bread);
    here.git('rm', '--quiet', '--cached', '-f', '--ignore-unmatch', 'loaf.dough');
    expect(await last('Harbour Tin')).toMatchObject({ words: 'Start' });
    // A formula that is new, and one that is no more.
    here.write('rye.dough', rye.replace('medium rye ', 'rye flour  '));
    expect((await told(here.path, 'Quay Rye')).revisions).toMatchObject([{ fate: 'new', uncommitted: true }]);
    here.write('tin.dough', '');
    here.write('loaf.dough', '');
    expect(await last('Harbour Tin')).toMatchObject({ fate: 'removed', uncommitted: true });
  });

  it('asks which is meant where two files have a formula of one name', async () => {
    const two = repositoryIn(folderAt(join(top, 'two')));
    const bread = tin.replace('quay white ', 'bread flour');
    two.write('north/tin.dough', bread);
    two.write('south/tin.dough', bread.replace('69%', '66%'));
    two.git('init', '--quiet', '--initial-branch=main');
    two.commit('Start');
    const { code, stderr } = await doughwright(two.path, 'history', 'Harbour Tin');
    expect([code, stderr]).toEqual([
      2,
      'doughwright: several files have a formula “Harbour Tin”; name one behind it: north/tin.dough or south/tin.dough.\n',
    ]);
    for (const [path, hydration] of [
      ['north', 0.69],
      ['south/tin.dough', 0.66],
    ] as const)
      expect((await told(two.path, 'Harbour Tin', path)).revisions[0]!.figures!.hydration).toBe(hydration);
    two.git('mv', 'south/tin.dough', 'south/loaf.dough');
    two.commit('Move the one');
    expect(rows(await told(two.path, 'Harbour Tin', 'south'))).toEqual([
      ['Start', ''],
      ['Move the one', ''],
    ]);
  });

  it('tells an ingredient that got another name once, and follows it by either', async () => {
    const one = repositoryIn(folderAt(join(top, 'names')));
    const shared = (white: string, share: string): string =>
      tin.replace('quay white         100%', `${white}  ${share}%\n  medium rye  balance`);
    one.write('flours.dough', flours);
    one.write('tin.dough', shared('quay white', '80'));
    one.git('init', '--quiet', '--initial-branch=main');
    one.commit('Start');
    one.write('tin.dough', shared('quay white', '75'));
    one.commit('More rye');
    one.git('checkout', '--quiet', '-b', 'names');
    one.write('flours.dough', flours.replace('quay white', 'harbour white').replace('0.80', '0.82'));
    one.write('tin.dough', shared('harbour white', '75'));
    one.commit('Another name');
    one.git('checkout', '--quiet', 'main');
    one.write('bakery.dough', bakery);
    one.commit('The bakery');
    one.git('merge', '--quiet', '--no-edit', 'names');
    one.write('tin.dough', shared('harbour white', '70'));
    const changes = (text: string) =>
      text
        .split('\n')
        .flatMap((line) => /(?:\w+ white (?:renamed|none|\d).*|cost .*|Merge.*)$/.exec(line)?.[0] ?? []);
    const whole = (await doughwright(one.path, 'history', 'Harbour Tin')).stdout;
    expect(changes(whole).filter((line) => !line.startsWith('cost'))).toEqual([
      'quay white 80% → 75%',
      'quay white renamed to harbour white',
      'harbour white 75% → 70%',
    ]);
    for (const [name, other] of [
      ['quay white', 'harbour white'],
      ['harbour white', 'quay white'],
    ] as const) {
      const followed = (await doughwright(one.path, 'history', 'Harbour Tin', '--figure', name)).stdout;
      expect([other, changes(followed).filter((line) => !line.startsWith('cost'))]).toEqual([
        other,
        [`${name} 80% → 75%`, 'quay white renamed to harbour white', `${name} 75% → 70%`],
      ]);
    }
    const { revisions } = await told(one.path, 'Harbour Tin');
    expect(revisions.find(({ words }) => words === 'Another name')).toMatchObject({
      namedAnew: [{ from: 'quay white', to: 'harbour white' }],
      changed: ['cost'],
    });
    // A flour that is another one, be it under a new name, is no other name.
    one.git('checkout', '--quiet', '.');
    one.write('flours.dough', flours.replace('quay white', 'pier white').replace('12.4', '11'));
    one.write('tin.dough', shared('pier white', '75'));
    expect(changes((await doughwright(one.path, 'history', 'Harbour Tin')).stdout)).toEqual(
      expect.arrayContaining(['pier white none → 75%', 'harbour white 75% → none']),
    );
  });

  it('starts no program that a repository names', async () => {
    const trap = repositoryIn(folderAt(join(top, 'trap')));
    trap.write('tin.dough', tin);
    trap.git('init', '--quiet', '--initial-branch=main');
    trap.commit('Start');
    const flag = join(top, 'started');
    const program = `touch '${flag}'`;
    for (const [key, value] of [
      ['core.pager', program],
      ['log.showSignature', 'true'],
      ['gpg.program', program],
      ['core.fsmonitor', program],
      ['diff.external', program],
      ['diff.d.textconv', program],
      ['diff.d.command', program],
    ] as const)
      trap.git('config', key, value);
    trap.write('.gitattributes', '*.dough diff=d\n');
    expect((await told(trap.path, 'Harbour Tin')).revisions).toHaveLength(1);
    expect(() => realpathSync(flag)).toThrow();
  });
});
