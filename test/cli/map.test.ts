import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const loaf = (name: string, flour: string): string =>
  [
    `formula ${name}:`,
    '  yield 20 kg',
    `  ${flour}  100%`,
    '  water  65%',
    '  salt  2%',
    '',
    'mix in spiral:',
    `  load ${flour}, water, salt`,
    '  speed 1 for 4 min',
    '  speed 2 for 4 min',
    '',
  ].join('\n');

const files = {
  'tin.dough': loaf('Quay Tin', 'bread flour'),
  'rye.dough': loaf('Quay Rye', 'medium rye'),
  'two.dough': `${loaf('Quay Tin', 'bread flour')}\n${loaf('Quay Slab', 'wholemeal wheat')}`,
  'none.dough': 'flour harbour:\n  grain wheat\n',
};

describe('doughwright map', () => {
  it('writes the map for people, with its table and its letters', async () => {
    const { path } = await folderWith(files);
    const { code, stdout, stderr } = await doughwright(path, 'map', 'tin.dough');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^Quay Tin, in spiral: the map of the gap\n/);
    expect(stdout).toContain('65% (this formula)');
    expect(stdout).toMatch(/^ +65% \.+[.o]*@/m);
  });

  it('draws what the guide shows', async () => {
    const page = readFileSync(join(projectFolder, 'docs/guide/mixing-and-process.md'), 'utf8');
    const shown =
      /## The map of the gap[\s\S]*?^```text\n([\s\S]*?)^```$/m.exec(page)?.[1]?.trimEnd().split('\n') ?? [];
    expect(shown.length).toBeGreaterThan(4);
    const { stdout } = await doughwright(
      projectFolder,
      'map',
      'examples/formulas/ferry-loaf.dough',
      '--against',
      'flour',
    );
    const drawn = stdout.split('\n');
    expect(shown.filter((line) => !drawn.includes(line))).toEqual([]);
  });

  it('draws against another flour, and against speed, up to a minute', async () => {
    const { path } = await folderWith(files);
    const flour = await doughwright(
      path,
      'map',
      '--flour',
      'wholemeal wheat',
      '--minutes',
      '40',
      'tin.dough',
    );
    expect(flour.stdout).toContain('wholemeal wheat instead of bread flour');
    expect(flour.stdout).toContain('40 min');
    const speed = await doughwright(path, 'map', '--against', 'speed', '--format', 'csv', 'tin.dough');
    expect(speed.stdout.trim().split('\r\n')).toHaveLength(3);
  });

  it('writes a drawing into a file whose name ends so, of one formula', async () => {
    const { path } = await folderWith(files);
    expect((await doughwright(path, 'map', '--out', 'gap.svg', 'tin.dough')).code).toBe(0);
    expect(readFileSync(join(path, 'gap.svg'), 'utf8')).toMatch(/^<svg .*<title>Quay Tin/s);
    const two = await doughwright(path, 'map', '--format', 'svg', 'two.dough');
    expect(two.code).toBe(2);
    expect(two.stderr).toContain('--formula which of Quay Tin and Quay Slab');
    const slab = await doughwright(path, 'map', '--format', 'svg', '--formula', 'quay slab', 'two.dough');
    expect(slab.stdout).toContain('<title>Quay Slab');
  });

  it('says why there is none, and ends with 1', async () => {
    const { path } = await folderWith(files);
    const rye = await doughwright(path, 'map', 'rye.dough');
    expect(rye).toMatchObject({ code: 1, stdout: '' });
    expect(rye.stderr).toMatch(
      /rye\.dough:1: There is no map of the gap for Quay Rye: more than 40% of the flour/,
    );
    const dust = await doughwright(path, 'map', '--flour', 'harbour dust', 'tin.dough');
    expect(dust).toMatchObject({ code: 1 });
    expect(dust.stderr).toContain('no flour is called “harbour dust”');
  });

  it('takes nothing for an answer that is none', async () => {
    const { path } = await folderWith(files);
    expect(await doughwright(path, 'map', 'none.dough')).toMatchObject({ code: 2, stdout: '' });
    const lacking = await doughwright(path, 'map', '--formula', 'Nowhere', 'two.dough');
    expect(lacking).toMatchObject({ code: 2, stdout: '' });
    expect(lacking.stderr).toContain('Quay Slab');
    const minutes = await doughwright(path, 'map', '--minutes', '0', 'tin.dough');
    expect(minutes).toMatchObject({ code: 2, stdout: '' });
    expect(minutes.stderr).toContain('Write minutes above 0');
  });

  it('draws what the guide shows, in both languages of it', async () => {
    const project = join(import.meta.dirname, '..', '..');
    const { stdout } = await doughwright(
      project,
      'map',
      '--against',
      'flour',
      'examples/formulas/ferry-loaf.dough',
    );
    for (const folder of ['docs/guide', 'docs/de/guide']) {
      const page = readFileSync(join(project, folder, 'mixing-and-process.md'), 'utf8');
      const shown = /^```text\n([\s\S]*?)^```/m.exec(page)![1]!.trimEnd().split('\n');
      expect(shown).toHaveLength(6);
      for (const line of shown) expect(stdout.split('\n')).toContain(line);
    }
  });

  it('speaks German', async () => {
    const { path } = await folderWith(files);
    const { stdout } = await doughwright(path, 'map', '--language', 'de', 'tin.dough');
    expect(stdout).toContain('die Karte der Knettoleranz');
    expect(stdout).toMatch(/65\s% \(diese Rezeptur\)/);
  });
});
