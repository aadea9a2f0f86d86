import { describe, expect, it } from 'vitest';
import { panelAccessibilityViolations } from './appearance.ts';
import { editorFor } from './editor-for.ts';
import {
  bowlGrams,
  formulaName,
  formulaText,
  lineAfterLast,
  massesIn,
  namesMass,
  openBatchSheetTitle,
  piecesFieldLabel,
  restartServerTitle,
  saltLine,
  unitlessLine,
  unitlessLineFixed,
  unitlessMessage,
  unknownIngredient,
  unknownIngredientLine,
  waterGrams,
  waterLine,
  weighsWater,
  writePercentFix,
} from './expectations.ts';
import { retypeByHand } from './hand.ts';
import { waitUntil } from './processes.ts';
import { readEditor } from './rendered-editor.ts';
import {
  closePanel,
  deleteLine,
  describeEditor,
  fillPanelField,
  goTo,
  hoverWord,
  leaveHover,
  openFile,
  quickFix,
  readProblems,
  retypeLine,
  runCommand,
  save,
  typeText,
  waitForHint,
  waitForNoSquiggle,
  waitForPanel,
  waitForSquiggle,
  waitForStatusBar,
} from './workbench.ts';

// Each test has a file of its own, so that none depends on what another left behind.
const files = {
  'typed.dough': '',
  'totals.dough': formulaNamed('Totals Tin'),
  'unit.dough': formulaNamed('Unit Tin'),
  'unknown.dough': formulaNamed('Unknown Tin'),
  'hover.dough': formulaNamed('Hover Tin'),
  'drawn.dough':
    'formula Drawn Tin:\n  bread flour 100%\n  water 66%\n  salt 2%\n\nmix in spiral:\n  load all\n  speed 1 for 4 min\n  speed 2 for 6 min\n',
  'restart.dough': formulaNamed('Restart Tin'),
  'actions.dough': formulaNamed('Action Tin').replace('salt               2%', 'salt               9%'),
  'status.dough': formulaNamed('Status Tin'),
  'sheet.dough': formulaNamed('Sheet Tin'),
};

describe('the packaged extension in VS Code', () => {
  const editor = editorFor({ files });

  it('shows the totals of a formula typed by keyboard', async () => {
    const { page } = editor;
    await openFile(page, 'typed.dough');
    await typeText(page, formulaText);
    await waitForHint(page, formulaName, /\b69\b/);
    await waitForMassHint('water', waterGrams(0.69));
    await waitForNoSquiggle(page, 'error');
    await waitForNoSquiggle(page, 'warning');
    await save(page);
    // Indentation is the editor's; every word and amount must have arrived as typed.
    expect(wordsOf(editor.readFile('typed.dough'))).toEqual(wordsOf(formulaText));
  });

  it('changes the totals when an amount is typed anew', async () => {
    const { page } = editor;
    await openFile(page, 'totals.dough');
    await waitForHint(page, 'Totals Tin', /\b69\b/);
    await retypeLine(page, waterLine, 'water              72%');
    await waitForHint(page, 'Totals Tin', /\b72\b/);
    await waitForMassHint('water', waterGrams(0.72));
  });

  it('marks a number without a unit, and its quick fix takes the mark away', async () => {
    const { page } = editor;
    await openFile(page, 'unit.dough');
    await retypeLine(page, saltLine, unitlessLine);
    await waitForSquiggle(page, 'error', unitlessLine);
    // Another file of the folder has a warning of its own.
    const errors = (await readProblems(page)).filter((problem) => problem.startsWith('Error'));
    expect(errors).toEqual([expect.stringMatching(unitlessMessage)]);
    await goTo(page, saltLine, 1000);
    await quickFix(page, writePercentFix);
    await waitForNoSquiggle(page, 'error');
    expect(await describeEditor(page)).toMatch(unitlessLineFixed);
  });

  it('accepts a finding by the light bulb and leaves the cursor on the reason', async () => {
    const { page } = editor;
    await openFile(page, 'actions.dough');
    await waitForHint(page, 'Action Tin');
    await goTo(page, saltLine, 5);
    await quickFix(page, 'Accept “salt-range”');
    await waitUntil('the accept to stand there', async () =>
      (await describeEditor(page)).includes('# accept salt-range: reason') ? true : undefined,
    );
    // What is typed takes the place of the word that stands for the reason.
    await page.keyboard.type('for the crackers');
    await waitUntil(
      'the reason to be typed over',
      async () =>
        (await describeEditor(page)).includes('# accept salt-range: for the crackers') ? true : undefined,
      10_000,
      () => describeEditor(page),
    );
    await waitForNoSquiggle(page, 'warning');
    await page.keyboard.press('Escape');
  });

  it('writes a section in grams from the refactor menu', async () => {
    const { page } = editor;
    await openFile(page, 'actions.dough');
    await goTo(page, waterLine, 5);
    await quickFix(page, 'in grams');
    await waitUntil('the water to be in grams', async () =>
      /water\s+\d[\d.]* k?g/.test(await describeEditor(page)) ? true : undefined,
    );
    expect(await describeEditor(page)).toMatch(/yield 24 pieces of 880 g/);
  });

  it('marks an ingredient it does not know until the line goes', async () => {
    const { page } = editor;
    await openFile(page, 'unknown.dough');
    await waitForHint(page, 'Unknown Tin');
    await goTo(page, lineAfterLast);
    await typeText(page, unknownIngredientLine);
    await waitForSquiggle(page, 'warning', unknownIngredient);
    await deleteLine(page, lineAfterLast);
    await waitForNoSquiggle(page, 'warning');
  });

  it('tells the mass of the water in a hover', async () => {
    const { page } = editor;
    await openFile(page, 'hover.dough');
    await waitForHint(page, 'Hover Tin');
    const text = await hoverWord(page, 'water', 'water');
    expect(namesMass(text, waterGrams(0.69)), `${text} does not name ${waterGrams(0.69)} g`).toBe(true);
    await leaveHover(page);
  });

  it('begins the hover over a mixing programme with a drawing of the dough', async () => {
    const { page } = editor;
    await openFile(page, 'drawn.dough');
    await waitForHint(page, 'Drawn Tin');
    await hoverWord(page, 'spiral', 'spiral');
    const drawing = page.locator('.monaco-hover:not(.hidden) img[src^="data:image/svg+xml"]').first();
    expect(await drawing.getAttribute('alt')).toMatch(/^[a-z-]+$/);
    // What the editor refuses to show has no size of its own.
    const width = await page.evaluate<number>(
      "document.querySelector('.monaco-hover:not(.hidden) img').naturalWidth",
    );
    expect(width).toBe(36);
    await leaveHover(page);
  });

  it('goes on after a restart of the server', async () => {
    const { page } = editor;
    await openFile(page, 'restart.dough');
    await waitForHint(page, 'Restart Tin', /\b69\b/);
    await runCommand(page, restartServerTitle);
    await retypeLine(page, saltLine, unitlessLine);
    await waitForSquiggle(page, 'error', unitlessLine);
    await retypeLine(page, saltLine, 'salt 2%');
    await waitForNoSquiggle(page, 'error');
  });

  it('tells hydration and dough weight of the formula at the cursor in the status bar', async () => {
    const { page } = editor;
    await openFile(page, 'status.dough');
    await goTo(page, waterLine);
    const text = await waitForStatusBar(page, 'doughwright', /\b69\b.*%.*kg/);
    // Dough may be told as divided or as in the bowl; between them lies what bowl and bench keep.
    expect(massesIn(text)[0]).toBeGreaterThanOrEqual(21_100);
    expect(massesIn(text)[0]).toBeLessThanOrEqual(bowlGrams * 1.005);
    await retypeByHand(page, 'water 72%');
    const typed = await waitForStatusBar(page, 'doughwright', /\b72\b.*%.*kg/);
    // What a screen reader is told is what stands there now.
    const read = page.locator('.statusbar-item[id^="doughwright."] [aria-label]').first();
    expect(await read.getAttribute('aria-label')).toBe(`${typed}. Opens the batch sheet.`);
  });

  it('opens the batch sheet beside the editor, scales it by the pieces and keeps them while typing', async () => {
    const { page } = editor;
    await openFile(page, 'sheet.dough');
    await waitForHint(page, 'Sheet Tin', /\b69\b/);
    await runCommand(page, openBatchSheetTitle);
    await waitForPanel(page, 'Sheet Tin', (text) => text.includes('Sheet Tin'));
    await waitForPanelMass(waterGrams(0.69));
    await fillPanelField(page, piecesFieldLabel, '48');
    await waitForPanelMass(2 * waterGrams(0.69));
    await retypeLine(page, waterLine, 'water              72%');
    await waitForPanelMass(2 * waterGrams(0.72));
    expect(await panelAccessibilityViolations(page)).toEqual([]);
    await closePanel(page);
  });

  async function waitForMassHint(lineText: string, grams: number): Promise<void> {
    const { page } = editor;
    const find = async () =>
      (await readEditor(page)).some((line) => line.text.includes(lineText) && namesMass(line.hint, grams)) ||
      undefined;
    await waitUntil(`a hint of ${grams} g on "${lineText}"`, find, 20_000, () => describeEditor(page));
  }

  async function waitForPanelMass(grams: number): Promise<void> {
    await waitForPanel(editor.page, `${grams} g of water`, (text) => weighsWater(text, grams));
  }
});

function formulaNamed(name: string): string {
  return formulaText.replace(formulaName, name);
}

function wordsOf(text: string): string[] {
  return text.split(/\s+/).filter(Boolean);
}
