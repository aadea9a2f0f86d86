import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith, startClient } from '../server/places.ts';
import type { Outcome } from './run.ts';

const tin = 'formula Quay Tin:\n  strong white 100%\n  water 62%\n  salt 20%\n';
let folder = '';

/** What a check of a file says, with a folder of its own for passing files. */
function check(passing: string, env: NodeJS.ProcessEnv = {}, args = ['check', 'tin.dough']): Outcome {
  const {
    status: code,
    stdout,
    stderr,
  } = spawnSync(nodeProgram, [commandLineProgram(), ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, TMPDIR: passing, TEMP: passing, ...env },
  });
  return { code, stdout, stderr };
}

const passingFolder = () => folderWith().path;
const keptIn = (passing: string): string[] =>
  readdirSync(passing)
    .flatMap((name) => readdirSync(join(passing, name)).map((file) => join(passing, name, file)))
    .sort();
const state = (paths: readonly string[]) => paths.map((path) => [path, statSync(path).ino]);

let plain: Outcome;
beforeEach(() => {
  folder = folderWith({ 'tin.dough': tin }).path;
  plain = check(passingFolder(), { NODE_DISABLE_COMPILE_CACHE: '1' });
});

describe('machine code that is kept from one run to the next', () => {
  it('is that of the programs of a command, for its user alone, and is used as it stands', () => {
    const passing = passingFolder();
    expect(plain.stdout).toContain('tin.dough:4');
    expect(check(passing)).toEqual(plain);
    const kept = keptIn(passing);
    expect(kept.map((path) => path.split(/[\\/]/).at(-1)?.split('_', 2))).toEqual([
      ['core', 'check'],
      ['doughwright-main', 'check'],
    ]);
    if (process.platform !== 'win32') expect(statSync(kept[0]!).mode & 0o777).toBe(0o600);
    const before = state(kept);
    expect(check(passing)).toEqual(plain);
    expect(state(keptIn(passing))).toEqual(before);
  });

  it('is left alone and made anew where it is spoilt, cut off, of another program, or open to others', () => {
    const passing = passingFolder();
    check(passing);
    const [core = '', main = ''] = keptIn(passing);
    const whole = readFileSync(core);
    const spoilt = Buffer.from(whole);
    for (let at = 1000; at < spoilt.length; at += 997) spoilt[at]! ^= 0x10;
    for (const bytes of [spoilt, whole.subarray(0, 5000), readFileSync(main), Buffer.alloc(3)]) {
      writeFileSync(core, bytes);
      const before = state([core]);
      expect(check(passing)).toEqual(plain);
      expect(state([core])).not.toEqual(before);
      expect(statSync(core).size).toBeGreaterThan(0.9 * whole.length);
    }
    if (process.platform === 'win32') return;
    const before = state([core]);
    chmodSync(core, 0o666);
    expect(check(passing)).toEqual(plain);
    expect(state([core])).not.toEqual(before);
    expect(statSync(core).mode & 0o777).toBe(0o600);
  });

  it.skipIf(process.platform === 'win32')(
    'is neither read nor written in a folder that others may write',
    () => {
      const passing = passingFolder();
      check(passing);
      const [folderOfCode = ''] = readdirSync(passing).map((name) => join(passing, name));
      chmodSync(folderOfCode, 0o777);
      const kept = keptIn(passing);
      for (const path of kept) writeFileSync(path, 'x');
      const before = state(kept);
      expect(check(passing)).toEqual(plain);
      expect(state(keptIn(passing))).toEqual(before);
    },
  );

  it('is made anew after a day where much more has come to be used, and else looked at as new', () => {
    const passing = passingFolder();
    const empty = folderWith({ 'empty.dough': '' }).path;
    check(passing, {}, ['check', empty]);
    const [core = ''] = keptIn(passing);
    const [before, little] = [state([core]), statSync(core).size];
    check(passing);
    expect(state([core])).toEqual(before);
    const yesterday = new Date(Date.now() - 25 * 60 * 60 * 1000);
    utimesSync(core, yesterday, yesterday);
    expect(check(passing)).toEqual(plain);
    expect(statSync(core).size).toBeGreaterThan(1.1 * little);
    const after = state([core]);
    utimesSync(core, yesterday, yesterday);
    check(passing);
    expect(state([core])).toEqual(after);
    expect(statSync(core).mtimeMs).toBeGreaterThan(yesterday.getTime());
  });

  it('is not kept where nobody wants it, of a command that there is not, nor where there is no room for it', () => {
    const passing = passingFolder();
    check(passing, { NODE_DISABLE_COMPILE_CACHE: '1' });
    check(passing, {}, ['chekc']);
    expect(readdirSync(passing)).toEqual([]);
    const file = join(passing, 'file');
    writeFileSync(file, '');
    expect(check(file)).toEqual(plain);
    expect(check(join(passing, 'nowhere'))).toEqual(plain);
  });

  it('is kept of the server when the first document has been answered for', async () => {
    const passing = passingFolder();
    const { TMPDIR, TEMP } = process.env;
    Object.assign(process.env, { TMPDIR: passing, TEMP: passing });
    onTestFinished(() => {
      for (const [name, value] of Object.entries({ TMPDIR, TEMP }))
        if (value === undefined) delete process.env[name];
        else process.env[name] = value;
    });
    const client = await startClient();
    await client.open('untitled:tin', tin);
    await expect
      .poll(() => keptIn(passing).map((path) => path.split(/[\\/]/).at(-1)?.split('_', 2).join(' ')), {
        timeout: 20_000,
      })
      .toEqual(['core serve', 'language-server serve']);
  });
});
