import { stat } from 'node:fs/promises';
import { dirname, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createService, type Service } from '../../core/index.ts';
import { doughFilesBelow, readDough, rootAbove, type Unreadable } from '../disk.ts';
import { canonicalUri } from '../uris.ts';
import type { Trouble } from './report/report.ts';

/** A file the caller asked for, with its path as it is shown. */
export interface AskedFile {
  readonly uri: string;
  readonly shown: string;
}

export interface Input {
  readonly service: Service;
  /** In the order asked for, folders in the order of their names, none twice. */
  readonly asked: readonly AskedFile[];
  /** The path to show for any file the core names. */
  shown(uri: string): string;
  /** What could not be read, each told on standard error already. */
  readonly troubles: readonly Trouble[];
  /** Whether something asked for could not be read; it has been told on standard error. */
  readonly failed: boolean;
}

/**
 * Reads the files asked for, and around them all others of their root, so that names are found as in an editor. What
 * cannot be read is told in one line each, and the rest is done. Without those `around`, names of other files are unknown.
 */
export async function readInput(
  paths: readonly string[],
  { around = true }: { readonly around?: boolean } = {},
): Promise<Input> {
  const service = createService();
  const asked = new Map<string, AskedFile>();
  const shownPaths = new Map<string, string>();
  const roots = new Set<string>();
  const troubles: Trouble[] = [];

  const trouble = (path: string, message: string) => {
    troubles.push({ path: shownPath(path), message });
    process.stderr.write(`doughwright: ${shownPath(path)}: ${message}\n`);
  };
  const read = async (path: string, wanted: boolean) => {
    const uri = canonicalUri(pathToFileURL(path).href);
    if (asked.has(uri) || (!wanted && shownPaths.has(uri))) return;
    shownPaths.set(uri, shownPath(path));
    const file = await readDough(path);
    if (file.text !== undefined) service.setText(uri, file.text);
    if (!wanted) return;
    if (file.text === undefined) trouble(path, cureOf(file.why));
    else asked.set(uri, { uri, shown: shownPath(path) });
  };

  for (const path of paths.map((given) => resolve(given))) {
    const about = await stat(path).catch(() => undefined);
    if (!about?.isDirectory()) {
      await read(path, true);
      if (about) roots.add(await rootAbove(dirname(path)));
      continue;
    }
    roots.add(await rootAbove(path));
    let found = 0;
    for await (const file of doughFilesBelow(path)) {
      await read(file, true);
      progress(++found);
    }
    progress(0);
    if (found === 0)
      trouble(path, 'no .dough file in this folder; hidden folders and what git ignores are left out.');
  }
  if (around)
    for (const root of roots) for await (const file of doughFilesBelow(root)) await read(file, false);
  service.setRoots([...roots].map((root) => canonicalUri(pathToFileURL(root).href)));
  return {
    service,
    asked: [...asked.values()],
    shown: (uri) => shownPaths.get(uri) ?? uri,
    troubles,
    failed: troubles.length > 0,
  };
}

/** What to do about a file that cannot be read, in one line. */
export function cureOf(why: Unreadable): string {
  return cures[why];
}

const cures: Record<Unreadable, string> = {
  missing: 'there is no such file or folder; look at the spelling.',
  folder: 'this is a folder; name a file.',
  'no permission': 'you may not read this file; give yourself the right to.',
  'too large': 'this file is larger than 4 MiB; divide it into several.',
  binary: 'line 1: this is not plain text; a formula is text saved as UTF-8.',
  broken: 'this cannot be read; name an ordinary file, or look whether its disk is all right.',
};

/** A path as it is shown: from the current folder where it lies below, with slashes. */
export function shownPath(path: string): string {
  const near = relative('.', path) || '.';
  return (near.startsWith('..') ? path : near).replaceAll(sep, '/');
}

/** Tells on a terminal how far a long walk has come; 0 takes the line away. */
function progress(files: number): void {
  if (!process.stderr.isTTY || (files > 0 && files % 100 > 0)) return;
  process.stderr.write(files === 0 ? '\r\u001b[K' : `\r${files} files read`);
}
