import { stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type Comparison,
  comparePortraits,
  createService,
  type FilePortrait,
  foldName,
  heaviest,
  type PlaceInFile,
} from '../../core/index.ts';
import { doughFilesBelow, readDough, rootAbove, type Unreadable } from '../disk.ts';
import { leadsOut, wayTo } from '../paths.ts';
import { canonicalUri } from '../uris.ts';
import { comparisonMarkdown } from './compare-markdown.ts';
import { comparisonText } from './compare-text.ts';
import type { ExitCode } from './exit-code.ts';
import { filesOfRevision, repositoryOf, uriIn } from './git.ts';
import { cureOf, readInput, shownPath } from './input.ts';
import { complainOf, noOrders, visibleData, visibleLine } from './terminal.ts';

export interface CompareOptions {
  readonly since?: string;
  readonly between?: string;
  readonly json?: boolean;
  readonly format?: 'text' | 'md' | 'json';
}

/** One side of a comparison, or why there is none. */
type Side =
  | {
      readonly portraits: readonly FilePortrait[];
      /** Files and folders that could not be read, each told already, named as the portraits are; '' is all of a folder. */
      readonly unread: readonly string[];
      /** Files that were not asked for, by the names that the portraits have. */
      readonly others?: OtherFiles;
    }
  | { readonly message: string };

/** Files that were not asked for: a formula that was, or its former self, may stand in one of them. */
interface OtherFiles {
  readonly texts: ReadonlyMap<string, string>;
  portrait(file: string): FilePortrait | undefined;
}

/**
 * Tells what changed as a baker sees it: between two files, two folders, a revision and the files on disk, or two
 * revisions. 0 where nothing but layout and comments differs, 1 where something does, 2 when it could not be told.
 */
export async function compare(paths: readonly string[], options: CompareOptions): Promise<ExitCode> {
  const { since, between } = options;
  let sides: readonly [Side, Side];
  if (since !== undefined || between !== undefined) {
    const first = since ?? between!;
    const [second, ...rest] = since === undefined ? paths : [undefined, ...paths];
    if (since === undefined && second === undefined)
      return complain('--between takes two revisions: doughwright compare --between OLD NEW [PATH…]');
    const asked = await askedOf(rest as string[]);
    if ('message' in asked) return complain(asked.message);
    if (second === undefined && asked.isBare)
      return complain('this repository has no files on disk; compare two revisions with --between OLD NEW.');
    sides = [
      await revisionSide(asked, first),
      second === undefined ? await diskSide(asked) : await revisionSide(asked, second),
    ];
    const strange = sides.some((side) => 'message' in side) ? undefined : asked.neverMet();
    if (strange !== undefined)
      return complain(`${strange}: there is no formula file of this name, or below it, on either side.`);
  } else {
    const [old, now, more] = paths;
    if (old === undefined || now === undefined || more !== undefined)
      return complain('name two files or two folders, or use --since REVISION or --between OLD NEW.');
    sides = await twoPlaces(old, now);
  }
  const [before, after] = sides;
  if ('message' in before) return complain(before.message);
  if ('message' in after) return complain(after.message);
  if (before.unread.includes('') || after.unread.includes('')) return 2;
  // What one side could not be read of is neither new nor gone.
  const comparison = compareSides(before, after);
  tell(comparison, options.json ? 'json' : (options.format ?? 'text'));
  if (before.unread.length > 0 || after.unread.length > 0) return 2;
  return comparison.verdict === 'same' || comparison.verdict === 'layout' ? 0 : 1;
}

type ReadSide = Exclude<Side, { readonly message: string }>;

/**
 * What was asked for on both sides. What stands there on one side alone is looked for in the other files by its name, so that
 * a formula that moved is told as moved.
 */
function compareSides(before: ReadSide, after: ReadSide): Comparison {
  const [old, now] = [readable(before.portraits, after), readable(after.portraits, before)];
  const comparison = comparePortraits(old, now);
  if (before.others === undefined || after.others === undefined) return comparison;
  const lonely = [...comparison.formulas, ...comparison.definitions].filter(({ fate }) => fate !== 'kept');
  const names = lonely.map((one) => ('formula' in one ? one.formula : one.name));
  if (names.length === 0) return comparison;
  const named = (text: string): boolean => {
    const folded = foldName(text);
    return names.some((name) => folded.includes(foldName(name)));
  };
  const files = new Set(
    [before.others, after.others].flatMap(({ texts }) =>
      [...texts].flatMap(([file, text]) => (named(text) ? [file] : [])),
    ),
  );
  const more = (others: OtherFiles): FilePortrait[] =>
    [...files].flatMap((file) => others.portrait(file) ?? []);
  const whole = comparePortraits([...old, ...more(before.others)], [...now, ...more(after.others)]);
  const asked = new Set([...old, ...now].map(({ file }) => file));
  const isAsked = (one: { readonly before?: PlaceInFile; readonly after?: PlaceInFile }): boolean =>
    [one.before, one.after].some((place) => place !== undefined && asked.has(place.file));
  const [formulas, definitions] = [whole.formulas.filter(isAsked), whole.definitions.filter(isAsked)];
  const verdicts = [...formulas, ...definitions].map(({ verdict }) => verdict);
  if (comparison.verdict === 'wording' && verdicts.length === 0) verdicts.push('wording');
  return { verdict: heaviest(verdicts), formulas, definitions };
}

function readable(
  portraits: readonly FilePortrait[],
  { unread }: { readonly unread: readonly string[] },
): FilePortrait[] {
  return portraits.filter(({ file }) => !unread.some((one) => isIn(file, one)));
}

/** Whether a path is another one or lies below it. */
function isIn(path: string, other: string): boolean {
  return path === other || path.startsWith(`${other}/`);
}

const writers = { text: comparisonText, md: comparisonMarkdown, json: asJson };

function tell(comparison: Comparison, format: keyof typeof writers): void {
  const text = writers[format](format === 'json' ? comparison : visibleData(comparison));
  process.stdout.write(format === 'json' ? text : noOrders(text));
}

/** Lines count from one, as in all that the command line writes. */
function asJson({ verdict, formulas, definitions }: Comparison): string {
  const place = (one: PlaceInFile): PlaceInFile => ({ ...one, line: one.line + 1 });
  const placed = <T extends { readonly before?: PlaceInFile; readonly after?: PlaceInFile }>(one: T): T => ({
    ...one,
    ...(one.before && { before: place(one.before) }),
    ...(one.after && { after: place(one.after) }),
  });
  const told: Comparison = { verdict, formulas: formulas.map(placed), definitions: definitions.map(placed) };
  return `${JSON.stringify(told, null, 2)}\n`;
}

function complain(message: string): ExitCode {
  complainOf(`doughwright: ${message}\n`);
  return 2;
}

/** A repository and which of its paths are asked for. */
interface Asked {
  readonly root: string;
  /** There are no files on disk. */
  readonly isBare: boolean;
  wants(path: string): boolean;
  /** The first path asked for, as it was typed, that `wants` has met nothing of. */
  neverMet(): string | undefined;
}

async function askedOf(paths: readonly string[]): Promise<Asked | { readonly message: string }> {
  const at = resolve(paths[0] ?? '.');
  const isFolder = async (path: string) => (await stat(path).catch(() => undefined))?.isDirectory();
  const folder = (await isFolder(at)) ? at : (await isFolder(dirname(at))) ? dirname(at) : '.';
  const repository = await repositoryOf(folder);
  if (repository.root === undefined) return { message: repository.message };
  const { root, isBare } = repository;
  const wanted = paths.map((path) => wayTo(resolve(path), root));
  const outside = wanted.find((path) => leadsOut(path));
  if (outside !== undefined) return { message: `${outside}: this lies outside of the repository.` };
  const met = new Set<string>();
  return {
    root,
    isBare,
    wants: (path) => {
      const by = wanted.filter((one) => one === '' || isIn(path, one));
      for (const one of by) met.add(one);
      return wanted.length === 0 || by.length > 0;
    },
    neverMet: () => paths.find((_, index) => wanted[index] !== '' && !met.has(wanted[index]!)),
  };
}

/** A file of one side of a repository; its text is absent where there is none to read. */
interface SideFile {
  readonly path: string;
  readonly text?: string;
}

/** The files of a repository on one side, those asked for portrayed, the others at hand. */
function sideOf(asked: Asked, files: readonly SideFile[], unread: readonly string[]): ReadSide {
  const service = createService();
  const shown = (path: string): string => shownPath(join(asked.root, path));
  const others = new Map<string, string>();
  const wanted: string[] = [];
  const paths = new Map<string, string>();
  for (const { path, text } of files) {
    if (text === undefined) continue;
    service.setText(uriIn(asked.root, path), text);
    paths.set(shown(path), path);
    if (asked.wants(path)) wanted.push(path);
    else others.set(shown(path), text);
  }
  service.setRoots([canonicalUri(pathToFileURL(asked.root).href)]);
  const portrait = (path: string) => service.portrait(uriIn(asked.root, path), shown(path));
  return {
    portraits: wanted.map(portrait).filter((one) => one !== undefined),
    unread,
    others: {
      texts: others,
      portrait: (file) => {
        const path = paths.get(file);
        return path === undefined ? undefined : portrait(path);
      },
    },
  };
}

async function revisionSide(asked: Asked, revision: string): Promise<Side> {
  const found = await filesOfRevision(asked.root, revision);
  if ('message' in found) return found;
  const unread: string[] = [];
  for (const { path, text } of found.files) {
    if (text !== undefined || !asked.wants(path)) continue;
    unread.push(shownPath(join(asked.root, path)));
    complain(`${path} of ${revision}: this is not plain text, or larger than 4 MiB.`);
  }
  for (const { path, commit } of found.missing) {
    if (!asked.wants(path)) continue;
    unread.push(shownPath(join(asked.root, path)));
    complain(
      `${path} of ${revision}: this submodule is not here at ${commit.slice(0, 8)}; run “git submodule update --init” and “git -C ${path} fetch”.`,
    );
  }
  return sideOf(asked, found.files, unread);
}

async function diskSide(asked: Asked): Promise<Side> {
  const unread: string[] = [];
  const files: SideFile[] = [];
  const withinRoot = (path: string): string => wayTo(path, asked.root);
  const skip = (path: string, why: Unreadable): void => {
    if (!asked.wants(withinRoot(path))) return;
    unread.push(shownPath(path));
    complain(`${shownPath(path)}: ${cureOf(why)}`);
  };
  for await (const path of doughFilesBelow(asked.root, skip)) {
    const file = await readDough(path);
    if (file.text === undefined) skip(path, file.why);
    else files.push({ path: withinRoot(path), text: file.text });
  }
  return sideOf(asked, files, unread);
}

async function twoPlaces(old: string, now: string): Promise<[Side, Side]> {
  const [one, other] = await Promise.all([old, now].map((path) => stat(path).catch(() => undefined)));
  if (one?.isDirectory() && other?.isDirectory()) return [await folderSide(old), await folderSide(now)];
  if (one?.isDirectory() || other?.isDirectory())
    return [{ message: `${old} and ${now} are a file and a folder; name two of one kind.` }, none];
  return [await fileSide(old, now, now), await fileSide(now, old, now)];
}

const none: Side = { portraits: [], unread: [] };

/** The files of a folder, shown by their paths in it so that they match those of the other folder. */
async function folderSide(folder: string): Promise<Side> {
  const input = await readInput([folder]);
  const within = (shown: string): string => wayTo(resolve(shown), resolve(folder));
  const portraits = input.asked
    .map(({ uri, shown }) => input.service.portrait(uri, within(shown)))
    .filter((portrait) => portrait !== undefined);
  return { portraits, unread: input.troubles.map(({ path }) => within(path)) };
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
  return { portraits: portrait === undefined ? [] : [portrait], unread: [] };
}

/**
 * As git's external diff: `path old-file old-hex old-mode new-file new-hex new-mode`, behind it the new path of a file
 * renamed; of a path in conflict the path alone. Each state is read in its place among the files on disk. Always 0, for git
 * takes anything else for a failure and shows nothing more.
 */
export async function compareForGit(words: readonly string[]): Promise<ExitCode> {
  const [path, old, , , now, , , renamed] = words;
  if (path === undefined || (old !== undefined && now === undefined))
    return complain('git hands over a path and two files; this is for git to call.');
  if (old === undefined || now === undefined) {
    process.stdout.write(
      noOrders(`${visibleLine(path)}: in conflict; mend its marked lines, then “git add” it.\n\n`),
    );
    return 0;
  }
  const newPath = renamed ?? path;
  const sides: FilePortrait[][] = [];
  for (const [state, place, other] of [
    [old, path, newPath],
    [now, newPath, path],
  ] as const) {
    const file = state === nowhere ? undefined : await readDough(state);
    if (file !== undefined && file.text === undefined) {
      process.stdout.write(noOrders(`${visibleLine(path)}: ${cureOf(file.why)}\n\n`));
      return 0;
    }
    const side = file === undefined ? none : await portraitAmong(place, file.text, place, other);
    sides.push('portraits' in side ? [...side.portraits] : []);
  }
  const told = comparisonText(visibleData(comparePortraits(sides[0]!, sides[1]!)));
  process.stdout.write(noOrders(`${visibleLine(newPath)}\n${told}\n`));
  return 0;
}
