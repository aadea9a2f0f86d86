import { join } from 'node:path';
import type { FrameLocator, Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { screenshot } from './appearance.ts';
import { editorFor } from './editor-for.ts';
import { fillByHand, pressByHand, typeByHand } from './hand.ts';
import { projectFolder } from './places.ts';
import { waitUntil } from './processes.ts';
import {
  chooseQuickPick,
  closePanel,
  focusEditor,
  goTo,
  openFile,
  panelFrame,
  readPanel,
  readProblems,
  runCommand,
  save,
  waitForHint,
  waitForPanel,
} from './workbench.ts';

/** A day so hot that the tap is too warm for any dough, and a scale that shows grams. */
const hotDay =
  'bakery Hot Day:\n  room 33 °C\n  flour 32 °C\n  tap water 20 °C\n  ice to hand\n  scale step 1 g\n';

/** The salt goes in later and weighs as much as the sugar; rounded to grams the lines lack one gram of the whole. */
const typed = [
  'formula Iced Tin:',
  'yield 3518 g',
  'bread flour 100%',
  'water 66%',
  'sugar 2%',
  'salt 2%',
  '',
  'mix in spiral:',
  'load flour, water, sugar',
  'speed 1 for 4 min',
  'add salt',
  'speed 2 for 6 min',
].join('\n');

interface Weighed {
  readonly name: string;
  readonly grams: number;
  readonly reads: number | undefined;
}

describe('the batch sheet', () => {
  const editor = editorFor(
    {
      copyOf: join(projectFolder, 'examples'),
      files: { 'hot/bakery.dough': hotDay, 'hot/iced.dough': '' },
    },
    async ({ page }) => {
      await openFile(page, 'ferry-loaf.dough');
      await waitForHint(page, 'formula Ferry Loaf', /hydration/);
    },
  );
  const panel = () => panelFrame(editor.page);
  const button = (name: string) => panel().getByRole('button', { name, exact: true }).first();
  const waitForSheetOf = (name: string) => waitForPanel(editor.page, name, (text) => text.startsWith(name));

  /** What the sheet says to weigh into the bowl and later, all of it in grams. */
  const weighed = async (): Promise<readonly Weighed[]> => {
    const rows = panel().locator('.weigh-table tbody tr:not(.about)');
    return (await rows.evaluateAll((all) =>
      all.map((row) => {
        const number = (of: string) => row.querySelector(of)?.textContent;
        const reads = number('.reads .figure');
        return {
          name: row.querySelector('.name')?.textContent ?? '',
          grams: Number(number('.weigh .figure')),
          reads: reads === undefined || reads === null ? undefined : Number(reads),
        };
      }),
    )) as Weighed[];
  };

  it('weighs two percent the same wherever it says so, once a formula is typed', async () => {
    const { page } = editor;
    await openFile(page, 'iced.dough');
    await typeByHand(page, typed);
    await pressByHand(page, 'Escape');
    await runCommand(page, 'Doughwright: Open Batch Sheet');
    await waitForSheetOf('Iced Tin');
    const rows = await weighed();
    const gramsOf = (name: string) => rows.find((row) => row.name === name)?.grams;
    // 3518 g by 170%, of which 2%: 41.4 g by baker's arithmetic (common practice, no source).
    expect([gramsOf('salt'), gramsOf('sugar')]).toEqual([41, 41]);
    for (const name of ['salt', 'sugar']) {
      expect(await waitForHint(page, `${name} 2%`, /\d/)).toMatch(/^41 g$/);
      const ofDough = panel().locator('.composition-chart tr').filter({ hasText: name });
      await expect.poll(() => ofDough.first().textContent()).toMatch(/\b41\s?g/);
    }
    const together = rows.reduce((sum, { grams }) => sum + grams, 0);
    expect(together).toBe(3518);
    expect(rows.at(-1)!.reads).toBe(together);
    // Each reading is that before and what goes on.
    let reads = 0;
    for (const row of rows) {
      reads += row.grams;
      expect(row.reads).toBe(reads);
    }
  }, 180_000);

  it('has a line and a box of its own for ice', async () => {
    const rows = await weighed();
    const gramsOf = (name: string) => rows.find((row) => row.name === name)!.grams;
    expect(gramsOf('ice')).toBeGreaterThan(100);
    // 66% of 2069.4 g of flour, as two weights of whole grams.
    expect(Math.abs(gramsOf('ice') + gramsOf('water') - 1365.8)).toBeLessThanOrEqual(1);
    await button('Work from this').click();
    const boxOf = (name: string): Locator =>
      panel()
        .locator('.ticks li')
        .filter({ has: panel().locator('.ingredient', { hasText: new RegExp(`^${name}$`) }) })
        .getByRole('checkbox');
    await boxOf('ice').click();
    expect(await boxOf('ice').isChecked()).toBe(true);
    expect(await boxOf('water').isChecked()).toBe(false);
    await screenshot(editor.page, 'sheet-ice-working');
    await button('Whole sheet').click();
    await focusEditor(editor.page);
    await save(editor.page);
  });

  it('does not hand on to the next formula what the one before was sized by', async () => {
    const { page } = editor;
    await openFile(page, 'slipway-hearth.dough');
    await waitForSheetOf('Slipway Hearth');
    await panel().getByLabel('Size by').selectOption({ label: 'Dough' });
    await fillByHand(panel().locator('#size-amount'), '9\n');
    await waitForPanel(page, 'the dough', (text) => /9\.18 kg in the bowl/.test(text));
    await openFile(page, 'mooring-wholemeal.dough');
    await waitForSheetOf('Mooring Wholemeal');
    expect(await readPanel(page)).toMatch(/^Mooring Wholemeal 16 pieces of 900 g/);
    expect(await panel().getByLabel('Size by').inputValue()).toBe('pieces');
    expect(await panel().locator('#size-amount').inputValue()).toBe('16');
  });

  it('stays with the last formula where a mixer or a plan is opened', async () => {
    const { page } = editor;
    for (const name of ['mixers.dough', 'plan.dough']) {
      await openFile(page, name);
      await goTo(page, 3);
      // Whatever the cursor asked for is answered once the status bar has nothing to say of it.
      await waitUntil('the totals to leave the status bar', async () =>
        (await page.locator('.statusbar-item[id^="doughwright."]:visible').count()) === 0 ? true : undefined,
      );
      expect(await readPanel(page)).toMatch(/^Mooring Wholemeal 16 pieces/);
    }
  });

  it('sets a reading off the line by as much as it was off on its own day, whatever today is like', async () => {
    const { page } = editor;
    await openFile(page, 'ferry-loaf.dough');
    await waitForSheetOf('Ferry Loaf');
    const asInFile = await drawnReadings(panel());
    // The trials' own table says how far each was off what is computed for its day.
    const said = await offOfTrials(panel());
    expect(asInFile).toHaveLength(said.length);
    // The tables say tenths of a degree.
    for (const [index, { off }] of asInFile.entries())
      expect(Math.abs(off - said[index]!)).toBeLessThan(0.06);
    await panel().getByText('The day: temperatures').click();
    await fillByHand(panel().getByLabel('Room, °C'), '29\n');
    await waitForPanel(page, 'that it is tried', (text) => text.includes('tried today'));
    const onAHotDay = await drawnReadings(panel());
    for (const [index, { off }] of onAHotDay.entries())
      expect(Math.abs(off - said[index]!)).toBeLessThan(0.06);
    // The line itself has moved.
    expect(Math.abs(onAHotDay[0]!.celsius - asInFile[0]!.celsius)).toBeGreaterThan(0.3);
    await button('As in the file').click();
    await waitForPanel(page, 'nothing tried', (text) => !text.includes('tried today'));
  });

  it('keeps a pinned sheet when its file is given another name', async () => {
    const { page } = editor;
    await closePanel(page);
    await focusEditor(page);
    await runCommand(page, 'Doughwright: Open Batch Sheet and Pin It');
    await waitForSheetOf('Ferry Loaf');
    await runCommand(page, 'File: Reveal Active File in Explorer View');
    await page
      .locator('.explorer-folders-view .monaco-list-row.focused', { hasText: 'ferry-loaf' })
      .waitFor();
    await pressByHand(page, 'F2');
    await page.locator('.explorer-folders-view input').waitFor();
    await pressByHand(page, 'Control+A');
    await typeByHand(page, 'quay-ferry.dough\n');
    await page.locator('.tab[data-resource-name="quay-ferry.dough"]').waitFor();
    // It stays, and follows what is typed in the file by its new name.
    expect(await readPanel(page)).toMatch(/^Ferry Loaf 40 pieces of 620 g/);
    await openFile(page, 'quay-ferry.dough');
    await goTo(page, 3, 9);
    await page.keyboard.press('Delete');
    await typeByHand(page, '6');
    await waitForPanel(page, '60 pieces', (text) => text.startsWith('Ferry Loaf 60 pieces of 620 g'));
    expect(await page.locator('.tab').allInnerTexts()).toContain('Ferry Loaf · Pinned Sheet');
    await save(page);
    await closePanel(page);
  });

  it('lays over a formula what is chosen by keyboard', async () => {
    const { page } = editor;
    await openFile(page, 'slipway-hearth.dough');
    await pressByHand(page, 'F1');
    await typeByHand(page, 'lay form');
    await page.locator('.quick-input-list .monaco-list-row.focused', { hasText: 'Lay Formulas' }).waitFor();
    await pressByHand(page, 'Enter');
    await page.locator('.quick-input-title', { hasText: 'Lay Over Slipway Hearth' }).waitFor();
    await typeByHand(page, 'ferry');
    await expect.poll(() => page.locator('.quick-input-list .monaco-list-row').count()).toBe(1);
    await pressByHand(page, 'ArrowDown', 'Space', 'Enter');
    const said = await waitForPanel(page, 'both', (text) => text.includes('side by side'));
    expect(said).toMatch(/^Slipway Hearth and Ferry Loaf laid over each other/);
    expect(said).toMatch(/Hydration 80% 67%/);
    expect(await panel().locator('svg polyline').count()).toBeGreaterThanOrEqual(2);
    await screenshot(page, 'sheet-laid-over');
    await closePanel(page);
  });

  it('is checked by the task with no finding listed twice', async () => {
    const { page } = editor;
    await openFile(page, 'slack-water-brown.dough');
    const before = await readProblems(page);
    expect(before.filter((one) => one.startsWith('Warning')).length).toBeGreaterThanOrEqual(3);
    await runCommand(page, 'Tasks: Run Test Task');
    await chooseQuickPick(page, 'Doughwright: check', 'the task');
    const running = page.locator('.statusbar-item[id="status.runningTasks"]');
    await running.waitFor({ timeout: 60_000 });
    await running.waitFor({ state: 'detached', timeout: 60_000 });
    expect(await readProblems(page)).toEqual(before);
  }, 180_000);
});

/** A reading as the mixing chart draws it: how warm the line is at its minute, and how far it lies off that, °C. */
interface DrawnReading {
  readonly celsius: number;
  readonly off: number;
}

/** The readings of the chart that is in view, by trial and minute, measured in it with the axis that it has. */
async function drawnReadings(panel: FrameLocator): Promise<readonly DrawnReading[]> {
  const chart = panel.locator('.mixing-chart svg.drawing:visible').first();
  // Runs in the page; a text, because the test's own types know no page.
  const found = await chart.evaluate(
    new Function(
      'svg',
      `const number = (one, name) => Number(one.getAttribute(name));
      const axis = [...svg.querySelectorAll('text')]
        .map((one) => [Number(/^(\\d+) °C$/.exec(one.textContent)?.[1]), number(one, 'y')])
        .filter(([celsius]) => !Number.isNaN(celsius));
      const [low, high] = [axis[0], axis.at(-1)];
      const degrees = (pixels) => (pixels * (high[0] - low[0])) / (low[1] - high[1]);
      const grid = [...svg.querySelectorAll('line')].map((one) => number(one, 'y1'));
      const zero = Math.min(...grid.map((y) => Math.abs(y - low[1]))) ;
      const ground = grid.find((y) => Math.abs(y - low[1]) === zero);
      const course = svg.querySelector('polyline').getAttribute('points').trim().split(' ')
        .map((one) => one.split(',').map(Number));
      const courseAt = (x) => {
        const next = course.findIndex((one) => one[0] >= x - 0.01);
        const [right, left] = [course[next], course[Math.max(0, next - 1)]];
        return right[0] === left[0] ? right[1] : left[1] + ((x - left[0]) / (right[0] - left[0])) * (right[1] - left[1]);
      };
      const signs = [...svg.querySelectorAll('circle, rect')].flatMap((one) => {
        const isCircle = one.localName === 'circle';
        if (!isCircle && (number(one, 'width') !== 9 || number(one, 'height') !== 9)) return [];
        const [x, y] = isCircle
          ? [number(one, 'cx'), number(one, 'cy')]
          : [number(one, 'x') + 4.5, number(one, 'y') + 4.5];
        return x < course[0][0] ? [] : [[x, y]];
      });
      return signs.map(([x, y]) => ({
        celsius: low[0] + degrees(ground - courseAt(x)),
        off: degrees(courseAt(x) - y),
      }));`,
    ) as (svg: unknown) => readonly DrawnReading[],
  );
  return found;
}

/** How far the readings were off what is computed for their own day, as the tables of the trials say, °C. */
async function offOfTrials(panel: FrameLocator): Promise<readonly number[]> {
  const cells = await panel.locator('section.trial tbody tr').allInnerTexts();
  return cells.map((text) => {
    const [, figure, way] = /([\d.]+) °C (warmer|colder)\s*$/.exec(text)!;
    return way === 'warmer' ? Number(figure) : -Number(figure);
  });
}
