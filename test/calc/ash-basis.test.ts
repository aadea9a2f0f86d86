import { expect, it } from 'vitest';
import { createService } from '../../core/index.ts';

const uri = 'file:///quay/a.dough';

/** The ash of a dough of one flour, fraction of the dry matter. */
function ashOf(section: string): number {
  const service = createService();
  service.setRoots(['file:///quay/']);
  service.setText(uri, `${section}\n\nformula Quay Tin:\n  mill  1 kg\n  water  65%\n  salt  2%\n`);
  const { flourMix } = service.totals(uri)[0]!;
  return flourMix!.ashOfDryMatter!;
}

// DIN 10355: type 550 has 0.51 to 0.63 g of ash in 100 g of dry matter. Of a flour with 14 % moisture, 0.482 % as it is are 0.56 % of that.
it.each([
  ['a plain figure of a type is of the dry matter, as the type’s is', '  like type 550\n  ash 0.56%'],
  ['whatever the moisture', '  like type 550\n  moisture 12%\n  ash 0.56%'],
  ['of dry matter, as the notation writes it', '  grain wheat\n  ash 0.56% at 0% moisture'],
  ['of the flour as it is, where no type says otherwise', '  grain wheat\n  moisture 14%\n  ash 0.4816%'],
  [
    'of a type, as it is, where that is said',
    '  like type 550\n  moisture 14%\n  ash 0.4816% at 14% moisture',
  ],
])('ash %s', (_, lines) => {
  expect(ashOf(`flour mill:\n${lines}`)).toBeCloseTo(0.0056, 9);
});

it('ash of a type that a section says nothing of is the type’s, whatever the moisture', () => {
  const dry = ashOf('flour mill:\n  like type 550\n  moisture 10%');
  expect(dry).toBeCloseTo(ashOf('flour mill:\n  like type 550'), 12);
  expect(dry).toBeGreaterThan(0.0051);
  expect(dry).toBeLessThan(0.0063);
});
