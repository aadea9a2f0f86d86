import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { partsOf } from './parts.ts';

const file = 'file:///quay-lane/one.dough';

function blocksOf(text: string) {
  const service = createService();
  service.setText(file, text);
  return partsOf(service.sheet(file, 0, {})!).blocks;
}

// Two kilograms of flour want 20 g of fresh yeast, and the sponge takes so much of it.
const sponge = (yeast: string, mix = '') =>
  blocksOf(
    `formula Quay Sponge:\n  bread flour  2 kg\n  water  1.3 kg\n  salt  40 g\n  fresh yeast  20 g\n\n` +
      `preferment sponge:\n  draws 50% of flour\n  bread flour  100%\n  water  60%\n  fresh yeast  ${yeast}\n${mix}`,
  );
const mixed =
  '\nmix in spiral:\n  load flour, water, sponge\n  add fresh yeast\n  speed 1 for 4 min\n  add salt\n  speed 2 for 4 min\n';

describe('what the drawn part took whole', () => {
  it.each([
    ['to the gram', '2%', ''],
    ['to the gram, with a programme', '2%', mixed],
    ['but for a hair', '1.997%', ''],
    ['but for a hair, with a programme', '1.997%', mixed],
  ])('%s is no line in the bowl, and the sheet says where it is', (_, yeast, mix) => {
    const [part, bowl, ...later] = sponge(yeast, mix);
    expect(part!.rows.map(({ name }) => name)).toContain('fresh yeast');
    expect([bowl!, ...later].flatMap(({ rows }) => rows.map(({ name }) => name))).not.toContain(
      'fresh yeast',
    );
    expect(bowl!.note).toBe('all of the fresh yeast is in the sponge');
    expect(later.map(({ note }) => note).filter((note) => note !== undefined)).toEqual([]);
    for (const { rows } of [bowl!, ...later]) expect(rows.length).toBeGreaterThan(0);
  });

  it('is a line again as soon as there is something to weigh', () => {
    for (const mix of ['', mixed]) {
      const [, bowl, ...later] = sponge('1.99%', mix);
      expect(bowl!.note).toBeUndefined();
      const yeast = [bowl!, ...later].flatMap(({ rows }) => rows).find(({ name }) => name === 'fresh yeast');
      expect(yeast?.weigh?.grams).toBeCloseTo(0.1, 9);
    }
  });
});

describe('what is too little for any scale', () => {
  it('is said to be there, and is no line of 0 g', () => {
    const [bowl] = blocksOf(
      'formula Quay Test:\n  bread flour  100 g\n  water  65 g\n  salt  2 g\n  instant yeast  0.03 g\n',
    );
    expect(bowl!.rows.map(({ name }) => name)).toEqual(['bread flour', 'water', 'salt']);
    expect(bowl!.note).toBe('less than 0.05 g of instant yeast, too little to weigh');
  });
});
