import { fileURLToPath } from 'node:url';
import { message, withEdits } from '../../core/index.ts';
import { realFile } from '../host/disk.ts';
import { readInput } from './input.ts';
import { projectSettings } from './project.ts';
import type { RuleLevels } from './rule-levels.ts';
import { say } from './speaker.ts';
import { complain, complainOf } from './terminal.ts';
import { replaceFile, writeTrouble } from './write-out.ts';

/** One fix may bring to light what another mends; after so many rounds a file is left as it has become. */
const mostRounds = 5;

/**
 * Mends slips of writing in files, as the editor does when it is asked to fix all: how something is written, never weights or
 * minutes. Tells how many files it changed; answers whether all could be written. What cannot be read, or holds letters that
 * are no UTF-8, is told when it is checked, and stays as it is.
 */
export async function fixSlips(paths: readonly string[], rules: RuleLevels): Promise<boolean> {
  const input = await readInput(paths, { quietly: true });
  input.service.setSettings({ rules: { ...projectSettings().rules, ...rules } });
  const troubled = new Set(input.troubles.map(({ path }) => path));
  let changed = 0;
  let isWhole = true;
  for (const { uri, shown } of input.asked) {
    if (troubled.has(shown)) continue;
    const { service } = input;
    const before = textOf(uri);
    for (let round = 0; round < mostRounds; round++) {
      const lines = service.lines(uri);
      const whole = {
        line: 0,
        start: 0,
        endLine: Math.max(0, lines.length - 1),
        end: lines.at(-1)?.length ?? 0,
      };
      const own = service.actionEdits(uri, whole, 'fix-all-slips')?.find((one) => one.uri === uri);
      if (own === undefined || own.edits.length === 0) break;
      service.setText(uri, withEdits(textOf(uri), own.edits));
    }
    const after = textOf(uri);
    if (after === before) continue;
    try {
      const target = await realFile(fileURLToPath(uri));
      if (target === undefined) {
        complain(shown, say(message('command-files.link-out')));
        isWhole = false;
        continue;
      }
      await replaceFile(target, after);
      changed++;
    } catch (error) {
      isWhole = false;
      complain(shown, say(message('command-files.left-as-was', { reason: writeTrouble(error, true) })));
    }
  }
  if (changed > 0) complainOf(`${say(message('command-check.fixed', { count: changed }))}\n`);
  return isWhole;

  function textOf(uri: string): string {
    return input.service.snapshot.texts.get(uri)?.text ?? '';
  }
}
