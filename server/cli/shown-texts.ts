import { randomUUID } from 'node:crypto';
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { git } from '../host/git.ts';
import { blobsOf } from '../host/git-files.ts';
import { largestFileBytes } from '../host/host.ts';

/** Where a text is kept as it is shown: a folder for the state of the files on disk, in it a file for each blob of git. */
export interface Keeping {
  readonly folder: string;
  readonly blob: string;
}

/** After so many texts that were not kept yet somebody looks at a history, and all of it is shown at once. */
const looksAtHistory = 4;
/** Then no longer than this, so that whoever waits sees something; what is left is done when it is asked for. */
const mostMilliseconds = 4000;
const atOnce = 100;

/** Keeps a text as it is shown. What cannot be kept is shown all the same. */
export async function keepShown({ folder, blob }: Keeping, shown: string): Promise<void> {
  if (!/^[0-9a-f]{40,64}$/.test(blob)) return;
  try {
    if ((await mkdir(folder, { recursive: true })) !== undefined) await forgetOthers(folder);
    const beside = join(folder, `.${randomUUID()}`);
    await writeFile(beside, shown);
    await rename(beside, join(folder, blob));
  } catch {
    // A repository that may only be read has no place for it.
  }
}

/** What was shown among other files on disk stands no longer. */
async function forgetOthers(folder: string): Promise<void> {
  for (const name of await readdir(dirname(folder)))
    if (name !== basename(folder)) await rm(join(dirname(folder), name), { recursive: true, force: true });
}

/**
 * Shows and keeps the formula files of the whole history, the newest first, once somebody looks at it: starting this
 * program takes longer than showing a hundred texts.
 */
export async function keepHistory(
  { folder }: Keeping,
  shown: (text: string) => Promise<string>,
): Promise<void> {
  const kept = new Set(await readdir(folder).catch(() => []));
  if (kept.size < looksAtHistory) return;
  const log = await git('.', [
    'log',
    '--all',
    '--format=',
    '--raw',
    '--no-abbrev',
    '--no-renames',
    '--',
    '*.dough',
  ]);
  if (!log.ok) return;
  const wanted = new Set<string>();
  for (const line of log.out.toString().split('\n')) {
    const [, , before, after] = line.split(' ');
    for (const blob of [after, before])
      if (blob !== undefined && /[1-9a-f]/.test(blob) && !kept.has(blob)) wanted.add(blob);
  }
  const end = Date.now() + mostMilliseconds;
  const blobs = [...wanted];
  for (let at = 0; at < blobs.length && Date.now() < end; at += atOnce) {
    const some = blobs.slice(at, at + atOnce);
    const contents = await blobsOf('.', some);
    if (contents === undefined) return;
    for (const [index, blob] of some.entries()) {
      const bytes = contents[index];
      if (bytes === undefined || bytes.length > largestFileBytes || bytes.includes(0)) continue;
      await keepShown({ folder, blob }, await shown(bytes.toString('utf8')));
    }
  }
}
