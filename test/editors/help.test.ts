import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { screenshot } from './appearance.ts';
import { editorFor } from './editor-for.ts';
import { waitUntil } from './processes.ts';
import { chooseQuickPick, goTo, openFile, runCommand, waitForHint } from './workbench.ts';

describe('help in the editor', () => {
  const editor = editorFor({}, async (editor) => {
    await editor.page.locator('.activitybar [aria-label="Doughwright"]').first().click();
  });

  const rows = () => editor.page.locator('.sidebar .monaco-list-row');
  const fileThere = (name: string) =>
    waitUntil(`the file ${name}`, async () =>
      existsSync(join(editor.workspace, name))
        ? readFileSync(join(editor.workspace, name), 'utf8')
        : undefined,
    );
  const inputTitled = async (title: RegExp) => {
    const widget = editor.page.locator('.quick-input-widget').filter({ hasText: title });
    await widget.waitFor({ timeout: 20_000 });
    return widget.locator('input').first();
  };

  it('asks with the first formula how warm the house is, and the water follows', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: New Formula');
    await (await inputTitled(/New Formula \(1 of 2\)/)).fill('Slack Tide Tin');
    await page.keyboard.press('Enter');
    await page.locator('.quick-input-list .monaco-list-row').first().waitFor();
    await page.keyboard.press('Enter');
    await waitForHint(page, 'Slack Tide Tin', /hydration/);
    await page.getByRole('button', { name: 'Tell Now' }).click();
    for (const [step, typed] of [
      [1, '23,5'],
      [2, ''],
      [3, '54 F'],
    ] as const) {
      const input = await inputTitled(new RegExp(`Your Bakery \\(${step} of 4\\)`));
      await input.fill(typed);
      await page.keyboard.press('Enter');
    }
    await chooseQuickPick(page, 'Yes', 'whether there is ice');
    const text = await fileThere('bakery.dough');
    expect(text).toMatch(/^bakery .+:\n {2}room 23\.5 °C\n {2}tap water 54 °F\n {2}ice to hand\n$/);
    await rows().filter({ hasText: '23.5 °C' }).first().waitFor({ timeout: 20_000 });
  });

  it('duplicates, renames and deletes from the list', async () => {
    const { page } = editor;
    const choose = async (row: string, item: RegExp) => {
      await rows().filter({ hasText: row }).first().click({ button: 'right' });
      const label = page.locator('.context-view .action-label').filter({ hasText: item }).first();
      await label.waitFor();
      // A menu takes no click in the moment it opens, lest the one that opened it chooses something.
      await page.waitForTimeout(400);
      await label.hover();
      await label.click();
    };
    await choose('Slack Tide Tin', /^Duplicate…$/);
    await (await inputTitled(/Duplicate Slack Tide Tin/)).fill('Spring Tide: Tin');
    await page.keyboard.press('Enter');
    await rows().filter({ hasText: 'Spring Tide: Tin' }).first().waitFor({ timeout: 20_000 });
    await choose('Spring Tide: Tin', /^Rename…$/);
    const box = page.locator('.rename-box input');
    await box.waitFor({ timeout: 20_000 });
    await box.fill('Neap Tin');
    await page.keyboard.press('Enter');
    await rows().filter({ hasText: 'Neap Tin' }).first().waitFor({ timeout: 20_000 });
    await page.keyboard.press('Control+S');
    const both = await waitUntil('the copy on the disk', async () => {
      const text = editor.readFile('slack-tide-tin.dough');
      return text.includes('formula Neap Tin:') ? text : undefined;
    });
    const [first, second] = both.split('\n\nformula Neap Tin:');
    expect(second?.trim()).toBe(first?.split('formula Slack Tide Tin:')[1]?.trim());
    await choose('Neap Tin', /^Delete…$/);
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await expect.poll(() => rows().filter({ hasText: 'Neap Tin' }).count(), { timeout: 20_000 }).toBe(0);
    await page.keyboard.press('Control+S');
    await expect
      .poll(() => editor.readFile('slack-tide-tin.dough').trimEnd(), { timeout: 20_000 })
      .toBe(first?.trimEnd());
  });

  it('shows no light bulb on a healthy line', async () => {
    const { page } = editor;
    await openFile(page, 'slack-tide-tin.dough');
    await goTo(page, 4, 6);
    await page.waitForTimeout(1500);
    expect(await page.locator('.codicon-light-bulb:visible, .codicon-lightbulb:visible').count()).toBe(0);
  });

  it('ticks the first steps that are done already', async () => {
    const { page } = editor;
    await runCommand(page, 'Welcome: Open Walkthrough...');
    await chooseQuickPick(page, 'A dough of your own', 'the first steps');
    const step = (name: string) => page.locator(`[data-done-step-id$="start#${name}"]`).first();
    for (const done of ['folder', 'change'])
      await expect
        .poll(() => step(done).getAttribute('class'), { message: done, timeout: 20_000 })
        .toContain('complete');
    expect(await step('bake').getAttribute('class')).not.toContain('complete');
  });

  it('opens the guide rendered, and a page from it', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: Open the Guide');
    const preview = page.frameLocator('iframe.webview.ready').last().frameLocator('iframe#active-frame');
    await preview.getByRole('heading', { name: 'The language guide' }).waitFor({ timeout: 30_000 });
    await screenshot(page, 'help-guide');
    await preview.getByRole('link', { name: 'Lines and amounts' }).first().click();
    await preview.getByRole('heading', { name: 'Lines and amounts' }).waitFor({ timeout: 30_000 });
  });

  it('puts the demo bakery into a folder that is chosen', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: Open the Demo Bakery');
    const input = await inputTitled(/Where Shall the Demo Bakery Be Put/);
    await input.fill(`${editor.workspace}/`);
    await page.locator('.quick-input-widget').getByRole('button', { name: 'Put It Here' }).first().click();
    expect(await fileThere('quay-lane/bakery.dough')).toContain('bakery Quay Lane:');
    expect(await fileThere('quay-lane/formulas/ferry-loaf.dough')).toContain('formula Ferry Loaf:');
    await page.getByRole('button', { name: 'Open in a New Window' }).first().waitFor();
  });
});
