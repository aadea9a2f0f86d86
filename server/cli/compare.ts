import { stat } from 'node:fs/promises';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Comparison, comparePortraits, createService, type FilePortrait } from '../../core/index.ts';
import { doughFilesBelow, readDough, rootAbove } from '../disk.ts';
import { canonicalUri } from '../uris.ts';
import { comparisonText } from './compare-text.ts';
import type { ExitCode } from './exit-code.ts';
import { filesOfRevision, repositoryOf, uriIn } from './git.ts';
import { cureOf, readInput, shownPath } from './input.ts';

export interface CompareOptions {
  readonly since?: string;
  readonly between?: string;
  readonly json?: boolean;
}

/** One side of a comparison, or why there is none. */
type Side =
  | { readonly portraits: readonly FilePortrait[]; readonly failed: boolean }
  | { readonly message: string };

/**
 * Tells what changed as a baker sees it: between two files, two folders, a revision and the files on disk, or two
 * revisions. 0 where nothing but layout and comments differs, 1 where something does, 2 when it could not be told.
 */
export async function compare(paths: readonly string[], options: CompareOptions): Promise<ExitCode> {
  const { since, between, json } = options;
  let sides: readonly [Side, Side];
  if (since !== undefined || between !== undefined) {
    const first = since ?? between!;
    const [second, ...rest] = since === undefined ? paths : [undefined, ...paths];
    if (since === undefined && second === undefined)
      return complain('--between takes two revisions: doughwright compare --between OLD NEW [PATH…]');
    const asked = await askedOf(rest as string[]);
    if ('message' in asked) return complain(asked.message);
    sides = [
      await revisionSide(asked, first),
      second === undefined ? await diskSide(asked) : await revisionSide(asked, second),
    ];
  } else {
    const [old, now, more] = paths;
    if (old === undefined || now === undefined || more !== undefined)
      return complain('name two files or two folders, or use --since REVISION or --between OLD NEW.');
    sides = await twoPlaces(old, now);
  }
  const [before, after] = sides;
  if ('message' in before) return complain(before.message);
  if ('message' in after) return complain(after.message);
  const comparison = comparePortraits(before.portraits, after.portraits);
  tell(comparison, json === true);
  if (before.failed || after.failed) return 2;
  return comparison.verdict === 'same' || comparison.verdict === 'layout' ? 0 : 1;
}

function tell(comparison: Comparison, json: boolean): void {
  process.stdout.write(json ? `${JSON.stringify(comparison, null, 2)}\n` : comparisonText(comparison));
}

function complain(message: string): ExitCode {
  process.stderr.write(`doughwright: ${message}\n`);
  return 2;
}

/** A repository and which of its paths are asked for. */
interface Asked {
  readonly root: string;
  wants(path: string): boolean;
}

async function askedOf(paths: readonly string[]): Promise<Asked | { readonly message: string }> {
  const at = resolve(paths[0] ?? '.');
  const folder = (await stat(at).catch(() => undefined))?.isDirectory() ? at : dirname(at);
  const repository = await repositoryOf(folder);
  if (!repository.ok || repository.root === undefined)
    return { message: repository.ok ? 'this is no repository.' : repository.message };
  const { root } = repository;
  const wanted = paths.map((path) => relative(root, resolve(path)).replaceAll(sep, '/'));
  const outside = wanted.find((path) => path.startsWith('../'));
  if (outside !== undefined) return { message: `${outside}: this lies outside of the repository.` };
  return {
    root,
    wants: (path) =>
      wanted.length === 0 || wanted.some((one) => one === '' || path === one || path.startsWith(`${one}/`)),
  };
}

async function revisionSide(asked: Asked, revision: string): Promise<Side> {
  const found = await filesOfRevision(asked.root, revision);
  if ('message' in found) return found;
  let failed = false;
  const service = createService();
  for (const { uri, text, path } of found.files) {
    if (text !== undefined) service.setText(uri, text);
    else if (asked.wants(path)) {
      failed = true;
      complain(`${path} of ${revision}: this is not plain text, or larger than 4 MiB.`);
    }
  }
  service.setRoots([canonicalUri(pathToFileURL(asked.root).href)]);
  const portraits = found.files
    .filter(({ path }) => asked.wants(path))
    .map(({ uri, path }) => service.portrait(uri, shownPath(join(asked.root, path))))
    .filter((portrait) => portrait !== undefined);
  return { portraits, failed };
}

async function diskSide(asked: Asked): Promise<Side> {
  let failed = false;
  const service = createService();
  const paths: string[] = [];
  for await (const path of doughFilesBelow(asked.root)) {
    const file = await readDough(path);
    const within = relative(asked.root, path).replaceAll(sep, '/');
    if (file.text !== undefined) {
      service.setText(uriIn(asked.root, within), file.text);
      if (asked.wants(within)) paths.push(within);
    } else if (asked.wants(within)) {
      failed = true;
      complain(`${shownPath(path)}: ${cureOf(file.why)}`);
    }
  }
  service.setRoots([canonicalUri(pathToFileURL(asked.root).href)]);
  const portraits = paths
    .map((path) => service.portrait(uriIn(asked.root, path), shownPath(join(asked.root, path))))
    .filter((portrait) => portrait !== undefined);
  return { portraits, failed };
}

async function twoPlaces(old: string, now: string): Promise<[Side, Side]> {
  const [one, other] = await Promise.all([old, now].map((path) => stat(path).catch(() => undefined)));
  if (one?.isDirectory() && other?.isDirectory()) return [await folderSide(old), await folderSide(now)];
  if (one?.isDirectory() || other?.isDirectory())
    return [{ message: `${old} and ${now} are a file and a folder; name two of one kind.` }, none];
  return [await fileSide(old, now, now), await fileSide(now, old, now)];
}

const none: Side = { portraits: [], failed: false };

/** The files of a folder, shown by their paths in it so that they match those of the other folder. */
async function folderSide(folder: string): Promise<Side> {
  const input = await readInput([folder]);
  const base = resolve(folder);
  const portraits = input.asked
    .map(({ uri, shown }) => input.service.portrait(uri, relative(base, resolve(shown)).replaceAll(sep, '/')))
    .filter((portrait) => portrait !== undefined);
  return { portraits, failed: input.failed };
}

/**
 * A file among its neighbours, less the one it is compared with, which would define the same names again. A file that
 * stands in no place of its own (git hands its old states over in a folder for passing things) stands where the other does.
 */
async function fileSide(path: string, other: string, shown: string): Promise<Side> {
  const file = await readDough(path);
  if (path !== nowhere && file.text === undefined)
    return { message: `${shownPath(path)}: ${cureOf(file.why)}` };
  if (file.text === undefined) return none;
  const [home, otherHome] = await Promise.all([path, other].map((one) => rootAbove(dirname(resolve(one)))));
  const isGuest = other !== nowhere && home === dirname(resolve(path)) && home !== otherHome;
  return portraitAmong(isGuest ? other : path, file.text, shown, other);
}

const nowhere = '/dev/null';

async function portraitAmong(place: string, text: string, shown: string, other?: string): Promise<Side> {
  const at = resolve(place);
  const root = await rootAbove(dirname(at));
  const service = createService();
  const uriOf = (path: string): string => canonicalUri(pathToFileURL(path).href);
  for await (const path of doughFilesBelow(root)) {
    if (path === at || (other !== undefined && path === resolve(other))) continue;
    const file = await readDough(path);
    if (file.text !== undefined) service.setText(uriOf(path), file.text);
  }
  service.setText(uriOf(at), text);
  service.setRoots([uriOf(root)]);
  const portrait = service.portrait(uriOf(at), shownPath(resolve(shown)));
  return { portraits: portrait === undefined ? [] : [portrait], failed: false };
}

/**
 * As git's external diff: `path old-file old-hex old-mode new-file new-hex new-mode`. Both states are read in the place of
 * the path, among the files on disk. Always 0, for git takes anything else for a failure.
 */
export async function compareForGit(words: readonly string[]): Promise<ExitCode> {
  const [path, old, , , now] = words;
  if (path === undefined || old === undefined || now === undefined)
    return complain('git hands over a path and two files; this is for git to call.');
  const sides: FilePortrait[][] = [];
  for (const place of [old, now]) {
    const file = place === nowhere ? undefined : await readDough(place);
    if (file !== undefined && file.text === undefined) return complain(`${path}: ${cureOf(file.why)}`);
    const side = file === undefined ? none : await portraitAmong(path, file.text, path);
    sides.push('portraits' in side ? [...side.portraits] : []);
  }
  process.stdout.write(`${path}\n${comparisonText(comparePortraits(sides[0]!, sides[1]!))}\n`);
  return 0;
}
