import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type Comparison,
  comparisonPage,
  createService,
  message,
  type PlaceInFile,
} from '../../core/index.ts';
import { doughFilesBelow, readDough, type Unreadable } from '../host/disk.ts';
import { folderOf, repositoryOf } from '../host/git.ts';
import { filesOfRevision, uriIn } from '../host/git-files.ts';
import { leadsOut, wayTo } from '../host/paths.ts';
import { canonicalUri } from '../host/uris.ts';
import { compareSides, isIn } from './compare-files.ts';
import { comparisonMarkdown } from './compare-markdown.ts';
import { type ReadSide, type Refusal, refuse, type Side, twoPlaces } from './compare-sides.ts';
import { comparisonText } from './compare-text.ts';
import type { ExitCode } from './exit-code.ts';
import type { CompareOutput } from './json-outputs.ts';
import { projectSettings } from './project.ts';
import { cureOf, shownPath } from './shown-path.ts';
import { speaker } from './speaker.ts';
import { noOrders, visibleData } from './terminal.ts';

export interface CompareOptions {
  readonly since?: string;
  readonly between?: string;
  readonly json?: boolean;
  readonly format?: 'text' | 'md' | 'json';
}

/**
 * Tells what changed as a baker sees it: between two files, two folders, a revision and the files on disk, or two
 * revisions. 0 where nothing but layout and comments differs, 1 where something does, 2 when it could not be told.
 */
export async function compare(paths: readonly string[], options: CompareOptions): Promise<ExitCode> {
  const { since, between } = options;
  const format = options.json ? 'json' : (options.format ?? 'text');
  let sides: readonly [Side, Side];
  if (since !== undefined || between !== undefined) {
    const first = since ?? between!;
    const [second, ...rest] = since === undefined ? paths : [undefined, ...paths];
    if (since === undefined && second === undefined)
      return refuse({
        message: message('command-git.two-revisions', {
          option: '--between',
          command: 'doughwright compare --between OLD NEW [PATH…]',
        }),
      });
    const asked = await askedOf(rest as string[]);
    if ('message' in asked) return refuse(asked);
    if (second === undefined && asked.isBare)
      return refuse({ message: message('command-git.no-files', { option: '--between OLD NEW' }) });
    sides = [
      await revisionSide(asked, first),
      second === undefined ? await diskSide(asked) : await revisionSide(asked, second),
    ];
    const strange = sides.some((side) => 'message' in side) ? undefined : asked.neverMet();
    if (strange !== undefined)
      return refuse({ message: message('command-git.on-neither-side', { file: strange }) });
  } else {
    const [old, now, more] = paths;
    if (old === undefined || now === undefined || more !== undefined)
      return refuse({ message: message('command-git.two-places') });
    sides = await twoPlaces(old, now);
  }
  const [before, after] = sides;
  if ('message' in before) return refuse(before);
  if ('message' in after) return refuse(after);
  if (before.unread.includes('') || after.unread.includes('')) return 2;
  // What one side could not be read of is neither new nor gone.
  const comparison = await compareSides(before, after, speaker(format === 'json'));
  tell(comparison, format);
  if (before.unread.length > 0 || after.unread.length > 0) return 2;
  return comparison.verdict === 'same' || comparison.verdict === 'layout' ? 0 : 1;
}

function tell(comparison: Comparison, format: 'text' | 'md' | 'json'): void {
  if (format === 'json') process.stdout.write(asJson(comparison));
  else process.stdout.write(noOrders(format === 'md' ? asMarkdown(comparison) : asText(comparison)));
}

function asText(comparison: Comparison): string {
  return comparisonText(comparisonPage(visibleData(comparison), speaker()), speaker());
}

function asMarkdown(comparison: Comparison): string {
  return comparisonMarkdown(comparisonPage(visibleData(comparison), speaker()));
}

/** Lines count from one, as in all that the command line writes. */
function asJson({ verdict, formulas, definitions }: Comparison): string {
  const place = (one: PlaceInFile): PlaceInFile => ({ ...one, line: one.line + 1 });
  const placed = <T extends { readonly before?: PlaceInFile; readonly after?: PlaceInFile }>(one: T): T => ({
    ...one,
    ...(one.before && { before: place(one.before) }),
    ...(one.after && { after: place(one.after) }),
  });
  const told: CompareOutput = {
    verdict,
    formulas: formulas.map(placed),
    definitions: definitions.map(placed),
  };
  return `${JSON.stringify(told, null, 2)}\n`;
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

export async function askedOf(paths: readonly string[]): Promise<Asked | Refusal> {
  const repository = await repositoryOf(await folderOf(resolve(paths[0] ?? '.')));
  if (repository.root === undefined) return { message: repository.message };
  const { root, isBare } = repository;
  const wanted = paths.map((path) => wayTo(resolve(path), root));
  const outside = wanted.find((path) => leadsOut(path));
  if (outside !== undefined) return { message: message('command-git.outside', { file: outside }) };
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

/** The files of a repository on one side, those asked for and the others. */
function sideOf(asked: Asked, files: readonly SideFile[], unread: readonly string[]): ReadSide {
  const service = createService({ lean: true });
  service.setSettings(projectSettings());
  const shown = (path: string): string => shownPath(join(asked.root, path));
  const texts = new Map<string, string>();
  const wanted: string[] = [];
  const uris = new Map<string, string>();
  for (const { path, text } of files) {
    if (text === undefined) continue;
    const uri = uriIn(asked.root, path);
    service.setText(uri, text);
    uris.set(shown(path), uri);
    texts.set(shown(path), text);
    if (asked.wants(path)) wanted.push(shown(path));
  }
  service.setRoots([canonicalUri(pathToFileURL(asked.root).href)]);
  return {
    files: wanted,
    texts,
    summary: (file) => {
      const uri = uris.get(file);
      return uri === undefined ? undefined : service.summary(uri, file);
    },
    known: { service, uris },
    unread,
    looksAround: true,
  };
}

export async function revisionSide(asked: Asked, revision: string): Promise<Side> {
  const found = await filesOfRevision(asked.root, revision);
  if ('message' in found) return found;
  const unread: string[] = [];
  for (const { path, text } of found.files) {
    if (text !== undefined || !asked.wants(path)) continue;
    unread.push(shownPath(join(asked.root, path)));
    refuse({ message: message('command-git.no-text', { file: path, revision }) });
  }
  for (const { path, commit } of found.missing) {
    if (!asked.wants(path)) continue;
    unread.push(shownPath(join(asked.root, path)));
    refuse({
      message: message('command-git.no-submodule', {
        ...{ file: path, revision, commit: commit.slice(0, 8) },
        command: `git -C ${path} fetch`,
      }),
    });
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
    refuse({ about: shownPath(path), message: cureOf(why, path) });
  };
  for await (const path of doughFilesBelow(asked.root, skip)) {
    const file = await readDough(path);
    if (file.text === undefined) skip(path, file.why);
    else files.push({ path: withinRoot(path), text: file.text });
  }
  return sideOf(asked, files, unread);
}
