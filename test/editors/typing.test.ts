import { describe, expect, it } from 'vitest';
import { editorFor } from './editor-for.ts';
import { pressByHand, retypeByHand, typeByHand, typedLines } from './hand.ts';
import { type Drawn, tabColour, watchEditor } from './rendered-editor.ts';
import {
  closePanel,
  describeEditor,
  goTo,
  openFile,
  panelFrame,
  quickFix,
  runCommand,
  save,
  waitForHint,
  waitForNoSquiggle,
  waitForPanel,
  waitForSquiggle,
  waitForStatusBar,
} from './workbench.ts';

/**
 * A newcomer's formula, with every step a process may end a line with, and what used to be read as something else without a word: folds
 * by a list, by an interval and by a number, steps of other kitchens, and names that mean one of two things.
 */
const formula = [
  'formula Quay Tin:',
  'yield 24 pieces of 880 g',
  'bread flour 70%',
  'spelt flour 30%',
  'water 66%',
  'oil 3%',
  'malt 1%',
  'salt 2%',
  'yeast 1%',
  '',
  'mix in spiral:',
  'load all',
  'speed 1 for 4 min',
  'rest 10 min',
  'speed 2 for 4 min',
  '',
  'process:',
  'autolyse 30 min',
  'first rise 2 h at 25 °C, fold at 30, 60, 90 min',
  'fold',
  'rest 15 min',
  'knock back',
  'bulk 2 h, folds every 40 min',
  'bulk 1 h, fold 3 times',
  'divide',
  'rest',
  'shape',
  'prove 50 min at 27 °C',
  'score',
  'bake 34 min at 230 °C, steam',
  'cool',
  '',
];

/** What the guide says a line is left alone for once the hand rests, in milliseconds. */
const rest = 1000;

const hasError = ({ lines }: Drawn): boolean => lines.some(({ squiggles }) => squiggles.includes('error'));

describe('typing at a hand’s pace', () => {
  const whole = `formula Whole Tin:\n  yield 24 pieces of 880 g\n  bread flour 100%\n  water 66%\n  salt 2%\n  fresh yeast 1%\n`;
  const waterLine = 4;
  const files = {
    'typed.dough': '',
    'whole.dough': whole,
    'ounces.dough': 'formula Quay Ounces:\n  bread flour 16 oz\n  salt 0.3 oz\n',
  };
  const editor = editorFor({ files }, async ({ page }) => {
    // The server is ready once it has an answer: what comes late would prove nothing.
    await openFile(page, 'whole.dough');
    await waitForHint(page, 'water', /\d/);
  });

  it('keeps the last whole figures and calls nothing wrong while a line is half typed', async () => {
    const { page } = editor;
    await goTo(page, waterLine);
    const calm = await tabColour(page);
    const stop = await watchEditor(page);
    await retypeByHand(page, 'water 72');
    await waitForSquiggle(page, 'error', 'water 72');
    await expect.poll(() => tabColour(page)).not.toBe(calm);
    const drawn = await stop();
    // The line is told once the hand rests, and the tab turns with it.
    const isRed = (one: Drawn) => one.tabColour !== calm;
    expect(drawn.filter((one) => (hasError(one) || isRed(one)) && one.paused < rest)).toEqual([]);
    const hintsOf = (text: string) =>
      drawn.flatMap(({ lines }) => lines.filter((line) => line.text.includes(text)).map(({ hint }) => hint));
    for (const text of ['bread flour', 'salt', 'fresh yeast', 'formula Whole Tin']) {
      expect(hintsOf(text)).not.toContain('');
      expect(hintsOf(text).at(-1)).toMatch(/^\(.*\d.*\)$/);
    }
    await waitForStatusBar(page, 'doughwright', /^\(66%.*\)$/);
    await typeByHand(page, '%');
    await waitForHint(page, 'formula Whole Tin', /^72% hydration/);
    await waitForNoSquiggle(page, 'error');
    await save(page);
  });

  it('loses no Enter and no letter, whatever the list of completions shows', async () => {
    const { page } = editor;
    await openFile(page, 'typed.dough');
    const stop = await watchEditor(page);
    await typeByHand(page, formula.join('\n'));
    await pressByHand(page, 'Escape');
    const drawn = await stop();
    await save(page);
    expect(typedLines(editor.readFile('typed.dough'))).toEqual(typedLines(formula.join('\n')));
    // No line was called wrong on the way, but where the machine let the hand rest.
    const wrong = drawn.filter(
      (one, at) => hasError(one) && !(at > 0 && hasError(drawn[at - 1]!)) && one.paused < rest,
    );
    expect(wrong).toEqual([]);
  }, 240_000);

  it('says on the sheet and by the light bulb which spelt flour, oil, malt and yeast is taken', async () => {
    const { page } = editor;
    const kinds = [
      ['spelt flour', 'wholemeal spelt', 'white spelt'],
      ['oil', 'olive oil', 'sunflower oil'],
      ['malt', 'malt flour', 'malt extract'],
      ['yeast', 'fresh yeast', 'instant yeast'],
    ] as const;
    // The editor marks a hint with dots; the sheet has the sentence, and the light bulb both kinds.
    await goTo(page, formula.indexOf('yeast 1%') + 1, 5);
    for (const [name] of kinds) await waitForSquiggle(page, 'hint', `${name} `);
    await runCommand(page, 'Doughwright: Open Batch Sheet');
    const said = await waitForPanel(page, 'all of it', (text) => text.includes('“yeast” is taken as'));
    for (const [name, taken, other] of kinds)
      expect(said).toContain(`“${name}” is taken as ${taken}; it may be ${other}.`);
    await quickFix(page, /^Write .*instant yeast/);
    await expect.poll(() => describeEditor(page)).toMatch(/^\s*instant yeast\s+1%/m);
    await waitForNoSquiggle(page, 'hint', 'instant yeast');
  });

  it('reads every fold, and the steps of other kitchens', async () => {
    const { page } = editor;
    const rows = panelFrame(page).locator('.steps-table tbody tr');
    const steps = (await rows.evaluateAll((all) =>
      all.map((row) =>
        [...row.querySelectorAll('.clock, th .name, .lasts')].map((one) => one.textContent?.trim()),
      ),
    )) as string[][];
    expect(steps).toEqual([
      ['at the start', 'mix', '18 min'],
      ['after 18 min', 'autolyse', '30 min'],
      ['after 48 min', 'first rise at 25 °C, fold at 30, 60, 90 min', '2 h'],
      ['after 1 h 18 min', 'fold', ''],
      ['after 1 h 48 min', 'fold', ''],
      ['after 2 h 18 min', 'fold', ''],
      ['after 2 h 48 min', 'fold', ''],
      ['after 2 h 48 min', 'rest', '15 min'],
      ['after 3 h 3 min', 'knock back', ''],
      ['after 3 h 3 min', 'bulk, folds every 40 min', '2 h'],
      ['after 3 h 43 min', 'fold', ''],
      ['after 4 h 23 min', 'fold', ''],
      ['after 5 h 3 min', 'bulk, fold 3 times', '1 h'],
      ['after 5 h 18 min', 'fold', ''],
      ['after 5 h 33 min', 'fold', ''],
      ['after 5 h 48 min', 'fold', ''],
      ['after 6 h 3 min', 'divide', ''],
      ['after 6 h 3 min', 'rest', ''],
      ['after 6 h 3 min', 'shape', ''],
      ['after 6 h 3 min', 'prove at 27 °C', '50 min'],
      ['after 6 h 53 min', 'score', ''],
      ['after 6 h 53 min', 'bake at 230 °C, steam', '34 min'],
      ['after 7 h 27 min', 'cool', ''],
      ['after 7 h 27 min', ''],
    ]);
    await closePanel(page);
  });

  it('fills a cup of its own country in a formula of ounces', async () => {
    const { page } = editor;
    await openFile(page, 'ounces.dough');
    await pressByHand(page, 'Control+End');
    await typeByHand(page, 'water 1 cup');
    await pressByHand(page, 'Escape');
    // A customary cup is 236.588 ml (NIST Special Publication 1038), and water nearly as many grams.
    expect(await waitForHint(page, 'water 1 cup', /\d g/)).toMatch(/· 23[67] g$/);
  });
});
