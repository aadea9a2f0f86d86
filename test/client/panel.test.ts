import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { noWork } from '../../client/preview/messages.ts';
import type { Cell, Fact, Section, SheetFinding, ShownSheet } from '../../server/protocol.ts';
import { wordedIn } from '../../server/sync/language.ts';
import { launchChromium } from '../editors/code-server.ts';
import { exampleSheets } from '../sheet/all-sheets.ts';
import { placesOf, tablesIn, withFound } from '../sheet/parts.ts';
import { computedSheet, fourIngredients } from './computed-sheets.ts';
import { axeViolations, sideways } from './look.ts';
import { openPanel, type PanelOptions, type PanelPage } from './panel-page.ts';
import {
  crowdedSheet,
  emptyFormula,
  findingAtNothing,
  findingAtPhase,
  findingAtStep,
  findingAtWater,
  harbourTin,
  harbourTinHeld,
  markupName,
  markupSheet,
  rightToLeftSheet,
  withFindings,
} from './sheets.ts';
import { type ThemeName, themes } from './themes.ts';

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

async function open(options: PanelOptions, ...sheets: readonly ShownSheet[]): Promise<Page> {
  panel = await openPanel(browser, options);
  for (const sheet of sheets) await panel.show(sheet);
  return panel.page;
}

const noFormula = { what: 'No formula at the cursor.', cure: 'Put the cursor into one.' };

describe('what stands on the sheet', () => {
  it('is what the server sent, figure by figure, in the order of the work', async () => {
    const page = await open({}, harbourTin);
    const sections = tablesIn(harbourTin.sections, 'before', 'bowl', 'later');
    expect(await page.locator('.weighing h2').allTextContents()).toEqual(sections.map(({ title }) => title));
    const sent = (key: 'weigh' | 'reads') =>
      sections.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells[key] ?? [])).map(spoken);
    expect(await page.locator('tbody td.weigh').allTextContents()).toEqual(sent('weigh'));
    expect((await page.locator('tbody td.reads').allTextContents()).filter(Boolean)).toEqual(sent('reads'));
    const [mixing] = tablesIn(harbourTin.sections, 'mixing');
    expect(await page.locator('.mixing tbody .celsius').allTextContents()).toEqual(
      mixing!.rows.map(({ cells }) => cells.celsius!.text),
    );
    expect(await page.locator('.clock tbody .name').allTextContents()).toEqual(
      harbourTin.moments.filter(({ of }) => of === 'step').map(({ title }) => title),
    );
  });

  it('makes the weighed figure the largest of its line and the percent the smallest', async () => {
    const page = await open({}, harbourTin);
    const texts = await Promise.all(
      ['tbody .weigh .figure', 'tbody .ingredient .name', 'tbody .reads', 'tbody .percent'].map((selector) =>
        style(page, selector, 'font-size'),
      ),
    );
    const sizes = texts.map(Number.parseFloat);
    expect([...sizes].sort((a, b) => b - a)).toEqual(sizes);
    // The sheet beside the text is read at half a metre: in the editor’s own size and somewhat more.
    expect(sizes[0]).toBeGreaterThanOrEqual(1.25 * 13);
  });

  it('takes a screen and a half for four ingredients in a panel of 460 pixels', async () => {
    const page = await open({ width: 460, height: 800 }, fourIngredients());
    const height = await page.evaluate<number>('document.documentElement.scrollHeight');
    expect(height).toBeLessThanOrEqual(1.5 * 800);
    // Nothing is lost: what is folded is one press away, and on paper.
    for (const title of [
      'Yield and losses',
      'What the dough is made of',
      'Label, a draft (EU)',
      'Cautions',
    ]) {
      await page.locator('.outcome summary', { hasText: title }).click();
      const opened = await page.locator('.outcome details[open]', { hasText: title }).allInnerTexts();
      expect(opened.join('').length).toBeGreaterThan(title.length + 4);
    }
  });

  it('takes no more with findings that an answer already says: what helps unfolds at the answer', async () => {
    const hot = fourIngredients(undefined, { fastMinutes: 12, roomCelsius: 27, tapCelsius: 22 });
    const page = await open({ width: 460, height: 800 }, hot);
    const height = await page.evaluate<number>('document.documentElement.scrollHeight');
    expect(height).toBeLessThanOrEqual(1.5 * 800);
    expect(placesOf(hot).map(([id]) => id)).toEqual(['glance/dough temperature', 'glance/state']);
    const tile = page.locator('.glance > .bad', { hasText: 'Leaves the mixer at' });
    expect(await tile.locator('summary').textContent()).toBe('Warning: What helps');
    expect(await tile.getByText('7.9 °C above the 25 °C wanted').isVisible()).toBe(false);
    await tile.locator('summary').press('Enter');
    const said = await tile.locator('.finding').textContent();
    expect(said).toContain('7.9 °C above the 25 °C wanted');
    expect(said).toContain('With 2 kg of ice');
    // Read, it has the room of all three.
    const [open_, all] = await Promise.all([tile, page.locator('.glance')].map((one) => one.boundingBox()));
    expect(open_!.width).toBeCloseTo(all!.width, 0);
    expect(await page.locator('.mixing .finding').count()).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
  });

  it('shows all weights of four ingredients on the first screen of a window at 200 percent', async () => {
    const page = await open({ width: 640, height: 450 }, fourIngredients());
    const box = await page.locator('.bowl tbody .weigh').last().boundingBox();
    expect(box!.y + box!.height).toBeLessThan(450);
  });

  it('says the unit of a column in its heading, and aligns its figures on the point', async () => {
    const page = await open({ width: 460 }, fourIngredients('yield 1 piece of 880 g\n  ascorbic acid 0.3%'));
    expect(await page.locator('.bowl thead .weigh').textContent()).toBe('Weigh, g');
    const figures = await page.locator('.bowl tbody .weigh').allInnerTexts();
    expect(figures).toEqual(
      expect.arrayContaining([expect.stringMatching(/^\d+$/), expect.stringMatching(/^\d\.\d$/)]),
    );
    const edges = await everyOne<number>(
      page,
      '.bowl tbody .weigh .figure',
      `(() => {
        const range = document.createRange();
        const text = [...one.childNodes].find((node) => node.nodeType === 3 && node.data !== '');
        range.setStart(text, 0);
        range.setEnd(text, text.data.split('.')[0].length);
        return Math.round(range.getBoundingClientRect().right);
      })()`,
    );
    expect(new Set(edges).size).toBe(1);
  });

  it('leaves the reading of the scale out when its switch says so, and says the sum instead', async () => {
    const page = await open({ width: 460 }, computedSheet('Mooring Wholemeal'));
    const box = page.getByRole('checkbox', { name: 'Scale reads' });
    expect(await box.isChecked()).toBe(true);
    await box.press('Space');
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'scaleReading', shown: false });
    await panel.show(computedSheet('Mooring Wholemeal', {}, { scaleReading: false }));
    expect(await box.isChecked()).toBe(false);
    expect(await page.locator('.reads').count()).toBe(0);
    expect(await page.locator('.bowl tfoot').count()).toBe(1);
    expect(await axeViolations(page)).toEqual([]);
    await box.press('Space');
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'scaleReading', shown: true });
  });

  it('says a sum only where no reading of the scale says it', async () => {
    const page = await open({}, computedSheet('Slipway Hearth'));
    expect(await page.locator('.bowl tfoot').count()).toBe(0);
    expect(await page.locator('.later tfoot').count()).toBe(1);
  });

  it('lines the weighed figures up at their unit, in every block', async () => {
    const page = await open({}, harbourTin);
    const lefts = await everyOne<number>(
      page,
      'tbody .weigh .unit',
      'Math.round(one.getBoundingClientRect().left)',
    );
    expect(new Set(lefts).size).toBe(1);
  });

  it('answers first: how warm, which state, which water, each by a sign, a word and a figure, and leads to its line', async () => {
    const page = await open({}, harbourTin);
    const tiles = page.locator('.glance > div');
    expect(await tiles.locator('.value').allInnerTexts()).toEqual([
      ...['✓ 25.4 °C ± 0.8 °C', '≈ developed', '! 1.2 kg of ice'],
    ]);
    expect(await tiles.locator('.word').allInnerTexts()).toEqual([
      ...['as wanted', 'perhaps too early', 'not enough'],
    ]);
    await tiles.nth(1).getByRole('button').click();
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'reveal', uri: harbourTin.uri, line: 28 });
  });

  it('has one filled button', async () => {
    const page = await open({}, { ...harbourTin, tried: true });
    const filled = await everyOne<string>(
      page,
      'main button',
      "getComputedStyle(one).backgroundColor === 'rgba(0, 0, 0, 0)' ? '' : one.textContent",
    );
    expect(filled.filter(Boolean)).toEqual(['Work from this']);
  });

  it('shows what is weighed on the first screen of a window at 200 percent', async () => {
    const page = await open({ width: 640, height: 450 }, computedSheet('Mooring Wholemeal'));
    const box = await page.locator('tbody .weigh .figure').first().boundingBox();
    expect(box!.y + box!.height).toBeLessThan(450);
  });

  it('never takes a text of the file for markup', async () => {
    const page = await open({}, markupSheet);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).toBe('Batch Sheet');
    expect(await page.locator('h1').textContent()).toBe(markupName);
    expect(await page.locator('tbody .name').first().textContent()).toBe(markupName);
    expect(await page.locator('.finding').textContent()).toContain(markupName);
    expect(await page.locator('.cautions li').textContent()).toBe(markupName);
  });

  it('runs names from right to left by themselves and leaves the columns where they are', async () => {
    const page = await open({}, rightToLeftSheet);
    const name = page.locator('tbody .name').first();
    expect(await style(page, 'tbody .name', 'direction')).toBe('rtl');
    const nameBox = (await name.boundingBox())!;
    const figureBox = (await page.locator('tbody .weigh .figure').first().boundingBox())!;
    expect(nameBox.x).toBeLessThan(figureBox.x);
  });

  it('says that there are no ingredients, and that no formula is at the cursor', async () => {
    const page = await open({}, emptyFormula);
    expect(await page.locator('main').textContent()).toContain('No ingredients yet');
    expect(await page.locator('form').isVisible()).toBe(false);
    await panel.send({ type: 'nothing', sequence: 9, ...noFormula });
    expect(await page.locator('h1').textContent()).toBe(noFormula.what);
    await panel.send({ type: 'nothing', sequence: 10, what: 'Kein Sprachserver.', cure: 'Neu starten.' });
    expect(await page.locator('main').textContent()).toContain('Neu starten.');
  });

  it('ignores an answer that has been overtaken', async () => {
    const page = await open({});
    await panel.send({ type: 'sheet', sequence: 4, sheet: emptyFormula, asked: {}, work: noWork });
    await panel.send({ type: 'sheet', sequence: 3, sheet: harbourTin, asked: {}, work: noWork });
    expect(await page.locator('h1').textContent()).toBe(emptyFormula.formula);
  });
});

describe('the words of the panel', () => {
  it('are those that come with the sheet, in its language, also where that changes', async () => {
    const asked = { size: { by: 'pieces', pieces: 30 } } as const;
    const page = await open({}, withFindings);
    await panel.show(computedSheet('Ferry Loaf', asked, await wordedIn('de')));
    const words = (await page.locator('main').allInnerTexts()).join(' ').replaceAll(/\s+/g, ' ');
    for (const word of ['Zutat', 'Abwiegen', 'Wie in der Datei', 'Größe nach', 'Uhrzeit', 'Vorsicht'])
      expect(words).toContain(word);
    expect(words).not.toMatch(/\b(Ingredient|Weigh|As in the file|Size by|After mixing|Error)\b/);
    expect(await page.locator('html').getAttribute('lang')).toBe('de');
    expect(await axeViolations(page)).toEqual([]);
    await panel.show(withFindings);
    expect(await page.locator('.as-in-file').textContent()).toBe('As in the file');
    expect(await page.locator('form').count()).toBe(1);
  });
});

describe('findings', () => {
  it('stand at the row, the phase and the step they concern, and the rest under the heading', async () => {
    const page = await open({}, withFindings);
    const rowAfterWater = page
      .locator('tr', { has: page.getByRole('button', { name: 'water', exact: true }) })
      .nth(1);
    const below = rowAfterWater.locator('xpath=following-sibling::tr[1]');
    expect(await below.textContent()).toContain(findingAtWater.message);
    const mixing = page.locator('.mixing tbody tr');
    expect(await mixing.nth(4).textContent()).toContain(findingAtPhase.message);
    expect(await page.locator('.clock tbody tr').nth(4).textContent()).toContain(findingAtStep.message);
    expect(await page.locator('.title .finding').textContent()).toBe(
      `Information: ${findingAtNothing.message} (line 3)`,
    );
    expect(await page.locator('.finding').count()).toBe(4);
  });

  it('stand at the node that the core gives them, on every line of every example', async () => {
    const page = await open({});
    for (const sheet of exampleSheets()) {
      const lines = Array.from({ length: 60 }, (_, index) => sheet.line + index);
      const findings = lines.map((line): SheetFinding => {
        return { line, level: 'warning', code: 'any', message: `Found on line ${line}.` };
      });
      const found = withFound(sheet, findings);
      await panel.show(found);
      const told: [number, string][] =
        await page.evaluate(`[...document.querySelectorAll('.finding')].map((one) =>
        [Number(/line (\\d+)/.exec(one.textContent)[1]), one.closest('[data-id]')?.dataset.id ?? 'heading'])`);
      const meant = placesOf(found).flatMap(([id, all]) => all.map((line) => [line, id] as const));
      expect(new Map(told), sheet.formula).toEqual(new Map(meant));
    }
  });

  it('tell their level by a word and by a shape, each its own', async () => {
    const page = await open({}, withFindings);
    expect((await page.locator('.finding .level').allTextContents()).sort()).toEqual([
      'Error: ',
      'Hint: ',
      'Information: ',
      'Warning: ',
    ]);
    const shapes = await everyOne<string>(page, '.finding path', "one.getAttribute('d')");
    expect(new Set(shapes).size).toBe(4);
  });
});

describe('a trial whose readings miss what is computed', () => {
  it('teaches its mixer by a plain button beside what it says, which is not there while one works', async () => {
    const sheet = computedSheet('Ferry Loaf');
    const [trial] = tablesIn(sheet.sections, 'trial');
    const teach = { mixer: 'big spiral', words: 'Teach “big spiral” what its trials say' };
    const taught = {
      ...sheet,
      sections: sheet.sections.map((one) => (one === trial ? { ...trial, teach } : one)),
    };
    const page = await open({}, taught);
    const button = page.locator('section.trial').getByRole('button', { name: teach.words });
    const filled = await style(page, '.controls .work', 'background-color');
    expect(await style(page, '.teach', 'background-color')).not.toBe(filled);
    await button.press('Enter');
    const { uri, formula } = sheet;
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'teach', uri, formula, line: trial!.line });
    expect(await axeViolations(page)).toEqual([]);
    await panel.send({ type: 'mode', mode: 'working' });
    expect(await button.isVisible()).toBe(false);
    await panel.send({ type: 'mode', mode: 'sheet' });
    await panel.show(sheet);
    expect(await page.locator('.teach').count()).toBe(0);
  });
});

describe('a sheet that is held up', () => {
  it('keeps the last whole figures, paler, and a live text says which line holds it up', async () => {
    const page = await open({}, harbourTin);
    const weigh = page.locator('tbody td.weigh');
    const before = await weigh.allTextContents();
    const weight = () => style(page, 'tbody td.weigh', 'font-weight');
    expect(await weight()).toBe('700');
    await panel.show(harbourTinHeld);
    expect(await weigh.allTextContents()).toEqual(before);
    expect(await weight()).toBe('400');
    const live = page.locator('.held-by[role=status]');
    expect(await live.textContent()).toBe(
      'Line 6 holds this up: Write the amount of barley malt extract with its unit. The figures below are the last that were whole.',
    );
    const asking = { line: 5, message: '“Bake lose” is not a property of a formula. Is it “bake loss”?' };
    await panel.show({ ...harbourTinHeld, heldBy: asking });
    expect(await live.textContent()).toContain('Is it “bake loss”? The figures');
    await panel.show(harbourTin);
    expect(await live.textContent()).toBe('');
    expect(await weight()).toBe('700');
  });

  it('shows what is known when no whole sheet came before', async () => {
    const page = await open({}, harbourTinHeld);
    expect(await page.locator('.held-by').textContent()).toContain('What is known so far stands below.');
    expect(await page.locator('.weighing tbody .name').count()).toBe(10);
  });

  it('does not borrow the figures of another formula', async () => {
    const page = await open({}, harbourTin, { ...harbourTinHeld, formula: 'Pilot Boat' });
    expect((await page.locator('tbody td.weigh').allTextContents()).join('')).toBe('');
  });
});

describe('by keyboard', () => {
  it('sizes the batch: choose what by, type, and go back to the file', async () => {
    const page = await open({}, harbourTin);
    const focused = () => page.evaluate('document.activeElement.id || document.activeElement.textContent');
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('Harbour Tin');
    for (const answer of ['Leaves the mixer at', 'When you stop', 'Water']) {
      await page.keyboard.press('Tab');
      expect(await focused()).toBe(answer);
    }
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('size-by');
    await page.keyboard.type('Dough');
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('size-amount');
    expect(await page.getByLabel('Dough, kg').inputValue()).toBe('21.442');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('30.5');
    await expect
      .poll(() => panel.sent.at(-1))
      .toEqual({
        type: 'try',
        uri: harbourTin.uri,
        formula: 'Harbour Tin',
        asked: { size: { by: 'dough', grams: 30_500 } },
      });
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => panel.sent.at(-1)).toMatchObject({ type: 'try', asked: {} });
  });

  it('takes a decimal comma for what it is, and arrow keys count', async () => {
    const page = await open({}, harbourTin);
    await page.getByLabel('Size by').selectOption('Dough');
    const dough = page.getByLabel('Dough, kg');
    await dough.focus();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('12,5');
    await expect
      .poll(() => panel.sent.at(-1))
      .toMatchObject({ asked: { size: { by: 'dough', grams: 12_500 } } });
    await page.keyboard.press('ArrowUp');
    await expect
      .poll(() => panel.sent.at(-1))
      .toMatchObject({ asked: { size: { by: 'dough', grams: 13_500 } } });
    await dough.fill('12 kilos');
    expect(await dough.getAttribute('aria-invalid')).toBe('true');
  });

  it('sizes and tells the day in the units that are set', async () => {
    const condition = { source: 'file', notes: [] } as const;
    const facts: Fact[] = [
      { ...condition, id: 'day/room', key: 'room', label: 'Room', value: '70 °F', figure: 190 / 9 },
      {
        ...condition,
        id: 'day/scale step',
        key: 'scale step',
        label: 'Scale step',
        value: '0,18 oz',
        figure: 5,
      },
    ];
    const day: Section = { kind: 'facts', id: 'day', name: 'day', title: '', facts };
    const page = await open(
      {},
      {
        ...harbourTin,
        sections: [day, ...harbourTin.sections],
        shownIn: { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' },
      },
    );
    await page.getByLabel('Size by').selectOption('Dough');
    const dough = page.getByLabel('Dough, lb');
    expect(await dough.inputValue()).toBe('47,272');
    await dough.fill('50');
    const asked = () => panel.sent.findLast((message) => message.type === 'try')?.asked;
    const grams = () => {
      const size = asked()?.size;
      return size?.by === 'dough' ? size.grams : 0;
    };
    await expect.poll(grams).toBeCloseTo(22_679.6185, 3);
    await page.locator('.day summary').click();
    const room = page.getByLabel('Room, °F');
    expect(await room.inputValue()).toBe('70');
    expect(await page.getByLabel('Scale step, oz').inputValue()).toBe('0,176');
    await room.fill('77');
    await expect.poll(() => asked()?.today?.roomCelsius).toBeCloseTo(25, 9);
    const before = panel.sent.length;
    await room.fill('warm');
    expect(await room.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('#day-room-said').textContent()).toBe('not a number');
    expect(panel.sent).toHaveLength(before);
  });

  it('leaves what is being typed alone when a new sheet comes in', async () => {
    const page = await open({}, harbourTin);
    const pieces = page.getByLabel('Pieces', { exact: true });
    await pieces.focus();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('4');
    await panel.show({
      ...harbourTin,
      tried: true,
      size: { ...harbourTin.size, asked: { by: 'pieces', pieces: 4 }, pieces: 4 },
    });
    await page.keyboard.type('8');
    expect(await pieces.inputValue()).toBe('48');
    await expect
      .poll(() => panel.sent.at(-1))
      .toMatchObject({ asked: { size: { by: 'pieces', pieces: 48 } } });
    expect(await page.locator('.makes').textContent()).toContain('tried today, not as in the file');
  });

  it('asks for nothing on a number that makes no batch, and says so', async () => {
    const page = await open({}, harbourTin);
    const pieces = page.getByLabel('Pieces', { exact: true });
    for (const typed of ['0', '-3', '']) {
      await pieces.fill(typed);
      expect(await pieces.getAttribute('aria-invalid')).toBe('true');
      expect(await page.locator('#size-wrong').textContent()).toBe('Type a number above 0.');
    }
    await pieces.blur();
    expect(await pieces.inputValue()).toBe('24');
    expect(panel.sent.filter((message) => message.type === 'try')).toEqual([]);
  });

  it('offers only the ways this formula can be sized', async () => {
    const page = await open(
      {},
      { ...harbourTin, size: { asked: { by: 'file' }, doughGrams: 1759, flourGrams: 1000, ingredients: [] } },
    );
    expect(await page.locator('#size-by option').allTextContents()).toEqual(['Dough', 'Flour']);
    expect(await page.getByLabel('Dough, kg').inputValue()).toBe('1.759');
  });

  it('shows the line of a row in the editor, and the row keeps the focus when the sheet is drawn anew', async () => {
    const page = await open({}, harbourTin);
    await page.getByRole('button', { name: 'butter' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'reveal', uri: harbourTin.uri, line: 11 });
    await panel.show(withFindings);
    expect(await page.evaluate('document.activeElement.textContent')).toBe('butter');
  });

  it('leaves unfolded what was unfolded, and the focus where it is, when the sheet changes', async () => {
    const page = await open({}, harbourTin);
    await page.locator('.cautions summary').focus();
    await page.keyboard.press('Enter');
    await panel.show(withFindings);
    expect(await page.locator('.cautions li').first().isVisible()).toBe(true);
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Cautions');
  });
});

describe('over a reload', () => {
  it('keeps the place and how it was shown, and hands both back', async () => {
    const page = await open({}, harbourTin);
    await page.getByRole('button', { name: 'Work from this' }).click();
    await page.reload();
    await expect
      .poll(() => panel.sent.at(-1))
      .toEqual({
        type: 'ready',
        state: { uri: harbourTin.uri, formula: 'Harbour Tin', line: 0, mode: 'working' },
      });
  });
});

describe.each(Object.keys(themes) as ThemeName[])('for every reader, %s', (theme) => {
  it.each([320, 800, 1600])('nothing is wrong at %i pixels', async (width) => {
    const page = await open({ theme, width }, withFindings);
    expect(await sideways(page)).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
  });

  it('nothing is wrong while it is held up', async () => {
    const page = await open({ theme }, harbourTin, harbourTinHeld);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('crowded sheets', () => {
  it.each([320, 640, 1200])('forty ingredients of sixty characters fit into %i pixels', async (width) => {
    const page = await open({ width }, crowdedSheet);
    expect(await page.locator('.weighing tbody tr:not(.about)').count()).toBe(40);
    expect(await sideways(page)).toBe(0);
    expect(await overlaps(page)).toEqual([]);
    expect(await axeViolations(page)).toEqual([]);
  });

  it('nothing is wrong with other states and with names from right to left', async () => {
    const page = await open({}, rightToLeftSheet);
    expect(await axeViolations(page)).toEqual([]);
    await panel.show(emptyFormula);
    expect(await axeViolations(page)).toEqual([]);
    await panel.send({ type: 'nothing', sequence: 9, ...noFormula });
    expect(await axeViolations(page)).toEqual([]);
  });
});

function spoken({ text, unit }: Cell): string {
  return `${text}\u00a0${unit}`;
}

/** A computed style of the first element that a selector finds. */
async function style(page: Page, selector: string, property: string): Promise<string> {
  return page.evaluate(
    `getComputedStyle(document.querySelector('${selector}')).getPropertyValue('${property}')`,
  );
}

/** What an expression about `one` gives for every element that a selector finds. */
async function everyOne<Value>(page: Page, selector: string, expression: string): Promise<Value[]> {
  return page.evaluate(`[...document.querySelectorAll('${selector}')].map((one) => ${expression})`);
}

/** Rows in which a name or a figure stands on its neighbour. */
async function overlaps(page: Page): Promise<string[]> {
  return page.evaluate(`[...document.querySelectorAll('tbody tr:not(.about)')].flatMap((row) => {
    const boxes = [...row.querySelectorAll('.name, .figure, .percent')].map((part) => part.getBoundingClientRect());
    return boxes.some((one, i) => boxes.slice(i + 1).some((other) =>
      one.left < other.right - 1 && other.left < one.right - 1 && one.top < other.bottom - 1 && other.top < one.bottom - 1))
      ? [row.textContent] : [];
  })`);
}

describe('what is said of an edit', () => {
  it('stays with the sheets that the edit brings, one a file, and goes with a later one', async () => {
    const page = await open({}, harbourTin);
    await panel.send({ type: 'said', text: 'Written into tin.dough.' });
    await panel.show(harbourTin);
    await panel.show(harbourTin);
    expect(await page.locator('.edit-said').textContent()).toBe('Written into tin.dough.');
    await new Promise((done) => setTimeout(done, 3_100));
    await panel.show(harbourTin);
    expect(await page.locator('.edit-said').textContent()).toBe('');
  });

  it('is in sight far down the sheet', async () => {
    const page = await open({ height: 500 }, harbourTin);
    await page.evaluate('scrollTo(0, 1e6)');
    await panel.send({ type: 'said', text: 'Logged 24 °C.' });
    const box = await page.locator('.edit-said').boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect(box?.y).toBeLessThan(60);
  });
});
