import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Editor, startEditor } from './code-server.ts';
import { formulaFile, formulaName, formulaText, saltLine, unitlessLine } from './expectations.ts';
import { takePicturesOfFailures } from './pictures-of-failures.ts';
import { extensionPackage } from './places.ts';
import { openFile, retypeLine, waitForHint, waitForSquiggle } from './workbench.ts';

// A formula is text and runs nothing: a folder that the user has not trusted yet is read like any other.
describe('in a folder that is not trusted', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await startEditor({
      packages: [extensionPackage()],
      files: { [formulaFile]: formulaText },
      settings: {
        'security.workspace.trust.enabled': true,
        'security.workspace.trust.startupPrompt': 'never',
        'security.workspace.trust.banner': 'never',
      },
    });
    await openFile(editor.page, formulaFile);
  });
  afterAll(async () => {
    await editor?.stop();
  });
  takePicturesOfFailures(() => editor);

  it('shows totals and findings', async () => {
    const { page } = editor;
    expect(await page.locator('.statusbar-item[id="status.workspaceTrust"]').count()).toBe(1);
    await waitForHint(page, formulaName, /\b69\b/);
    await retypeLine(page, saltLine, unitlessLine);
    await waitForSquiggle(page, 'error', unitlessLine);
  });
});
