import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, exportRows, rowsAsCsv } from '../../core/index.ts';
import { projectFolder } from '../editors/places.ts';
import { exampleFiles, wildText } from '../syntax/texts.ts';

const place = 'file:///bakery/new.dough';
const imported = (table: string, name?: string) => createService().importTable(place, table, name);
const doubts = (table: string): string =>
  imported(table)
    .notes.flatMap(({ message, doubtful }) => (doubtful ? [message] : []))
    .join('\n');
/** The lines below the header, without the blanks that only part columns. */
const linesOf = (table: string): string[] =>
  imported(table)
    .text.split('\n')
    .slice(1)
    .map((line) => line.trim().replace(/ {2,}/g, ' | '))
    .filter((line) => line !== '');

const tin = ['strong white | 1000 g', 'water | 650.5 g', 'salt | 20 g'];

describe('what parts the cells', () => {
  it.each([
    ['commas', 'strong white,1000 g\nwater,650.5 g\nsalt,20 g\n'],
    ['semicolons and a decimal comma', 'strong white;1000 g\nwater;650,5 g\nsalt;20 g'],
    ['tabs, as a spreadsheet copies', 'strong white\t1000 g\r\nwater\t650.5 g\r\nsalt\t20 g\r\n'],
    ['bars of a page of notes', '| strong white | 1000 g |\n| water | 650.5 g |\n| salt | 20 g |'],
    ['several blanks', 'strong white    1000 g\nwater           650.5 g\nsalt  20 g\n'],
    ['nothing', 'strong white 1000 g\nwater 650.5 g\nsalt 20 g'],
    ['nothing, amounts first', '1000 g strong white\n650.5 g water\n20 g of salt'],
    [
      'a byte order mark and a line that names the sign',
      '\uFEFFsep=;\nstrong white;1000 g\nwater;650,5 g\nsalt;20 g',
    ],
    ['quotes', '"strong white","1,000 g"\n"water","650.5 g"\nsalt,20 g\n'],
  ])('%s', (_, table) => {
    expect(linesOf(table)).toEqual(tin);
    expect(doubts(table)).toBe('');
  });

  it('keeps the delimiter, a quote and a line break that stand inside quotes', () => {
    expect(linesOf('"Seeds, ""mixed""\nroasted",80 g\nstrong white,1 kg')).toEqual([
      '"Seeds, mixed roasted" | 80 g',
      'strong white | 1 kg',
    ]);
  });
});

describe('the name', () => {
  it('is the heading of a page of notes without its sign', () => {
    const table = '## Quay Tin\n\n| strong white | 1000 g |\n|---|---|\n| water | 650 g |\n';
    expect(imported(table).formulas).toEqual(['Quay Tin']);
    expect(imported(table).text).toMatch(/^formula Quay Tin:/);
  });

  it('keeps a number sign that is part of it', () => {
    expect(imported('#3 Tin\n\nIngredient\tg\nstrong white\t1000\nwater\t650\n').formulas).toEqual([
      '#3 Tin',
    ]);
  });
});

describe('which column is what', () => {
  it('finds names, weights and percentages by their headings, wherever they stand', () => {
    const table = 'No;Price;Weight (kg);Ingredient\n1;0,74;1,5;strong white\n2;0,00;1,05;water\n';
    expect(linesOf(table)).toEqual(['strong white | 1.5 kg', 'water | 1.05 kg']);
  });

  it('takes a unit from the cell, the heading, or the column beside', () => {
    expect(linesOf('name,unit,amount\nstrong white,kg,2\nsalt,g,40')).toEqual([
      'strong white | 2 kg',
      'salt | 40 g',
    ]);
    expect(linesOf('Item,Qty g\nstrong white,2 kilos\nsalt,40')).toEqual([
      'strong white | 2 kg',
      'salt | 40 g',
    ]);
    expect(linesOf('name,amount\nstrong white,500 g\nwhole milk,200 mls\negg,2 pcs')).toEqual([
      'strong white | 500 g',
      'whole milk | 200 ml',
      'egg | 2 pieces',
    ]);
  });

  it('takes numbers without a unit for percent where the flours come to 100, and says so', () => {
    const table = 'strong white,80\nrye flour,20\nwater,68\nsalt,2';
    expect(linesOf(table)).toEqual(['strong white | 80%', 'rye flour | 20%', 'water | 68%', 'salt | 2%']);
    expect(
      imported(table)
        .notes.map(({ message }) => message)
        .join(' '),
    ).toContain('taken as percent');
  });

  it('takes shares of 1 for percent, as a spreadsheet stores them', () => {
    expect(linesOf('ingredient,%\nstrong white,1\nwater,0.685\nsalt,0.02')).toEqual([
      'strong white | 100%',
      'water | 68.5%',
      'salt | 2%',
    ]);
  });

  it('takes other numbers without a unit for grams, as a guess to be looked at', () => {
    expect(linesOf('strong white,1000\nwater,650')).toEqual(['strong white | 1000 g', 'water | 650 g']);
    expect(doubts('strong white,1000\nwater,650')).toContain('is taken as grams');
  });

  it('names the formula by the words alone above the table, unless told another name', () => {
    const table = 'Harbour Tin\n\nIngredient\tg\nstrong white\t500\nwater\t330\n';
    expect(imported(table).text).toMatch(/^formula Harbour Tin:\n/);
    expect(imported(table, 'Slack: Tide').text).toMatch(/^formula "Slack: Tide":\n/);
    expect(imported(table).formulas).toEqual(['Harbour Tin']);
  });
});

describe('numbers', () => {
  it.each([
    ['1.000 g', '1000 g', ';'],
    ['1,000 g', '1000 g', ','],
    ['1 000 g', '1000 g', '\t'],
    ['1\u202F000 g', '1000 g', '\t'],
    ['1’000.5 g', '1000.5 g', '\t'],
    ['1.000,5 g', '1000.5 g', '\t'],
    ['1,234,567.8 g', '1234567.8 g', '\t'],
    ['0,125 kg', '0.125 kg', '\t'],
    ['½ kg', '½ kg', '\t'],
  ])('%s is %s', (cell, amount, sign) => {
    expect(linesOf(`strong white${sign}"${cell}"\nsalt${sign}20 g`)[0]).toBe(`strong white | ${amount}`);
  });

  it('lets the whole table tell the decimal sign, and asks to look where nothing does', () => {
    expect(linesOf('strong white\t1,000 g\nsalt\t20,5 g')[0]).toBe('strong white | 1 g');
    expect(linesOf('strong white\t1,000 g\nsalt\t20.5 g')[0]).toBe('strong white | 1000 g');
    expect(doubts('strong white\t1,000 g\nsalt\t20 g')).toContain('“1,000” is read as 1000');
    expect(doubts('strong white\t1,5 kg\nsalt\t20.5 g')).toContain('both stand before decimals');
  });
});

describe('what is no ingredient', () => {
  it('leaves sums out, by their name or by their figure', () => {
    for (const sum of ['Total', 'SUM:', 'Subtotal', 'Dough weight', '', 'Alles zusammen'])
      expect(linesOf(`strong white,1000 g\nwater,650 g\n${sum},1650 g`)).toEqual([
        'strong white | 1000 g',
        'water | 650 g',
      ]);
  });

  it('keeps a line whose figure is by chance the sum of those above', () => {
    expect(linesOf('strong white,20 g\nbutter,30 g\nwater,50 g')).toHaveLength(3);
  });

  it('keeps rows it cannot take as comments, and says which and why', () => {
    const table =
      'strong white,1 kg\nsalt,a pinch\nwater,-5 g\n,7 g\ncharcoal,0 g\nbutter,\nMix for a while,\n';
    expect(linesOf(table)).toEqual([
      'strong white | 1 kg',
      '# salt | a pinch',
      '# water | -5 g',
      '# 7 g',
      '# charcoal | 0 g',
      '# butter',
      '# Mix for a while',
    ]);
    for (const told of ['cannot be read', 'below 0', 'no name', '“butter”, has no amount'])
      expect(doubts(table)).toContain(told);
  });

  it('puts a name in quotes that would read as something else, and tells names nobody knows', () => {
    expect(linesOf('strong white,1 kg\n"salt, fine",20 g\nyield,3 g\n')).toContain('salt | 20 g | # fine');
    expect(linesOf('strong white,1 kg\n"secret, fine",20 g\n')).toContain('"secret, fine" | 20 g');
    expect(doubts('strong white,1 kg\nbuter,20 g')).toContain('“buter” may be “butter”');
  });

  it('says so where there is nothing to take in', () => {
    for (const nothing of ['', 'hello', 'a,b\nc,d', '1,2\n3,4', ','.repeat(50)])
      expect(imported(nothing)).toMatchObject({ text: '', notes: [{ doubtful: true }] });
    expect(imported('strong white,1 g\n'.repeat(2001)).text).toBe('');
  });
});

describe('percentages beside weights', () => {
  it('writes the percentages, and the weights as the yield, where they agree', () => {
    expect(linesOf('ingredient,%,g\nstrong white,100,1500\nwater,66.7,1000\nsalt,2,30')).toEqual([
      'yield 2530 g',
      'strong white | 100%',
      'water | 66.7%',
      'salt | 2%',
    ]);
  });

  it('writes the weights where they do not, and tells the row', () => {
    const table = 'ingredient,%,g\nstrong white,100,1000\nwater,65,700\nsalt,2,20';
    expect(linesOf(table)).toEqual(['strong white | 1000 g', 'water | 700 g', 'salt | 20 g']);
    expect(doubts(table)).toContain('65% is 650 g, and the table says 700 g');
  });

  it('knows percentages of the whole dough, and writes weights', () => {
    const share = 'strong white,60.2%\nwater,38.6%\nsalt,1.2%';
    expect(linesOf(share)).toEqual(['strong white | 602 g', 'water | 386 g', 'salt | 12 g']);
    expect(doubts(share)).toContain('not of the flour');
  });

  it('tells flours that do not come to 100', () => {
    expect(doubts('strong white,50%\nrye flour,20%\nwater,60%')).toContain('come to 70%');
  });
});

describe('parts', () => {
  const parted = [
    'formula Ferry:',
    '  strong white       750 g',
    '  water              420 g',
    '  salt               20 g',
    '  Poolish            500 g',
    '',
    'preferment Poolish:',
    '  strong white       250 g',
    '  water              250 g',
    '',
  ].join('\n');

  it('by a name alone in its row', () => {
    const rows = 'strong white,250 g\nwater,250 g\nFinal dough\nstrong white,750 g\nwater,420 g\nsalt,20 g';
    expect(imported(`Poolish\n${rows}\nPoolish,500 g`, 'Ferry').text).toBe(parted);
    expect(imported(`Poolish\n${rows}`, 'Ferry').text).toBe(parted.replace('500', '500'));
  });

  it('by a column', () => {
    const rows = 'part,ingredient,g\npoolish,strong white,250\npoolish,water,250\ndough,strong white,750\n';
    const made = imported(`${rows}dough,water,420\ndough,salt,20`, 'Ferry');
    expect(made.text).toBe(parted.replaceAll('Poolish', 'poolish'));
    expect(made.notes.map(({ message }) => message).join(' ')).toContain('all of it, 500 g, goes in');
  });
});

describe('what only looks like an amount or a part', () => {
  it('writes no weight for a unit that it does not know', () => {
    const table = 'Ingredient,Qty,Unit\nstrong white,2,lb\nwater,1 1/4,pint\negg,3,ea\n';
    expect(linesOf(table)).toEqual(['strong white | 2 lb', '# water | 1 1/4 | pint', 'egg | 3 pieces']);
    expect(doubts(table)).toMatch(/Row 3, “water {2}1 1\/4 {2}pint”, has an amount that cannot be read/);
  });

  it('asks to look where one amount lacks the unit that others have', () => {
    const table = 'Ingredient\tAmount\nstrong white\t1 kg\nwater\t650 g\nhoney\t2\n';
    expect(doubts(table)).toBe('Without a unit where other rows have one, and taken as grams: “honey”.');
    expect(doubts(table.replace('\t2\n', '\t2 g\n'))).toBe('');
    // Nobody weighs two grams of egg, and what an egg weighs is known.
    expect(doubts(table.replace('honey', 'eggs'))).toBe('');
    expect(linesOf(table.replace('honey', 'eggs'))).toContain('eggs | 2 pieces');
  });

  it('takes words that sort the rows for no parts', () => {
    const table =
      'Ingredient,g,%\nFLOURS,,\nstrong white,800,80%\nmedium rye,200,20%\nTotal flour,1000,100%\n' +
      'LIQUIDS,,\nwater,700,70%\nOTHER,,\nsalt,20,2%\nTotal,1720,172%\n';
    expect(linesOf(table)).toEqual([
      'yield 1720 g',
      '# FLOURS',
      'strong white | 80%',
      'medium rye | 20%',
      '# LIQUIDS',
      'water | 70%',
      '# OTHER',
      'salt | 2%',
    ]);
    const taken = 'Liquids\nwater\t60 g\nwhole milk\t40 g\nDough\nstrong white\t200 g\nLiquids\t100 g\n';
    expect(imported(taken).text).toContain('part Liquids:');
  });

  it('takes what tells of the batch for no ingredient, and the name beside its label for the formula’s', () => {
    const table =
      'Recipe name:,Harbour Tin,\nIngredient,%,g\nstrong white,100,1500\nwater,66,990\nNumber of loaves,,3\n';
    expect(imported(table).formulas).toEqual(['Harbour Tin']);
    expect(linesOf(table)).toEqual([
      'yield 2490 g',
      'strong white | 100%',
      'water | 66%',
      '# Number of loaves | 3',
    ]);
    expect(doubts(table)).toContain('“Number of loaves  3”, is about the batch and no ingredient');
    expect(imported('Recipe: Pier Loaf\nIngredient,%\nstrong white,100\nwater,66\n').formulas).toEqual([
      'Pier Loaf',
    ]);
  });

  it('takes no line for the heading because its amount cannot be read', () => {
    const table =
      'Ingredient,Amount\nstrong white,a sack\nwater,650 g (2 3/4 cups)\nsalt,20 g (2%)\nfresh yeast,15 g\n';
    expect(linesOf(table)).toEqual([
      '# strong white | a sack',
      'water | 650 g',
      'salt | 20 g',
      'fresh yeast | 15 g',
    ]);
    expect(doubts(table)).toContain('Row 2, “strong white  a sack”, has an amount that cannot be read');
    const units = 'Ingredient,Baker,Scale\n,%,g\nstrong white,100,1000\nwater,65,650\n';
    expect(linesOf(units)).toEqual(['yield 1650 g', 'strong white | 100%', 'water | 65%']);
  });

  it('lets the heading say the unit of cells without one, whatever one cell says', () => {
    expect(linesOf('Ingredient,Grams\nstrong white,1000\nwater,650\nsalt,2%\n')).toEqual([
      'strong white | 1000 g',
      'water | 650 g',
      'salt | 2%',
    ]);
  });

  it('asks to look where columns of another part come again', () => {
    const table =
      'Ingredient\t%\tkg\t%\tkg\nstrong white\t90\t9\t100\t1\nrye\t10\t1\t\t\nwater\t65\t6.5\t100\t1\n';
    expect(doubts(table)).toContain('Columns that come again are left out: “%” and “kg”.');
  });

  it('says that there is nothing', () => {
    expect(doubts('\n \n')).toBe('There is nothing in this; copy the rows of the table first.');
  });
});

describe('what is exported comes back', () => {
  /** Every formula of a set of files, exported as CSV, imported again beside the same files. */
  function comesBack(files: readonly { readonly uri: string; readonly text: string }[]): number {
    const service = createService();
    for (const { uri, text } of files) service.setText(uri, text);
    let compared = 0;
    for (const { uri } of files) {
      for (const before of service.totals(uri)) {
        if (!before.resolved || before.flourGrams === undefined || before.flourGrams === 0) continue;
        const table = rowsAsCsv(exportRows({ ...before, file: 'a.dough' }));
        const back = createService();
        for (const other of files) back.setText(other.uri, other.text);
        const again = `${uri}.again.dough`;
        const made = back.importTable(again, table);
        back.setText(again, made.text);
        const after = back.totals(again)[0]!;
        expect(after.formula).toBe(before.formula);
        const told = (lines: typeof before.overall): Record<string, number> =>
          Object.fromEntries(lines.map(({ name, fraction }) => [name.toLowerCase(), fraction ?? Number.NaN]));
        const [was, is] = [told(before.overall), told(after.overall)];
        expect(Object.keys(is).sort(), made.text).toEqual(
          Object.keys(was)
            .filter((name) => was[name] !== 0)
            .sort(),
        );
        // Percentages are exported to four places, and a part’s counts in its own flour and in the dough’s.
        for (const [name, fraction] of Object.entries(is)) expect(fraction, name).toBeCloseTo(was[name]!, 4);
        expect(after.doughGrams! / before.doughGrams!).toBeCloseTo(1, 4);
        compared++;
      }
    }
    return compared;
  }

  it('the demo bakery', () => {
    const files = exampleFiles().map(({ path, text }) => ({ uri: `file:///bakery/${path}`, text }));
    expect(comesBack(files)).toBeGreaterThan(5);
  });

  it('a sheet of many parts', () => {
    const path = join(projectFolder, 'test/fixtures/formulas/harvest-crown.dough');
    expect(comesBack([{ uri: 'file:///bakery/crown.dough', text: readFileSync(path, 'utf8') }])).toBe(2);
  });

  it('formulas of any figures, with a preferment drawn or added', () => {
    const figures = fc.record({
      rye: fc.integer({ min: 0, max: 60 }),
      water: fc.integer({ min: 400, max: 950 }),
      salt: fc.integer({ min: 1, max: 30 }),
      part: fc.integer({ min: 5, max: 40 }),
      wet: fc.integer({ min: 50, max: 130 }),
      drawn: fc.boolean(),
      kilograms: fc.integer({ min: 1, max: 400 }),
    });
    fc.assert(
      fc.property(figures, ({ rye, water, salt, part, wet, drawn, kilograms }) => {
        const text = [
          `formula Any Tide:\n  yield ${kilograms} kg\n  strong white balance`,
          rye === 0 ? '' : `  medium rye ${rye}%`,
          `  water ${water / 10}%\n  salt ${salt / 10}%`,
          drawn ? '' : `  levain ${part}%`,
          `\npreferment levain:${drawn ? `\n  draws ${part}% of flour` : ''}`,
          `  strong white 100%\n  water ${wet}%\n`,
        ].join('\n');
        comesBack([{ uri: 'file:///bakery/any.dough', text }]);
      }),
      { numRuns: 150 },
    );
  });
});

describe('whatever is pasted', () => {
  it('nothing is thrown, and what comes out is canonical and reads without an error of its own', () => {
    const cell = fc.oneof(
      fc.constantFrom(
        'strong white',
        'water',
        'salt',
        'Total',
        'yield',
        'note',
        'a: b',
        '"x"',
        '# y',
        'e, f',
        'Poolish',
      ),
      fc.constantFrom(
        '1000',
        '1.000',
        '1,5 kg',
        '12%',
        '0',
        '-3 g',
        '½',
        '',
        '1 000,5',
        '€ 3',
        '50-60 g',
        '1/0',
      ),
      wildText.filter((text) => text.length < 60),
    );
    const sign = fc.constantFrom(',', ';', '\t', ' | ', '  ', ' ');
    const table = fc
      .tuple(fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 12 }), sign)
      .map(([rows, between]) => rows.map((row) => row.join(between)).join('\n'));
    fc.assert(
      fc.property(fc.oneof(table, wildText), (text) => {
        const service = createService();
        const made = service.importTable(place, text);
        expect(made.notes.length).toBeGreaterThan(0);
        if (made.text === '') return;
        service.setText(place, made.text);
        expect(service.format(place)).toEqual([]);
        expect(service.totals(place).length).toBe(new Set(made.formulas).size);
      }),
      { numRuns: 600 },
    );
  });

  it('says the same whatever the delimiter, the decimal sign and the sign between thousands', () => {
    const amounts = fc.array(fc.integer({ min: 1, max: 99_999_99 }), { minLength: 2, maxLength: 6 });
    const dialect = fc.constantFrom(
      { between: ',', decimal: '.', thousands: '' },
      { between: ';', decimal: ',', thousands: '.' },
      { between: '\t', decimal: '.', thousands: ',' },
      { between: '\t', decimal: ',', thousands: '\u00A0' },
      { between: ';', decimal: '.', thousands: "'" },
    );
    const names = ['strong white', 'water', 'salt', 'butter', 'sugar', 'egg'];
    fc.assert(
      fc.property(amounts, dialect, (hundredths, { between, decimal, thousands }) => {
        // The first number has decimals, so that the signs can be told.
        const grams = [1234.5, ...hundredths.map((one) => one / 100)].slice(0, names.length);
        const written = grams.map((value) => {
          const [whole, rest] = value.toFixed(2).split('.');
          return `${whole!.replace(/\B(?=(\d{3})+$)/g, thousands)}${decimal}${rest} g`;
        });
        const table = written.map((amount, index) => `${names[index]}${between}${amount}`).join('\n');
        expect(linesOf(table)).toEqual(
          grams.map((value, index) => `${names[index]} | ${value.toFixed(2)} g`),
        );
      }),
    );
  });
});
