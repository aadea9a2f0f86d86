import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { edited, editsOf } from './apply.ts';

const uri = 'file:///quay/a.dough';

/** The formula after its fresh yeast is another kind; and what is weighed of each ingredient, grams. */
function changed(kind: string): Record<string, number> {
  const service = createService();
  const text =
    'formula Quay Tin:\n  bread flour  5 kg\n  water  3000 g\n  salt  100 g\n  fresh yeast  100 g\n';
  service.setText(uri, text);
  const range = { line: 4, start: 3, endLine: 4, end: 3 };
  const edits = editsOf(service.actionEdits(uri, range, 'change-yeast', kind), uri);
  service.setText(uri, edited(text, edits));
  return Object.fromEntries(service.totals(uri)[0]!.overall.map(({ name, grams }) => [name, grams!]));
}

describe('fresh yeast given up for dry', () => {
  // J. Hamelman, Bread (2004), yeast conversions (app.ckbk.com brea32715b01s007ss002): 1 : 0.4 : 0.33.
  it.each([
    ['active dry yeast', 40],
    ['instant yeast', 33],
  ])('100 g become so much %s', (kind, grams) => {
    expect(changed(kind)[kind]).toBeCloseTo(grams, 6);
  });

  it('is made up by the water it brought: 67 g, where a page prints 77 g', () => {
    // eHow 8606674 gives 33 g of instant yeast and 77 g of water for 100 g of fresh, which makes 110 g.
    const more = changed('instant yeast').water! - 3000;
    expect(Math.abs(more - 67)).toBeLessThan(1);
    expect(Math.abs(more - 77)).toBeGreaterThan(9);
  });
});
