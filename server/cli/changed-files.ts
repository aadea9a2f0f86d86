import { dirname, join } from 'node:path';
import { createService, type FileSummary, foldName, type Message } from '../../core/index.ts';
import { doughFilesBelow, readDough } from '../host/disk.ts';
import { repositoryOf } from '../host/git.ts';
import { filesOfRevision } from '../host/git-files.ts';
import { wayTo } from '../host/paths.ts';

/**
 * The formula files on disk that are other than at a revision, and those that use what these define, define no more or define
 * otherwise. A message where there is no such revision.
 */
export async function filesSince(revision: string): Promise<Changed | { readonly message: Message }> {
  const repository = await repositoryOf('.');
  if (repository.root === undefined) return { message: repository.message };
  const { root } = repository;
  const found = await filesOfRevision(root, revision);
  if ('message' in found) return found;
  const olds = new Map(found.files.map(({ path, text }) => [path, text ?? '']));
  const changed: ChangedFile[] = [];
  const texts: (readonly [path: string, text: string])[] = [];
  for await (const file of doughFilesBelow(root)) {
    const path = wayTo(file, root);
    const before = olds.get(path);
    olds.delete(path);
    const { text } = await readDough(file);
    if (text !== undefined) texts.push([path, text]);
    // What cannot be read is told where it is checked.
    const after = text ?? '';
    // A checkout may have other line ends than git stores.
    if (before?.replaceAll('\r\n', '\n') === after.replaceAll('\r\n', '\n')) continue;
    changed.push({ path, after, ...(before === undefined ? {} : { before }) });
  }
  for (const [path, before] of olds) changed.push({ path, before });
  const { paths, takesAway } = withUsers(changed, texts);
  return { paths: paths.map((path) => join(root, path)), takesAway };
}

/** A file that was changed: its text before, absent of a new one, and after, absent of one that is removed. */
export interface ChangedFile {
  readonly path: string;
  readonly before?: string;
  readonly after?: string;
}

/** What was changed, and what has to do with it. */
export interface Changed {
  /** From the root; of what was changed what is there still, and those that use it. */
  readonly paths: readonly string[];
  /** Something is defined no more under its name. */
  readonly takesAway: boolean;
}

/** Files that were changed, and those of all files that what changed in them has to do with; paths from the root. */
export function withUsers(
  changed: readonly ChangedFile[],
  texts: Iterable<readonly [path: string, text: string]>,
): Changed {
  if (changed.length === 0) return { paths: [], takesAway: false };
  const names = new Set<string>();
  const below = new Set<string>();
  const found = new Set<string>();
  let takesAway = false;
  for (const { path, before, after } of changed) {
    if (after !== undefined) found.add(path);
    for (const { kind, name, isGone } of changedNames(before ?? '', after ?? '')) {
      takesAway ||= isGone;
      if (kind === 'bakery') below.add(folderOf(path));
      else names.add(foldName(name));
    }
  }
  const all = [...texts];
  for (const [path, text] of all) {
    const folded = foldName(text);
    if (![...names].some((name) => folded.includes(name))) continue;
    found.add(path);
    // What a bakery names, such as its mixer, holds for whatever lies below it.
    if (/^\s*bakery\s/im.test(text)) below.add(folderOf(path));
  }
  for (const [path] of all)
    if ([...below].some((folder) => folder === '' || path.startsWith(folder))) found.add(path);
  return { paths: [...found], takesAway };
}

/** `formulas/` of `formulas/tin.dough`; nothing of what lies at the root. */
function folderOf(path: string): string {
  const folder = dirname(path);
  return folder === '.' ? '' : `${folder}/`;
}

/** What a text defines that the other does not define just so. */
function changedNames(
  before: string,
  after: string,
): { readonly kind: string; readonly name: string; readonly isGone: boolean }[] {
  const [old, now] = [before, after].map(definedIn) as [Map<string, Defined>, Map<string, Defined>];
  const changed = [...old, ...now].filter(([key]) => old.get(key)?.source !== now.get(key)?.source);
  return changed.map(([key, { kind, name }]) => ({ kind, name, isGone: !now.has(key) }));
}

interface Defined {
  readonly kind: string;
  readonly name: string;
  readonly source: string;
}

function definedIn(text: string): Map<string, Defined> {
  const service = createService();
  service.setText('file:///changed/file.dough', text);
  const summary: FileSummary | undefined = service.summary('file:///changed/file.dough');
  const all: Defined[] = [
    ...(summary?.formulas ?? []).map(({ name, source }) => ({ kind: 'formula', name, source })),
    ...(summary?.definitions ?? []),
  ];
  return new Map(all.map((one) => [`${one.kind} ${foldName(one.name)}`, one]));
}
