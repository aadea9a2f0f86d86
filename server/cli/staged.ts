import { dirname, join } from 'node:path';
import { createService, type FileSummary, foldName, type Message } from '../../core/index.ts';
import { doughFilesBelow, readBytes, readDough } from '../host/disk.ts';
import { blobsOf, filesOfRevision, git, isBlob, repositoryOf } from '../host/git.ts';
import { wayTo } from '../host/paths.ts';

/** What is about to be committed, and what has to do with it. */
export interface Staged {
  readonly paths: readonly string[];
  /** Something is defined no more under its name. */
  readonly takesAway: boolean;
  /** Those of the paths that are otherwise on disk than they are about to be committed. */
  readonly notAsStaged?: readonly string[];
}

/**
 * The formula files that are about to be committed, and those on disk that use what these define, define no more or define
 * otherwise: a flour that got another name is told where it is missing. Paths; a message where there is no repository.
 */
export async function stagedFiles(): Promise<Staged | { readonly message: Message }> {
  const repository = await repositoryOf('.');
  if (repository.root === undefined) return { message: repository.message };
  const { root } = repository;
  const listed = await git(root, [
    'diff',
    '--cached',
    '--raw',
    '-z',
    '--no-abbrev',
    '--no-renames',
    '--',
    '*.dough',
  ]);
  if (!listed.ok) return { message: listed.message };
  const staged = changesIn(listed.out.toString());
  if (staged.length === 0) return { paths: [], takesAway: false };
  const olds = await blobsOf(
    root,
    staged.map(({ before }) => before),
  );
  const changed: ChangedFile[] = [];
  for (const [index, { path, isNew, isGone }] of staged.entries()) {
    const after = isGone ? undefined : ((await readDough(join(root, path))).text ?? '');
    const before = isNew ? undefined : (olds?.[index]?.toString('utf8') ?? '');
    changed.push({
      path,
      ...(before === undefined ? {} : { before }),
      ...(after === undefined ? {} : { after }),
    });
  }
  const found = await withUsers(root, changed);
  // Asked of the index and not of git’s own comparison, which starts the filters that a repository names.
  const index = await git(root, ['ls-files', '--stage', '-z', '--', '*.dough']);
  if (!index.ok) return { message: index.message };
  const ids = new Map(
    index.out
      .toString()
      .split('\0')
      .flatMap((entry) => {
        const match = /^\d+ ([0-9a-f]+) \d\t([\s\S]+)$/.exec(entry);
        return match === null ? [] : [[join(root, match[2] ?? ''), match[1] ?? ''] as const];
      }),
  );
  const notAsStaged: string[] = [];
  for (const path of found.paths) {
    const id = ids.get(path);
    const bytes = id === undefined ? undefined : (await readBytes(path)).bytes;
    if (id !== undefined && bytes !== undefined && !isBlob(bytes, id)) notAsStaged.push(path);
  }
  return { ...found, notAsStaged };
}

/**
 * The formula files on disk that are other than at a revision, and those that use what these define, define no more or define
 * otherwise. Paths; a message where there is no such revision.
 */
export async function filesSince(revision: string): Promise<Staged | { readonly message: Message }> {
  const repository = await repositoryOf('.');
  if (repository.root === undefined) return { message: repository.message };
  const { root } = repository;
  const found = await filesOfRevision(root, revision);
  if ('message' in found) return found;
  const olds = new Map(found.files.map(({ path, text }) => [path, text ?? '']));
  const changed: ChangedFile[] = [];
  for await (const file of doughFilesBelow(root)) {
    const path = wayTo(file, root);
    const before = olds.get(path);
    olds.delete(path);
    // What cannot be read is told where it is checked.
    const after = (await readDough(file)).text ?? '';
    // A checkout may have other line ends than git stores.
    if (before?.replaceAll('\r\n', '\n') === after.replaceAll('\r\n', '\n')) continue;
    changed.push({ path, after, ...(before === undefined ? {} : { before }) });
  }
  for (const [path, before] of olds) changed.push({ path, before });
  return withUsers(root, changed);
}

/** A file that was changed: its text before, absent of a new one, and after, absent of one that is removed. */
interface ChangedFile {
  readonly path: string;
  readonly before?: string;
  readonly after?: string;
}

/** Files that were changed, and those on disk that what changed in them has to do with. */
async function withUsers(root: string, changed: readonly ChangedFile[]): Promise<Staged> {
  if (changed.length === 0) return { paths: [], takesAway: false };
  const names = new Set<string>();
  const below = new Set<string>();
  const onDisk = new Set<string>();
  let takesAway = false;
  for (const { path, before, after } of changed) {
    if (after !== undefined) onDisk.add(path);
    for (const { kind, name, isGone } of changedNames(before ?? '', after ?? '')) {
      takesAway ||= isGone;
      if (kind === 'bakery') below.add(folderOf(path));
      else names.add(foldName(name));
    }
  }
  const texts: (readonly [path: string, text: string])[] = [];
  for await (const path of doughFilesBelow(root)) {
    const { text } = await readDough(path);
    if (text !== undefined) texts.push([wayTo(path, root), text]);
  }
  for (const [path, text] of texts) {
    const folded = foldName(text);
    if (![...names].some((name) => folded.includes(name))) continue;
    onDisk.add(path);
    // What a bakery names, such as its mixer, holds for whatever lies below it.
    if (/^\s*bakery\s/im.test(text)) below.add(folderOf(path));
  }
  for (const [path] of texts)
    if ([...below].some((folder) => folder === '' || path.startsWith(folder))) onDisk.add(path);
  return { paths: [...onDisk].map((path) => join(root, path)), takesAway };
}

interface StagedFile {
  readonly path: string;
  /** The blob it had; of a new one the id that stands for none. */
  readonly before: string;
  readonly isNew: boolean;
  readonly isGone: boolean;
}

/** `:100644 100644 before after M`, a zero byte, the path, a zero byte, for each. */
function changesIn(raw: string): StagedFile[] {
  const words = raw.split('\0');
  const changes: StagedFile[] = [];
  for (let at = 0; at + 1 < words.length; at += 2) {
    const [, , before = '', , letter] = (words[at] ?? '').split(' ');
    const path = words[at + 1] ?? '';
    changes.push({ path, before, isNew: letter === 'A', isGone: letter === 'D' });
  }
  return changes;
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
  service.setText('file:///staged/file.dough', text);
  const summary: FileSummary | undefined = service.summary('file:///staged/file.dough');
  const all: Defined[] = [
    ...(summary?.formulas ?? []).map(({ name, source }) => ({ kind: 'formula', name, source })),
    ...(summary?.definitions ?? []),
  ];
  return new Map(all.map((one) => [`${one.kind} ${foldName(one.name)}`, one]));
}
