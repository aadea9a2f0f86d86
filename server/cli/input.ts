import { realpath, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createService, type Message, message, type Service } from '../../core/index.ts';
import { doughFilesBelow, readDough, realFile, rootAbove, type Unreadable } from '../host/disk.ts';
import { growSlowlyFor } from '../host/slow-growth.ts';
import { canonicalUri } from '../host/uris.ts';
import { progress } from './progress.ts';
import { projectSettings } from './project.ts';
import type { Trouble } from './report/report.ts';
import { readTextsAt } from './revision-texts.ts';
import { cureOf, shownPath } from './shown-path.ts';
import { say, wording } from './speaker.ts';
import { complain } from './terminal.ts';
import type { AskedFile, Texts } from './texts.ts';

export interface Input extends Texts {
  readonly service: Service;
}

/** As `readTexts`, ready to be asked for one file after another; `forPrograms` where another program reads the answers. */
export async function readInput(
  paths: readonly string[],
  options: {
    readonly around?: boolean;
    readonly forPrograms?: boolean;
    /** What cannot be read is not told, for somebody tells it later. */
    readonly quietly?: boolean;
    /** A revision of git to read them from, in the place of the disk. */
    readonly at?: string | undefined;
  } = {},
): Promise<Input> {
  const { at } = options;
  const read = at === undefined ? await readTexts(paths, options) : await readTextsAt(paths, at);
  growSlowlyFor(read.texts.length);
  const service = createService({ lean: true });
  // The core's own cap is for an editor.
  service.setSettings({
    ...{ maxFindings: Number.MAX_SAFE_INTEGER, ...projectSettings() },
    ...wording(options.forPrograms),
  });
  for (const [uri, text] of read.texts) service.setText(uri, text);
  service.setRoots(read.roots);
  return { ...read, service };
}

/** All files that are seen from a folder, none of them asked for: what a text that stands nowhere yet is read among. */
export async function readSurroundings(folder: string): Promise<Service> {
  const root = await rootAbove(folder);
  const service = createService();
  service.setSettings({ ...projectSettings(), ...wording() });
  for await (const path of doughFilesBelow(root)) {
    const { text } = await readDough(path);
    if (text !== undefined) service.setText(canonicalUri(pathToFileURL(path).href), text);
  }
  service.setRoots([canonicalUri(pathToFileURL(root).href)]);
  return service;
}

/** As many files as are opened at once; a disk answers sooner when it is asked for several. */
const atOnce = 32;

/**
 * Reads the files asked for, and around them all others of their root, so that names are found as in an editor. What
 * cannot be read is told in one line each, and the rest is done. Without those `around`, names of other files are unknown.
 */
export async function readTexts(
  paths: readonly string[],
  { around = true, quietly = false }: { readonly around?: boolean; readonly quietly?: boolean } = {},
): Promise<Texts> {
  const asked = new Map<string, AskedFile>();
  const texts: [uri: string, text: string][] = [];
  const shownPaths = new Map<string, string>();
  const roots = new Set<string>();
  /** Where what was asked for truly lies: several links to one file are that file. */
  const targets = new Set<string>();
  const troubles: Trouble[] = [];

  const trouble = (path: string, what: Message) => {
    troubles.push({ path: shownPath(path), message: say(what) });
    if (!quietly) complain(shownPath(path), say(what));
  };
  const read = async (batch: readonly string[], wanted: boolean): Promise<void> => {
    const fresh = batch
      .map((path) => ({ path, uri: canonicalUri(pathToFileURL(path).href) }))
      .filter(({ uri }) => !shownPaths.has(uri));
    for (const { uri, path } of fresh) shownPaths.set(uri, shownPath(path));
    const files = await Promise.all(fresh.map(({ path }) => readDough(path)));
    for (const [index, { path, uri }] of fresh.entries()) {
      const file = files[index]!;
      if (file.text !== undefined) texts.push([uri, file.text]);
      if (!wanted) continue;
      if (file.text === undefined) {
        trouble(path, cureOf(file.why, path));
        continue;
      }
      asked.set(uri, { uri, shown: shownPath(path) });
      if (file.otherLettersInLine !== undefined)
        trouble(path, message('command-files.other-letters', { number: file.otherLettersInLine }));
    }
  };
  const readBelow = async (folder: string, wanted: boolean): Promise<number> => {
    let [batch, found]: [string[], number] = [[], 0];
    const unread = (path: string, why: Unreadable) => {
      if (wanted) trouble(path, cureOf(why, path));
    };
    for await (const file of doughFilesBelow(folder, unread)) {
      batch.push(file);
      found++;
      if (wanted && found % 100 === 0) progress(say(message('command-files.read-so-far', { count: found })));
      if (batch.length < atOnce) continue;
      await read(batch, wanted);
      batch = [];
    }
    await read(batch, wanted);
    if (wanted) progress('');
    return found;
  };

  for (const given of paths.map((one) => resolve(one))) {
    const about = await stat(given).catch(() => undefined);
    const target = about?.isFile() ? await realpath(given).catch(() => given) : given;
    if (targets.has(target)) continue;
    targets.add(target);
    // A file and its link are one, where both lie in the folder.
    const path = about?.isFile() ? ((await realFile(given).catch(() => undefined)) ?? given) : given;
    if (!about?.isDirectory()) {
      await read([path], true);
      if (about) roots.add(await rootAbove(dirname(path)));
      continue;
    }
    roots.add(await rootAbove(path));
    const before = troubles.length;
    if ((await readBelow(path, true)) === 0 && troubles.length === before)
      trouble(path, message('command-files.empty-folder'));
  }
  if (around) for (const root of roots) await readBelow(root, false);
  return {
    texts,
    asked: [...asked.values()],
    roots: [...roots].map((root) => canonicalUri(pathToFileURL(root).href)),
    shown: (uri) => shownPaths.get(uri) ?? uri,
    troubles,
    failed: troubles.length > 0,
  };
}
