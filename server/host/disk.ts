import { isUtf8 } from 'node:buffer';
import { constants, type Dirent } from 'node:fs';
import { lstat, open, readdir, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import ignore, { type Ignore } from 'ignore';
import { type HostFiles, largestFileBytes } from './host.ts';
import { isWithin, wayTo } from './paths.ts';

/** How many files are named in one batch. */
const batch = 4;

/** A folder this large is no bakery's; the walk ends after so many entries. */
const mostEntries = 200_000;

/** The files of the machine's own disk. */
export const disk: HostFiles = {
  async *find(folder) {
    const at = fileURLToPath(folder);
    // A watcher tells of thousands of files that may be folders; the walk begins with all that git ignores there.
    const about = await stat(at).catch(() => undefined);
    if (!about?.isDirectory()) return;
    let uris: string[] = [];
    for await (const path of doughFilesBelow(at)) {
      uris.push(pathToFileURL(path).href);
      if (uris.length < batch) continue;
      yield uris;
      uris = [];
    }
    if (uris.length > 0) yield uris;
  },
  async findable(folder, uris) {
    const isFound = await foundBelow(fileURLToPath(folder));
    const found = new Set<string>();
    for (const uri of uris) {
      const path = pathOf(uri);
      if (path !== undefined && (await isFound(path))) found.add(uri);
    }
    return found;
  },
  async read(uri) {
    const path = pathOf(uri);
    return path === undefined ? undefined : (await readDough(path)).text;
  },
  async rootOf(uri) {
    return pathToFileURL(await rootAbove(dirname(fileURLToPath(uri)))).href;
  },
};

/** The path of a file; `undefined` where this machine has no such paths, as for a host or a drive. */
function pathOf(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

/** Why a file could not be read as text. */
export type Unreadable = 'missing' | 'folder' | 'no permission' | 'too large' | 'binary' | 'broken';

export type DoughFile =
  | {
      readonly text: string;
      readonly why?: never;
      /** The first line with letters that are no UTF-8, counted from one; the text holds signs in their place. */
      readonly otherLettersInLine?: number;
    }
  | { readonly text?: never; readonly otherLettersInLine?: never; readonly why: Unreadable };

/**
 * Reads a file as UTF-8, without the mark that some programs put before it, as editors do: columns count the same in both.
 * Never throws: what keeps it from being read is in the answer.
 */
export async function readDough(path: string): Promise<DoughFile> {
  const { bytes, why } = await readBytes(path);
  return bytes === undefined ? { why } : doughOf(bytes);
}

/** Bytes as a formula file, however they were come by; those of what is not there are none. */
export function doughOf(bytes: Buffer | undefined): DoughFile {
  if (bytes === undefined) return { why: 'missing' };
  if (bytes.length > largestFileBytes) return { why: 'too large' };
  // No text holds a zero byte, and nearly every binary file has one near its start.
  if (bytes.subarray(0, 8192).includes(0)) return { why: 'binary' };
  const text = withoutMark(bytes.toString('utf8'));
  return isUtf8(bytes) ? { text } : { text, otherLettersInLine: lineOfOtherLetters(bytes) };
}

/** The first line of bytes that are not all UTF-8, counted from one. */
function lineOfOtherLetters(bytes: Buffer): number {
  let line = 1;
  for (let start = 0; ; line++) {
    const found = bytes.indexOf(10, start);
    if (found < 0 || !isUtf8(bytes.subarray(start, found))) return line;
    start = found + 1;
  }
}

export function withoutMark(text: string): string {
  return text.startsWith('\ufeff') ? text.slice(1) : text;
}

/** Reads an ordinary file of no more than `largestFileBytes`. Never throws. */
export async function readBytes(
  path: string,
): Promise<
  { readonly bytes: Buffer; readonly why?: never } | { readonly bytes?: never; readonly why: Unreadable }
> {
  try {
    const about = await stat(path);
    if (about.isDirectory()) return { why: 'folder' };
    // A pipe or a device would keep us waiting for ever.
    if (!about.isFile()) return { why: 'broken' };
    if (about.size > largestFileBytes) return { why: 'too large' };
    return await readAtMost(path, largestFileBytes);
  } catch (error) {
    return { why: whyOf(error) };
  }
}

/** Files of the system may say that they are empty and never end, so no more is read than is allowed. */
async function readAtMost(
  path: string,
  most: number,
): Promise<
  { readonly bytes: Buffer; readonly why?: never } | { readonly bytes?: never; readonly why: Unreadable }
> {
  // Between the look and the opening a pipe may have come; opened so, nobody waits for its other end.
  const file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const about = await file.stat();
    if (!about.isFile()) return { why: 'broken' };
    const pieces: Buffer[] = [];
    let size = 0;
    for (;;) {
      // One byte of room more than there shall be: where it stays empty the file has ended.
      const wanted = size === 0 && about.size > 0 ? about.size + 1 : 64 * 1024;
      const piece = Buffer.allocUnsafe(Math.min(most + 1 - size, wanted));
      const { bytesRead } = await file.read(piece, 0, piece.length, null);
      size += bytesRead;
      if (size > most) return { why: 'too large' };
      if (bytesRead > 0) pieces.push(piece.subarray(0, bytesRead));
      if (bytesRead === 0 || size === about.size) return { bytes: Buffer.concat(pieces) };
    }
  } finally {
    await file.close();
  }
}

/**
 * The `.dough` files below a folder, in the order of their names, each folder's own files before its folders. Hidden
 * folders, `node_modules` and whatever git ignores are left out; links to folders are not followed. A file and its links are
 * one: links come last, of those that lead to one file the first, and none to a file that was there before. A folder that
 * cannot be read is left out too, and `unread` is told of it.
 */
export async function* doughFilesBelow(
  folder: string,
  unread: (folder: string, why: Unreadable) => void = () => {},
): AsyncIterable<string> {
  const queue: { folder: string; rules: readonly Rules[] }[] = [{ folder, rules: await rulesAbove(folder) }];
  let seen = 0;
  const found = new Set<string>();
  const links: string[] = [];
  for (let place = queue.shift(); place && seen < mostEntries; place = queue.shift()) {
    const entries = await entriesOf(place.folder, unread);
    seen += entries.length;
    const rules = entries.some(({ name }) => name === '.gitignore')
      ? [...place.rules, ...(await rulesIn(place.folder))]
      : place.rules;
    for (const entry of entries) {
      const path = join(place.folder, entry.name);
      if (entry.isDirectory()) {
        if (isLeftOut(entry.name) || isIgnored(`${path}${sep}`, rules)) continue;
        queue.push({ folder: path, rules });
      } else if (entry.name.endsWith('.dough') && !isIgnored(path, rules)) {
        if (entry.isSymbolicLink()) links.push(path);
        else {
          found.add(relative(folder, path));
          yield path;
        }
      }
    }
  }
  if (links.length === 0) return;
  const top = await realpath(folder).catch(() => folder);
  for (const link of links) {
    // One that leads nowhere is told where it is read.
    const target = await realpath(link).catch(() => link);
    const way = relative(top, target);
    if (found.has(way)) continue;
    found.add(way);
    yield link;
  }
}

/** Where a file truly lies: behind its links, if that is below the root that its own folder has; else `undefined`. */
export async function realFile(path: string): Promise<string | undefined> {
  const [target, root] = await Promise.all([
    realpath(path),
    rootAbove(await realpath(dirname(path)).catch(() => dirname(path))),
  ]);
  return isWithin(target, root) ? target : undefined;
}

/** Answers of files below a folder whether `doughFilesBelow` yields them once they are there. */
async function foundBelow(folder: string): Promise<(path: string) => Promise<boolean>> {
  // Many files of one folder are asked about at a time, and each folder is looked into once.
  const known = new Map<string, readonly Rules[] | undefined>();
  known.set(folder, [...(await rulesAbove(folder)), ...(await rulesIn(folder))]);
  /** The rules for what lies in a folder; `undefined` where nothing in it is found. */
  const rulesFor = async (at: string): Promise<readonly Rules[] | undefined> => {
    if (known.has(at)) return known.get(at);
    const above = await rulesFor(dirname(at));
    const isOut = above === undefined || isLeftOut(basename(at)) || isIgnored(`${at}${sep}`, above);
    const rules = isOut || (await isLink(at)) ? undefined : [...above, ...(await rulesIn(at))];
    known.set(at, rules);
    return rules;
  };
  return async (path) => {
    const rules = path.endsWith('.dough') ? await rulesFor(dirname(path)) : undefined;
    return rules !== undefined && !isIgnored(path, rules);
  };
}

async function isLink(path: string): Promise<boolean> {
  const about = await lstat(path).catch(() => undefined);
  return about?.isSymbolicLink() === true;
}

function isLeftOut(folder: string): boolean {
  return folder.startsWith('.') || folder === 'node_modules';
}

/** The nearest folder, this one or above, that holds `.git`; without one, the folder itself. */
export async function rootAbove(folder: string): Promise<string> {
  return (await repositoryAbove(folder)) ?? folder;
}

async function repositoryAbove(folder: string): Promise<string | undefined> {
  for (let at = folder; ; at = dirname(at)) {
    if (await stat(join(at, '.git')).catch(() => undefined)) return at;
    if (dirname(at) === at) return undefined;
  }
}

/** The rules of one `.gitignore`; they hold for what lies below its folder. */
interface Rules {
  readonly folder: string;
  readonly ignored: Ignore;
}

async function rulesAbove(folder: string): Promise<Rules[]> {
  const root = await repositoryAbove(folder);
  if (root === undefined || root === folder) return [];
  const folders: string[] = [];
  for (let at = dirname(folder); ; at = dirname(at)) {
    folders.unshift(at);
    if (at === root) break;
  }
  return (await Promise.all(folders.map(rulesIn))).flat();
}

async function rulesIn(folder: string): Promise<Rules[]> {
  const path = join(folder, '.gitignore');
  // As git has it: a link is not followed, and what is no ordinary file says nothing.
  const about = await lstat(path).catch(() => undefined);
  if (!about?.isFile()) return [];
  const { bytes } = await readBytes(path);
  return bytes === undefined ? [] : [{ folder, ignored: ignore().add(bytes.toString('utf8')) }];
}

// As git has it: the file nearest to the path that says anything about it decides.
function isIgnored(path: string, rules: readonly Rules[]): boolean {
  for (const { folder, ignored } of rules.toReversed()) {
    const answer = ignored.test(wayTo(path, folder) + (path.endsWith(sep) ? '/' : ''));
    if (answer.ignored) return true;
    if (answer.unignored) return false;
  }
  return false;
}

async function entriesOf(
  folder: string,
  unread: (folder: string, why: Unreadable) => void,
): Promise<Dirent[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries.sort((one, other) => (one.name < other.name ? -1 : 1));
  } catch (error) {
    unread(folder, whyOf(error));
    return [];
  }
}

function whyOf(error: unknown): Unreadable {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'missing';
  return code === 'EACCES' || code === 'EPERM' ? 'no permission' : 'broken';
}
