import { stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createService, type FileSummary, type Message, message, type Service } from '../../core/index.ts';
import { doughFilesBelow, readDough, rootAbove } from '../host/disk.ts';
import { wayTo } from '../host/paths.ts';
import { canonicalUri } from '../host/uris.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import { projectSettings } from './project.ts';
import { cureOf, shownPath } from './shown-path.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';

/** One side of a comparison, or why there is none. */
export type Side =
  | {
      /** The files asked for, by the names that their summaries have. */
      readonly files: readonly string[];
      /** Texts by such names, of the files asked for and of those around them. */
      readonly texts: ReadonlyMap<string, string>;
      /** A file summed up among the others, be it asked for or not. */
      readonly summary: (file: string) => FileSummary | undefined;
      /** Who knows these files, and by what; absent where there is none. */
      readonly known?: { readonly service: Service; readonly uris: ReadonlyMap<string, string> };
      /** Files and folders that could not be read, each told already, named as the summaries are; '' is all of a folder. */
      readonly unread: readonly string[];
      /** A formula that was asked for, or its former self, may stand in a file that was not. */
      readonly looksAround?: boolean;
    }
  | Refusal;

/** Why there is none: what it is about, where that is to be named, and what is so. */
export interface Refusal {
  readonly about?: string;
  readonly message: Message;
}

export type ReadSide = Exclude<Side, Refusal>;

/** Says why something cannot be compared. */
export function refuse({ about, message: why }: Refusal): ExitCode {
  complain(...(about === undefined ? [] : [about]), say(why));
  return 2;
}

/** The sides that two paths on the disk name: two files or two folders. */
export async function twoPlaces(old: string, now: string): Promise<[Side, Side]> {
  const [one, other] = await Promise.all([old, now].map((path) => stat(path).catch(() => undefined)));
  if (one?.isDirectory() && other?.isDirectory())
    return [await folderSide(old, now), await folderSide(now, old)];
  if (one?.isDirectory() || other?.isDirectory())
    return [{ message: message('command-git.file-and-folder', { file: old, otherFile: now }) }, none];
  return [await fileSide(old, now, now), await fileSide(now, old, now)];
}

/** The side of what is not there. */
export const none: ReadSide = { files: [], texts: new Map(), summary: () => undefined, unread: [] };

/**
 * The files of a folder, shown by their paths in it so that they match those of the other folder. Of the files around them
 * those in that other folder are left out: they match files of this one.
 */
async function folderSide(folder: string, other: string): Promise<Side> {
  const input = await readInput([folder]);
  const within = (shown: string): string => wayTo(resolve(shown), resolve(folder));
  const uris = new Map(input.asked.map(({ uri, shown }) => [within(shown), uri]));
  const asked = new Map(input.asked.map(({ uri, shown }) => [uri, within(shown)]));
  const beside = `${canonicalUri(pathToFileURL(resolve(other)).href)}/`;
  return {
    files: [...uris.keys()],
    texts: new Map(
      input.texts.flatMap(([uri, text]) =>
        asked.has(uri) || !uri.startsWith(beside) ? [[asked.get(uri) ?? uri, text] as const] : [],
      ),
    ),
    summary: (file) => {
      const uri = uris.get(file);
      return uri === undefined ? undefined : input.service.summary(uri, file);
    },
    known: { service: input.service, uris },
    unread: input.troubles.map(({ path }) => within(path)),
  };
}

/**
 * A file among its neighbours, less the one it is compared with, which would define the same names again. A file that
 * stands in no place of its own (git hands its old states over in a folder for passing things) stands where the other does.
 */
async function fileSide(path: string, other: string, shown: string): Promise<Side> {
  const file = await readDough(path);
  if (path !== nowhere && file.text === undefined)
    return { about: shownPath(path), message: cureOf(file.why) };
  if (file.text === undefined) return none;
  const [home, otherHome] = await Promise.all([path, other].map((one) => rootAbove(dirname(resolve(one)))));
  const isGuest = other !== nowhere && home === dirname(resolve(path)) && home !== otherHome;
  return summaryAmong({ place: isGuest ? other : path, text: file.text, shown, other });
}

/** What git names in place of a state that is none. */
export const nowhere = '/dev/null';

/** A text, the place that it is read in and shown by, and the file that it is compared with. */
interface Placed {
  readonly place: string;
  readonly text: string;
  readonly shown: string;
  readonly other: string;
}

/** A text in its place among the files around it, less the other one. */
export async function summaryAmong({ place, text, shown, other }: Placed): Promise<ReadSide> {
  const at = resolve(place);
  const root = await rootAbove(dirname(at));
  const service = createService({ lean: true });
  service.setSettings(projectSettings());
  const uriOf = (path: string): string => canonicalUri(pathToFileURL(path).href);
  for await (const path of doughFilesBelow(root)) {
    if (path === at || path === resolve(other)) continue;
    const file = await readDough(path);
    if (file.text !== undefined) service.setText(uriOf(path), file.text);
  }
  service.setText(uriOf(at), text);
  service.setRoots([uriOf(root)]);
  const file = shownPath(resolve(shown));
  return {
    files: [file],
    texts: new Map([[file, text]]),
    summary: (asked) => (asked === file ? service.summary(uriOf(at), file) : undefined),
    known: { service, uris: new Map([[file, uriOf(at)]]) },
    unread: [],
  };
}
