import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { repositoryIn } from './repository.ts';
import { doughwright } from './run.ts';

const example = (name: string): string =>
  readFileSync(join(import.meta.dirname, '..', '..', 'examples', name), 'utf8');

const files = {
  'bakery.dough': example('bakery.dough'),
  'flours.dough': example('flours.dough'),
  'bench.dough': example('bench.dough'),
};
const wet = ['bench.dough', '--formula', 'Bench White', 'Bench Wet'];

describe('doughwright overlay', () => {
  it('sets formulas side by side, in the order in which they are named', async () => {
    const { path } = folderWith(files);
    const { code, stdout, stderr } = await doughwright(path, 'overlay', ...wet);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/figure +Bench White +Bench Wet\n/);
    expect(stdout).toMatch(/Hydration +65% +75%\n/);
    // Wetter dough takes longer: more water lets gluten form more slowly. Common practice, no source.
    const [white, wetter] = /Developed from +(\d+)–\d+ min +(\d+)–/.exec(stdout)!.slice(1).map(Number);
    expect(wetter).toBeGreaterThan(white!);
  });

  it('draws them in one chart, each with its own dashes and its name', async () => {
    const { path } = folderWith(files);
    const { stdout } = await doughwright(path, 'overlay', ...wet, 'Bench Wholemeal', '--format', 'html');
    const [svg = ''] = /<svg[\s\S]*<\/svg>/.exec(stdout) ?? [];
    const lines = svg.match(/<polyline[^>]*>/g) ?? [];
    expect(lines).toHaveLength(3);
    const dashes = lines.map((line) => /stroke-dasharray="([^"]*)"/.exec(line)?.[1] ?? 'none');
    expect(new Set(dashes).size).toBe(3);
    for (const name of ['Bench White', 'Bench Wet', 'Bench Wholemeal'])
      expect(svg.split(`>${name}<`).length - 1, name).toBe(2);
  });

  it('lays a formula over itself as a revision of git has it', async () => {
    const { path, git, commit } = repositoryIn(folderWith(files));
    git('init', '--quiet', '--initial-branch=main');
    commit('Begin');
    const file = join(path, 'bench.dough');
    writeFileSync(file, readFileSync(file, 'utf8').replace('75%, at 9 °C', '82%, at 9 °C'));
    const wetter = ['bench.dough', '--formula', 'bench wet', '--revision', 'HEAD'];
    const { code, stdout } = await doughwright(path, 'overlay', ...wetter);
    expect(code).toBe(0);
    expect(stdout).toMatch(/figure +Bench Wet +Bench Wet, HEAD\n/);
    expect(stdout).toMatch(/Hydration +82% +75%\n/);
    const json = await doughwright(path, 'overlay', ...wetter, '--format', 'json');
    expect(JSON.parse(json.stdout)).toMatchObject([
      { name: 'Bench Wet', file: 'bench.dough' },
      { name: 'Bench Wet, HEAD', revision: 'HEAD' },
    ]);
    writeFileSync(file, `${readFileSync(file, 'utf8')}\nformula New:\n  strong white 1 kg\n`);
    const absent = await doughwright(
      path,
      'overlay',
      'bench.dough',
      '--formula',
      'New',
      '--revision',
      'HEAD',
    );
    expect(absent).toMatchObject({
      code: 2,
      stderr: expect.stringContaining('“New” is not in the file as HEAD has it.'),
    });
  });

  it('says in one sentence what it cannot do, and 1 where a formula has no curve', async () => {
    const { path } = folderWith({
      ...files,
      'bare.dough': 'formula Bare:\n  strong white 1 kg\n  water 600 g\n',
    });
    const one = await doughwright(path, 'overlay', 'bench.dough', '--formula', 'Bench Wet');
    expect(one).toMatchObject({ code: 2, stderr: expect.stringMatching(/Name two formulas at least/) });
    const unknown = await doughwright(path, 'overlay', 'bench.dough', '--formula', 'Nope', 'Bench Wet');
    expect(unknown).toMatchObject({ code: 2, stderr: expect.stringMatching(/no formula “Nope” in here/) });
    const bare = await doughwright(path, 'overlay', '.', '--formula', 'Bare', 'Bench Wet');
    expect(bare.code).toBe(1);
    expect(bare.stdout).toMatch(/Hydration +60% +75%\n/);
    expect(bare.stdout).toMatch(/“Bare” has no curve: /);
  });
});
