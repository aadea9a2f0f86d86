import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { screenshot, setTheme } from './appearance.ts';
import { editorFor } from './editor-for.ts';
import { projectFolder } from './places.ts';
import { waitUntil } from './processes.ts';
import { runCommand, waitForHint, waitForPanel } from './workbench.ts';

describe('the list in the side bar', () => {
  const editor = editorFor(
    {
      copyOf: join(projectFolder, 'examples'),
      files: { 'markup.dough': 'formula "<b>$(bug) Tin</b>":\n  bread flour 100%\n  water 60%\n' },
    },
    async (editor) => {
      await editor.page.locator('.activitybar [aria-label="Doughwright"]').first().click();
    },
  );

  const rows = () => editor.page.locator('.sidebar .monaco-list-row');
  const waitForRow = (words: string) =>
    waitUntil(
      `a row "${words}"`,
      async () => ((await rows().filter({ hasText: words }).count()) > 0 ? true : undefined),
      20_000,
      async () => (await rows().allInnerTexts()).join(' | '),
    );

  it('shows formulas with hydration and dough weight, and names as they are written', async () => {
    await waitForRow('67% · 25.18 kg');
    await waitForRow('<b>$(bug) Tin</b>');
    for (const theme of ['light', 'dark', 'high contrast'] as const) {
      await setTheme(editor, theme);
      await screenshot(editor.page, `list-${theme.replace(' ', '-')}`);
    }
  });

  it('follows the words of the filter, by keyboard', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: Filter the List');
    await page.keyboard.type('rye');
    await waitForRow('Breakwater Rye');
    await expect.poll(() => rows().filter({ hasText: 'Ferry Loaf' }).count()).toBe(0);
    await page.keyboard.press('Enter');
    await runCommand(page, 'Doughwright: Show the Whole List');
    await waitForRow('Ferry Loaf');
  });

  it('opens the batch sheet of an entry', async () => {
    const { page } = editor;
    const row = rows().filter({ hasText: 'Ferry Loaf' });
    await row.hover();
    await row.getByRole('button', { name: /Open Batch Sheet/ }).click();
    await waitForPanel(page, 'Ferry Loaf', (text) => text.includes('Ferry Loaf'));
  });

  it('begins a formula of the baker’s own and lists it', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: New Formula');
    await page.locator('.quick-input-widget input').first().fill('Gull Rock Tin');
    await page.keyboard.press('Enter');
    await page.locator('.quick-input-list .monaco-list-row').first().waitFor();
    await page.keyboard.press('Enter');
    await waitForHint(page, 'Gull Rock Tin', /66% hydration/);
    await waitForRow('Gull Rock Tin');
    expect(editor.readFile('formulas/gull-rock-tin.dough')).toContain('formula Gull Rock Tin:');
  });
});
