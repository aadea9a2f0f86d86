import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

// 10 pieces of 840 g are 8.4 kg of dough. With percentages that sum to 168 %, 1 % weighs 50 g: 5000 g flour, 3300 g
// water, 100 g salt. The arithmetic of baker's percentages: common practice, no source.
const formula = `formula Quay Round:
  yield 10 pieces of 840 g
  strong white   100%
  water          66%
  salt           2%
`;
/** Nothing can be solved: the amount of the flour is not known yet. */
const unresolved = 'formula Half Typed:\n  strong white\n  water   to 66% hydration\n';

describe('doughwright totals', () => {
  it('writes the totals as JSON, with the unit in each name', async () => {
    const { path } = folderWith({ 'in/a.dough': formula });
    const { code, stdout, stderr } = await doughwright(path, 'totals', '--json', 'in/a.dough');
    expect(stderr).toBe('');
    const [totals, ...others] = JSON.parse(stdout);
    expect(others).toEqual([]);
    expect(totals).toMatchObject({ file: 'in/a.dough', formula: 'Quay Round', pieces: 10, pieceGrams: 840 });
    expect(totals.doughGrams).toBeCloseTo(8400, 6);
    expect(totals.flourGrams).toBeCloseTo(5000, 6);
    expect(totals.hydration).toBeCloseTo(0.66, 9);
    const water = totals.overall.find(({ role }: { role: string }) => role === 'water');
    expect(water.fraction).toBeCloseTo(0.66, 9);
    expect(water.grams).toBeCloseTo(3300, 6);
    expect(totals).not.toHaveProperty('resolved');
    expect(stdout).not.toContain('null');
    expect(code).toBe(0);
  });

  it('writes them for a baker to read', async () => {
    const { path } = folderWith({ 'a.dough': formula });
    const { code, stdout, stderr } = await doughwright(path, 'totals', 'a.dough');
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Quay Round {2}a\.dough$/m);
    expect(stdout).toMatch(/makes +10 pieces of 840 g, 8.4 kg of dough/);
    expect(stdout).toMatch(/hydration +66%/);
    expect(stdout).toMatch(/salt +2%/);
    expect(stdout).toMatch(/strong white +100% +5000 g/);
    expect(stdout).toMatch(/water +66% +3300 g/);
    expect(stdout).not.toMatch(/NaN|undefined|null/);
  });

  it('writes out every figure of the demo bakery', async () => {
    const { code, stdout } = await doughwright(process.cwd(), 'totals', '--label', 'examples');
    expect(code).toBe(0);
    expect(stdout).toMatch(/heat of hydration +\+\d\.\d °C/);
    expect(stdout).toMatch(/rule of thumb/i);
    // A soaker that takes all of the linseed leaves none to weigh.
    expect(stdout).not.toMatch(/ 0% +0(\.0+)? g/);
    expect(stdout).not.toMatch(/NaN|undefined|null/);
  });

  it('is the same each time, formulas in the order of files and lines', async () => {
    const { path } = folderWith({
      'b.dough': formula,
      'a.dough': formula.replace('Round', 'Crown'),
      'c/d.dough': formula.replace('Round', 'Plait'),
    });
    const first = await doughwright(path, 'totals', '--json', '.');
    expect(JSON.parse(first.stdout).map(({ formula: name }: { formula: string }) => name)).toEqual([
      'Quay Crown',
      'Quay Round',
      'Quay Plait',
    ]);
    expect((await doughwright(path, 'totals', '--json', '.')).stdout).toBe(first.stdout);
  });

  it('ends with 1 where a formula does not resolve, and still writes the others', async () => {
    const { path } = folderWith({ 'a.dough': formula, 'b.dough': unresolved });
    const { code, stdout } = await doughwright(path, 'totals', '--json', '.');
    expect(code).toBe(1);
    expect(JSON.parse(stdout)).toHaveLength(2);
  });

  it('says so where there is no formula', async () => {
    const { path } = folderWith({ 'flours.dough': 'flour dock white:\n  grain wheat\n' });
    const { code, stderr } = await doughwright(path, 'totals', 'flours.dough');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^doughwright: flours\.dough: no formula in here; .*“formula NAME:”\.\n$/);
  });

  it('leaves out what cannot be read, and says so', async () => {
    const { path } = folderWith({ 'a.dough': formula });
    const { code, stdout, stderr } = await doughwright(path, 'totals', 'nope.dough', 'a.dough');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^doughwright: nope\.dough: /);
    expect(stdout).toMatch(/Quay Round/);
  });

  it('tells the culture among what a part is made of, so that its lines add up', async () => {
    const { path } = folderWith({
      'a.dough':
        'formula Quay Rye:\n  yield 4 kg\n  rye 1150 100%\n  water 70%\n  salt 2%\n  sour 40%\n' +
        'preferment sour:\n  rye 1150 100%\n  water 80%\n  ripe culture 20%\n  keep back 100 g\n',
    });
    const { stdout } = await doughwright(path, 'totals', '--json', 'a.dough');
    const sour = JSON.parse(stdout)[0].parts[1];
    // 100 rye, 80 water and 20 culture are 200: a tenth of the sour is culture.
    const culture = sour.lines.find(({ name }: { name: string }) => name === 'ripe culture');
    expect(culture.fraction).toBeCloseTo(0.2, 9);
    expect(culture.grams).toBeCloseTo(sour.totalGrams / 10, 6);
    const sum = sour.lines.reduce((all: number, { grams }: { grams: number }) => all + grams, 0);
    expect(sum).toBeCloseTo(sour.totalGrams, 6);
  });

  it('tells what is folded in beside the dough, by the word of its section', async () => {
    const { path } = folderWith({
      'a.dough':
        'ingredient dock butter:\n  like butter\n  price 8.00 EUR per kg\n' +
        'flour dock white:\n  like bread flour\n  price 1.00 EUR per kg\n' +
        'formula Quay Crescent:\n  yield 20 pieces of 100 g\n  dock white 100%\n  water 50%\n  sheet of butter 50%\n' +
        'part sheet of butter:\n  dock butter 100%\nprocess:\n  enclose sheet of butter\n',
    });
    const { stdout } = await doughwright(path, 'totals', 'a.dough');
    // 2 kg are 200 parts: 1 kg flour, 500 g water, 500 g butter. 1 EUR and 4 EUR for 2 kg.
    expect(stdout).toMatch(/20 pieces of 100 g, 1.5 kg of dough with 500 g folded in$/m);
    expect(stdout).toMatch(/^ +sheet of butter \(part, folded in\)$/m);
    expect(stdout).toMatch(/5\.00 EUR a batch, 2\.50 EUR per kg of dough/);
  });

  it('weighs nothing of a balance that a part takes whole', async () => {
    const { path } = folderWith({
      'a.dough':
        'formula Quay Crown:\n  yield 37 pieces of 420 g\n  bread flour 80%\n  medium rye balance\n  water 60%\n  salt 2%\n' +
        'preferment sour:\n  draws all medium rye\n  medium rye 100%\n  water 80%\n  ripe culture 10%\n',
    });
    const { stdout } = await doughwright(path, 'totals', '--json', 'a.dough');
    const bowl = JSON.parse(stdout)[0].parts[0];
    expect(bowl.lines.map(({ name }: { name: string }) => name)).not.toContain('medium rye');
  });
});
