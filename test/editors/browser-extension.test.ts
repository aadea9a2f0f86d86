import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { editorFor } from './editor-for.ts';
import {
  extensionId,
  formulaFile,
  formulaName,
  formulaText,
  namesMass,
  openBatchSheetTitle,
  restartServerTitle,
  saltLine,
  unitlessLine,
  waterGrams,
  weighsWater,
} from './expectations.ts';
import { browserExtensionPackage } from './places.ts';
import {
  openFile,
  retypeLine,
  runCommand,
  waitForHint,
  waitForNoSquiggle,
  waitForPanel,
  waitForSquiggle,
} from './workbench.ts';

describe('the browser variant in the web worker extension host', () => {
  const editor = editorFor(
    {
      packages: [browserExtensionPackage()],
      files: { [formulaFile]: formulaText },
    },
    async (editor) => {
      await openFile(editor.page, formulaFile);
    },
  );

  it('has a browser program and no other, so that nothing can run outside the page', () => {
    const folder = readdirSync(editor.extensions).find((name) => name.startsWith(extensionId));
    const manifest = JSON.parse(readFileSync(join(editor.extensions, folder ?? '', 'package.json'), 'utf8'));
    expect(manifest.browser).toBeTruthy();
    expect(manifest.main).toBeUndefined();
  });

  it('shows totals', async () => {
    await waitForHint(editor.page, formulaName, /\b69\b/);
    const water = () => waitForHint(editor.page, 'water', /\d\s?k?g/);
    await expect.poll(async () => namesMass(await water(), waterGrams(0.69)), { timeout: 20_000 }).toBe(true);
  });

  it('marks a number without a unit while typing and takes the mark away again', async () => {
    const { page } = editor;
    await retypeLine(page, saltLine, unitlessLine);
    await waitForSquiggle(page, 'error', unitlessLine);
    await retypeLine(page, saltLine, 'salt               2%');
    await waitForNoSquiggle(page, 'error');
  });

  it('opens the batch sheet', async () => {
    const { page } = editor;
    await runCommand(page, openBatchSheetTitle);
    const wanted = waterGrams(0.69);
    const text = await waitForPanel(page, `${wanted} g of water`, (said) => weighsWater(said, wanted));
    expect(text).toContain(formulaName);
  });

  it('goes on after a restart of the server', async () => {
    const { page } = editor;
    await runCommand(page, restartServerTitle);
    await retypeLine(page, saltLine, unitlessLine);
    await waitForSquiggle(page, 'error', unitlessLine);
  });
});
