import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { partsOf } from './parts.ts';

const file = 'file:///quay-lane/one.dough';

function blocksOf(text: string) {
  const service = createService();
  service.setText(file, text);
  return partsOf(service.sheet(file, 0, {})!).blocks;
}

const mix = '\nmix in small spiral:\n  load all\n  speed 1 for 4 min\n  speed 2 for 8 min\n';
const mixer =
  '\nmixer small spiral:\n  kind spiral\n  bowl 1 kg to 60 kg\n  speed 1 100 rpm\n  speed 2 200 rpm\n';
const warm =
  '\nbakery Quay Lane:\n  room 33 °C\n  flour 32 °C\n  tap water 20 °C\n  ice to hand\n  scale step 1 g\n';

describe('ice on the sheet', () => {
  const loaf = (bakery: string) =>
    blocksOf(
      `formula Quay Tin:\n  dough temperature 24 °C\n  bread flour  10 kg\n  water  6.5 kg\n  salt  200 g\n  fresh yeast  200 g\n${mix}${mixer}${bakery}`,
    )[0]!;
  it('is a row of its own beside the water from the tap, and they are the water of the formula', () => {
    const rows = loaf(warm).rows;
    const [water, ice] = ['water', 'ice'].map((name) => rows.find((row) => row.name === name));
    expect(ice!.weigh!.grams).toBeGreaterThan(500);
    expect(water!.weigh!.grams + ice!.weigh!.grams).toBeCloseTo(6500, 6);
    expect(water!.note).toBe('from the tap, at 20 °C');
    expect(ice!.line).toBe(water!.line);
  });
  it('is none where the bakery has none', () => {
    expect(loaf(warm.replace('  ice to hand\n', '')).rows.map(({ name }) => name)).not.toContain('ice');
  });
});

describe('a column of weights', () => {
  const units = (kilograms: number, more = '') =>
    blocksOf(
      `formula Quay Tin:\n  bread flour  ${kilograms} kg\n  water  ${kilograms * 0.65} kg\n  salt  ${kilograms * 20} g\n${more}`,
    )[0]!;
  it('has one unit', () => {
    for (const kilograms of [1, 5.9, 6.1, 9.9, 30]) {
      const { rows, total } = units(kilograms);
      const all = [...rows.flatMap((row) => [row.weigh!.unit, row.scaleReads!.unit]), total!.unit];
      expect(new Set(all)).toEqual(new Set([kilograms > 6 ? 'kg' : 'g']));
    }
  });
  it('says of what the scale cannot show that it goes on a finer one, and leaves it in grams', () => {
    const { rows } = units(30, '  instant yeast  6.4 g\n');
    const yeast = rows.find(({ name }) => name === 'instant yeast')!;
    expect([yeast.weigh!.figure, yeast.weigh!.unit, yeast.note]).toEqual(['6.4', 'g', 'on a finer scale']);
    expect(rows.filter(({ note }) => note !== undefined)).toEqual([yeast]);
  });
});

describe('salt that goes in later', () => {
  // 4 pieces of 880 g and 1.5% lost are 3573.6 g: 2108.3 g of flour by baker's arithmetic (common practice), of which 2% are 42.2 g.
  const late = (load: string, add: string) =>
    blocksOf(
      `formula Weekday Tin:\n  yield 4 pieces of 880 g\n  loss 1.5%\n  bread flour 90%\n  wholemeal wheat 10%\n  water 66%\n  salt 2%\n  fresh yeast 1.5%\n\nmix by hand:\n  load ${load}\n  stir 3 min\n  add ${add}\n  knead 9 min\n`,
    );
  const gramsOf = (blocks: ReturnType<typeof late>) =>
    blocks.flatMap(({ rows }) => rows.map(({ name, weigh }) => [name, Number(weigh!.figure)] as const));

  it('weighs what it does beside the flour: what is left over goes to the heaviest line of all', () => {
    const blocks = late('flour, water, fresh yeast', 'salt');
    const grams = new Map(gramsOf(blocks));
    expect(grams.get('salt')).toBe(42);
    expect(grams.get('fresh yeast')).toBe(32);
    expect(blocks.at(-1)!.rows.at(-1)!.scaleReads!.figure).toBe('3574');
    expect([...grams.values()].reduce((sum, one) => sum + one, 0)).toBe(3574);
  });
  it('as if all went in at once', () => {
    const inOrder = (blocks: ReturnType<typeof late>) =>
      gramsOf(blocks).sort(([one], [other]) => one.localeCompare(other));
    const atOnce = inOrder(late('flour, water, salt', 'fresh yeast'));
    expect(inOrder(late('flour, water, fresh yeast', 'salt'))).toEqual(atOnce);
    expect(inOrder(late('flour', 'water, salt, fresh yeast'))).toEqual(atOnce);
  });
});

describe('a scald on the sheet', () => {
  it('is weighed in with the water that steams away, and says what is left', () => {
    const [scald, bowl] = blocksOf(
      'formula Rye:\n  bread flour  1 kg\n  water  600 g\n  rye scald  450 g\n\nscald rye scald:\n  medium rye  100%\n  water  400%\n  cook at 95 °C\n  cooking loss 10%\n',
    );
    expect(scald!.rows.map(({ weigh }) => weigh!.figure)).toEqual(['100', '400']);
    expect(scald!.note).toBe('50 g steams away while it cooks: 450 g is left');
    expect(bowl!.rows.find(({ name }) => name === 'rye scald')!.weigh!.figure).toBe('450');
  });
});
