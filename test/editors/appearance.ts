import { copyFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Frame, Page } from 'playwright-core';
import type { Editor } from './code-server.ts';
import { projectFolder } from './places.ts';
import { after, waitUntil } from './processes.ts';
import { runCommand } from './workbench.ts';

export type Theme = keyof typeof themes;

/** VS Code's own themes, by what a reader calls them: the setting's value and the class the workbench then wears. */
const themes = {
  light: { setting: 'Light Modern', workbenchClass: 'vs' },
  dark: { setting: 'Dark Modern', workbenchClass: 'vs-dark' },
  'high contrast': { setting: 'Default High Contrast', workbenchClass: 'hc-black' },
  'high contrast light': { setting: 'Default High Contrast Light', workbenchClass: 'hc-light' },
};

/** Changes the colour theme by its setting and waits until the workbench wears it. */
export async function setTheme(editor: Editor, theme: Theme): Promise<void> {
  const { setting, workbenchClass } = themes[theme];
  editor.setSetting('workbench.colorTheme', setting);
  const workbench = editor.page.locator(`.monaco-workbench.${workbenchClass}`);
  const worn = async () => ((await workbench.count()) > 0 ? true : undefined);
  await waitUntil(`the ${theme} theme`, worn, 20_000);
  // Colours reach webviews by a message of their own.
  await after(500);
}

/** Sets the size of the browser window in pixels and lets the workbench lay itself out anew. */
export async function setWindowSize(page: Page, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height });
  await after(700);
}

/**
 * Takes a picture of the whole window into test/screenshots. When the environment variable UPDATE_SCREENSHOTS is 1 it
 * renews the picture of that name in docs/images, if there is one: the pictures of the documents are made by the tests.
 *
 * @returns path of the picture under test/screenshots
 */
export async function screenshot(page: Page, name: string): Promise<string> {
  if ((await page.locator('.notification-toast').count()) > 0) {
    await runCommand(page, 'Notifications: Clear All Notifications');
  }
  const folder = join(projectFolder, 'test', 'screenshots');
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${name}.png`);
  // A resting mouse would draw a tooltip or a hover into the picture.
  await page.mouse.move(0, 0);
  await after(300);
  await page.screenshot({ path, animations: 'disabled', caret: 'hide' });
  if (process.env.UPDATE_SCREENSHOTS === '1') {
    const image = join(projectFolder, 'docs', 'images', `${name}.png`);
    if (existsSync(image)) copyFileSync(path, image);
  }
  return path;
}

/** What axe-core finds wrong in the open panel for users of a keyboard or a screen reader: one text a violation. */
export async function panelAccessibilityViolations(page: Page): Promise<string[]> {
  const frame = await innerFrame(page);
  await frame.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  // A webview's page is a part of the workbench: rules about whole documents' regions are the workbench's business. A
  // webview is transparent over the editor's ground, which axe-core cannot see: it is painted for the while.
  const found = await frame.evaluate(`(async () => {
    const root = document.documentElement;
    const before = root.style.backgroundColor;
    root.style.backgroundColor = 'var(--vscode-editor-background)';
    const result = await axe.run(document, { rules: { region: { enabled: false } } });
    root.style.backgroundColor = before;
    return result.violations.map((violation) =>
      violation.id + ': ' + violation.help + ' at ' + violation.nodes.map((node) => node.html).join(' | '));
  })()`);
  return found as string[];
}

/** Colour of the panel's text as the page computes it. */
export async function panelColours(page: Page): Promise<{ text: string }> {
  const frame = await innerFrame(page);
  const found = await frame.evaluate('({ text: getComputedStyle(document.body).color })');
  return found as { text: string };
}

/** By how many pixels the panel's page is wider than the panel: 0 when nothing must be scrolled sideways. */
export async function panelOverflow(page: Page): Promise<number> {
  const frame = await innerFrame(page);
  const overflow = await frame.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  );
  return overflow as number;
}

async function innerFrame(page: Page): Promise<Frame> {
  const element = await page
    .frameLocator('iframe.webview.ready')
    .locator('iframe#active-frame')
    .elementHandle({ timeout: 20_000 });
  const frame = await element?.contentFrame();
  if (!frame) throw new Error('No panel is open to be looked at.');
  return frame;
}
