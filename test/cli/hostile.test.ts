import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

const tin =
  'formula Harbour Tin:\n  strong white       100%\n  water              65%\n  salt               2%\n';
const careless = tin.replaceAll('  ', ' ');
const unix = process.platform !== 'win32';

describe.runIf(unix)('links and special files', () => {
  it('a formula that is a link to a device without end is told, and the others are checked', async () => {
    const { path } = folderWith({ 'b.dough': tin });
    symlinkSync('/dev/zero', join(path, 'a.dough'));
    const { code, stderr } = await doughwright(path, 'check', '.');
    expect(code).toBe(2);
    expect(stderr).toBe(
      'doughwright: a.dough: this cannot be read; name an ordinary file, or look whether its disk is all right.\n',
    );
  });

  it('a .gitignore that is a link, a pipe or a folder says nothing and holds nobody up', async () => {
    const { path } = folderWith({
      'a.dough': tin,
      'in/b.dough': tin.replace('Tin', 'Bun'),
      'more/c.dough': careless,
    });
    symlinkSync('/dev/stdin', join(path, '.gitignore'));
    execFileSync('mkfifo', [join(path, 'in/.gitignore')]);
    mkdirSync(join(path, 'more/.gitignore'));
    const child = spawnSync(nodeProgram, [commandLineProgram(), 'format', '--check', '.'], {
      cwd: path,
      encoding: 'utf8',
      input: '*.dough\n',
    });
    expect([child.status, child.stdout, child.stderr]).toEqual([1, 'more/c.dough\n', '']);
  });

  it('format writes through a link within the folder and never out of it', async () => {
    const { path } = folderWith({ 'here/real.dough': careless, 'out/bashrc': careless });
    mkdirSync(join(path, 'here/.git'));
    symlinkSync('../out/bashrc', join(path, 'here/a.dough'));
    const { code, stderr } = await doughwright(join(path, 'here'), 'format', '.');
    expect(code).toBe(2);
    expect(stderr).toContain('a.dough: this is a link out of its folder');
    expect(readFileSync(join(path, 'out/bashrc'), 'utf8')).toBe(careless);
    expect(readFileSync(join(path, 'here/real.dough'), 'utf8')).toBe(tin);
  });

  const outputs = (file: string): readonly string[][] => [
    ['sheet', 'tin.dough', '--format', 'html', '--out', file],
    ['export', '.', '--format', 'csv', '--out', file],
    ['history', 'Harbour Tin', '--format', 'csv', '--out', file],
    ['check', '.', '--write-baseline', file, '--force'],
  ];

  it.each([
    ['a link to a file outside', 'link.html'],
    ['a link to a file that is not there', 'dangling.html'],
    ['a folder that is a link out', 'away/page.html'],
  ])('nothing is written through %s', async (_, file) => {
    const { path } = folderWith({ 'here/tin.dough': tin, 'out/bashrc': 'as it was' });
    const here = join(path, 'here');
    execFileSync('git', ['init', '-q'], { cwd: here });
    symlinkSync('../out/bashrc', join(here, 'link.html'));
    symlinkSync('../out/nothing', join(here, 'dangling.html'));
    symlinkSync('../out', join(here, 'away'));
    for (const words of outputs(file)) {
      const { code, stdout, stderr } = await doughwright(here, ...words);
      if (words[0] === 'history') expect(code).toBe(2);
      else
        expect([code, stdout, stderr]).toEqual([
          2,
          '',
          `doughwright: ${file}: this leads out of its folder by a link, and what lies there is left alone; name that file.\n`,
        ]);
    }
    expect(readdirSync(join(path, 'out'))).toEqual(['bashrc']);
    expect(readFileSync(join(path, 'out/bashrc'), 'utf8')).toBe('as it was');
  });

  it('a link within the folder is written through and stays one, also where it is named from elsewhere', async () => {
    const { path } = folderWith({ 'here/tin.dough': tin, 'here/pages/page.html': '', 'page.html': '' });
    const here = join(path, 'here');
    symlinkSync('pages/page.html', join(here, 'link.html'));
    expect((await doughwright(here, 'sheet', 'tin.dough', '--out', 'link.html')).code).toBe(0);
    expect((await doughwright(path, 'sheet', 'here/tin.dough', '--out', 'here/link.html')).code).toBe(0);
    expect(lstatSync(join(here, 'link.html')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(here, 'pages/page.html'), 'utf8')).toContain('Harbour Tin');
    // What somebody names outside of the folder is theirs to name.
    expect((await doughwright(here, 'sheet', 'tin.dough', '--out', '../page.html')).code).toBe(0);
    expect((await doughwright(here, 'sheet', 'tin.dough', '--out', '/dev/null')).code).toBe(0);
  });

  it('nobody waits at a pipe for what is written or read', async () => {
    const { path } = folderWith({ 'tin.dough': tin });
    execFileSync('mkfifo', [join(path, 'pipe.html')]);
    for (const words of outputs('pipe.html').filter(([first]) => first !== 'history')) {
      const { code, stderr } = await doughwright(path, ...words);
      expect([code, stderr]).toEqual([
        2,
        'doughwright: pipe.html: this is no ordinary file; name another one, or leave it out for standard output.\n',
      ]);
    }
    symlinkSync('/dev/zero', join(path, 'endless.json'));
    for (const file of ['pipe.html', 'endless.json'])
      expect(await doughwright(path, 'check', '--baseline', file)).toEqual({
        code: 2,
        stdout: '',
        stderr: `doughwright: ${file}: this cannot be read; name an ordinary file, or look whether its disk is all right.\n`,
      });
  });

  it.runIf(process.platform === 'linux')(
    'names that are no UTF-8 are told as such, of folders too, and the rest is done',
    async () => {
      const { path } = repositoryWith({ 'a.dough': tin });
      const named = (...bytes: readonly number[]): Buffer =>
        Buffer.concat([Buffer.from(`${path}/`), Buffer.from(bytes)]);
      const dough = [...Buffer.from('.dough')];
      writeFileSync(named(0x6b, 0xe4, ...dough), tin.replace('Tin', 'Bun'));
      mkdirSync(named(0x6f, 0xff));
      writeFileSync(named(0x6f, 0xff, 0x2f, 0x62, ...dough), tin.replace('Tin', 'Rye'));
      execFileSync('git', ['add', '.'], { cwd: path });
      const told = [
        'doughwright: k\ufffd.dough: this name cannot be read; give it one in UTF-8.',
        'doughwright: o\ufffd: this name cannot be read; give it one in UTF-8.',
      ];
      for (const words of [
        ['check', '.'],
        ['format', '.'],
        ['totals', '.'],
        ['compare', '--since', 'HEAD'],
      ]) {
        const { code, stderr } = await doughwright(path, ...words);
        expect([words[0], code, stderr.trimEnd().split('\n').sort()]).toEqual([words[0], 2, told]);
      }
      expect((await doughwright(path, 'totals', '.')).stdout).toContain('Harbour Tin');
      // What a hook cannot look at is not let through.
      const staged = await doughwright(path, 'check', '--staged');
      expect([staged.code, staged.stderr.split('\n')[0]]).toEqual([2, told[0]]);
    },
  );

  it('a project file that is none is told, and is not taken for one that says nothing', async () => {
    const { path } = folderWith({ 'tin.dough': tin });
    symlinkSync('/dev/zero', join(path, 'doughwright.json'));
    const { code, stderr } = await doughwright(path, 'check', '.');
    expect(code).toBe(2);
    expect(stderr).toContain('doughwright: doughwright.json: this cannot be read; name an ordinary file');
  });

  it('a file and its link are one', async () => {
    const { path } = folderWith({ 'a.dough': tin });
    symlinkSync('a.dough', join(path, 'b.dough'));
    for (const words of [['.'], ['b.dough'], ['a.dough', 'b.dough']])
      expect(await doughwright(path, 'check', ...words)).toEqual({ code: 0, stdout: '', stderr: '' });
  });
});

/** A plan, an experiment, flours and a mixer that are called by an order to a build server. */
const texts = (order: string): string => `formula "${order} too":
  yield 10 kg
  strong white  100%
  water  65%

mix in "::error::mixer":
  load all
  speed 1 for 5 min

plan "${order}":
  ready 07:00
  "${order} too"  10 kg

experiment "${order}", 2026-04-01:
  dough "${order} too"
  read at 5 min

flour "::warning::weak":
  grain wheat
  protein 10%

flour "::warning::strong":
  grain wheat
  protein 14%

mixer "::error::mixer":
  kind spiral
  speed 1 100 rpm
`;

describe.runIf(unix)('several links', () => {
  it('to one file outside of the folder are that one file, by folder or by name', async () => {
    const { path } = folderWith({ 'here/c.dough': tin.replace('Tin', 'Bun'), 'out/x.dough': tin });
    const here = join(path, 'here');
    mkdirSync(join(here, '.git'));
    mkdirSync(join(here, 'more'));
    symlinkSync('../out/x.dough', join(here, 'a.dough'));
    symlinkSync('../out/x.dough', join(here, 'b.dough'));
    symlinkSync('../../out/x.dough', join(here, 'more/d.dough'));
    for (const words of [['.'], ['a.dough', 'b.dough', 'more/d.dough']])
      expect(await doughwright(here, 'check', ...words)).toEqual({ code: 0, stdout: '', stderr: '' });
    const { stdout } = await doughwright(here, 'totals', '.');
    expect(stdout.match(/^Harbour .*$/gm)).toEqual(['Harbour Bun  c.dough', 'Harbour Tin  a.dough']);
  });

  it('to a file that git ignores stand for it, and one in a circle for nothing', async () => {
    const { path } = folderWith({ 'real.dough': tin, '.gitignore': 'real.dough\n' });
    symlinkSync('real.dough', join(path, 'b.dough'));
    symlinkSync('real.dough', join(path, 'c.dough'));
    expect((await doughwright(path, 'totals', '.')).stdout).toMatch(/^Harbour Tin {2}b\.dough$/m);
    symlinkSync('round.dough', join(path, 'round.dough'));
    const { code, stderr } = await doughwright(path, 'check', '.');
    expect([code, stderr.split('\n').length]).toEqual([2, 2]);
    expect(stderr).toContain('doughwright: round.dough: ');
  });
});

describe('texts that want to do harm', () => {
  const name = '\u001b[31mred\u001b]0;title\u0007\u202e\u009b2J';

  it.each(['totals', 'sheet', 'check', 'plan'])(
    '%s shows control characters as what they are',
    async (command) => {
      const { path } = folderWith({
        'a.dough': `formula "${name}":\n  flour  100%\n  "${name}"  65%\n\nplan "${name}":\n  "${name}"  3 pieces, ready 07:00\n  nobody  3 pieces\n`,
      });
      const { stdout, stderr } = await doughwright(path, command, 'a.dough');
      expect(stdout + stderr).toContain('␛[31mred␛]0;title␇');
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be there
      expect(stdout + stderr).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
    },
  );

  it('a formula named like an order to a build server never starts a line with it', async () => {
    const order = '::error file=a::stolen';
    const text = `formula "${order}":\n  strong white  100%\n  water  65%\n  "##vso[task.setvariable]x"  2%\n`;
    const file = '::set-output name=x::y.dough';
    const { path, write, commit } = repositoryWith({ 'a.dough': text, [file]: texts(order) });
    write('a.dough', text.replace('65%', '66%'));
    commit('::error::words of a commit', '::error::baker');
    write('a.dough', text.replace('65%', '67%'));
    for (const words of [
      ['totals', 'a.dough'],
      ['sheet', 'a.dough'],
      ['sheet', '.'],
      ['plan', '.'],
      ['experiment', '.'],
      ['map', '.'],
      ['check', '.'],
      ['format', '--check', '.'],
      ['export', '--format', 'csv', '.'],
      ['history', order, 'a.dough'],
      ['history', order, 'a.dough', '--format', 'csv'],
      ['rename', order, '::error::other', '.'],
      ['compare', '--since', 'HEAD'],
      ['compare', '--since', 'HEAD', '--format', 'md'],
      ['compare', '--between', 'HEAD~1', 'HEAD'],
      ['blend', '::warning::strong', '::warning::weak', '--protein', '12%'],
    ]) {
      const { stdout, stderr } = await doughwright(path, ...words);
      expect(stdout + stderr, words.join(' ')).not.toBe('');
      expect(stdout + stderr, words.join(' ')).not.toMatch(/^\s*::/m);
      if (words[0] !== 'export') expect(stdout + stderr, words.join(' ')).not.toMatch(/##vso\[/);
    }
    const { stdout } = await doughwright(path, 'totals', 'a.dough');
    expect(stdout).toContain(':\\:error file=a::stolen');
  });

  it.runIf(unix)('a sheet tells the revision and runs nothing that the repository names', async () => {
    const { path } = folderWith({ 'a.dough': tin, '.gitattributes': '*.dough filter=evil diff=evil\n' });
    const git = (...words: string[]) =>
      execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@quay', ...words], { cwd: path });
    git('init', '-q');
    git('add', '.');
    git('commit', '-qm', 'Begin');
    const trap = join(path, 'trap.sh');
    writeFileSync(trap, `#!/bin/sh\ntouch "${join(path, 'sprung')}"\ncat\n`);
    chmodSync(trap, 0o755);
    for (const key of [
      'core.fsmonitor',
      'filter.evil.clean',
      'filter.evil.smudge',
      'diff.external',
      'diff.evil.textconv',
      'core.pager',
      'core.sshCommand',
    ])
      git('config', key, trap);
    git('config', 'core.hooksPath', path);
    writeFileSync(join(path, 'git'), `#!/bin/sh\ntouch "${join(path, 'sprung')}"\n`);
    chmodSync(join(path, 'git'), 0o755);
    const sheet = () =>
      spawnSync(nodeProgram, [commandLineProgram(), 'sheet', 'a.dough'], {
        cwd: path,
        encoding: 'utf8',
        env: { ...process.env, PATH: `.:${path}:${process.env.PATH}` },
      });
    const { stdout } = sheet();
    const commit = execFileSync('git', ['rev-parse', '--short=8', 'HEAD'], {
      cwd: path,
      encoding: 'utf8',
    }).trim();
    expect(stdout).toContain(commit);
    writeFileSync(join(path, 'a.dough'), tin.replace('65%', '66%'));
    const changed = sheet().stdout;
    expect(changed).toContain(commit);
    expect(changed.split('\n')[1]).not.toBe(stdout.split('\n')[1]);
    expect(existsSync(join(path, 'sprung'))).toBe(false);
  });

  it
    .runIf(existsSync('/dev/full'))
    .each([
      'totals a.dough',
      'totals --json a.dough',
      'sheet a.dough',
      'sheet --format html a.dough',
      'export .',
      'check --format sarif .',
      'rules',
      '--help',
      'completion bash',
    ])('a full disk behind standard output is told in one line by %s', (words) => {
    const { path } = folderWith({ 'a.dough': tin });
    const child = spawnSync(
      'sh',
      ['-c', `"$0" "$1" ${words} > /dev/full`, nodeProgram, commandLineProgram()],
      {
        cwd: path,
        encoding: 'utf8',
      },
    );
    expect([child.status, child.stderr]).toEqual([
      2,
      'doughwright: standard output cannot be written: the disk is full; make room.\n',
    ]);
  });

  it.runIf(existsSync('/dev/full'))('a full disk behind --out is told too', async () => {
    const { path } = folderWith({ 'a.dough': tin });
    expect(await doughwright(path, 'sheet', 'a.dough', '--out', '/dev/full')).toEqual({
      code: 2,
      stdout: '',
      stderr: 'doughwright: /dev/full: this cannot be written: the disk is full; make room.\n',
    });
  });
});
