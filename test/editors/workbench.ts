import type { FrameLocator, Locator, Page } from 'playwright-core';
import { after, waitUntil } from './processes.ts';
import { readEditor, type SquiggleLevel, type WrittenLine, wordPoint } from './rendered-editor.ts';

/** Opens a file of the workspace by its name, as a user does with quick open, and leaves the cursor in it. */
export async function openFile(page: Page, name: string): Promise<void> {
  await closeQuickInput(page);
  // A file opens in the group that has the keyboard: not in the panel's.
  if ((await textInput(page).count()) > 0) await focusEditor(page);
  await fillQuickInput(page, 'Control+P', name);
  // The list of a freshly started server fills only when its first walk over the folder is done.
  await chooseQuickPick(page, name, `${name} in quick open`);
  const tab = page.locator(`.tab.active[data-resource-name="${name}"]`);
  await waitUntil(
    `the tab of ${name}`,
    () => present(tab),
    20_000,
    () => textsOf(page.locator('.tab')),
  );
  await waitUntil(
    `the text of ${name} to be drawn`,
    () => present(page.locator('.part.editor .view-line')),
    20_000,
  );
  await focusEditor(page);
}

/** Runs a command of the command palette by its whole title, category included: `View: Close Editor`. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await closeQuickInput(page);
  await fillQuickInput(page, 'F1', `>${title}`);
  await chooseQuickPick(page, title, `the command "${title}" in the palette`);
}

/** Gives the keyboard to the first text editor without moving its cursor. */
export async function focusEditor(page: Page): Promise<void> {
  await textInput(page).focus();
}

/** Puts the cursor at a line and column, both counted from 1; a column past the end means the end of the line. */
export async function goTo(page: Page, line: number, column = 1): Promise<void> {
  await focusEditor(page);
  await fillQuickInput(page, 'Control+G', `:${line}:${column}`);
  const input = page.locator('.quick-input-widget input').first();
  await after(150);
  await page.keyboard.press('Enter');
  await waitUntil(
    'the "go to line" box to close',
    async () => ((await visible(input)) ? undefined : true),
    10_000,
  );
  await focusEditor(page);
}

/**
 * Types a text key by key at the cursor. An open completion list is closed before Enter, for Enter would take its first
 * entry. The editor indents new lines by itself: lines are typed without their own leading blanks.
 */
export async function typeText(page: Page, text: string, millisecondsPerKey = 5): Promise<void> {
  const lines = text.split('\n');
  for (const [index, line] of lines.entries()) {
    if (index > 0) {
      await closeSuggestions(page);
      await page.keyboard.press('Enter');
    }
    await page.keyboard.type(index > 0 ? line.trimStart() : line, { delay: millisecondsPerKey });
  }
  await closeSuggestions(page);
}

/** Replaces what a line (counted from 1) says, except its leading blanks, by typing. */
export async function retypeLine(page: Page, line: number, text: string): Promise<void> {
  await goTo(page, line, 10_000);
  await page.keyboard.press('Shift+Home');
  await typeText(page, text);
}

/** Deletes a whole line, counted from 1. */
export async function deleteLine(page: Page, line: number): Promise<void> {
  await goTo(page, line, 10_000);
  await page.keyboard.press('Control+Shift+K');
}

/** Saves the file in the editor and waits until its tab is clean. */
export async function save(page: Page): Promise<void> {
  await focusEditor(page);
  await page.keyboard.press('Control+S');
  const dirty = page.locator('.tab.dirty');
  await waitUntil(
    'the file to be saved',
    async () => ((await dirty.count()) === 0 ? true : undefined),
    10_000,
  );
}

/** Waits for a squiggle of a level under a line that contains the text given. */
export async function waitForSquiggle(
  page: Page,
  level: SquiggleLevel,
  lineText: string,
): Promise<WrittenLine> {
  const awaited = `a squiggle of level ${level} under "${lineText}"`;
  const find = async () =>
    (await readEditor(page)).find((line) => line.text.includes(lineText) && line.squiggles.includes(level));
  return waitUntil(awaited, find, 20_000, () => describeEditor(page));
}

/** Waits until no squiggle of a level is left, in the whole editor or under the lines with the text given. */
export async function waitForNoSquiggle(page: Page, level: SquiggleLevel, lineText = ''): Promise<void> {
  const gone = async () =>
    (await readEditor(page)).some((line) => line.text.includes(lineText) && line.squiggles.includes(level))
      ? undefined
      : true;
  await waitUntil(`the ${level} squiggles under "${lineText}" to go`, gone, 20_000, () =>
    describeEditor(page),
  );
}

/** Waits for an inlay hint on the line that contains the text given, and returns its text. */
export async function waitForHint(page: Page, lineText: string, wanted: RegExp = /\S/): Promise<string> {
  const find = async () =>
    (await readEditor(page)).find((line) => line.text.includes(lineText) && wanted.test(line.hint))?.hint;
  return waitUntil(`an inlay hint like ${wanted} on "${lineText}"`, find, 20_000, () => describeEditor(page));
}

/** Rests the mouse on a word of the line that contains the text given, and returns the text of the hover. */
export async function hoverWord(page: Page, lineText: string, word: string): Promise<string> {
  const hover = page.locator(
    '.part.editor .monaco-hover:not(.hidden) .hover-row, .monaco-hover:not(.hidden) .hover-row',
  );
  let attempts = 0;
  const rest = async () => {
    const point = await wordPoint(page, lineText, word);
    if (!point) return undefined;
    // The editor looks at movements: a mouse that stands where it stood shows nothing.
    await page.mouse.move(point.x + 60, point.y + 200);
    await page.mouse.move(point.x + (attempts++ % 2), point.y, { steps: 3 });
    await after(1_200);
    // Words above a header move the lines below it when they come.
    const now = await wordPoint(page, lineText, word);
    if (now?.x !== point.x || now.y !== point.y) return undefined;
    const texts = (await hover.allInnerTexts()).filter((text) => text.trim() && !/^Loading/.test(text));
    return texts.length > 0 ? texts.join('\n') : undefined;
  };
  const text = await waitUntil(`a hover on "${word}" in "${lineText}"`, rest, 20_000, () =>
    describeEditor(page),
  );
  return text.replaceAll('\u00a0', ' ');
}

/** Takes the mouse off the text, so that no hover covers it. */
export async function leaveHover(page: Page): Promise<void> {
  await page.mouse.move(2, 2);
  await page.keyboard.press('Escape');
}

/** Opens the quick fixes at the cursor and takes the one whose title contains the text or matches the pattern. */
export async function quickFix(page: Page, title: string | RegExp): Promise<string> {
  await focusEditor(page);
  const rows = page.locator('.action-widget .monaco-list-row.action');
  const matches = (text: string) => (typeof title === 'string' ? text.includes(title) : title.test(text));
  // The light bulb follows the findings by a moment: an empty answer is asked again.
  const found = await waitUntil(
    `the quick fix "${title}"`,
    async () => {
      if ((await rows.count()) === 0) {
        await page.keyboard.press('Control+Period');
        await after(500);
      }
      const texts = await rows.allInnerTexts();
      const index = texts.findIndex(matches);
      if (index >= 0) return { index, text: texts[index] ?? '' };
      await page.keyboard.press('Escape');
      await after(300);
      return undefined;
    },
    20_000,
    () => describeEditor(page),
  );
  await rows.nth(found.index).click();
  await waitUntil(
    'the quick fixes to close',
    async () => ((await rows.count()) === 0 ? true : undefined),
    10_000,
  );
  return found.text.trim();
}

/** What the Problems view says: one text a finding, severity first (as a screen reader is told it). */
export async function readProblems(page: Page): Promise<string[]> {
  await runCommand(page, 'Problems: Focus on Problems View');
  const panel = page.locator('.markers-panel');
  await waitUntil('the Problems view', () => visible(panel), 10_000);
  await after(500);
  const rows = panel.locator('.monaco-list-row:has(.marker-icon)');
  const labels: string[] = [];
  for (const row of await rows.all()) labels.push((await row.getAttribute('aria-label')) ?? '');
  await runCommand(page, 'View: Toggle Panel Visibility');
  await focusEditor(page);
  return labels;
}

/** The inside of the one open webview; VS Code nests it in two frames. It stays valid when the page inside is set anew. */
export function panelFrame(page: Page): FrameLocator {
  return page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
}

/** What the panel says now; empty when none is open. */
export async function readPanel(page: Page): Promise<string> {
  const body = panelFrame(page).locator('body');
  // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is not said, and textContent has it too.
  return plain(await body.innerText({ timeout: 2_000 }).catch(() => ''));
}

/** Waits until the panel's text is as wanted, and returns it. */
export async function waitForPanel(
  page: Page,
  awaited: string,
  fits: (text: string) => boolean,
): Promise<string> {
  const find = async () => {
    const text = await readPanel(page);
    return text && fits(text) ? text : undefined;
  };
  return waitUntil(`the panel to say ${awaited}`, find, 20_000, () => readPanel(page));
}

/** Closes the tab of the panel and waits until it is gone. */
export async function closePanel(page: Page): Promise<void> {
  const tab = page.locator('.part.editor .tab:not([data-resource-name$=".dough"])').first();
  // A tab that moves while it is clicked, since another was just renamed, does not close.
  const gone = async () => {
    if ((await page.locator('iframe.webview').count()) === 0) return true;
    await tab.click({ button: 'middle', timeout: 2_000 }).catch(() => undefined);
    return undefined;
  };
  await waitUntil('the panel to close', gone, 10_000, () => textsOf(page.locator('.tab')));
}

/** Fills a field of the panel, found by its accessible name, and confirms it with Enter. */
export async function fillPanelField(page: Page, label: string | RegExp, value: string): Promise<void> {
  const field = panelFrame(page).getByLabel(label).first();
  await waitUntil(
    `a field ${label} in the panel`,
    () => visible(field),
    20_000,
    () => readPanel(page),
  );
  await field.fill(value);
  await field.press('Enter');
}

/** Waits for a status bar item of this extension whose text matches, and returns it. */
export async function waitForStatusBar(page: Page, extension: string, wanted: RegExp): Promise<string> {
  const items = page.locator(`.part.statusbar .statusbar-item[id^="${extension}."]`);
  const find = async () => (await items.allInnerTexts()).map(plain).find((text) => wanted.test(text));
  return waitUntil(`a status bar item like ${wanted}`, find, 20_000, () =>
    textsOf(page.locator('.statusbar-item')),
  );
}

/** Types a path into the editor's own dialog for files, once it offers one with this ending, and saves there. */
export async function saveInDialog(page: Page, offered: RegExp, path: string): Promise<void> {
  const field = page.locator('.quick-input-widget .quick-input-box input').first();
  await waitUntil(
    `a dialog that offers ${offered}`,
    async () => (offered.test(await field.inputValue().catch(() => '')) ? true : undefined),
    20_000,
  );
  await field.fill(path);
  await page.keyboard.press('Enter');
}

/** Everything the editor shows, for the message of a failed wait. */
export async function describeEditor(page: Page): Promise<string> {
  const lines = await readEditor(page);
  return lines
    .map(
      (line) =>
        `\n  ${line.text}${line.hint && ` ‹${line.hint}›`}${line.squiggles.map((level) => ` ~${level}`).join('')}`,
    )
    .join('');
}

export async function chooseQuickPick(page: Page, wanted: string, awaited: string): Promise<void> {
  const rows = page.locator('.quick-input-list .monaco-list-row');
  const read = async () =>
    (await rows.locator('.quick-input-list-row:first-child .label-name').allInnerTexts()).map(plain);
  let before = '';
  const choose = async () => {
    const labels = await read();
    // The list is filtered anew some moments after the last key: a row is sure where two readings agree.
    const settled = labels.join('\n') === before;
    before = labels.join('\n');
    const index = settled ? labels.indexOf(wanted) : -1;
    if (index < 0) return undefined;
    const clicked = rows.nth(index).click({ timeout: 2_000 });
    return clicked.then(() => true as const).catch(() => undefined);
  };
  await waitUntil(awaited, choose, 20_000, () => textsOf(rows));
  // What was chosen may open a list of its own in the same place.
  const closed = async () =>
    (await visible(rows.first())) && (await read()).includes(wanted) ? undefined : true;
  await waitUntil('the palette to close', closed, 10_000);
}

/** Opens the box that a key opens, and fills it; once more where something takes the keyboard away from it meanwhile. */
async function fillQuickInput(page: Page, key: string, text: string): Promise<void> {
  const input = page.locator('.quick-input-widget input').first();
  const fill = async () => {
    if (!(await visible(input))) await page.keyboard.press(key);
    const filled = input.fill(text, { timeout: 1_000 });
    return filled.then(() => true as const).catch(() => undefined);
  };
  await waitUntil(`the box that ${key} opens`, fill, 20_000);
}

async function closeQuickInput(page: Page): Promise<void> {
  const input = page.locator('.quick-input-widget input').first();
  if (await visible(input)) await page.keyboard.press('Escape');
}

async function closeSuggestions(page: Page): Promise<void> {
  // The list opens a moment after the key that asks for it.
  await after(60);
  if ((await page.locator('.suggest-widget.visible').count()) > 0) await page.keyboard.press('Escape');
}

function textInput(page: Page): Locator {
  return page.locator('.part.editor .native-edit-context, .part.editor textarea.inputarea').first();
}

async function present(locator: Locator): Promise<true | undefined> {
  return (await locator.count()) > 0 ? true : undefined;
}

async function visible(locator: Locator): Promise<true | undefined> {
  return (await locator.isVisible().catch(() => false)) ? true : undefined;
}

async function textsOf(locator: Locator): Promise<string> {
  return (await locator.allInnerTexts()).map(plain).join(' | ');
}

function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim();
}
