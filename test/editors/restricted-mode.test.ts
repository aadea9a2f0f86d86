import { describe, expect, it } from 'vitest';
import { editorFor } from './editor-for.ts';
import { formulaFile, formulaName, formulaText, saltLine, unitlessLine, yieldLine } from './expectations.ts';
import { pressByHand, typeByHand } from './hand.ts';
import {
  describeEditor,
  goTo,
  openFile,
  retypeLine,
  waitForHint,
  waitForSquiggle,
  waitForStatusBar,
} from './workbench.ts';

// A formula is text and runs nothing: a folder that the user has not trusted yet is read like any other.
describe('in a folder that is not trusted', () => {
  const editor = editorFor(
    {
      files: { [formulaFile]: formulaText, 'notes.txt': 'proof at 27 °C\n' },
      settings: {
        'security.workspace.trust.enabled': true,
        'security.workspace.trust.startupPrompt': 'never',
        'security.workspace.trust.banner': 'never',
      },
    },
    async (editor) => {
      await openFile(editor.page, formulaFile);
    },
  );

  it('shows totals and findings', async () => {
    const { page } = editor;
    expect(await page.locator('.statusbar-item[id="status.workspaceTrust"]').count()).toBe(1);
    await waitForHint(page, formulaName, /\b69\b/);
    await retypeLine(page, saltLine, unitlessLine);
    await waitForSquiggle(page, 'error', unitlessLine);
  });

  it('boxes no degree sign of a formula, as the editor does elsewhere', async () => {
    const { page } = editor;
    const boxes = page.locator('.part.editor .editor-instance .unicode-highlight');
    await openFile(page, 'notes.txt');
    await expect.poll(() => boxes.count(), { timeout: 20_000 }).toBe(1);
    await openFile(page, formulaFile);
    await goTo(page, yieldLine, 1000);
    await typeByHand(page, '\ndough temperature 24 °C');
    await pressByHand(page, 'Escape');
    // The editor boxes what it finds a moment after it is typed: by then it has coloured the unit.
    await waitForStatusBar(page, 'doughwright', /\d/);
    await expect.poll(() => describeEditor(page)).toContain('dough temperature 24 °C');
    expect(await boxes.count()).toBe(0);
  });
});
