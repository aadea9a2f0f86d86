import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import {
  panelAccessibilityViolations,
  panelOverflow,
  screenshot,
  setTheme,
  setWindowSize,
} from './appearance.ts';
import { editorFor } from './editor-for.ts';
import { formulaFile, formulaName, formulaText, piecesFieldLabel, waterLine } from './expectations.ts';
import { fillByHand, pressByHand, retypeByHand, typeByHand } from './hand.ts';
import {
  closePanel,
  describeEditor,
  fillPanelField,
  focusEditor,
  openFile,
  panelFrame,
  retypeLine,
  runCommand,
  save,
  waitForHint,
  waitForNoSquiggle,
  waitForPanel,
  waitForSquiggle,
} from './workbench.ts';

const mix = '\nmix in spiral:\n  load flour, water, salt, yeast\n  speed 1 for 4 min\n  speed 2 for 4 min\n';

describe('working from the panel', () => {
  const editor = editorFor(
    {
      files: { [formulaFile]: formulaText + mix },
    },
    async (editor) => {
      const git = (...words: string[]) =>
        execFileSync('git', ['-c', 'user.name=Baker', '-c', 'user.email=baker@example.org', ...words], {
          cwd: editor.workspace,
        });
      git('init', '-q');
      git('add', formulaFile);
      git('commit', '-qm', 'Begin');
      await openFile(editor.page, formulaFile);
      await waitForHint(editor.page, formulaName, /\b69\b/);
    },
  );

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
  });

  it('logs the water as it was drawn and the last reading with its stage, and the sheet stands', async () => {
    const { page } = editor;
    const panel = panelFrame(page);
    await panel.getByRole('button', { name: 'Next' }).click();
    await fillByHand(panel.getByLabel('Water as drawn, °C'), '14.5');
    await fillByHand(panel.getByLabel('or °C'), '26.5');
    await panel.getByRole('button', { name: 'developing' }).click();
    await waitForPanel(page, 'that it is logged', (text) => /Logged.*26\.5 °C, developing/i.test(text));
    const text = () => describeEditor(page);
    await expect.poll(text, { timeout: 20_000 }).toMatch(/\n\s+end\s+26\.5 °C, developing\n/);
    expect(await text()).toMatch(/\n\s+water 14\.5 °C\n/);
    await waitForNoSquiggle(page, 'error');
    await panel.getByRole('button', { name: 'Whole sheet' }).click();
    // The sheet sets the reading beside what was computed for that water.
    await waitForPanel(page, 'the trial', (said) => /end 26\.5 °C developing \d/.test(said));
    await save(page);
  });

  it('takes the same line typed by hand, and stands where a trial’s line is wrong', async () => {
    const { page } = editor;
    await focusEditor(page);
    await pressByHand(page, 'Control+End');
    await typeByHand(page, '\ntrial 2026-11-02:\nwater 15 °C\nend 26.5 °C, developing');
    await pressByHand(page, 'Escape');
    await waitForPanel(page, 'the typed trial', (said) =>
      /Trial 2026-11-02.*end 26\.5 °C developing/.test(said),
    );
    await waitForNoSquiggle(page, 'error');
    await typeByHand(page, ' 5 kg');
    await waitForSquiggle(page, 'error', 'developing 5 kg');
    // The formula is whole: its figures stay as dark as they were, and nothing says that they are old.
    const said = await waitForPanel(page, 'the weights', (one) => /Into the bowl.*water.*salt/.test(one));
    expect(said).not.toMatch(/last known|held/i);
    expect(await panelFrame(page).locator('main').getAttribute('class')).toBe('ready');
    await retypeByHand(page, 'end 26.5 °C, developing');
    await waitForNoSquiggle(page, 'error');
    await save(page);
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
