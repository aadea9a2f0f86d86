import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { editorFor } from './editor-for.ts';
import {
  formulaFile,
  formulaName,
  formulaText,
  openBatchSheetTitle,
  piecesFieldLabel,
  waterGrams,
} from './expectations.ts';
import { waitUntil } from './processes.ts';
import {
  closePanel,
  fillPanelField,
  focusEditor,
  openFile,
  runCommand,
  saveInDialog,
  waitForHint,
  waitForPanel,
} from './workbench.ts';

const floursFile = 'flours.dough';
const files = { [formulaFile]: formulaText, [floursFile]: 'flour quay white:\n  grain wheat\n' };

describe('a batch sheet taken out of the editor', () => {
  const editor = editorFor({ files }, async (editor) => {
    const { page } = editor;
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await openFile(page, formulaFile);
    await waitForHint(page, formulaName, /\b69\b/);
  });

  /** What is written once a name is typed into the dialog. */
  async function saved(name: string): Promise<string> {
    const file = join(editor.workspace, name);
    await saveInDialog(editor.page, /harbour-tin\.html$/, file);
    return waitUntil(`${name} to be written`, async () =>
      existsSync(file) && readFileSync(file, 'utf8') !== '' ? readFileSync(file, 'utf8') : undefined,
    );
  }

  it('is saved as the ending of the name says', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: Save Sheet As…');
    const md = await saved('tin.md');
    expect(md).toMatch(/^# Harbour Tin\n/);
    expect(md).toMatch(/From: harbour-tin\.dough · \d{4}-\d{2}-\d{2}/);
    await focusEditor(page);
    await runCommand(page, 'Doughwright: Save Sheet As…');
    expect(await saved('tin.csv')).toMatch(/^formula,part,when,name,weigh/);
  });

  it('is copied as a table, at the size that is tried in the panel', async () => {
    const { page } = editor;
    await focusEditor(page);
    await runCommand(page, openBatchSheetTitle);
    await waitForPanel(page, formulaName, (text) => text.includes(formulaName));
    await fillPanelField(page, piecesFieldLabel, '48');
    await waitForPanel(page, '48 pieces', (text) => text.includes('48 pieces of 880 g'));
    await focusEditor(page);
    await runCommand(page, 'Doughwright: Copy Sheet as Table');
    const copied = async () => (await page.evaluate('navigator.clipboard.readText()')) as string;
    await expect.poll(copied, { timeout: 20_000 }).toMatch(/^formula\tpart\t/);
    const lines = (await copied())
      .trimEnd()
      .split('\n')
      .map((line) => line.split('\t'));
    const [head, ...rows] = lines;
    const [name, grams] = [head!.indexOf('name'), head!.indexOf('grams')];
    const water = rows.find((row) => row[name] === 'water')!;
    // Twice the pieces, twice the water.
    expect(Number(water[grams])).toBeCloseTo(2 * waterGrams(0.69), 0);
    await closePanel(page);
  });

  it('is printed, where the editor can open no browser, by way of a page that is saved', async () => {
    const { page } = editor;
    await focusEditor(page);
    await runCommand(page, 'Doughwright: Print Sheet');
    const html = await saved('to-print.html');
    expect(html).toMatch(/^<!doctype html>/);
    expect(html).toContain('48 pieces of 880 g');
    await page
      .getByText(/This editor cannot print by itself/)
      .first()
      .waitFor({ timeout: 20_000 });
  });

  it.each([
    ['Save Sheet As…', /There is no formula at the cursor/],
    ['Print Sheet', /There is no formula at the cursor/],
    ['Work from the Batch Sheet', /There is no formula at the cursor/],
    ['Open Batch Sheet and Pin It', /There is no formula at the cursor/],
    ['Convert Mixing Programme', /put the cursor into a mixing programme/],
  ])('says at once what to do where %s finds nothing', async (command, said) => {
    const { page } = editor;
    await openFile(page, floursFile);
    await runCommand(page, 'Notifications: Clear All Notifications');
    await runCommand(page, `Doughwright: ${command}`);
    await page
      .locator('.notification-list-item-message', { hasText: said })
      .first()
      .waitFor({ timeout: 20_000 });
    expect(await page.locator('.quick-input-widget').isVisible()).toBe(false);
    expect(await page.locator('iframe.webview').count()).toBe(0);
  });
});
