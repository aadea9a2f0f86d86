import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  panelAccessibilityViolations,
  panelColours,
  panelOverflow,
  screenshot,
  setTheme,
  setWindowSize,
} from './appearance.ts';
import { editorFor } from './editor-for.ts';
import { openBatchSheetTitle } from './expectations.ts';
import { projectFolder } from './places.ts';
import {
  openFile,
  panelFrame,
  runCommand,
  waitForHint,
  waitForNoSquiggle,
  waitForPanel,
  waitForSquiggle,
} from './workbench.ts';

/** A formula of the demo bakery with everything in it, and the one that is over-mixed on purpose. */
const demoFile = 'ferry-loaf.dough';
const demoName = 'Ferry Loaf';
const overMixedFile = 'slack-water-brown.dough';
const overMixedName = 'Slack Water Brown';

const themes = ['light', 'dark', 'high contrast', 'high contrast light'] as const;
const windows = [
  { name: 'narrow', width: 800, height: 900 },
  { name: 'wide', width: 1920, height: 1080 },
] as const;

describe('editor and batch sheet side by side', () => {
  const editor = editorFor({ copyOf: join(projectFolder, 'examples') }, async (editor) => {
    const { page } = editor;
    await openFile(page, demoFile);
    await waitForHint(page, demoName, /hydration/);
    await runCommand(page, openBatchSheetTitle);
    await waitForPanel(page, demoName, (text) => text.includes(demoName));
    await runCommand(page, 'View: Toggle Primary Side Bar Visibility');
    // What was not known yet when the file was opened is known by now.
    await waitForNoSquiggle(page, 'warning');
  });

  for (const theme of themes) {
    it(`can be read in the ${theme} theme`, async () => {
      await setTheme(editor, theme);
      await screenshot(editor.page, `editor-${theme.replaceAll(' ', '-')}`);
      expect(await panelAccessibilityViolations(editor.page)).toEqual([]);
    });
  }

  it('takes its colours from the theme', async () => {
    await setTheme(editor, 'light');
    const light = await panelColours(editor.page);
    await setTheme(editor, 'dark');
    const dark = await panelColours(editor.page);
    expect(dark.text).not.toBe(light.text);
  });

  it('shows the findings of the over-mixed loaf in the text and at what they concern', async () => {
    const { page } = editor;
    await setTheme(editor, 'light');
    await openFile(page, overMixedFile);
    await waitForSquiggle(page, 'warning', 'speed');
    await waitForPanel(page, overMixedName, (text) => /too warm|broken down/i.test(text));
    await screenshot(page, 'editor-findings');
    await openFile(page, demoFile);
    await waitForPanel(page, demoName, (text) => text.includes(demoName));
  });

  for (const { name, width, height } of windows) {
    it(`fits a ${name} window`, async () => {
      await setTheme(editor, 'light');
      await setWindowSize(editor.page, width, height);
      await screenshot(editor.page, `editor-${name}`);
      expect(await panelOverflow(editor.page)).toBe(0);
    });
  }

  it('draws the charts where they belong', async () => {
    const { page } = editor;
    await setTheme(editor, 'light');
    await setWindowSize(page, 1440, 1100);
    const panel = panelFrame(page);
    // The mixing; what the dough is made of is folded. A drawing stands in the page for each width.
    await expect.poll(() => panel.locator('svg.drawing:visible').count(), { timeout: 20_000 }).toBe(1);
    await panel.locator('[data-id="mixing"]').evaluate((mixing) => mixing.scrollIntoView());
    await screenshot(page, 'panel-charts');
    expect(await panelOverflow(page)).toBe(0);
  });

  it('shows one moment of the work at a time', async () => {
    const { page } = editor;
    const panel = panelFrame(page);
    await setTheme(editor, 'dark');
    await setWindowSize(page, 1440, 900);
    await panel.getByRole('button', { name: 'Work from this' }).click();
    await panel.getByRole('button', { name: 'Next' }).click();
    await expect.poll(() => panel.locator('.work-mode h1').textContent()).toBe('Into the bowl');
    await screenshot(page, 'panel-working');
    expect(await panelAccessibilityViolations(page)).toEqual([]);
  });
});
