import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Dice } from '../server/dice.ts';
import type { Editor } from './code-server.ts';
import { editorFor } from './editor-for.ts';
import { seed, typeByHand, typedLines } from './hand.ts';
import { waitUntil } from './processes.ts';
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

describe('a server that is killed while somebody types', () => {
  const editor = editorFor({ files: { 'typed.dough': '' } });

  it('loses nothing that is typed, and its findings are right afterwards', async () => {
    const { page } = editor;
    await openFile(page, 'typed.dough');
    await waitUntil('a server', () => serversOf(editor)[0]);
    const text = lines.join('\n');
    // At random places, the same for the same seed.
    const dice = new Dice(seed);
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
    expect(typedLines(editor.readFile('typed.dough'))).toEqual(typedLines(text));
    // Whoever answers now is none of those.
    const running = await waitUntil('another server', () =>
      serversOf(editor).find((one) => !killed.has(one)),
    );
    expect(killed.has(running)).toBe(false);
    await waitForHint(page, 'water', /\d/);
    await page.keyboard.press('Control+End');
    await typeByHand(page, '\nspeed 2 for 4 mni');
    await page.keyboard.press('Escape');
    await waitForSquiggle(page, 'error', 'speed 2 for 4 mni');
  }, 240_000);
});
