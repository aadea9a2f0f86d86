import { describe, expect, it } from 'vitest';
import { createService, type SheetOptions } from '../../core/index.ts';
import { partsOf } from './parts.ts';

// Invented formula; what a trial may say is the rules' to test.
const uri = 'file:///quay/tin.dough';
const text = `formula Harbour Tin:
  yield 40 pieces of 620 g
  strong white       100%
  water              67%
  salt               2%
  fresh yeast        0.8%

preferment poolish:
  draws 25% of flour
  strong white       100%
  water              100%
  instant yeast      0.1%
  ferment 12 h at 18 °C

mix in little spiral:
  load flour, water, salt, fresh yeast, poolish
  speed 1 for 10 min

trial 2026-02-11:
  end        23.8 °C
  dough 24.8 kg

mixer little spiral:
  kind spiral
  bowl 1 kg to 9 kg
`;

describe('a sheet that is tried at another size', () => {
  it('holds no trial against it: that was of the formula in the file', () => {
    const tried = sheet({ size: { by: 'pieces', pieces: 34 } });
    expect(tried.tried).toBe(true);
    expect(tried.findings.filter(({ code }) => code === 'trial-contradicts')).toEqual([]);
  });

  it('still tells what is wrong with a trial', () => {
    const wrong = text.replace('dough 24.8 kg', 'dough 24.8 kg\n  baked 25 kg');
    const codes = (asked: SheetOptions) => sheet(asked, wrong).findings.map(({ code }) => code);
    expect(codes({})).toContain('trial-contradicts');
    expect(codes({ size: { by: 'pieces', pieces: 80 } })).toContain('trial-contradicts');
  });

  it('tells of a preferment the weights that its block has, made once for all batches', () => {
    const { batches, blocks, findings } = sheet({ size: { by: 'pieces', pieces: 80 } });
    expect(batches.count).toBeGreaterThan(1);
    const yeast = blocks[0]!.rows.find(({ name }) => name === 'instant yeast')!;
    const [said] = findings.filter(({ line }) => line === yeast.line);
    expect(said?.message).toContain(`the ${yeast.weigh!.grams.toFixed(1)} g that`);
  });

  it('still counts in the pieces of the file, whatever it is sized by', () => {
    for (const size of [
      { by: 'dough', grams: 12_400 },
      { by: 'onHand', ingredient: 'salt', grams: sheet({}).size.ingredients[2]!.grams / 2 },
    ] as const) {
      const tried = sheet({ size });
      expect(tried.makes).toContain('20 pieces of 620 g');
      expect(tried.size.pieces).toBeCloseTo(20, 9);
    }
  });
});

function sheet(asked: SheetOptions, said = text) {
  const service = createService();
  service.setText(uri, said);
  return partsOf(service.sheet(uri, 0, asked)!);
}
