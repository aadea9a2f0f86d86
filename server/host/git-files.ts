import { createHash } from 'node:crypto';
import { realpath } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Message, message } from '../../core/index.ts';
import { type DoughFile, doughOf } from './disk.ts';
import { commitOf, git, type Where } from './git.ts';
import { canonicalUri } from './uris.ts';

/** What a tree or the index of git holds at a path, hidden folders and `node_modules` left out as on disk. */
export interface Entry {
  /** `100644` and the like of a file, `120000` of a link, `160000` of a submodule. */
  readonly mode: string;
  /** The name of its blob; of a submodule the commit that it is at. */
  readonly id: string;
  readonly path: string;
  /** Not 0 of one side of a merge that is not settled; only the index has such. */
  readonly stage: number;
}

export const isFormulaFile = ({ mode, path }: Entry): boolean =>
  mode.startsWith('100') && path.endsWith('.dough');
export const isSubmodule = ({ mode }: Entry): boolean => mode === '160000';

/** What a commit has. */
export async function entriesOfCommit(
  where: Where,
  commit: string,
): Promise<readonly Entry[] | { readonly message: Message }> {
  const tree = await git(where, ['ls-tree', '-r', '-z', '--full-tree', commit]);
  return tree.ok ? entriesIn(tree.out) : { message: tree.message };
}

/** An empty file, by either way that git names blobs. */
const emptyBlobs: ReadonlySet<string> = new Set(
  ['sha1', 'sha256'].map((way) => createHash(way).update('blob 0\0').digest('hex')),
);

/**
 * What the index of a repository has, or that in its place: `git commit FILE` shows its hooks one of its own. Empty files are left
 * out: they say nothing, and what is only intended to be added (`git add -N`), which no commit takes, looks like one.
 */
export async function entriesOfIndex(
  root: string,
): Promise<readonly Entry[] | { readonly message: Message }> {
  const index = await git(root, ['ls-files', '--stage', '-z']);
  if (!index.ok) return { message: index.message };
  return entriesIn(index.out).filter(({ id, stage }) => stage > 0 || !emptyBlobs.has(id));
}

/** `mode type id`, a tab, the path of a tree; `mode id stage`, a tab, the path of the index; a zero byte behind each. */
function entriesIn(out: Buffer): Entry[] {
  return out
    .toString()
    .split('\0')
    .flatMap((entry) => {
      const match = /^(\d+) (?:[a-z]+ )?([0-9a-f]+)(?: (\d))?\t([\s\S]+)$/.exec(entry);
      if (match === null) return [];
      const [, mode = '', id = '', stage = '0', path = ''] = match;
      const isLeftOut = /(?:^|\/)(?:\.[^/]*|node_modules)\//.test(mode === '160000' ? `${path}/` : path);
      return isLeftOut ? [] : [{ mode, id, path, stage: Number(stage) }];
    });
}

/** Whether bytes have the name that git gives its object, as they are or with the line ends that git stores. */
export function isBlob(bytes: Buffer, id: string): boolean {
  const isNamed = (content: Buffer): boolean =>
    createHash(id.length === 64 ? 'sha256' : 'sha1')
      .update(`blob ${content.length}\0`)
      .update(content)
      .digest('hex') === id;
  return (
    isNamed(bytes) ||
    (bytes.includes('\r\n') &&
      isNamed(Buffer.from(bytes.toString('latin1').replaceAll('\r\n', '\n'), 'latin1')))
  );
}

/** A `.dough` file of a revision, or why it cannot be read as text. */
export type RevisionFile = DoughFile & { readonly uri: string; readonly path: string };

/** The files of a revision, and the submodules whose own revision is not here. */
export interface RevisionFiles {
  readonly files: readonly RevisionFile[];
  readonly missing: readonly { readonly path: string; readonly commit: string }[];
}

/** All `.dough` files of a revision and of its submodules, hidden folders and `node_modules` left out as on disk. */
export async function filesOfRevision(
  root: string,
  revision: string,
): Promise<RevisionFiles | { readonly message: Message }> {
  const commit = await commitOf(root, revision);
  if (typeof commit !== 'string') return commit;
  const entries = await entriesOfCommit(root, commit);
  return 'message' in entries ? entries : filesOfEntries(root, entries);
}

/** The `.dough` files among entries, and those of the submodules among them. */
export async function filesOfEntries(
  root: string,
  entries: readonly Entry[],
): Promise<RevisionFiles | { readonly message: Message }> {
  const found = await read(root, entries);
  if ('message' in found) return found;
  return { ...found, files: found.files.map((file) => ({ ...file, uri: uriIn(root, file.path) })) };
}

type PlacedFile = DoughFile & { readonly path: string };

/** The same by their paths in the repository. */
async function read(
  where: Where,
  entries: readonly Entry[],
): Promise<
  | { readonly files: PlacedFile[]; readonly missing: { path: string; commit: string }[] }
  | { readonly message: Message }
> {
  const blobs = entries.filter(isFormulaFile);
  const contents = await blobsOf(
    where,
    blobs.map(({ id }) => id),
  );
  if (contents === undefined) return { message: message('command-git.unreadable', { command: 'git fsck' }) };
  const files = blobs.map(({ path }, index): PlacedFile => ({ path, ...doughOf(contents[index]) }));
  const missing: { path: string; commit: string }[] = [];
  for (const { id: commit, path } of entries.filter(isSubmodule)) {
    const root = typeof where === 'string' ? where : where.submodule;
    const inside = await filesOfSubmodule(root, path, commit);
    if (inside === undefined) {
      missing.push({ path, commit });
      continue;
    }
    files.push(...inside.files.map((file) => ({ ...file, path: `${path}/${file.path}` })));
    missing.push(...inside.missing.map((one) => ({ ...one, path: `${path}/${one.path}` })));
  }
  return { files, missing };
}

/** `undefined` where the submodule is not checked out, or has not got that commit. */
export async function filesOfSubmodule(root: string, path: string, commit: string) {
  const folder = join(root, path);
  const own = await git({ submodule: folder }, ['rev-parse', '--show-toplevel']);
  // Git in a folder that is no repository of its own answers for the one around it.
  if (!own.ok || resolve(own.out.toString().trimEnd()) !== (await realpath(folder).catch(() => '')))
    return undefined;
  const entries = await entriesOfCommit({ submodule: folder }, commit);
  const found = 'message' in entries ? entries : await read({ submodule: folder }, entries);
  return 'message' in found ? undefined : found;
}

/** The contents of blobs by their ids, in the order asked for, of one that is not there nothing; `undefined` where git fails. */
export async function blobsOf(
  where: Where,
  ids: readonly string[],
): Promise<(Buffer | undefined)[] | undefined> {
  if (ids.length === 0) return [];
  const blobs = await git(where, ['cat-file', '--batch'], `${ids.join('\n')}\n`);
  return blobs.ok ? contentsOf(blobs.out) : undefined;
}

export function uriIn(root: string, path: string): string {
  return canonicalUri(pathToFileURL(join(root, path)).href);
}

/**
 * Takes the answer of `git cat-file --batch` apart: a line `id type size`, the bytes, a line end, for each; for what is not
 * there a line `id missing`.
 */
function contentsOf(out: Buffer): (Buffer | undefined)[] {
  const contents: (Buffer | undefined)[] = [];
  for (let at = 0; at < out.length; ) {
    const end = out.indexOf(10, at);
    if (end < 0) break;
    const words = out.subarray(at, end).toString().split(' ');
    const size = Number(words[2]);
    const isThere = words.length === 3 && Number.isInteger(size);
    contents.push(isThere ? out.subarray(end + 1, end + 1 + size) : undefined);
    at = isThere ? end + 1 + size + 1 : end + 1;
  }
  return contents;
}
