import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Editor, startEditor } from './code-server.ts';
import { typeByHand } from './hand.ts';
import { takePicturesOfFailures } from './pictures-of-failures.ts';
import { extensionPackage } from './places.ts';
import { openFile, save, waitForHint } from './workbench.ts';

/** A newcomer's formula with every step a process may end a line with. */
const formula = [
  'formula Quay Tin:',
  'yield 24 pieces of 880 g',
  'bread flour 100%',
  'water 66%',
  'salt 2%',
  'fresh yeast 1%',
  '',
  'mix in spiral:',
  'load all',
  'speed 1 for 4 min',
  'rest 10 min',
  'speed 2 for 4 min',
  '',
  'process:',
  'bulk 1 h at 25 °C',
  'fold',
  'rest 15 min',
  'divide',
  'rest',
  'shape',
  'proof 50 min at 27 °C',
  'score',
  'bake 34 min at 230 °C, steam',
  'cool',
  '',
];

const wordsOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim().replace(/\s+/g, ' '))
    .filter((line) => line !== '');

describe('typing at a hand’s pace', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await startEditor({ packages: [extensionPackage()], files: { 'typed.dough': '' } });
  });
  afterAll(async () => {
    await editor?.stop();
  });
  takePicturesOfFailures(() => editor);

  it('loses no Enter and no letter, whatever the list of completions shows', async () => {
    const { page } = editor;
    await openFile(page, 'typed.dough');
    // The server is ready once it has an answer: a list that comes late would prove nothing.
    await page.keyboard.type('formula A:', { delay: 20 });
    await waitForHint(page, 'formula A').catch(() => undefined);
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Delete');
    await typeByHand(page, formula.join('\n'));
    await page.keyboard.press('Escape');
    await save(page);
    expect(wordsOf(editor.readFile('typed.dough'))).toEqual(wordsOf(formula.join('\n')));
  }, 240_000);
});
