import { join } from 'node:path';
import { doughFilesBelow, readDough } from '../host/disk.ts';
import { leadsOut, wayTo } from '../host/paths.ts';
import type { FileChange } from './revisions.ts';

/** The formula files below a folder as they stand on the disk, by their paths in it: those that a check reads. */
export async function textsNow(root: string): Promise<Map<string, string>> {
  const texts = new Map<string, string>();
  for await (const path of doughFilesBelow(root)) {
    const { text } = await readDough(path);
    if (text !== undefined) texts.set(wayTo(path, root), text);
  }
  return texts;
}

/**
 * What is other now than in the last commit. A file of the commit that is not among the texts of now is removed only where it
 * is not on the disk: it may be ignored, or lie beside the folders that somebody has open.
 */
export async function uncommittedChanges(
  root: string,
  committed: ReadonlyMap<string, string>,
  now: ReadonlyMap<string, string>,
): Promise<FileChange[]> {
  const changes: FileChange[] = [];
  for (const [path, text] of now)
    if (!leadsOut(path) && committed.get(path) !== text) changes.push({ path, text });
  for (const [path, before] of committed) {
    if (now.has(path)) continue;
    const { text, why } = await readDough(join(root, path));
    if (why === 'missing') changes.push({ path });
    else if (text !== undefined && text !== before) changes.push({ path, text });
  }
  return changes;
}
