import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SheetOptions } from '../../server/protocol.ts';
import { launchChromium } from '../editors/code-server.ts';
import { computedSheet } from './computed-sheets.ts';
import { axeViolations, sideways } from './look.ts';
import { openPanel, type PanelOptions } from './panel-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

async function opened(asked: SheetOptions, options: PanelOptions = {}) {
  const panel = await openPanel(browser, options);
  await panel.show(computedSheet('Ferry Loaf', asked), { asked });
  await panel.page.locator('summary', { hasText: 'What if' }).click();
  /** What the page asked for last. */
  const tried = (): SheetOptions | undefined => {
    const last = panel.sent.findLast((message) => message.type === 'try');
    return last?.type === 'try' ? last.asked : undefined;
  };
  return { ...panel, tried };
}

describe('what if, in the panel', () => {
  it('steps the minutes of a line, its rest and the water, each from what the file has', async () => {
    const { page, tried } = await opened({});
    await page.getByRole('button', { name: 'speed 2, min: more' }).click();
    await expect.poll(tried).toEqual({ whatIf: { lines: [{ index: 3, minutes: 5.5, from: 5 }] } });
    await page.getByRole('button', { name: 'rest, min: less' }).click();
    await expect.poll(() => tried()?.whatIf?.lines).toContainEqual({ index: 1, minutes: 19.5, from: 20 });
    await page.getByRole('button', { name: 'water, %: more' }).click();
    await expect.poll(() => tried()?.whatIf?.water).toBeCloseTo(0.68, 9);
    await page.close();
  });

  it('is typed too, by keyboard alone, and back at what the file has nothing is tried', async () => {
    const asked: SheetOptions = { whatIf: { lines: [{ index: 3, minutes: 9, from: 5 }], water: 0.7 } };
    const { page, tried } = await opened(asked);
    await page.getByLabel('speed 2, min', { exact: true }).fill('5');
    await expect.poll(tried).toEqual({ whatIf: { water: 0.7 } });
    await page.getByLabel('water, %', { exact: true }).fill('67');
    await expect.poll(() => tried()?.whatIf?.water).toBeUndefined();
    await page.getByLabel('water, %', { exact: true }).fill('none');
    expect(await page.getByLabel('water, %', { exact: true }).getAttribute('aria-invalid')).toBe('true');
    await page.close();
  });

  it('takes another flour, and gives it back', async () => {
    const { page, tried } = await opened({});
    const flour = page.getByLabel('strong white', { exact: true });
    await flour.selectOption('soft white');
    await expect.poll(tried).toEqual({ whatIf: { flour: { from: 'strong white', to: 'soft white' } } });
    await flour.selectOption('strong white');
    await expect.poll(tried).toEqual({});
    await page.close();
  });

  it('takes another flour with the water for the same feel, until a water is asked for', async () => {
    const { page, tried, show } = await opened({});
    const flour = page.getByLabel('strong white', { exact: true });
    const feel = page.getByRole('checkbox', { name: 'Water for the same feel' });
    const water = page.getByLabel('water, %', { exact: true });
    await feel.check();
    await flour.selectOption('soft white');
    await expect
      .poll(() => tried()?.whatIf)
      .toEqual({ flour: { from: 'strong white', to: 'soft white', sameFeel: true } });
    const asked = tried()!;
    await show(computedSheet('Ferry Loaf', asked), { asked });
    const [before, after] = await page
      .locator('.before-after tr', { hasText: 'Hydration' })
      .locator('td')
      .allTextContents();
    expect(before).toBe('67%');
    expect(await water.inputValue()).toBe(after!.replace('%', ''));
    expect(after).not.toBe(before);
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'water, %: more' }).click();
    await expect.poll(() => tried()?.whatIf?.flour).toEqual({ from: 'strong white', to: 'soft white' });
    expect(tried()?.whatIf?.water).toBeGreaterThan(0);
    await show(computedSheet('Ferry Loaf', tried()!), { asked: tried()! });
    expect(await feel.isChecked()).toBe(false);
    await feel.check();
    await show(computedSheet('Slipway Hearth'));
    expect(await feel.isChecked()).toBe(false);
    await page.close();
  });

  it('stands before beside after, can be kept, and the map stays when all is as in the file again', async () => {
    const { page, sent, tried } = await opened({ whatIf: { water: 0.72 }, map: { against: 'water' } });
    const row = page.locator('tr', { hasText: 'Hydration' }).first();
    expect(await row.locator('td').allTextContents()).toEqual(['67%', '72%']);
    await page.getByRole('button', { name: 'Keep in the file' }).click();
    await expect.poll(() => sent.at(-1)?.type).toBe('keep');
    await page.getByRole('button', { name: 'As in the file' }).click();
    await expect.poll(tried).toEqual({ map: { against: 'water' } });
    await page.getByLabel('Map of the gap', { exact: true }).selectOption('');
    await expect.poll(() => tried()?.map).toBeUndefined();
    await page.close();
  });
});

describe('the map of the gap, in the panel', () => {
  it.each([
    ['light', 800],
    ['dark', 460],
    ['high-contrast', 320],
  ] as const)(
    'in %s at %i is in the page, with its table, and nothing is wrong with it',
    async (theme, width) => {
      const { page, wrong } = await opened(
        { whatIf: { water: 0.72 }, map: { against: 'water' } },
        { theme, width },
      );
      const map = page.locator('[data-id="map-chart"]');
      expect(await map.locator('svg:visible').count()).toBe(1);
      await map.locator('summary').click();
      expect(await map.locator('tbody tr').count()).toBeGreaterThan(7);
      expect(await axeViolations(page)).toEqual([]);
      expect(await sideways(page)).toBe(0);
      expect(wrong).toEqual([]);
      await page.close();
    },
  );

  it('says why there is none', async () => {
    const asked: SheetOptions = { map: { against: 'water' } };
    const panel = await openPanel(browser);
    await panel.show(computedSheet('Breakwater Rye', asked), { asked });
    expect(await panel.page.locator('[data-id="map-chart"]').textContent()).toContain(
      'There is no map of the gap for Breakwater Rye',
    );
    await panel.page.close();
  });
});
