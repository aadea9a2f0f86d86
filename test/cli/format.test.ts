import { spawnSync } from 'node:child_process';
import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const careless = 'formula Harbour Tin :\n strong white 100%\nwater 65 %\n\n\n    salt 2%';
const tidy =
  'formula Harbour Tin:\n  strong white       100%\n  water              65%\n\n  salt               2%\n';

describe('doughwright format', () => {
  it('writes the canonical form, names what it changed, and has nothing to do the second time', async () => {
    const { path } = folderWith({ 'a.dough': careless, 'in/b.dough': careless, 'in/c.dough': tidy });
    const read = (name: string) => readFileSync(join(path, name), 'utf8');
    expect(await doughwright(path, 'format', 'a.dough', 'in')).toEqual({
      code: 0,
      stdout: 'a.dough\nin/b.dough\n',
      stderr: '',
    });
    expect([read('a.dough'), read('in/b.dough'), read('in/c.dough')]).toEqual([tidy, tidy, tidy]);
    expect(await doughwright(path, 'format', '.')).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(readdirSync(path).sort()).toEqual(['a.dough', 'in']);
  });

  it('with --check writes nothing and ends with 1 when something would change', async () => {
    const { path } = folderWith({ 'a.dough': careless, 'b.dough': tidy });
    expect(await doughwright(path, 'format', '--check', '.')).toEqual({
      code: 1,
      stdout: 'a.dough\n',
      stderr: '',
    });
    expect(readFileSync(join(path, 'a.dough'), 'utf8')).toBe(careless);
    expect(await doughwright(path, 'format', '--check', 'b.dough')).toEqual({
      code: 0,
      stdout: '',
      stderr: '',
    });
  });

  it('keeps line endings and a byte order mark', async () => {
    const { path } = folderWith({ 'a.dough': `\uFEFF${careless.replaceAll('\n', '\r\n')}` });
    await doughwright(path, 'format', 'a.dough');
    expect(readFileSync(join(path, 'a.dough'), 'utf8')).toBe(`\uFEFF${tidy.replaceAll('\n', '\r\n')}`);
  });

  it('keeps the mode of a file, and a link to it', async () => {
    const { path } = folderWith({ 'real/a.dough': careless });
    const real = join(path, 'real/a.dough');
    chmodSync(real, 0o640);
    symlinkSync('real/a.dough', join(path, 'link.dough'));
    expect((await doughwright(path, 'format', 'link.dough')).code).toBe(0);
    expect(lstatSync(join(path, 'link.dough')).isSymbolicLink()).toBe(true);
    expect(readFileSync(real, 'utf8')).toBe(tidy);
    expect(statSync(real).mode & 0o777).toBe(0o640);
    expect(readdirSync(join(path, 'real'))).toEqual(['a.dough']);
  });

  it('leaves a file that is not UTF-8 as it is, says which line, and does the rest', async () => {
    const latin = Buffer.concat([
      Buffer.from('formula A:\n  cr'),
      Buffer.from([0xe8]),
      Buffer.from('me 3%\n'),
    ]);
    const { path } = folderWith({ 'a.dough': latin, 'b.dough': careless });
    const { code, stdout, stderr } = await doughwright(path, 'format', '.');
    expect([code, stdout]).toEqual([2, 'b.dough\n']);
    expect(stderr).toMatch(/^doughwright: a\.dough: line 2: this is not UTF-8.*\n$/);
    expect(readFileSync(join(path, 'a.dough')).equals(latin)).toBe(true);
  });

  it('does the rest where a path is missing, and ends with 2', async () => {
    const { path } = folderWith({ 'a.dough': careless });
    const { code, stdout, stderr } = await doughwright(path, 'format', 'no.dough', 'a.dough');
    expect([code, stdout]).toEqual([2, 'a.dough\n']);
    expect(stderr).toMatch(/^doughwright: no\.dough: .*\n$/);
  });

  it('leaves the file whole where writing fails half-way, for everybody and for root too', async () => {
    const { path } = folderWith({ [`${'a'.repeat(240)}.dough`]: careless });
    const name = `${'a'.repeat(240)}.dough`;
    const { status, stderr } = spawnSync(
      'sh',
      ['-c', 'ulimit -f 0; exec "$@"', 'sh', nodeProgram, commandLineProgram(), 'format', name],
      { cwd: path, encoding: 'utf8' },
    );
    expect(status).toBe(2);
    expect(stderr).toMatch(/^doughwright: a+\.dough: it could not be written, and is as it was: .*\n$/);
    expect(readFileSync(join(path, name), 'utf8')).toBe(careless);
    expect(readdirSync(path)).toEqual([name]);
    expect((await doughwright(path, 'format', name)).code).toBe(0);
    expect(readFileSync(join(path, name), 'utf8')).toBe(tidy);
  });
});
