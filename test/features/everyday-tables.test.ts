import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createService, type ImportedTable } from '../../core/index.ts';
import { filesIn } from '../tidy/imports.ts';

/** Grams of each ingredient of a formula or a part of it. */
type Weights = Readonly<Record<string, number>>;

interface Expected {
  /** What goes in of each ingredient over all, in grams for the weights of the table, worked by hand. */
  readonly overall: Weights;
  /** Nobody has to look at it: no doubt was told, and the checker knows every name. */
  readonly ready: boolean;
}

/** Twelve tables as bakers keep them; all our own. */
const tables: Readonly<Record<string, Expected>> = {
  // A heading `g` over both blocks; the poolish has no line in the dough, so all of it goes in.
  'side-by-side': {
    overall: { 'strong white': 10_000, water: 6900, salt: 200, 'instant yeast': 2 },
    ready: true,
  },
  'merged-cells': { overall: { 'strong white': 5050, water: 3250, salt: 100 }, ready: false },
  // 1 lb is 453.59237 g, 1 oz 28.349523125 g: the international avoirdupois pound of 1959.
  'pounds-and-ounces': {
    overall: { 'bread flour': 4989.5, water: 3231.8, salt: 99.2, 'fresh yeast': 51 },
    ready: true,
  },
  'thousands-by-percent': {
    overall: { 'strong white': 10_000, water: 6500, salt: 200, butter: 400 },
    ready: true,
  },
  'thousands-by-sum': { overall: { 'strong white': 1000, water: 650, salt: 20 }, ready: true },
  bullets: { overall: { 'strong white': 1000, water: 650, salt: 20, 'fresh yeast': 12 }, ready: true },
  remarks: { overall: { 'strong white': 1000, butter: 80, water: 600, salt: 20 }, ready: true },
  german: { overall: { 'type 550': 10_000, water: 6400, salt: 200, 'fresh yeast': 100 }, ready: true },
  french: {
    overall: { T65: 10_000, water: 6600, salt: 180, 'fresh yeast': 80, butter: 300 },
    ready: true,
  },
  // Which flour harina is, nobody but the baker knows.
  spanish: { overall: { 'bread flour': 1000, water: 620, salt: 18, 'fresh yeast': 10 }, ready: false },
  italian: {
    overall: { 'type 00': 1000, water: 580, salt: 22, 'olive oil': 30, 'fresh yeast': 6 },
    ready: true,
  },
  'page-of-notes': {
    overall: { 'strong white': 8000, 'medium rye': 2000, water: 7100, salt: 200, linseed: 500 },
    ready: true,
  },
};

function made(name: string): { table: ImportedTable; weights: Weights; codes: string[] } {
  const service = createService();
  const uri = 'file:///bakery/new.dough';
  const text = readFileSync(new URL(`../fixtures/tables/${name}.txt`, import.meta.url), 'utf8');
  const table = service.importTable(uri, text, 'Quay Tin');
  service.setText(uri, table.text);
  const [totals] = service.totals(uri);
  const weights = Object.fromEntries(
    (totals?.overall ?? []).map(({ name: ingredient, grams }) => [
      ingredient.toLowerCase(),
      grams ?? Number.NaN,
    ]),
  );
  return { table, weights, codes: service.findings(uri).map(({ code }) => code) };
}

describe('twelve everyday tables', () => {
  it('are all here', () => {
    const names = filesIn('test/fixtures/tables', '.txt').map((file) => /([^/]+)\.txt$/.exec(file)![1]!);
    expect(names.sort()).toEqual(Object.keys(tables).sort());
    expect(names).toHaveLength(12);
  });

  it.each(Object.entries(tables))('%s has right amounts', (name, { overall }) => {
    const { table, weights } = made(name);
    for (const [ingredient, grams] of Object.entries(overall)) {
      const got = weights[ingredient.toLowerCase()];
      if (got === undefined || Math.abs(got - grams) > 0.01 * grams)
        throw new Error(
          `${ingredient}: ${got} for ${grams}\n${table.text}\n${table.notes.map(({ message }) => message).join('\n')}`,
        );
    }
  });

  it.each(Object.entries(tables).filter(([, { ready }]) => ready))('%s is ready', (name) => {
    const { table, codes } = made(name);
    expect(table.notes.filter(({ doubtful }) => doubtful).map(({ message }) => message)).toEqual([]);
    expect(codes.filter((code) => /^unknown|^missing|unreadable|after-amount/.test(code))).toEqual([]);
  });

  it('say what was settled, and by what', () => {
    const said = (name: string): string =>
      made(name)
        .table.notes.map(({ message }) => message)
        .join('\n');
    expect(said('thousands-by-percent')).toContain(
      '“10.000” is 10000: so the weights are to one another as the percentages are.',
    );
    expect(said('thousands-by-sum')).toContain('“1.000” is 1000: so the rows come to “Total”, 1670 g.');
    expect(said('side-by-side')).toContain('2 blocks stand side by side');
    expect(said('merged-cells')).toContain(
      'Empty cells below one that is filled are taken to say the same, in “Part”.',
    );
    expect(said('german')).toContain('“Weizenmehl Type 550”, is taken as “type 550”.');
    expect(made('remarks').table.text).toMatch(/Butter +80 g +# soft\n +Water +600 g, at 14 °C\n/);
  });
});

describe('words of other languages', () => {
  it.each([
    ['Wasser', 'water'],
    ['Trockenhefe', 'active dry yeast'],
    ['œufs', 'egg'],
    ['Mantequilla', 'butter'],
    ['Zucchero', 'sugar'],
    ['Leinsamen', 'linseed'],
    ['Sonnenblumenkerne', 'sunflower seed'],
    ['Walnüsse', 'walnut'],
    ['noisettes', 'hazelnut'],
    ['Sésamo', 'sesame'],
    ['miel', 'honey'],
    ['Vollmilch', 'whole milk'],
    ['Uvetta', 'raisins'],
    ['jaune d’œuf', 'egg yolk'],
    ['Scherbeneis', 'ice'],
    ['Roggenvollkornmehl', 'wholemeal rye'],
    ['Instanthefe', 'instant yeast'],
  ])('%s is %s, which is known, and its allergens with it', (word, name) => {
    const service = createService();
    const { text, notes } = service.importTable(
      'file:///a.dough',
      `strong white\t900 g\n${word}\t100 g\n`,
      'Tin',
    );
    expect(notes.filter(({ doubtful }) => doubtful)).toEqual([]);
    expect(text).toContain(`  ${name} `);
  });
});
