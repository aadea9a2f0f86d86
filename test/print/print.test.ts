import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createService, type SheetDocument, type SheetOrigin, writeSheets } from '../../core/index.ts';
import type { Row, Section } from '../../core/sheet/build/sheet-document.ts';
import { axeViolations, sideways } from '../client/look.ts';
import { launchChromium } from '../editors/code-server.ts';
import { exampleSheet } from '../sheet/example-sheet.ts';
import { tablesIn } from '../sheet/parts.ts';
import { canPrint, printed } from './paper.ts';

const origin: SheetOrigin = { file: 'formulas/quay.dough', commit: '8eaa6f2d', date: '2026-03-14' };
const foot = 'formulas/quay.dough · revision 8eaa6f2d · 2026-03-14';
const asPage = (...views: SheetDocument[]): string =>
  writeSheets(
    views.map((view) => ({ view, origin })),
    'html',
  );

/** A dough made in one go, with nothing but what is weighed. */
function small(): SheetDocument {
  const sheet = exampleSheet();
  const sections = sheet.sections
    .filter(({ name }) => ['facts', 'day', 'bowl', 'later', 'cautions'].includes(name))
    .map(({ findings: _, ...section }) => section as Section);
  return { ...sheet, formula: 'Pilot Boat', sections, findings: [] };
}

/** With the rows of its first table, the bowl, changed. */
function withRows(sheet: SheetDocument, change: (row: Row) => readonly Row[]): SheetDocument {
  const [bowl] = tablesIn(sheet.sections, 'bowl');
  const sections = sheet.sections.flatMap((one): Section[] => {
    if (one === bowl) return [{ ...bowl!, rows: change(bowl!.rows[0]!) }];
    return one.name === 'later' ? [] : [one];
  });
  return { ...sheet, sections };
}

/** Two batches by the clock of a warm day, without the drawings: what a baker works from. */
function worked(): SheetDocument {
  const sheet = exampleSheet('Ferry Loaf', {
    size: { by: 'pieces', pieces: 120 },
    clock: { by: 'ready', minutes: 390 },
    today: { roomCelsius: 27 },
  });
  const sections = sheet.sections.filter(({ kind, name }) => kind !== 'chart' && name !== 'trial');
  return { ...sheet, sections };
}

const fourIngredients = `formula Quay Plain:
  yield 20 pieces of 500 g
  dough temperature 24 °C
  strong white  100%
  water  66%
  salt  2%
  fresh yeast  1%

mix in spiral:
  load all
  speed 1 for 4 min
  speed 2 for 6 min

process:
  bulk 1 h at 24 °C
  divide
  proof 50 min at 28 °C
  bake 25 min at 240 °C
`;

/** Fourteen batches by the clock. */
function inManyBatches(): SheetDocument {
  return exampleSheet('Ferry Loaf', {
    size: { by: 'pieces', pieces: 200 },
    clock: { by: 'ready', minutes: 390 },
    today: { mixer: 'small planetary' },
  });
}

/** More rows in one section than a page can hold. */
function long(): SheetDocument {
  return withRows(small(), (row) =>
    Array.from({ length: 40 }, (_, index) => ({
      ...row,
      id: `bowl/${index}`,
      name: `seed number ${index + 1}`,
    })),
  );
}

describe.skipIf(!canPrint && process.env.CI !== 'true')('a sheet printed by a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(() => browser.close());

  describe.each(['A4', 'Letter'] as const)('on %s', (paper) => {
    it('fits a page where it is small, and three where it is worked from in two batches', async () => {
      expect(await printed(browser, asPage(small()), paper, 'small')).toHaveLength(1);
      const pages = await printed(browser, asPage(worked()), paper, 'worked');
      expect(pages.length).toBeGreaterThanOrEqual(3);
      expect(pages.length).toBeLessThanOrEqual(4);
    });

    it('keeps every block on one page, from its heading to its last row', async () => {
      const view = worked();
      const pages = await printed(browser, asPage(view), paper, 'worked');
      const weighed = tablesIn(view.sections, 'before', 'bowl', 'later', 'apart');
      expect(weighed.length).toBeGreaterThanOrEqual(3);
      for (const { title, when = [], rows } of weighed) {
        const holding = pages.filter((page) => heading(title, when.at(-1) ?? '').test(page));
        expect(holding, title).toHaveLength(1);
        for (const { name, cells } of rows) {
          expect(holding[0]).toContain(name);
          expect(holding[0]).toMatch(new RegExp(`\\b${escaped(cells.weigh!.text)}\\b`));
        }
      }
      // The mixing with its last line, and the clock with its last moment.
      const [mixing] = tablesIn(view.sections, 'mixing');
      const page = pages.find((one) => one.includes(`Mixing · ${mixing!.when!.join(', ')}`));
      expect(page).toContain(mixing!.rows.at(-1)!.cells.stage!.text);
      const steps = view.sections.flatMap((one) => (one.kind === 'steps' ? one.steps : []));
      const clock = pages.find((one) => /^Clock$/m.test(one))!;
      for (const { when } of steps) expect(clock).toContain(when);
    });

    it('has its foot on every page, with the number of the page', async () => {
      for (const [name, view] of [
        ['worked', worked()],
        ['drawn', exampleSheet('Slipway Hearth')],
      ] as const) {
        const pages = await printed(browser, asPage(view), paper, name);
        for (const [index, page] of pages.entries()) {
          const last = page.trimEnd().split('\n').at(-1)!;
          expect(last).toContain(`${view.formula} · ${foot}`);
          expect(last).toMatch(new RegExp(`page ${index + 1} of ${pages.length}$`));
        }
      }
    });

    it('begins every formula on a page of its own, under a foot of its own', async () => {
      const [one, other] = [small(), { ...small(), formula: 'Harbour \\"Tin</style>' }];
      const pages = await printed(browser, asPage(one, other), paper, 'several');
      expect(pages.filter((page) => page.startsWith('Pilot Boat'))).toHaveLength(1);
      expect(pages.at(-1)!.trimEnd().split('\n').at(-1)).toContain(`${other.formula} · ${foot}`);
      expect(pages[0]).toContain(`Pilot Boat · ${foot}`);
    });

    it('parts a block that no page can hold between rows, says its columns again and its sum once', async () => {
      const pages = await printed(browser, asPage(long()), paper, 'long');
      expect(pages.length).toBeLessThanOrEqual(4);
      expect(pages[0]).toMatch(/seed number 5\b/);
      const holding = pages.filter((page) => page.includes('seed number'));
      for (const page of holding) expect(page).toMatch(/Ingredient +Weigh/);
      expect(pages.filter((page) => page.includes('Together'))).toHaveLength(1);
      for (let number = 1; number <= 40; number++)
        expect(holding.filter((page) => new RegExp(`seed number ${number}\\b`).test(page))).toHaveLength(1);
    });

    it('leaves the names their room beside boxes for many batches, and no heading alone on its page', async () => {
      const pages = await printed(browser, asPage(inManyBatches()), paper, 'many');
      const bowl = pages.find((page) => page.includes('Into the bowl'))!;
      expect(bowl).toMatch(/^ +\u2060?strong white +\d/m);
      expect(bowl).toMatch(/^ +\u2060?poolish +\d/m);
      // A heading is one line, the foot another.
      for (const page of pages)
        expect(page.split('\n').filter((line) => line.trim()).length).toBeGreaterThan(3);
    });

    it('keeps a name whose first word fills its line on the line of its weight', async () => {
      const name = 'sunflowerseed'.repeat(4);
      const weighed = tablesIn(small().sections, 'bowl')[0]!.rows[0]!.cells.weigh!.text;
      const pages = await printed(
        browser,
        asPage(withRows(small(), (row) => [{ ...row, name }])),
        paper,
        'long-name',
      );
      expect(pages[0]).toMatch(new RegExp(`^ *\u2060?sunflowerseed.* ${escaped(weighed)} `, 'm'));
    });
  });

  it('puts four ingredients, their work, the blanks for a pen and all cautions on one page of A4', async () => {
    const service = createService();
    service.setText('file:///quay-lane/plain.dough', fourIngredients);
    const sheet = service.sheet('file:///quay-lane/plain.dough', 0, {})!;
    const pages = await printed(browser, asPage(sheet), 'A4', 'four');
    expect(pages).toHaveLength(1);
    for (const said of [
      'Leaves the mixer at',
      'Into the bowl',
      'Mixing',
      'Clock',
      'ready',
      'you stop',
      'Label',
    ])
      expect(pages[0]).toContain(said);
    for (const blank of ['Day', 'Initials', 'Room', 'Water'])
      expect(pages[0]).toMatch(new RegExp(`${blank}\\b`));
    expect(pages[0]!.match(/°C at ____ min/g)).toHaveLength(3);
    const cautions = sheet.sections.flatMap(({ name, notes = [] }) => (name === 'cautions' ? notes : []));
    expect(cautions.length).toBeGreaterThan(3);
    const words = pages[0]!.replace(/\s+/g, '');
    // A caution may run around the turn of a column, but it begins and ends on the page.
    for (const caution of cautions) expect(words).toContain(caution.slice(0, 18).replace(/\s+/g, ''));
  });

  it.each(
    ['Ferry Loaf', 'Slipway Hearth', 'Mooring Wholemeal'].flatMap((formula) => [
      [formula, 'A4'] as const,
      [formula, 'Letter'] as const,
    ]),
  )('puts the work of %s on one page of %s, and all that comes of it on the next', async (formula, paper) => {
    const sheet = exampleSheet(formula);
    const pages = await printed(browser, asPage(sheet), paper, formula.toLowerCase().replace(' ', '-'));
    expect(pages).toHaveLength(2);
    const words = pages.map((page) => page.replace(/\s+/g, ''));
    const isOn = (page: number, said: string): void =>
      expect(words[page]).toContain(said.slice(0, 18).replace(/\s+/g, ''));
    for (const { title, rows } of tablesIn(sheet.sections, 'before', 'bowl', 'later', 'mixing')) {
      isOn(0, title);
      for (const { cells } of rows) isOn(0, (cells.weigh ?? cells.lasts)!.text);
    }
    for (const { when } of sheet.sections.flatMap((one) => (one.kind === 'steps' ? one.steps : [])))
      isOn(0, when);
    expect(pages[0]!.match(/°C at ____ min/g)).toHaveLength(3);
    for (const { name, title, notes = [] } of sheet.sections) {
      if (!['trial', 'yield', 'cost', 'label', 'cautions'].includes(name)) continue;
      isOn(1, title);
      for (const note of notes) isOn(1, note);
    }
  });

  it('shows a weight from a metre: figures 6 mm high and more, the percent smallest of its line', async () => {
    const page = await browser.newPage();
    await page.emulateMedia({ media: 'print' });
    await page.setContent(asPage(worked()));
    const sizes: number[] = await page.evaluate(
      `['.weigh', '.name', '.reads', '.percent'].map((one) => parseFloat(getComputedStyle(document.querySelector('tbody ' + one)).fontSize))`,
    );
    // Of the size of a type its figures take some 0.7; 96 px are an inch of 25.4 mm.
    expect((sizes[0]! * 0.7 * 25.4) / 96).toBeGreaterThanOrEqual(6);
    expect(sizes.toSorted((one, other) => other - one)).toEqual(sizes);
    const filled = await page.evaluate(
      `[...document.querySelectorAll('body *:not(svg, svg *)')].filter((one) => getComputedStyle(one).backgroundColor !== 'rgba(0, 0, 0, 0)').length`,
    );
    expect(filled).toBe(0);
    await page.close();
  });

  it('is sound to whoever cannot see it, and fits a small screen', async () => {
    for (const width of [360, 1000]) {
      const page = await browser.newPage({ viewport: { width, height: 800 }, bypassCSP: true });
      await page.setContent(asPage(exampleSheet(), long()));
      expect(await axeViolations(page)).toEqual([]);
      expect(await sideways(page)).toBe(0);
      await page.close();
    }
  });

  it('runs nothing that a name brings along', async () => {
    const evil = '<img src=x onerror="document.title=1">';
    const page = await browser.newPage();
    const view = { ...small(), formula: evil };
    await page.setContent(
      asPage({ ...view, sections: view.sections.map((section) => ({ ...section, title: evil })) }),
    );
    expect(await page.locator('h1').textContent()).toBe(evil);
    expect(await page.locator('img, script').count()).toBe(0);
    expect(await page.title()).toContain(evil);
    await page.close();
  });
});

function heading(title: string, when: string): RegExp {
  return new RegExp(`^ *${escaped(title)} · .*${escaped(when)}`, 'm');
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
