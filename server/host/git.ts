import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { accessSync, constants, realpathSync, statSync } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { devNull } from 'node:os';
import { delimiter, dirname, isAbsolute, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Message, message } from '../../core/index.ts';
import { doughFilesBelow, readBytes, withoutMark } from './disk.ts';
import { largestFileBytes } from './host.ts';
import { isWithin, wayTo } from './paths.ts';
import { canonicalUri } from './uris.ts';

/** What git said, or why it could not be asked. */
export type GitAnswer =
  | { readonly ok: true; readonly out: Buffer }
  | { readonly ok: false; readonly message: Message; readonly code?: number };

/**
 * A repository may come from anybody, and its settings name programs: git is asked so that it runs none of them, whatever is
 * asked. `status` and `diff` would still call the filters of a repository, so neither is used.
 */
const nothingRuns = [
  '--no-pager',
  '--no-optional-locks',
  ...[
    'core.fsmonitor=false',
    `core.hooksPath=${devNull}`,
    'diff.external=',
    'log.showSignature=false',
    'protocol.allow=never',
  ].flatMap((one) => ['-c', one]),
];
const quietly = {
  GIT_NO_LAZY_FETCH: '1',
  GIT_TERMINAL_PROMPT: '0',
  GIT_PAGER: 'cat',
  GIT_EXTERNAL_DIFF: undefined,
};

/** The git of the machine: the first on the path that is named in full and lies outside the folder that is looked at. */
function gitProgram(folder: string): string | undefined {
  const name = process.platform === 'win32' ? 'git.exe' : 'git';
  const here = [resolve(folder), resolve('.')];
  for (const place of (process.env.PATH ?? '').split(delimiter)) {
    if (!isAbsolute(place) || here.some((one) => place === one || isWithin(place, one))) continue;
    const program = join(place, name);
    try {
      accessSync(program, constants.X_OK);
      const truly = realpathSync(program);
      if (statSync(truly).isFile() && !here.some((one) => isWithin(truly, one))) return program;
    } catch {
      // Not here; perhaps in the next place.
    }
  }
  return undefined;
}

/** Runs the git of the machine in a folder. Never throws. */
export function git(folder: string, args: readonly string[], input?: string): Promise<GitAnswer> {
  return new Promise((settle) => {
    const program = gitProgram(folder);
    if (program === undefined) return settle({ ok: false, message: message('command-git.not-installed') });
    const child = spawn(program, [...nothingRuns, ...args], {
      cwd: folder,
      env: { ...process.env, ...quietly },
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    const out: Buffer[] = [];
    let errors = '';
    child.stdout.on('data', (data: Buffer) => out.push(data));
    child.stderr.on('data', (data: Buffer) => {
      errors += data.toString();
    });
    child.once('error', (error: NodeJS.ErrnoException) => {
      const isMissing = error.code === 'ENOENT';
      settle({
        ok: false,
        message: message(isMissing ? 'command-git.not-installed' : 'command-git.not-started'),
      });
    });
    child.once('close', (code) => {
      if (code === 0) return settle({ ok: true, out: Buffer.concat(out) });
      const written = errors.split('\n')[0]!.replace(/^fatal: /, '');
      if (written !== '') settle({ ok: false, message: message('command-git.said', { written }) });
      else if (code === null) settle({ ok: false, message: message('command-git.stopped') });
      else settle({ ok: false, message: message('command-git.ended', { number: code }), code });
    });
    child.stdin.on('error', () => {});
    child.stdin.end(input ?? '');
  });
}

/** A repository: the folder of its files, or of its own where it has none. */
export interface RepositoryPlace {
  readonly root: string;
  /** It has no files on disk, only revisions. */
  readonly isBare: boolean;
}

/** The repository that a folder is in; a message where it is in none. */
export async function repositoryOf(
  folder: string,
): Promise<RepositoryPlace | { readonly message: Message; readonly root?: never }> {
  const answer = await git(folder, ['rev-parse', '--show-toplevel']);
  if (answer.ok) return { root: answer.out.toString().trimEnd(), isBare: false };
  const bare = await git(folder, ['rev-parse', '--is-bare-repository', '--absolute-git-dir']);
  const [isBare, root] = bare.ok ? bare.out.toString().split('\n') : [];
  return isBare === 'true' && root ? { root, isBare: true } : { message: answer.message };
}

/**
 * The commit that the repository of a folder is at, and whether a formula in it differs from that; `undefined` where
 * there is no git, no repository or no commit.
 */
export async function stateOf(
  folder: string,
): Promise<{ readonly commit: string; readonly changed: boolean } | undefined> {
  const [head, root] = await Promise.all([
    git(folder, ['rev-parse', '--verify', '--short=8', 'HEAD']),
    repositoryOf(folder),
  ]);
  if (!head.ok || root.root === undefined) return undefined;
  const tree = await entriesOf(root.root, 'HEAD');
  if ('message' in tree) return undefined;
  return { commit: head.out.toString().trim(), changed: await differs(root.root, tree.entries) };
}

/** The same of a revision that files were read from, by a path in its repository: nothing differs from it. */
export async function stateAt(
  path: string,
  revision: string,
): Promise<{ readonly commit: string; readonly changed: boolean } | undefined> {
  const repository = await repositoryOf(await folderOf(resolve(path)));
  if (repository.root === undefined) return undefined;
  const commit = await commitOf(repository.root, revision);
  return typeof commit === 'string' ? { commit: commit.slice(0, 8), changed: false } : undefined;
}

/** The folder that a path is, or lies in; where neither is there, as of a file that was removed since, the current one. */
export async function folderOf(path: string): Promise<string> {
  for (const place of [path, dirname(path)])
    if ((await stat(place).catch(() => undefined))?.isDirectory() === true) return place;
  return '.';
}

/** Whether the `.dough` files below a folder are others than those of a tree. Git is not asked: it would run filters. */
async function differs(root: string, entries: readonly TreeEntry[]): Promise<boolean> {
  const left = new Map(entries.map(({ path, id }) => [path, id]));
  for await (const file of doughFilesBelow(root)) {
    const path = wayTo(file, root);
    const id = left.get(path);
    const { bytes } = await readBytes(file);
    if (id === undefined || bytes === undefined || !isBlob(bytes, id)) return true;
    left.delete(path);
  }
  // A file that is there and that git ignores is one that is tracked all the same.
  for (const [path, id] of left) {
    const { bytes } = await readBytes(join(root, path));
    if (bytes === undefined || !isBlob(bytes, id)) return true;
  }
  return false;
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

interface TreeEntry {
  readonly id: string;
  readonly path: string;
}

/** The `.dough` files of a commit, hidden folders and `node_modules` left out as on disk. */
async function entriesOf(
  root: string,
  commit: string,
): Promise<{ readonly entries: readonly TreeEntry[] } | { readonly message: Message }> {
  const tree = await git(root, ['ls-tree', '-r', '-z', '--full-tree', commit]);
  if (!tree.ok) return { message: tree.message };
  const entries = tree.out
    .toString()
    .split('\0')
    .flatMap((entry) => {
      const match = /^100\d+ blob ([0-9a-f]+)\t([\s\S]*\.dough)$/.exec(entry);
      return match === null || /(^|\/)(\.[^/]*|node_modules)\//.test(match[2]!)
        ? []
        : [{ id: match[1]!, path: match[2]! }];
    });
  return { entries };
}

/** A `.dough` file of a revision. `text` is absent where it cannot be read as text. */
export interface RevisionFile {
  readonly uri: string;
  readonly path: string;
  readonly text?: string;
}

/** The files of a revision, and the submodules whose own revision is not here. */
export interface RevisionFiles {
  readonly files: readonly RevisionFile[];
  readonly missing: readonly { readonly path: string; readonly commit: string }[];
}

/** The commit that a revision names; a message where there is none. */
export async function commitOf(
  root: string,
  revision: string,
): Promise<string | { readonly message: Message }> {
  // Only a commit has a tree; the name is checked first so that no option can be smuggled in as a revision.
  const commit = await git(root, [
    'rev-parse',
    '--verify',
    '--quiet',
    '--end-of-options',
    `${revision}^{commit}`,
  ]);
  if (commit.ok) return commit.out.toString().trim();
  if (commit.code === undefined) return { message: commit.message };
  // Asked quietly, git says nothing of a revision that it does not know. Its HEAD a repository lacks only before its first commit.
  return {
    message:
      revision === 'HEAD'
        ? message('command-git.no-commit')
        : message('command-git.no-revision', { revision }),
  };
}

/** All `.dough` files of a revision and of its submodules, hidden folders and `node_modules` left out as on disk. */
export async function filesOfRevision(
  root: string,
  revision: string,
): Promise<RevisionFiles | { readonly message: Message }> {
  const commit = await commitOf(root, revision);
  if (typeof commit !== 'string') return commit;
  const found = await filesOfCommit(root, commit);
  if ('message' in found) return found;
  return { ...found, files: found.files.map((file) => ({ ...file, uri: uriIn(root, file.path) })) };
}

/** The files of a commit, by their paths in the repository. */
async function filesOfCommit(
  root: string,
  commit: string,
): Promise<
  | { readonly files: Omit<RevisionFile, 'uri'>[]; readonly missing: { path: string; commit: string }[] }
  | { readonly message: Message }
> {
  const tree = await git(root, ['ls-tree', '-r', '-z', '--full-tree', commit]);
  if (!tree.ok) return { message: tree.message };
  const entries = tree.out
    .toString()
    .split('\0')
    .filter((entry) => !/\t(?:.*\/)?(?:\.[^/]*|node_modules)\//.test(entry));
  const blobs = entries.flatMap((entry) => {
    const match = /^100\d+ blob ([0-9a-f]+)\t([\s\S]*\.dough)$/.exec(entry);
    return match === null ? [] : [{ id: match[1]!, path: match[2]! }];
  });
  const contents =
    blobs.length === 0
      ? []
      : await blobsOf(
          root,
          blobs.map(({ id }) => id),
        );
  if (contents === undefined) return { message: message('command-git.unreadable', { command: 'git fsck' }) };
  const files = blobs.map(({ path }, index) => {
    const bytes = contents[index];
    const readable =
      bytes !== undefined && bytes.length <= largestFileBytes && !bytes.subarray(0, 8192).includes(0);
    return { path, ...(readable ? { text: withoutMark(bytes.toString('utf8')) } : {}) };
  });
  const missing: { path: string; commit: string }[] = [];
  for (const entry of entries) {
    const module = /^160000 commit ([0-9a-f]+)\t([\s\S]*)$/.exec(entry);
    if (module === null) continue;
    const [, at, path] = module as unknown as [string, string, string];
    const inside = await filesOfSubmodule(root, path, at);
    if (inside === undefined) {
      missing.push({ path, commit: at });
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
  const own = await git(folder, ['rev-parse', '--show-toplevel']).catch(() => undefined);
  // Git in a folder that is no repository of its own answers for the one around it.
  if (!own?.ok || resolve(own.out.toString().trimEnd()) !== (await realpath(folder).catch(() => '')))
    return undefined;
  const found = await filesOfCommit(folder, commit);
  return 'message' in found ? undefined : found;
}

/** The contents of blobs by their ids, in the order asked for, of one that is not there nothing; `undefined` where git fails. */
export async function blobsOf(
  folder: string,
  ids: readonly string[],
): Promise<(Buffer | undefined)[] | undefined> {
  const blobs = await git(folder, ['cat-file', '--batch'], `${ids.join('\n')}\n`);
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
