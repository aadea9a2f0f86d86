import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { launchChromium } from './code-server.ts';
import { editorFor } from './editor-for.ts';
import { typeByHand, typedLines } from './hand.ts';
import { projectFolder } from './places.ts';
import { waitUntil } from './processes.ts';
import {
  chooseQuickPick,
  focusEditor,
  quickFix,
  readPanel,
  readProblems,
  runCommand,
  save,
  saveInDialog,
  waitForHint,
  waitForNoSquiggle,
  waitForPanel,
  waitForSquiggle,
} from './workbench.ts';

/**
 * The first afternoon from an empty folder to a printed sheet, by the guide alone: its own page says what to type, its panel page what
 * to run, and nothing else is known. Every key takes as long as a hand needs. The stumbles that were met when it was first played are
 * each a step of it.
 */
const guide = readFileSync(join(projectFolder, 'docs', 'guide', 'README.md'), 'utf8');
/** What “The notation in two minutes” shows. */
const card = /## The notation in two minutes\n\n```dough\n([\s\S]*?)```/.exec(guide)![1]!;
const panelPage = readFileSync(join(projectFolder, 'docs', 'guide', 'panel.md'), 'utf8');

describe('the first afternoon', () => {
  const editor = editorFor({ files: {} });

  const page = (): Page => editor.page;
  const file = 'weekday-tin.dough';
  const boxTitled = async (title: RegExp) => {
    const widget = page().locator('.quick-input-widget').filter({ hasText: title });
    await widget.waitFor({ timeout: 20_000 });
    return widget.locator('input').first();
  };

  it('begins in an empty folder with a formula of one’s own', async () => {
    await page().locator('.activitybar [aria-label="Doughwright"]').first().click();
    await runCommand(page(), 'Doughwright: New Formula');
    await boxTitled(/New Formula \(1 of 2\)/);
    await typeByHand(page(), 'Weekday Tin\n');
    await page().locator('.quick-input-list .monaco-list-row').first().waitFor();
    await page().keyboard.press('Enter');
    await waitForHint(page(), 'Weekday Tin', /hydration/);
    expect(existsSync(join(editor.workspace, file))).toBe(true);
  }, 120_000);

  it('tells the house once, and the text has no finding', async () => {
    await page().getByRole('button', { name: 'Tell Now' }).click();
    for (const [step, typed] of [
      [1, '22'],
      [2, ''],
      [3, '14'],
    ] as const) {
      await boxTitled(new RegExp(`Your Bakery \\(${step} of 4\\)`));
      await typeByHand(page(), `${typed}\n`);
    }
    await chooseQuickPick(page(), 'No', 'whether there is ice');
    await waitUntil('the bakery to be written', async () =>
      existsSync(join(editor.workspace, 'bakery.dough')) ? true : undefined,
    );
    expect(await readProblems(page())).toEqual([]);
  }, 120_000);

  it('takes the card of the guide, typed by hand, with no key lost and nothing to object', async () => {
    await runCommand(page(), 'View: Focus Active Editor Group').catch(() => undefined);
    await focusEditor(page());
    await page().keyboard.press('Control+A');
    await page().keyboard.press('Delete');
    // The editor indents by itself: a hand types the words.
    const words = card
      .trimEnd()
      .split('\n')
      .map((line) => line.trim().replace(/ {2,}/g, ' '))
      .join('\n');
    await typeByHand(page(), `${words}\n`);
    await page().keyboard.press('Escape');
    await save(page());
    expect(typedLines(editor.readFile(file))).toEqual(typedLines(card));
    await waitForHint(page(), 'Weekday Tin', /66% hydration/);
    await waitForNoSquiggle(page(), 'error');
    await waitForNoSquiggle(page(), 'warning');
  }, 400_000);

  it('opens the batch sheet and answers the three questions at a glance', async () => {
    await runCommand(page(), 'Doughwright: Open Batch Sheet');
    await waitForPanel(page(), 'Weekday Tin', (text) => text.includes('Weekday Tin'));
    const said = await readPanel(page());
    expect(said).toMatch(/4 pieces/);
    // How warm, what state, which water.
    expect(said).toMatch(/\d °C/);
    expect(said).toMatch(/develop/i);
    expect(said).toMatch(/water/i);
  }, 120_000);

  it('ends with the sheet on paper', async () => {
    // As the panel’s page says.
    expect(panelPage).toContain('*Print Sheet*');
    await focusEditor(page());
    await runCommand(page(), 'Doughwright: Print Sheet');
    const html = join(editor.workspace, 'to-print.html');
    await saveInDialog(page(), /weekday-tin\.html$/, html);
    await waitUntil('the page to print', async () =>
      existsSync(html) && statSync(html).size > 0 ? true : undefined,
    );
    const browser = await launchChromium();
    try {
      const paper = await browser.newPage();
      await paper.goto(`file://${html}`);
      const text = (await paper.locator('body').textContent()) ?? '';
      for (const word of ['Weekday Tin', 'bread flour', 'water', 'salt', 'fresh yeast', '4 pieces of 880 g'])
        expect(text).toContain(word);
      const pdf = await paper.pdf({ format: 'A4' });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      // Weights, mixing, clock, label and cautions of the guide’s card.
      const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
      expect(pages).toBeGreaterThan(0);
      expect(pages).toBeLessThanOrEqual(3);
    } finally {
      await browser.close();
    }
  }, 180_000);

  it('answers a line in a baker’s own words with one fix that writes it', async () => {
    await page().keyboard.press('Control+End');
    await typeByHand(
      page(),
      'bake off with steam\nmix in spiral:\nmix 4 min first speed, 6 min second speed',
    );
    await page().keyboard.press('Escape');
    await waitForSquiggle(page(), 'error', 'first speed');
    await quickFix(page(), /speed 1 for 4 min/);
    await waitForNoSquiggle(page(), 'error', 'speed 2 for 6 min');
    await save(page());
    expect(readFileSync(join(editor.workspace, file), 'utf8')).toContain(
      'speed 1 for 4 min\n  speed 2 for 6 min',
    );
  }, 180_000);
});
