import { join, resolve } from 'node:path';
import { doughFilesBelow, readBytes } from './disk.ts';
import { commitOf, folderOf, git, repositoryOf } from './git.ts';
import { type Entry, entriesOfCommit, isBlob, isFormulaFile } from './git-files.ts';
import { wayTo } from './paths.ts';

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
  const entries = await entriesOfCommit(root.root, 'HEAD');
  if ('message' in entries) return undefined;
  const files = entries.filter(isFormulaFile);
  return { commit: head.out.toString().trim(), changed: await differs(root.root, files) };
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

/** Whether the `.dough` files below a folder are others than those of a tree. Git is not asked: it would run filters. */
async function differs(root: string, entries: readonly Entry[]): Promise<boolean> {
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
