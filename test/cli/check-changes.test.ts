import { execFileSync, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright, type Outcome } from './run.ts';

const flours = 'flour quay white:\n  grain wheat\n  protein 12.4%\n';
const tin =
  'formula Harbour Tin:\n  quay white         100%\n  water              65%\n  salt               2%\n';
const rye =
  'formula Quay Rye:\n  medium rye         100%\n  water              78%\n  salt               2%\n';

/** Runs the command line with a text on its standard input. */
function fed(folder: string, text: string | Buffer, ...args: string[]): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(nodeProgram, [commandLineProgram(), ...args], { cwd: folder, stdio: 'pipe' });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (data) => {
      stdout += data;
    });
    child.stderr.on('data', (data) => {
      stderr += data;
    });
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, stdout, stderr }));
    child.stdin.end(text);
  });
}

describe('check --since', () => {
  it('checks what is other than at a revision, and what uses it; nothing else', async () => {
    const { path, write, commit, git } = repositoryWith({
      'flours.dough': flours,
      'tin.dough': tin,
      'rye.dough': rye.replace('2%', '6%'),
    });
    const since = (revision = 'HEAD') => doughwright(path, 'check', '--since', revision);
    expect(await since()).toMatchObject({ code: 0, stdout: '', stderr: '' });
    write('tin.dough', tin.replace('2%', '5%'));
    const salty = await since();
    expect(salty.stdout).toMatch(/^tin\.dough:4:/);
    expect(salty.stdout).not.toContain('rye.dough');
    git('checkout', '--quiet', '.');
    // A flour that has another name is missing where nobody touched the formula.
    write('flours.dough', flours.replace('quay', 'harbour'));
    const missing = await since();
    expect([missing.code, missing.stdout]).toEqual([
      1,
      expect.stringMatching(/^tin\.dough:2:3: error: .*quay white/),
    ]);
    commit('Another name');
    expect((await since()).code).toBe(0);
    expect((await since('HEAD~1')).code).toBe(1);
    expect(await since('nope')).toMatchObject({
      code: 2,
      stderr: 'doughwright: there is no such revision: nope\n',
    });
  });

  it('does not take other line ends for a change', async () => {
    const { path, write } = repositoryWith({ 'rye.dough': rye.replace('2%', '6%') });
    write('rye.dough', rye.replace('2%', '6%').replaceAll('\n', '\r\n'));
    expect((await doughwright(path, 'check', '--since', 'HEAD')).code).toBe(0);
  });
});

describe('check of standard input', () => {
  it('reads it as the text of a file among the others, which need not be there', async () => {
    const { path } = repositoryWith({ 'flours.dough': flours, 'tin.dough': tin.replace('2%', '5%') });
    expect(await fed(path, tin, 'check', '-', '--stdin-name', 'tin.dough')).toMatchObject({
      code: 0,
      stderr: '',
    });
    const { code, stdout } = await fed(
      path,
      tin.replace('65%', '65'),
      'check',
      '-',
      '--stdin-name',
      'new/tin.dough',
    );
    expect([code, stdout]).toEqual([1, expect.stringMatching(/^new\/tin\.dough:3:.*missing-unit/)]);
    expect(stdout).not.toContain('unknown-ingredient');
    const json = await fed(
      path,
      rye.replace('78%', '78'),
      'check',
      '-',
      '--stdin-name',
      'a.dough',
      '--format',
      'json',
    );
    expect(JSON.parse(json.stdout)).toMatchObject([{ file: 'a.dough', line: 3 }]);
  });

  it('says what it lacks, and what is no text', async () => {
    const { path } = folderWith({ 'tin.dough': tin });
    for (const args of [
      ['-'],
      ['tin.dough', '--stdin-name', 'a.dough'],
      ['-', 'tin.dough', '--stdin-name', 'a.dough'],
    ]) {
      const { code, stdout, stderr } = await fed(path, tin, 'check', ...args);
      expect([args, code, stdout]).toEqual([args, 2, '']);
      expect(stderr).toMatch(/^doughwright: “-” alone is standard input, and --stdin-name says [^\n]*\n$/);
    }
    const binary = await fed(path, Buffer.from([1, 0, 2]), 'check', '-', '--stdin-name', 'a.dough');
    expect([binary.code, binary.stderr]).toEqual([
      2,
      expect.stringMatching(/a\.dough: line 1: this is not plain text/),
    ]);
  });
});

describe('check --fix', () => {
  it('mends how things are written, and nothing of the bread; what is left is told', async () => {
    const slips = 'formula Tin:\n  bread flour 100\n  water 65 %\n  salt 5\n\nmix by hand\n  knead 8\n';
    const { path } = folderWith({ 'tin.dough': slips, 'whole.dough': rye });
    const { code, stdout, stderr } = await doughwright(path, 'check', '--fix');
    const mended = readFileSync(join(path, 'tin.dough'), 'utf8');
    expect(mended).toMatch(/bread flour +100%\n +water +65 ?%\n +salt +5%/);
    expect(mended).toContain('mix by hand:');
    expect(stderr).toBe('mended in 1 file\n');
    // Too much salt is the baker's.
    expect([code, stdout]).toEqual([1, expect.stringContaining('[salt-range]')]);
    expect(readFileSync(join(path, 'whole.dough'), 'utf8')).toBe(rye);
    expect((await doughwright(path, 'check', '--fix')).stderr).toBe('');
    expect(readFileSync(join(path, 'tin.dough'), 'utf8')).toBe(mended);
  });

  it('writes what a mix says of the formula below its header, and mends what stands before and behind it', async () => {
    const slips =
      'formula Buns:\n  yield 20 buns at 60 g\n  bread flour 100\n  eggs 45\n  butter 20\n\nmix in planetary:\n  load everything but butter\n' +
      '  speed 1 for 5 min\n  add butter in 4 lots\n  speed 2 for 8 min\n  target 24 °C\n\nprocess:\n  fridge overnight\n';
    const { path } = folderWith({ 'buns.dough': slips });
    const { stderr } = await doughwright(path, 'check', '--fix');
    expect(stderr).toBe('mended in 1 file\n');
    expect(readFileSync(join(path, 'buns.dough'), 'utf8')).toBe(
      'formula Buns:\n  dough temperature 24 °C\n  yield 20 buns of 60 g\n  bread flour 100%\n  eggs 45%\n  butter 20%\n\nmix in planetary:\n' +
        '  load everything but butter\n  speed 1 for 5 min\n  add butter  # in 4 lots\n  speed 2 for 8 min\n\nprocess:\n  fridge overnight\n',
    );
  });

  it('leaves line ends as they are, and what is no UTF-8 untouched', async () => {
    const letters = Buffer.concat([
      Buffer.from('formula Br'),
      Buffer.from([0xf6]),
      Buffer.from('t:\n  bread flour 100\n'),
    ]);
    const { path } = folderWith({ 'a.dough': 'formula A:\r\n  bread flour 100\r\n', 'b.dough': letters });
    expect((await doughwright(path, 'check', '--fix')).code).toBe(2);
    expect(readFileSync(join(path, 'a.dough'), 'utf8')).toBe('formula A:\r\n  bread flour 100%\r\n');
    expect(readFileSync(join(path, 'b.dough'))).toEqual(letters);
  });
});

describe('the last line of a check', () => {
  it('counts what was found, also what is not told; nothing is said where nothing was', async () => {
    const { path } = folderWith({
      'a.dough': rye.replace('78%', '78'),
      'b.dough': rye.replace('Quay', 'Pier').replace('2%', '6%'),
      'c.dough': rye.replace('Quay', 'Dock'),
    });
    const { stdout } = await doughwright(path, 'check');
    expect(stdout).toMatch(/\n1 error and 1 warning in 2 of 3 files\.\n$/);
    const short = await doughwright(path, 'check', '--max-findings', '1');
    expect(short.stdout).toMatch(/\nand 1 more\n1 error and 1 warning in 2 of 3 files\.\n$/);
    expect((await doughwright(path, 'check', 'c.dough')).stdout).toBe('');
  });
});

describe('doughwright rename', () => {
  it('tells the lines that change and writes nothing, until it is to', async () => {
    const { path } = folderWith({ 'flours.dough': flours, 'tin.dough': tin });
    const dry = await doughwright(path, 'rename', 'quay white', 'harbour white');
    expect([dry.code, dry.stderr]).toEqual([0, 'doughwright: Nothing was written; --write writes it.\n']);
    expect(dry.stdout).toBe(
      [
        'flours.dough:1',
        '- flour quay white:',
        '+ flour harbour white:',
        'tin.dough:2',
        '-   quay white         100%',
        '+   harbour white      100%',
        '',
      ].join('\n'),
    );
    expect(readFileSync(join(path, 'tin.dough'), 'utf8')).toBe(tin);
    expect(await doughwright(path, 'rename', 'quay white', 'harbour white', '--write')).toMatchObject({
      code: 0,
      stderr: '',
    });
    expect(readFileSync(join(path, 'tin.dough'), 'utf8')).toContain('  harbour white      100%\n');
    expect((await doughwright(path, 'check')).code).toBe(0);
  });

  it('refuses what would mean something else, and says what it does not find or cannot tell apart', async () => {
    const { path } = folderWith({
      'flours.dough': `${flours}\n${flours.replace('quay', 'dock')}`,
      'north/tin.dough': tin,
      'south/tin.dough': tin,
    });
    const clash = await doughwright(path, 'rename', 'quay white', 'dock white');
    expect([clash.code, clash.stdout]).toEqual([2, '']);
    expect(clash.stderr).toMatch(/^doughwright: flours\.dough:1: [^\n]+\n$/);
    const none = await doughwright(path, 'rename', 'pier white', 'dock white');
    expect([none.code, none.stderr]).toEqual([
      1,
      'doughwright: .: nothing in here is defined as “pier white”; look at the spelling.\n',
    ]);
    const two = await doughwright(path, 'rename', 'Harbour Tin', 'Harbour Loaf');
    expect([two.code, two.stderr]).toEqual([
      2,
      'doughwright: “Harbour Tin” is defined at north/tin.dough:1 and south/tin.dough:1; name the file of the one that is meant.\n',
    ]);
    expect((await doughwright(path, 'rename', 'Harbour Tin', 'Harbour Loaf', 'north', '--write')).code).toBe(
      0,
    );
    expect(readFileSync(join(path, 'north/tin.dough'), 'utf8')).toMatch(/^formula Harbour Loaf:/);
    expect(readFileSync(join(path, 'south/tin.dough'), 'utf8')).toBe(tin);
  });
});

describe('doughwright completion', () => {
  it('knows every command and option that the help names, in every shell', async () => {
    const { path } = folderWith({});
    const help = (await doughwright(path, '--help')).stdout;
    const commands = [...help.slice(help.indexOf('Commands:')).matchAll(/^ {2}([a-z-]+) /gm)].map(
      ([, name]) => name!,
    );
    expect(commands.length).toBeGreaterThan(12);
    const checkHelp = (await doughwright(path, 'check', '--help')).stdout;
    const options = [...checkHelp.matchAll(/^ {2}(?:-\w, )?--([a-z-]+)/gm)].map(([, name]) => name!);
    expect(options.length).toBeGreaterThan(10);
    for (const shell of ['bash', 'zsh', 'fish']) {
      const { code, stdout } = await doughwright(path, 'completion', shell);
      expect(code).toBe(0);
      const words = new Set(stdout.match(/[a-z][a-z-]*/g));
      expect([...commands, ...options].filter((word) => !words.has(word))).toEqual([]);
    }
    expect((await doughwright(path, 'completion', 'sh')).code).toBe(2);
  });

  it('completes in bash: a command, an option, one of few values, and files elsewhere', async () => {
    const { path } = folderWith({});
    const { stdout } = await doughwright(path, 'completion', 'bash');
    const completed = (...words: string[]): string =>
      execFileSync(
        'bash',
        [
          '-c',
          `${stdout}\nCOMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _doughwright; echo "\${COMPREPLY[*]}"`,
          'bash',
          ...words,
        ],
        { encoding: 'utf8' },
      ).trim();
    expect(completed('doughwright', 'his')).toBe('history');
    expect(completed('doughwright', 'check', '--st')).toBe('--staged --stdin-name');
    expect(completed('doughwright', 'check', '--format', '')).toBe('text json sarif junit annotations');
    expect(completed('doughwright', 'check', '--format', 's')).toBe('sarif');
    expect(completed('doughwright', 'check', 'form')).toBe('');
  });
});
