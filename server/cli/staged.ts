import { dirname, join } from 'node:path';
import { createService, type FileSummary, foldName, type Message } from '../../core/index.ts';
import { doughFilesBelow, readDough } from '../host/disk.ts';
import { blobsOf, git, repositoryOf } from '../host/git.ts';
import { wayTo } from '../host/paths.ts';

/** What is about to be committed, and what has to do with it. */
export interface Staged {
  readonly paths: readonly string[];
  /** Something is defined no more under its name. */
  readonly takesAway: boolean;
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
  const names = new Set<string>();
  const below = new Set<string>();
  const onDisk = new Set<string>();
  let takesAway = false;
  for (const [index, { path, isNew, isGone }] of staged.entries()) {
    const now = isGone ? undefined : (await readDough(join(root, path))).text;
    if (!isGone) onDisk.add(path);
    const before = isNew ? undefined : olds?.[index]?.toString('utf8');
    for (const { kind, name, isGone: isTakenAway } of changedNames(before ?? '', now ?? '')) {
      takesAway ||= isTakenAway;
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
    const [, , before, , letter] = words[at]!.split(' ');
    changes.push({ path: words[at + 1]!, before: before!, isNew: letter === 'A', isGone: letter === 'D' });
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
