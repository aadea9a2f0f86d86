import { describe, expect, it } from 'vitest';
import { columnsOf, padEndTo, padStartTo } from '../../core/text/text-width.ts';

// Widths as Unicode Standard Annex #11, East Asian Width, has them: W and F take two columns; marks that stand on a letter take none.
describe('the columns of a text', () => {
  it.each([
    ['', 0],
    ['strong white', 12],
    ['Weizenmehl Übergröße', 20],
    ['pâte', 4],
    ['pa\u0302te', 4],
    ['小麦粉', 6],
    ['밀가루 1', 8],
    ['🥖', 2],
    ['קמח לבן', 7],
  ])('%j takes %i', (text, columns) => {
    expect(columnsOf(text)).toBe(columns);
  });

  it('fills up to a column at either side, and cuts nothing', () => {
    expect(padEndTo('小麦粉', 8)).toBe('小麦粉  ');
    expect(padStartTo('2%', 5)).toBe('   2%');
    expect(padEndTo('wholemeal', 4)).toBe('wholemeal');
  });
});
