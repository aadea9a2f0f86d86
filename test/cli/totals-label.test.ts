import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const files = {
  'bakery.dough': 'bakery Quay Lane:\n  label US\n',
  'flours.dough': [
    'flour dock white:',
    '  like bread flour',
    '  price 0.80 EUR per kg',
    'ingredient dock salt:',
    '  like salt',
    '  price 0.50 EUR per kg',
    '',
  ].join('\n'),
  'a.dough': [
    'formula Quay Tin:',
    '  yield 2 pieces of 810 g',
    '  bake loss 10%',
    '  dock white 100%',
    '  water 60%',
    '  dock salt 2%',
    '',
  ].join('\n'),
};

describe('doughwright totals, label and cost', () => {
  it('writes the cost where prices exist, and the label only when asked', async () => {
    const { path } = folderWith(files);
    const plain = await doughwright(path, 'totals', 'a.dough');
    expect([plain.code, plain.stderr]).toEqual([0, '']);
    // 1000 g at 0.80 and 20 g at 0.50 EUR a kilogram are 0.81 EUR for two pieces.
    expect(plain.stdout).toMatch(/0\.41 EUR a piece, 0\.81 EUR a batch/);
    expect(plain.stdout).not.toMatch(/label draft/);
    const { stdout } = await doughwright(path, 'totals', '--label', 'a.dough');
    expect(stdout).toMatch(/label draft \(US\)/);
    expect(stdout).toMatch(/dock white \(WHEAT\), water, dock salt\./);
    // 1000 g flour with 2 mg, 600 g water with 4 mg and 20 g salt with 38,758 mg of sodium in 100 g (USDA SR27), baked to
    // 1458 g: 534.7 mg in 100 g, and to tens above 140 (21 CFR 101.9(c)(4)).
    expect(stdout).toMatch(/sodium +530 mg/);
    expect(stdout).toMatch(/too little for 21 CFR 136\.110/);
    expect(stdout).toMatch(/The producer answers for the label/);
    expect(stdout).not.toMatch(/NaN|undefined|null/);
  });

  it('has both in the JSON, with the unit in each name', async () => {
    const { path } = folderWith(files);
    const { stdout } = await doughwright(path, 'totals', '--json', 'a.dough');
    const [one] = JSON.parse(stdout);
    expect(one.label).toMatchObject({ regime: 'US', kind: 'bread', meetsSolids: false });
    expect(one.label.bakedPieceGrams).toBeCloseTo(729, 6);
    expect(one.label.allergens.eu).toEqual(['cereals containing gluten']);
    expect(one.cost).toMatchObject({ currency: 'EUR', waterNotCharged: true });
    expect(stdout).not.toContain('null');
  });

  it('writes no cost where nobody wrote a price', async () => {
    const { path } = folderWith({
      'a.dough': files['a.dough'].replaceAll('dock ', '').replace('white', 'bread flour'),
    });
    const { stdout } = await doughwright(path, 'totals', 'a.dough');
    expect(stdout).not.toMatch(/cost/i);
    const [one] = JSON.parse((await doughwright(path, 'totals', '--json', 'a.dough')).stdout);
    expect(one).not.toHaveProperty('cost');
  });

  it('writes both ends of a range with the places that the label would print', async () => {
    const { path } = folderWith({
      'a.dough':
        'ingredient quay butter:\n  water 16%\n  fat 82%\n' +
        'formula Quay Bun:\n  yield 10 pieces of 200 g\n  bake loss 10%\n' +
        '  bread flour 100%\n  water 50%\n  quay butter 20%\n  salt 2%\n',
    });
    const { stdout } = await doughwright(path, 'totals', '--label', 'a.dough');
    const ranges = stdout.match(/[\d.]+–[\d.]+ \w+/g) ?? [];
    expect(ranges.length).toBeGreaterThan(2);
    for (const range of ranges) {
      const [, low, high, unit] = /^([\d.]+)–([\d.]+) (\w+)$/.exec(range)!;
      for (const end of [low!, high!]) {
        // EU guidance of December 2012, from memory: whole kJ and kcal, whole grams from ten up, tenths below.
        const isWhole = unit !== 'g' || Number(end) >= 10;
        expect(`${range}: ${end}`).toMatch(isWhole ? /: \d+$/ : /: \d\.\d$/);
      }
    }
  });

  it('says what a price that cannot be used lacks', async () => {
    const { path } = folderWith({
      ...files,
      'a.dough': `ingredient dock drops:\n  water 90%\n  price 0.05 EUR per ml\n\n${files['a.dough']}  dock drops 1%\n`,
    });
    const { stdout } = await doughwright(path, 'totals', '--label', 'a.dough');
    expect(stdout).toContain(
      'no usable price or weight for dock drops. “dock drops” is priced by volume: state its density in its section.',
    );
    expect(stdout).toMatch(/A piece of 729 g is bread \(21 CFR 136\.3\)/);
    const rolls = { ...files, 'a.dough': files['a.dough'].replace('810 g', '100 g') };
    const small = await doughwright(folderWith(rolls).path, 'totals', '--label', 'a.dough');
    expect(small.stdout).toMatch(/A piece of 90 g is a roll or bun \(21 CFR 136\.3\)/);
  });
});
