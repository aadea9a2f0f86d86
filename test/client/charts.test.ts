import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { plainDisplay } from '../../core/text/display.ts';
import type { SheetDocument } from '../../server/protocol.ts';
import { wordedIn } from '../../server/sync/language.ts';
import { launchChromium } from '../editors/code-server.ts';
import { partsOf, withFound } from '../sheet/parts.ts';
import { computedSheet, crowdedComputedSheet } from './computed-sheets.ts';
import { axeViolations, sideways } from './look.ts';
import { openPanel, type PanelOptions, type PanelPage } from './panel-page.ts';
import type { ThemeName } from './themes.ts';

let browser: Browser;
let panel: PanelPage;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(async () => {
  const { wrong } = panel;
  await panel.page.close();
  expect(wrong).toEqual([]);
});

async function open(options: PanelOptions, ...sheets: readonly SheetDocument[]): Promise<Page> {
  panel = await openPanel(browser, options);
  for (const sheet of sheets) await panel.show(sheet);
  return panel.page;
}

const ferry = () => computedSheet('Ferry Loaf', { clock: { by: 'ready', minutes: 390 } });

describe('the charts in the panel', () => {
  it('stand at what they draw: mixing, the steps, what comes of it', async () => {
    const page = await open({}, ferry());
    expect(await page.locator('.mixing-chart h2').textContent()).toContain('Temperature');
    expect(await page.locator('.clock .along').count()).toBe(partsOf(ferry()).moments.length);
    expect(await page.locator('.outcome .composition-chart h2').textContent()).toBe(
      'What the dough is made of',
    );
  });

  it.each([
    [320, 'narrow', 'narrow'],
    [460, 'middle', 'narrow'],
    [700, 'wide', 'wide'],
    [1600, 'wide', 'wide'],
  ])('are drawn for the room there is at %i pixels', async (width, mixing, composition) => {
    const page = await open({ width }, ferry());
    await page.locator('.composition-chart h2').click();
    for (const [chart, shown] of [
      ['.mixing-chart', mixing],
      ['.composition-chart', composition],
    ])
      expect(
        await page
          .locator(`${chart} :is(.narrow, .middle, .wide):visible`)
          .evaluateAll((all) => all.map((one) => one.className)),
      ).toEqual([shown]);
  });

  it('say in a table what they show, for keyboard and screen reader', async () => {
    const sheet = ferry();
    const page = await open({}, sheet);
    const chart = page.locator('.mixing-chart');
    await chart.locator('summary').focus();
    await page.keyboard.press('Enter');
    const cells = await chart.locator('tbody tr').first().locator('td').allTextContents();
    expect(cells).toEqual(partsOf(sheet).charts[0]!.table.rows[0]);
    expect(await page.getByRole('img', { name: partsOf(sheet).charts[0]!.title }).count()).toBe(1);
  });

  it.each(['Ferry Loaf', 'Slack Water Brown', 'Breakwater Rye', 'Slipway Hearth'])(
    'of %s have no word on another, in the letters that are drawn',
    async (formula) => {
      const sheet = computedSheet(formula);
      for (const width of [320, 460, 800]) {
        const page = await open({ width }, sheet);
        expect(await wordsOnWords(page)).toEqual([]);
        if (width !== 800) await page.close();
      }
    },
  );

  it('keep the last whole figures, paler, while the sheet is held up', async () => {
    const sheet = ferry();
    const held: SheetDocument = {
      ...sheet,
      ...{ state: 'held', heldBy: { line: 3, message: 'Write the amount.' } },
      ...{ sections: [], makes: [] },
    };
    const page = await open({ theme: 'dark' }, sheet);
    const colour = () =>
      page.evaluate<string>("getComputedStyle(document.querySelector('.chart .wide svg')).color");
    const whole = await colour();
    await panel.show(held);
    expect(await page.locator('.chart').count()).toBe(2);
    expect(await page.locator('.trial').count()).toBe(2);
    expect(await colour()).not.toBe(whole);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('the clock', () => {
  it('tells the time of each step, and of each fold within it', async () => {
    const page = await open({}, ferry());
    const when = async (name: RegExp) => {
      const row = page.locator('.clock tbody tr').filter({ has: page.getByRole('button', { name }) });
      return row.first().locator('.clock').textContent();
    };
    expect(await when(/^bulk/)).toBe('00:53');
    // Fold at 50 min.
    expect(await when(/^fold/)).toBe('01:43');
    await panel.show(computedSheet('Ferry Loaf'));
    expect(await when(/^fold/)).toBe('after 1 h 22 min');
  });
});

describe('trials in the panel', () => {
  it('stand below the mixing, measured beside worked out, and lead to their line', async () => {
    const sheet = computedSheet('Slipway Hearth');
    const page = await open({}, sheet);
    const trial = page.locator('.trial').first();
    const rows = await trial.locator('tbody tr').all();
    const [first] = partsOf(sheet).trials;
    expect(rows).toHaveLength(first!.rows.length);
    const [{ name, cells }] = first!.rows as [(typeof first & object)['rows'][number]];
    expect(await rows[0]!.locator('th, td').allTextContents()).toEqual([
      ...[name, cells.measured!.text, cells.computed!.text, cells.off!.text],
    ]);
    await trial.getByRole('button', { name: 'Trial 2026-03-10' }).click();
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'reveal', uri: sheet.uri, line: first!.line });
  });

  it('have what was found at them, and so has what comes of it', async () => {
    const sheet = computedSheet('Ferry Loaf');
    const { trials, yields } = partsOf(sheet);
    const line = trials[1]!.rows[0]!.line!;
    const bakeLoss = yields.find(({ key }) => key === 'bake loss')!.line!;
    const page = await open(
      {},
      withFound(sheet, [
        { line, level: 'info', code: 'trial-contradicts', message: 'Three degrees off.' },
        { line: bakeLoss, level: 'hint', code: 'bake-loss', message: 'Usual is 11%.' },
      ]),
    );
    expect(await page.locator('.trial').nth(1).locator('.finding').textContent()).toContain(
      'Three degrees off.',
    );
    expect(await page.locator('.yield .finding').textContent()).toContain('Usual is 11%.');
    expect(await page.locator('.finding').count()).toBe(2);
  });
});

describe.each(['light', 'dark', 'high-contrast'] as ThemeName[])('for every reader, %s', (theme) => {
  it.each([320, 700, 1600])('nothing is wrong at %i pixels, all unfolded', async (width) => {
    const page = await open({ theme, width }, computedSheet('Lantern Milk Loaf'));
    await page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true");
    expect(await sideways(page)).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('a crowded formula as it is worked out', () => {
  // A window of 640 at 200 % is one of 320.
  it.each([320, 640, 1600])('can be read at %i pixels', async (width) => {
    const page = await open({ width }, crowdedComputedSheet());
    expect(await page.locator('.chart').count()).toBe(2);
    expect(await sideways(page)).toBe(0);
    expect(await wordsOnWords(page)).toEqual([]);
    await page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true");
    expect(await sideways(page)).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('the charts of a sheet in another language', () => {
  it.each([
    [320, 'Ferry Loaf'],
    [640, 'Ferry Loaf'],
    [320, 'Lantern Milk Loaf'],
    [640, 'Lantern Milk Loaf'],
  ])('have no words on words at %i pixels: %s', async (width, formula) => {
    const display = { ...plainDisplay, decimalSign: 'comma' } as const;
    const sheet = computedSheet(formula, {}, { ...(await wordedIn('de')), display });
    expect(partsOf(sheet).charts.map(({ title }) => title)).toContain(
      'Temperatur und Entwicklung beim Kneten',
    );
    const page = await open({ width }, sheet);
    expect(await page.locator('.chart').count()).toBe(partsOf(sheet).charts.length);
    expect(await wordsOnWords(page)).toEqual([]);
    expect(await sideways(page)).toBe(0);
  });
});

/** Words of the drawings that are shown which stand on one another or beyond their drawing, as a browser draws them. */
function wordsOnWords(page: Page): Promise<string[]> {
  return page.evaluate(`[...document.querySelectorAll('.chart svg')].flatMap((drawing) => {
    const edge = drawing.getBoundingClientRect();
    if (edge.width === 0) return [];
    const words = [...drawing.querySelectorAll('text')].map((one) => ({ text: one.textContent, box: one.getBoundingClientRect() }));
    const beyond = words.filter(({ box }) => box.left < edge.left - 1 || box.right > edge.right + 1).map(({ text }) => 'beyond: ' + text);
    return beyond.concat(words.flatMap((one, i) => words.slice(i + 1).filter((other) =>
      one.box.left < other.box.right - 1 && other.box.left < one.box.right - 1 &&
      one.box.top < other.box.bottom - 5 && other.box.top < one.box.bottom - 5).map((other) => one.text + ' on ' + other.text)));
  })`);
}
