import { execFileSync } from 'node:child_process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  panelAccessibilityViolations,
  panelOverflow,
  screenshot,
  setTheme,
  setWindowSize,
} from './appearance.ts';
import { type Editor, startEditor } from './code-server.ts';
import { formulaFile, formulaName, formulaText, piecesFieldLabel, waterLine } from './expectations.ts';
import { takePicturesOfFailures } from './pictures-of-failures.ts';
import { extensionPackage } from './places.ts';
import {
  closePanel,
  describeEditor,
  fillPanelField,
  openFile,
  panelFrame,
  retypeLine,
  runCommand,
  save,
  waitForHint,
  waitForPanel,
} from './workbench.ts';

const mix = '\nmix in spiral:\n  load flour, water, salt, yeast\n  speed 1 for 4 min\n  speed 2 for 4 min\n';

describe('working from the panel', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await startEditor({
      packages: [extensionPackage()],
      files: { [formulaFile]: formulaText + mix },
    });
    const git = (...words: string[]) =>
      execFileSync('git', ['-c', 'user.name=Baker', '-c', 'user.email=baker@example.org', ...words], {
        cwd: editor.workspace,
      });
    git('init', '-q');
    git('add', formulaFile);
    git('commit', '-qm', 'Begin');
    await openFile(editor.page, formulaFile);
    await waitForHint(editor.page, formulaName, /\b69\b/);
  });
  afterAll(async () => {
    await editor?.stop();
  });
  takePicturesOfFailures(() => editor);

  it('writes what is tried into the file only when asked', async () => {
    const { page } = editor;
    await runCommand(page, 'Doughwright: Open Batch Sheet');
    await waitForPanel(page, formulaName, (text) => text.includes(formulaName));
    await fillPanelField(page, piecesFieldLabel, '48');
    await waitForPanel(page, 'that it is tried', (text) => text.includes('tried today'));
    expect(await describeEditor(page)).toContain('24 pieces');
    await panelFrame(page).getByRole('button', { name: 'Keep in the file' }).click();
    await expect.poll(() => describeEditor(page), { timeout: 20_000 }).toContain('48 pieces');
    await waitForPanel(page, 'nothing tried', (text) => !text.includes('tried today'));
  });

  it('logs a reading with two taps as a line of today’s trial', async () => {
    const { page } = editor;
    await panelFrame(page).getByRole('button', { name: 'Work from this' }).click();
    await panelFrame(page).getByRole('button', { name: 'Next' }).click();
    await panelFrame(page).getByLabel('or °C').waitFor();
    await panelFrame(page).locator('.chip').first().click();
    await panelFrame(page).getByRole('button', { name: 'pick-up' }).click();
    await waitForPanel(page, 'that it is logged', (text) => text.includes('Logged'));
    await expect.poll(() => describeEditor(page), { timeout: 20_000 }).toMatch(/trial \d{4}-\d\d-\d\d:/);
    expect(await describeEditor(page)).toMatch(/at 4 min\s+[\d.]+ °C, pick-up/);
    for (const theme of ['light', 'dark', 'high contrast'] as const) {
      await setTheme(editor, theme);
      await screenshot(page, `working-${theme.replace(' ', '-')}`);
      expect(await panelAccessibilityViolations(page)).toEqual([]);
    }
    await setWindowSize(page, 700, 900);
    expect(await panelOverflow(page)).toBe(0);
    await setWindowSize(page, 1280, 900);
    await panelFrame(page).getByRole('button', { name: 'Whole sheet' }).click();
    await closePanel(page);
  });

  it('tells what changed since the last commit', async () => {
    const { page } = editor;
    await openFile(page, formulaFile);
    await retypeLine(page, waterLine, 'water              72%');
    await save(page);
    await runCommand(page, 'Doughwright: What Changed Since the Last Commit');
    const text = await waitForPanel(page, 'the change of the water', (said) => /69%[\s\S]*72%/.test(said));
    expect(text).toContain(formulaName);
    expect(await panelAccessibilityViolations(page)).toEqual([]);
    await setTheme(editor, 'light');
    await screenshot(page, 'what-changed');
  });

  it('says of a text in no file that there is nothing to compare it with', async () => {
    const { page } = editor;
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.evaluate("navigator.clipboard.writeText('strong white\\t1000 g\\nwater\\t650 g\\n')");
    await runCommand(page, 'View: Close All Editors');
    await runCommand(page, 'Doughwright: Formula from Table on the Clipboard');
    await waitForHint(page, 'New Formula', /\b65\b/);
    await runCommand(page, 'Doughwright: What Changed Since the Last Commit');
    const said = await waitForPanel(page, 'why there is nothing', (text) => /no file yet/.test(text));
    expect(said).toContain('Save it');
  });
});
