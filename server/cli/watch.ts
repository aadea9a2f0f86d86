import { watch } from 'node:fs';
import { stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { message } from '../../core/index.ts';
import { rootAbove } from '../host/disk.ts';
import { say } from './speaker.ts';
import { complainOf } from './terminal.ts';

/** Editors write a file in several steps; a change is looked at when they have come to rest. */
const restMilliseconds = 80;

/**
 * Runs now, and again whenever a formula, or what git ignores, changes in the folders that the paths belong to, for names
 * may be defined anywhere in them. Goes on until the program is interrupted, which ends it with 130.
 */
export async function runWatching(paths: readonly string[], run: () => Promise<unknown>): Promise<never> {
  process.once('SIGINT', () => process.exit(130));
  const roots = new Set<string>();
  for (const path of paths.map((one) => resolve(one))) {
    const isFolder = (await stat(path).catch(() => undefined))?.isDirectory();
    roots.add(await rootAbove(isFolder ? path : dirname(path)));
  }
  let timer: NodeJS.Timeout | undefined;
  let wake: () => void = () => {};
  let changed = new Promise<void>((done) => {
    wake = done;
  });
  for (const root of roots) {
    watch(root, { recursive: true }, (_, name) => {
      if (name !== null && !/\.dough$|(^|[\\/])\.gitignore$/.test(name)) return;
      clearTimeout(timer);
      timer = setTimeout(() => wake(), restMilliseconds);
    });
  }
  for (;;) {
    if (process.stdout.isTTY) process.stdout.write('\u001b[2J\u001b[3J\u001b[H');
    await run();
    complainOf(`${say(message('command-check.watching'))}\n`);
    await changed;
    changed = new Promise<void>((done) => {
      wake = done;
    });
  }
}
