import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Dice } from '../server/dice.ts';
import { type Editor, startEditor } from './code-server.ts';
import { takePicturesOfFailures } from './pictures-of-failures.ts';
import { extensionPackage } from './places.ts';
import { after, waitUntil } from './processes.ts';
import { openFile, save, waitForHint, waitForSquiggle } from './workbench.ts';

// Fewer than four within three minutes: after as many the language client of VS Code starts a server no more, by its own rule.
const kills = 3;

const lines = [
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
  'speed 2 for 4 min',
];

/** The processes that serve the language in this run's own folder of extensions. */
function serversOf({ extensions }: Editor): number[] {
  return readdirSync('/proc').flatMap((name) => {
    if (!/^\d+$/.test(name)) return [];
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0');
      const isOurs = words.some(
        (word) => word.startsWith(extensions) && /dist\/[\w-]*server[\w-]*\.c?js$/.test(word),
      );
      return isOurs ? [Number(name)] : [];
    } catch {
      // It has ended meanwhile.
      return [];
    }
  });
}

async function typeByHand(page: Page, letters: string, each: (typed: number) => void): Promise<void> {
  let typed = 0;
  for (const letter of letters) {
    if (letter === '\n') await page.keyboard.press('Enter');
    else await page.keyboard.type(letter);
    // As uneven as a hand, 110 to 170 ms a key, and the same each time.
    await after(110 + ((typed * 37) % 61));
    each(++typed);
  }
}

const wordsOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim().replace(/\s+/g, ' '))
    .filter((line) => line !== '');

describe('a server that is killed while somebody types', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await startEditor({ packages: [extensionPackage()], files: { 'typed.dough': '' } });
  });
  afterAll(async () => {
    await editor?.stop();
  });
  takePicturesOfFailures(() => editor);

  it('loses nothing that is typed, and its findings are right afterwards', async () => {
    const { page } = editor;
    await openFile(page, 'typed.dough');
    await waitUntil('a server', () => serversOf(editor)[0]);
    const text = lines.join('\n');
    // At random places, the same for the same seed.
    const dice = new Dice(Number(process.env.SEED ?? 17));
    const places = Array.from({ length: kills }, (_, index) => {
      const part = Math.floor(text.length / kills);
      return index * part + 5 + dice.below(part - 10);
    });
    const killed = new Set<number>();
    await typeByHand(page, text, (typed) => {
      if (!places.includes(typed)) return;
      for (const server of serversOf(editor)) {
        process.kill(server, 'SIGKILL');
        killed.add(server);
      }
    });
    expect(killed.size).toBeGreaterThanOrEqual(2);
    await page.keyboard.press('Escape');
    await save(page);
    expect(wordsOf(editor.readFile('typed.dough'))).toEqual(wordsOf(text));
    // Whoever answers now is none of those.
    const running = await waitUntil('another server', () =>
      serversOf(editor).find((one) => !killed.has(one)),
    );
    expect(killed.has(running)).toBe(false);
    await waitForHint(page, 'water', /\d/);
    await page.keyboard.press('Control+End');
    await page.keyboard.type('\nspeed 2 for 4 mni', { delay: 40 });
    await page.keyboard.press('Escape');
    await waitForSquiggle(page, 'error', 'speed 2 for 4 mni');
  }, 240_000);
});
