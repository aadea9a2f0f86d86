import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  panelAccessibilityViolations,
  panelColours,
  panelOverflow,
  screenshot,
  setTheme,
  setWindowSize,
} from './appearance.ts';
import { type Editor, startEditor } from './code-server.ts';
import {
  formulaFile,
  formulaName,
  formulaText,
  lineAfterLast,
  openBatchSheetTitle,
  unknownIngredient,
  unknownIngredientLine,
} from './expectations.ts';
import { takePicturesOfFailures } from './pictures-of-failures.ts';
import { extensionPackage } from './places.ts';
import {
  goTo,
  openFile,
  runCommand,
  typeText,
  waitForHint,
  waitForPanel,
  waitForSquiggle,
} from './workbench.ts';

const themes = ['light', 'dark', 'high contrast', 'high contrast light'] as const;
const windows = [
  { name: 'narrow', width: 800, height: 900 },
  { name: 'wide', width: 1920, height: 1080 },
] as const;

describe('editor and batch sheet side by side', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await startEditor({ packages: [extensionPackage()], files: { [formulaFile]: formulaText } });
    const { page } = editor;
    await openFile(page, formulaFile);
    await waitForHint(page, formulaName, /\b69\b/);
    await goTo(page, lineAfterLast);
    await typeText(page, `  ${unknownIngredientLine}`);
    await waitForSquiggle(page, 'warning', unknownIngredient);
    await runCommand(page, openBatchSheetTitle);
    await waitForPanel(page, formulaName, (text) => text.includes(formulaName));
    await runCommand(page, 'View: Toggle Primary Side Bar Visibility');
  });
  afterAll(async () => {
    await editor?.stop();
  });
  takePicturesOfFailures(() => editor);

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

  for (const { name, width, height } of windows) {
    it(`fits a ${name} window`, async () => {
      await setTheme(editor, 'light');
      await setWindowSize(editor.page, width, height);
      await screenshot(editor.page, `editor-${name}`);
      expect(await panelOverflow(editor.page)).toBe(0);
    });
  }
});
