import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  panelAccessibilityViolations,
  panelOverflow,
  screenshot,
  setTheme,
  setWindowSize,
} from './appearance.ts';
import { editorFor } from './editor-for.ts';
import { fillByHand, retypeByHand, typeByHand } from './hand.ts';
import { projectFolder } from './places.ts';
import { waitUntil } from './processes.ts';
import {
  closePanel,
  describeEditor,
  focusEditor,
  goTo,
  openFile,
  panelFrame,
  quickFix,
  runCommand,
  waitForHint,
  waitForPanel,
} from './workbench.ts';

const lineOf = {
  byHand: 42,
  wet: 58,
  experiment: 66,
  readAt: 73,
};

describe('an experiment from plan to conclusion', () => {
  const editor = editorFor(
    {
      copyOf: join(projectFolder, 'examples'),
    },
    async (editor) => {
      await openFile(editor.page, 'bench.dough');
      await waitForHint(editor.page, 'formula Bench White:');
    },
  );

  const press = (name: string | RegExp) =>
    panelFrame(editor.page).getByRole('button', { name, exact: true }).first().click();

  it('shows its sheet beside the text where the cursor stands in it, and follows what is typed', async () => {
    const { page } = editor;
    await goTo(page, lineOf.experiment, 3);
    await runCommand(page, 'Doughwright: Open Batch Sheet');
    await waitForPanel(page, 'the sheet', (text) => text.includes('what the readings say'));
    await goTo(page, lineOf.readAt);
    await retypeByHand(page, 'read at 0.5, 8, 16, 30, 45, 60 min');
    await waitForPanel(page, 'the new minute', (text) => text.includes('0.5 min'));
    for (const theme of ['light', 'dark', 'high contrast', 'high contrast light'] as const) {
      await setTheme(editor, theme);
      await screenshot(page, `experiment-${theme.replaceAll(' ', '-')}`);
      expect(await panelAccessibilityViolations(page)).toEqual([]);
    }
    await setTheme(editor, 'light');
    await setWindowSize(page, 760, 900);
    expect(await panelOverflow(page)).toBe(0);
    await setWindowSize(page, 1280, 900);
  });

  it('is run at the bench: the timer says when to stop, two taps log, a third adds a word', async () => {
    const { page } = editor;
    await press('Run it at the bench');
    await panelFrame(page).getByRole('button', { name: 'Bench Wet' }).click();
    await press('Mixing begins');
    // The panel may be closed meanwhile: the timer runs on.
    await closePanel(page);
    const toast = page.locator('.notification-toast').filter({ hasText: 'Bench Wet: Stop the mixer' });
    await waitUntil(
      'the message to stop the mixer',
      async () => ((await toast.count()) > 0 ? true : undefined),
      40_000,
    );
    await toast.getByRole('button', { name: 'Show' }).click();
    await waitForPanel(page, 'the running timer', (text) => /Stop the mixer (in|now)/.test(text));
    await press('Stopped');
    // Somebody writes in the file between the taps.
    await goTo(page, 1, 1);
    await typeByHand(page, '# the bench of May\n');
    await fillByHand(panelFrame(page).getByLabel('or °C'), '20.4');
    await press('rough');
    await waitForPanel(page, 'that it is logged', (text) => text.includes('logged 20.4 °C, rough'));
    await press('sticky');
    await waitForPanel(page, 'the second word', (text) => text.includes('logged 20.4 °C, rough, sticky'));
    await goTo(page, lineOf.wet + 8, 1);
    const text = () => describeEditor(page);
    await expect.poll(text, { timeout: 20_000 }).toMatch(/experiment How long is too long/);
    await expect.poll(text, { timeout: 20_000 }).toMatch(/at 0\.5 min\s+20\.4 °C, rough, sticky/);
    expect(await text()).toContain('speed 1 for 60 min');
    await screenshot(page, 'experiment-bench');
    expect(await panelAccessibilityViolations(page)).toEqual([]);
    // Each tap is one step back.
    await focusEditor(page);
    await page.keyboard.press('Control+Z');
    await expect.poll(text, { timeout: 20_000 }).not.toMatch(/rough, sticky/);
    await expect.poll(text, { timeout: 20_000 }).toMatch(/20\.4 °C, rough/);
    await page.keyboard.press('Control+Z');
    await expect.poll(text, { timeout: 20_000 }).not.toMatch(/20\.4 °C/);
  });

  it('logs the planned readings, sets them beside what was expected, and writes the conclusion', async () => {
    const { page } = editor;
    for (const [minute, celsius, word] of [
      ['8 min', '23.4', 'sticky'],
      ['16 min', '26.0', 'developing'],
      ['30 min', '27.4', 'developed'],
    ] as const) {
      await press(minute);
      await fillByHand(panelFrame(page).getByLabel('or °C'), celsius);
      await press(word);
      await waitForPanel(page, celsius, (text) => text.includes(`logged ${Number(celsius)} °C, ${word}`));
    }
    await press('Back to its sheet');
    const said = await waitForPanel(page, 'the results', (text) => /Bench Wet \d{4}-\d\d-\d\d 30/.test(text));
    expect(said).toMatch(/Bench Wet \d{4}-\d\d-\d\d 8 23\.4 °C, sticky 23\.\d °C ± .* within the band/);
    // A line was written above all others meanwhile.
    await goTo(page, lineOf.byHand + 1, 3);
    await quickFix(page, /^Write (?:what|the \d figures that) the trials show/);
    await waitForPanel(page, 'the hands as learned', (text) =>
      /by hand: the readings miss what is expected by 0\.\d °C/.test(text),
    );
    await goTo(page, lineOf.wet, 1);
    await expect
      .poll(() => describeEditor(page), { timeout: 20_000 })
      .toMatch(/mixer by hand:[\s\S]*warms towards 31\.\d °C within/);
  });

  it('comes back with its experiment after the window is loaded anew', async () => {
    const { page } = editor;
    await focusEditor(page);
    await page.keyboard.press('Control+S');
    page.on('dialog', (dialog) => void dialog.accept());
    await page.reload();
    await page.locator('.monaco-workbench').waitFor();
    await waitForPanel(page, 'the same sheet', (text) => text.includes('what the readings say'));
  });
});
