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

/** Twelve more, written down before anybody looked at what is read of them; all our own. */
const further: Readonly<Record<string, Expected>> = {
  // How much water is in old bread, and which yeast Hefe is, nobody but the baker knows.
  'rye-and-old-bread': {
    overall: {
      'rye 1150': 6000,
      'type 1050': 4000,
      water: 7200,
      salt: 190,
      'fresh yeast': 120,
      'altbrot, eingeweicht': 500,
    },
    ready: false,
  },
  'campagne-tabs': {
    overall: {
      T65: 8500,
      'rye T130': 1500,
      water: 6800,
      salt: 200,
      'levain dur': 2000,
      'active dry yeast': 5,
    },
    ready: false,
  },
  'focaccia-thousands': {
    overall: { 'farina 0': 2500, water: 1875, 'olive oil': 150, salt: 55, 'fresh yeast': 25, sugar: 25 },
    ready: true,
  },
  'spanish-brioche': {
    overall: {
      'bread flour': 1000,
      'whole milk': 250,
      egg: 300,
      sugar: 150,
      butter: 250,
      'fresh yeast': 40,
      salt: 18,
    },
    ready: false,
  },
  // Of 453.59237 g and 28.349523125 g, as above; the percentages of the table are rounded to a tenth.
  'pounds-with-clear-flour': {
    overall: {
      'first clear flour': 8164.7,
      'medium rye flour': 2721.6,
      water: 7087.4,
      salt: 198.4,
      yeast: 269.3,
      // 3.75 oz are 0.98 %, and the table says 1.0 %.
      'caraway seed': 108.5,
      shortening: 340.2,
    },
    ready: true,
  },
  'olive-loaf-side-by-side': {
    overall: {
      'bread flour': 1900,
      'whole wheat flour': 100,
      water: 1360,
      'instant yeast': 1.2,
      salt: 40,
      olives: 400,
    },
    ready: true,
  },
  // The ripe culture is of the sour's own: 70 g of it are 700 parts of rye and 560 of water in 1260.
  'merged-with-temperatures': {
    overall: {
      'whole rye': 400 + 700 + (70 * 700) / 1260,
      'bread flour': 900,
      water: 420 + 560 + 500 + (70 * 560) / 1260,
      salt: 40,
      'fresh yeast': 20,
      'rye flakes': 300,
      'sunflower seeds': 200,
    },
    ready: true,
  },
  // An egg is 50 g without its shell: USDA FoodData Central 01123, large.
  'notebook-with-an-egg': {
    overall: { 'strong white flour': 500, butter: 40, sugar: 25, salt: 9, 'dried yeast': 7, egg: 50 },
    ready: true,
  },
  // A table of percentages alone is for 1000 g of flour.
  'percent-alone': {
    overall: { 'flour t65': 1000, water: 660, salt: 18, 'instant yeast': 3, malt: 2 },
    ready: true,
  },
  'markdown-bold-total': {
    overall: {
      'bread flour': 3200,
      'wholemeal flour': 800,
      water: 2720,
      salt: 76,
      'instant yeast': 32,
      linseed: 240,
      'sunflower seeds': 200,
    },
    ready: true,
  },
  'two-waters-and-notes': {
    overall: { 'strong flour': 12_500, water: 10_000, 'olive oil': 375, 'sea salt': 275, 'fresh yeast': 125 },
    ready: true,
  },
  // The 60 g of ripe starter are of the levain's own: 300 parts of flour, 300 of water.
  'columns-of-parts': {
    overall: {
      'white flour': 1400 + 200 + 20,
      'whole wheat': 300,
      rye: 100 + 10,
      water: 1220 + 300 + 30,
      salt: 42,
    },
    ready: true,
  },
};

function made(name: string): { table: ImportedTable; weights: Weights; codes: string[] } {
  const service = createService();
  const uri = 'file:///bakery/new.dough';
  const text = readFileSync(
    new URL(`../fixtures/${name in tables ? 'tables' : 'tables-further'}/${name}.txt`, import.meta.url),
    'utf8',
  );
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

describe('twelve more', () => {
  it('are all here, each with right amounts, and nine of them ready', () => {
    const names = filesIn('test/fixtures/tables-further', '.txt').map(
      (file) => /([^/]+)\.txt$/.exec(file)![1]!,
    );
    expect(names.sort()).toEqual(Object.keys(further).sort());
    expect(Object.values(further).filter(({ ready }) => ready)).toHaveLength(9);
  });

  it.each(Object.entries(further))('%s has right amounts', (name, { overall }) => {
    const { table, weights } = made(name);
    // A table that says 1.8 % of what is 1.82 % says it 1.3 % wrong, and the percentages are written.
    for (const [ingredient, grams] of Object.entries(overall))
      expect([
        ingredient,
        Math.abs(weights[ingredient.toLowerCase()]! / grams - 1) < 0.015,
        table.text,
      ]).toEqual([ingredient, true, table.text]);
  });

  it.each(Object.entries(further))('%s is ready, or says why not', (name, { ready }) => {
    const { table, codes } = made(name);
    const isReady =
      table.notes.every(({ doubtful }) => !doubtful) &&
      codes.every((code) => !/^unknown|^missing|unreadable|after-amount/.test(code));
    expect([isReady, table.text]).toEqual([ready, table.text]);
  });

  it('keep temperatures and remarks of columns of their own', () => {
    expect(made('merged-with-temperatures').table.text).toMatch(
      / {2}Water +560 g, at 38 °C\n {2}ripe culture 10%/,
    );
    expect(made('two-waters-and-notes').table.text).toMatch(
      /Water +1\.25 kg, at 8 °C +# 2, bassinage, slowly, last 3 min/,
    );
    const { text } = createService().importTable(
      'file:///a.dough',
      'Ingredient,g,Temp (°F)\nStrong white,1000,68\nWater,650,50\n',
      'Tin',
    );
    expect(text).toMatch(/Strong white +1000 g, at 20 °C\n {2}Water +650 g, at 10 °C/);
  });

  it('turn a name round where what stands behind it makes another ingredient of it', () => {
    const { text } = createService().importTable(
      'file:///a.dough',
      'Ingredient;g\n"Flour, bread";1000\nMilk (skimmed), cold;650\n"Yeast, instant";7\n',
      'Tin',
    );
    expect(text).toContain('  bread flour        1000 g\n');
    expect(text).toMatch(/ {2}skimmed milk +650 g +# cold\n/);
    expect(text).toMatch(/ {2}instant yeast +7 g\n/);
  });

  it.each([
    ['points', 'Flour 00 ...... 1000 g\nWater ...... 620 g (18 C)\nSalt …… 28 g\n', /Water +620 g, at 18 °C/],
    ['a colon', '- Weizenmehl 550: 800 g\n- Wasser: 500 g\n- Salz: 16\n', /type 550 +800 g/],
    ['packs', '500 g strong white\n300 g water\n1 sachet dried yeast (7 g)\n', /dried yeast +7 g/],
    [
      'columns of parts in German',
      'Zutat\tVorteig (g)\tHauptteig (g)\tGesamt (g)\nDinkelmehl 630\t300\t700\t1000\nWasser\t300\t380\t680\nVorteig\t\t600\t\n',
      /spelt 630 +700 g[\s\S]*Vorteig +600 g[\s\S]*preferment Vorteig:\n {2}spelt 630 +300 g/,
    ],
  ])('read %s', (_, table, wanted) => {
    expect(createService().importTable('file:///a.dough', table, 'Tin').text).toMatch(wanted);
  });

  it('take no name for flour that the percentages do not prove to be', () => {
    const { text, notes } = createService().importTable(
      'file:///a.dough',
      'Ingredient,%\nStrong white,100\nWater,65\nchestnut paste flour,8\n',
      'Tin',
    );
    expect(text).not.toContain('flour chestnut paste flour:');
    expect(notes.some(({ doubtful }) => doubtful)).toBe(true);
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
