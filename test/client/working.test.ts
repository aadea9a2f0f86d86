import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { WorkState } from '../../client/preview/messages.ts';
import type { ShownSheet } from '../../server/protocol.ts';
import { launchChromium } from '../editors/code-server.ts';
import { fourIngredients } from './computed-sheets.ts';
import { axeViolations, sideways, smallTargets } from './look.ts';
import { openPanel, type PanelOptions, type PanelPage } from './panel-page.ts';
import { crowdedSheet, harbourTin, harbourTinHeld, markupSheet } from './sheets.ts';
import { type ThemeName, themes } from './themes.ts';

let browser: Browser;
let panel: PanelPage;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(async () => {
  const { wrong } = panel;
  await panel?.page.close();
  expect(wrong).toEqual([]);
});

async function open(
  options: PanelOptions = {},
  work?: WorkState,
  sheet: ShownSheet = harbourTin,
): Promise<Page> {
  panel = await openPanel(browser, { ...options, state: { mode: 'working' } });
  await panel.show(sheet, work ? { work } : {});
  return panel.page;
}

const title = (page: Page) => page.locator('.work-mode h1').textContent();
const lastWork = () => panel.sent.findLast((message) => message.type === 'work')?.work;

describe('one moment at a time', () => {
  it('goes on and back by arrow keys, space, buttons and swipes, and stays at either end', async () => {
    const page = await open();
    expect(await title(page)).toBe('Night poolish');
    await page.keyboard.press('ArrowLeft');
    expect(await title(page)).toBe('Night poolish');
    await page.keyboard.press('ArrowRight');
    expect(await title(page)).toBe('Into the bowl');
    await page.keyboard.press('Space');
    expect(await title(page)).toBe('slow');
    await page.keyboard.press('Shift+Space');
    expect(await title(page)).toBe('Into the bowl');
    await page.getByRole('button', { name: 'Next' }).click();
    expect(await title(page)).toBe('slow');
    await swipe(page, 300, 100);
    expect(await title(page)).toBe('rest');
    await swipe(page, 100, 300);
    expect(await title(page)).toBe('slow');
    await swipe(page, 100, 130);
    expect(await title(page)).toBe('slow');
    expect(lastWork()?.moment).toBe(harbourTin.moments[2]?.id);
  });

  it('says at a line of the mixing what the sheet says at its head', async () => {
    const hot = fourIngredients(undefined, { fastMinutes: 12, roomCelsius: 27, tapCelsius: 22 });
    const page = await open({}, { ticked: [], timers: {}, moment: 'mixing/speed 2' }, hot);
    const said = await page.locator('.work-mode .finding').allInnerTexts();
    expect(said.join(' ')).toMatch(/much too warm: 32\.9 °C.*the dough may be let down/s);
    await page.keyboard.press('ArrowLeft');
    expect(await page.locator('.work-mode .finding').count()).toBe(0);
  });

  it('comes back to where the baker was', async () => {
    const page = await open({}, { ticked: [], timers: {}, moment: harbourTin.moments[4]!.id });
    expect(await title(page)).toBe('After the rest');
  });

  it('weighs in large type, and a tick strikes nothing out', async () => {
    const page = await open({ width: 800 });
    await page.keyboard.press('ArrowRight');
    const weigh = page.locator('.tick .weigh').first();
    const size = async () => Number.parseFloat(await computed(page, 'fontSize'));
    expect(await weigh.textContent()).toBe('7.679\u00a0kg');
    // Letters of 15 mm can be read from a metre and more; a CSS pixel is a quarter of a millimetre.
    expect(await size()).toBeGreaterThanOrEqual(60);
    await page.getByRole('checkbox').first().focus();
    await page.keyboard.press('Space');
    expect(await title(page)).toBe('Into the bowl');
    expect(lastWork()?.ticked).toHaveLength(1);
    expect(await size()).toBeLessThan(60);
    expect(await computed(page, 'textDecorationLine')).toBe('none');
    await panel.show(harbourTin, { work: lastWork()! });
    expect(await page.getByRole('checkbox').first().isChecked()).toBe(true);
    expect(await page.getByRole('checkbox').nth(1).isChecked()).toBe(false);
  });

  it('begins anew for the next dough of the day, when asked twice', async () => {
    const page = await open();
    const anew = page.getByRole('button', { name: 'Begin anew' });
    expect(await anew.count()).toBe(0);
    await page.getByRole('checkbox').first().check();
    expect(await page.evaluate('document.activeElement.type')).toBe('checkbox');
    await page.keyboard.press('ArrowRight');
    await anew.click();
    await page.getByRole('button', { name: 'Next' }).click();
    expect(lastWork()?.ticked).toHaveLength(1);
    await anew.click();
    await page.getByRole('button', { name: 'Clear ticks and timers?' }).click();
    expect(await title(page)).toBe('Night poolish');
    await expect.poll(lastWork).toEqual({ ticked: [], timers: {} });
    expect(await page.getByRole('checkbox').first().isChecked()).toBe(false);
    expect(await anew.count()).toBe(0);
  });

  it('leads back to the whole sheet', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Whole sheet' }).click();
    expect(await page.locator('.weigh-table').count()).toBeGreaterThan(0);
    expect((await panel.state())?.mode).toBe('sheet');
  });

  it('keeps the last whole figures while a line is half typed', async () => {
    const page = await open();
    await panel.show(harbourTinHeld);
    expect(await page.locator('.tick .weigh').first().textContent()).toBe(
      '2681\u00a0g'.replace('2681\u00a0g', '2.681\u00a0kg'),
    );
    expect(await page.locator('.held-by').isVisible()).toBe(true);
  });

  it('never takes a text of the file for markup', async () => {
    const page = await open({}, undefined, markupSheet);
    for (let moment = 0; moment < 6; moment += 1) await page.keyboard.press('ArrowRight');
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).toBe('Batch Sheet');
  });
});

describe('a timer', () => {
  it('runs and is kept', async () => {
    const page = await open();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'Start the timer' }).click();
    expect(Object.values(lastWork()?.timers ?? {})).toMatchObject([{ label: 'slow', seconds: 180 }]);
    await expect.poll(() => page.getByRole('timer').textContent(), { timeout: 5_000 }).toMatch(/^2:5\d$/);
  });

  it('that was started before a reload goes on from where it is', async () => {
    const moment = harbourTin.moments[2]!.id;
    const timers = { [moment]: { label: 'slow', startedAt: Date.now() - 60_000, seconds: 180 } };
    const page = await open({}, { ticked: [], timers, moment });
    expect(await page.getByRole('timer').textContent()).toMatch(/^(2:00|1:5\d)$/);
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.other-timer').textContent()).toMatch(/^slow: (2:00|1:5\d)$/);
    await page.locator('.other-timer').click();
    expect(await title(page)).toBe('slow');
    await page.getByRole('button', { name: 'Stop the timer' }).click();
    expect(lastWork()?.timers).toEqual({});
  });

  it('that is over says so, in words and aloud', async () => {
    const moment = harbourTin.moments[2]!.id;
    const timers = { [moment]: { label: 'slow', startedAt: Date.now() - 190_000, seconds: 180 } };
    const page = await open({}, { ticked: [], timers, moment });
    expect(await page.getByRole('timer').textContent()).toMatch(/^over since 0:1\d$/);
    expect(await page.getByRole('alert').textContent()).toBe('slow is over.');
  });
});

describe('logging a reading', () => {
  it('takes two taps: the temperature and the stage', async () => {
    const page = await open({}, { ticked: [], timers: {}, moment: harbourTin.moments[2]!.id });
    await page.getByRole('button', { name: '21 °C', exact: true }).click();
    await page.getByRole('button', { name: 'pick-up' }).click();
    await expect
      .poll(() => panel.sent.at(-1))
      .toMatchObject({
        type: 'reading',
        uri: harbourTin.uri,
        formula: 'Harbour Tin',
        reading: {
          minutes: 3,
          celsius: 21,
          stage: 'pick-up',
          date: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
        },
      });
    await panel.send({ type: 'said', text: 'Logged 21 °C, pick-up.' });
    expect(await page.locator('.edit-said').textContent()).toBe('Logged 21 °C, pick-up.');
  });

  it('takes the minute from the running timer, and the end of mixing as such', async () => {
    const moments = harbourTin.moments;
    const moment = moments[5]!.id;
    const timers = { [moment]: { label: 'slow', startedAt: Date.now() - 90_000, seconds: 240 } };
    const page = await open({}, { ticked: [], timers, moment });
    await page.getByLabel('or °C').fill('22.3');
    await page.getByRole('button', { name: 'no stage' }).click();
    await expect.poll(() => panel.sent.at(-1)).toMatchObject({ reading: { minutes: 24.5, celsius: 22.3 } });
    await panel.show(harbourTin, { work: { ticked: [], timers: {}, moment: moments[8]!.id } });
    await page.getByLabel('or °C').fill('25.4');
    await page.getByRole('button', { name: 'developed' }).click();
    const sent = panel.sent.at(-1);
    expect(sent?.type === 'reading' && 'minutes' in sent.reading).toBe(false);
  });

  it('is read in the unit that is set, and told with its decimal sign', async () => {
    const moments = harbourTin.moments;
    const warm = moments.map((one) =>
      one.ends ? { ...one, ends: { ...one.ends, celsius: '71,4 °F' } } : one,
    );
    const page = await open(
      {},
      { ticked: [], timers: {}, moment: moments[2]!.id },
      {
        ...harbourTin,
        moments: warm,
        shownIn: { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' },
      },
    );
    const chips = page.getByRole('group', { name: 'Temperature of the dough, °F' }).getByRole('button');
    expect(await chips.allTextContents()).toEqual([
      '67',
      '68',
      '69',
      '70',
      '71',
      '72',
      '73',
      '74',
      '75',
      'not taken',
    ]);
    await page.getByRole('button', { name: '72 °F' }).click();
    await page.getByRole('button', { name: 'pick-up' }).click();
    const logged = () => panel.sent.findLast((message) => message.type === 'reading')?.reading;
    await expect.poll(() => logged()?.said).toBe('72 °F, pick-up');
    expect(logged()?.celsius).toBeCloseTo((72 - 32) / 1.8, 9);
    await page.getByLabel('or °F').fill('75,5');
    await page.getByRole('button', { name: 'clean-up' }).click();
    await expect.poll(logged).toMatchObject({ said: '75,5 °F, clean-up', stage: 'clean-up' });
    expect(logged()?.celsius).toBeCloseTo(24.1667, 4);
  });

  it('tells the minute of now while the timer runs', async () => {
    const moment = harbourTin.moments[5]!.id;
    // Some seconds before the next half one is told.
    const timers = { [moment]: { label: 'slow', startedAt: Date.now() - 98_000, seconds: 240 } };
    const page = await open({}, { ticked: [], timers, moment });
    const when = page.locator('.reading .when');
    expect(await when.textContent()).toBe('at 24.5 min from the start of mixing');
    await expect
      .poll(() => when.textContent(), { timeout: 20_000 })
      .toBe('at 25 min from the start of mixing');
  });

  it('takes the water as it was drawn along, for every reading of the dough', async () => {
    const page = await open({}, { ticked: [], timers: {}, moment: harbourTin.moments[2]!.id });
    await page.getByLabel('Water as drawn, °C').fill('17,5');
    await page.getByRole('button', { name: '21 °C', exact: true }).click();
    await page.getByRole('button', { name: 'pick-up' }).click();
    await expect
      .poll(() => panel.sent.at(-1))
      .toMatchObject({ reading: { celsius: 21, waterCelsius: 17.5 } });
    await page.getByRole('button', { name: 'Next' }).click();
    expect(await page.getByLabel('Water as drawn, °C').inputValue()).toBe('17.5');
  });

  it('says at the place itself what a thermometer does not show', async () => {
    const page = await open({}, { ticked: [], timers: {}, moment: harbourTin.moments[2]!.id });
    await page.getByLabel('or °C').fill('243');
    await page.getByRole('button', { name: 'pick-up' }).click();
    expect(panel.sent.some(({ type }) => type === 'reading')).toBe(false);
    expect(await page.locator('.reading-told').textContent()).toContain('from -20 to 60 °C');
  });

  it('logs nothing that nobody read', async () => {
    const page = await open({}, { ticked: [], timers: {}, moment: harbourTin.moments[2]!.id });
    await page.getByRole('button', { name: 'pick-up' }).click();
    expect(panel.sent.some(({ type }) => type === 'reading')).toBe(false);
    expect(await page.locator('.reading-told').textContent()).toContain('First the temperature');
  });
});

describe.each(Object.keys(themes) as ThemeName[])('for every reader, %s', (theme) => {
  it.each([320, 800, 1600])('weighing and mixing are right at %i pixels', async (width) => {
    const moments = harbourTin.moments;
    const page = await open({ theme, width });
    for (const { id: key } of [moments[1]!, moments[2]!]) {
      await panel.show(harbourTin, { work: { ticked: [], timers: {}, moment: key } });
      expect(await sideways(page)).toBe(0);
      expect(await axeViolations(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
    }
  });
});

it('forty ingredients of sixty characters are weighed at 320 pixels', async () => {
  const page = await open({ width: 320 }, undefined, crowdedSheet);
  expect(await page.getByRole('checkbox').count()).toBe(40);
  expect(await sideways(page)).toBe(0);
});

/** A finger that goes sideways over the moment, from one x to another. */
async function swipe(page: Page, from: number, to: number): Promise<void> {
  await page.evaluate(`(() => {
    const target = document.querySelector('.moment');
    const at = (x) => new Touch({ identifier: 1, target, clientX: x, clientY: 300 });
    target.dispatchEvent(new TouchEvent('touchstart', { touches: [at(${from})], changedTouches: [at(${from})], bubbles: true }));
    target.dispatchEvent(new TouchEvent('touchend', { touches: [], changedTouches: [at(${to})], bubbles: true }));
  })()`);
}

/** A computed style of the first weighed figure. */
async function computed(page: Page, property: string): Promise<string> {
  return page.evaluate(`getComputedStyle(document.querySelector('.tick .weigh')).${property}`);
}
