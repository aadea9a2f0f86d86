import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const files = {
  'flours.dough': [
    'flour sea white:',
    '  like bread flour',
    '  protein 14% at 14% moisture',
    '  moisture 14%',
    '  price 0.90 EUR per kg',
    'flour land white:',
    '  like cake flour',
    '  protein 10% at 14% moisture',
    '  moisture 14%',
    '  price 0.60 EUR per kg',
    '',
  ].join('\n'),
};

describe('doughwright blend', () => {
  it('writes the cheapest shares that reach a protein', async () => {
    const { path } = folderWith(files);
    const { code, stdout, stderr } = await doughwright(
      path,
      'blend',
      'sea white',
      'land white',
      '--protein',
      '12.5%',
      '--json',
    );
    expect([code, stderr]).toEqual([0, '']);
    const blend = JSON.parse(stdout);
    // Pearson square, common practice: 2.5 parts to 1.5.
    expect(blend.flours[0]).toEqual({ name: 'sea white', share: expect.closeTo(0.625, 9) });
    expect(blend.proteinAt14PercentMoisture).toBeCloseTo(0.125, 9);
    expect(blend.pricePerKilogram).toBeCloseTo(0.625 * 0.9 + 0.375 * 0.6, 9);
    expect(blend.currency).toBe('EUR');
  });

  it('says why there is none', async () => {
    const { path } = folderWith(files);
    const far = await doughwright(path, 'blend', 'sea white', 'land white', '--protein', '15');
    expect([far.code, far.stdout]).toEqual([1, '']);
    expect(far.stderr).toBe(
      'doughwright: no blend: these flours reach from 10% to 14% of protein at 14% moisture, and 15% is wanted.\n',
    );
    const nobody = await doughwright(path, 'blend', 'see white', '--protein', '12');
    expect(nobody.stderr).toBe('doughwright: no blend: “see white” is not defined.\n');
    const alone = await doughwright(path, 'blend', 'sea white', '--protein', '12');
    expect(alone.stderr).toContain(
      'all of these flours have 14% of protein at 14% moisture, and 12% is wanted',
    );
    const dark = await doughwright(path, 'blend', 'sea white', 'land white', '--most-ash', '0.1');
    expect(dark.stderr).toMatch(
      /the least ash of these flours is 0\.\d+% of dry matter, and no more than 0\.1%/,
    );
    const unpriced = await doughwright(path, 'blend', 'sea white', 'cake flour', '--protein', '12');
    expect(unpriced.stderr).toBe(
      'doughwright: no blend: “cake flour” has no price; write what is missing, or take --nearest, for which prices do not count.\n',
    );
  });
});
