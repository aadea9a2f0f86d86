import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { doughOf, readBytes } from '../host/disk.ts';
import { git } from '../host/git.ts';
import { blobsOf } from '../host/git-files.ts';
import { largestFileBytes } from '../host/host.ts';

/** Where a text is kept as it is shown: a folder for the state of the files on disk, in it a file for each blob of git. */
export interface Keeping {
  readonly folder: string;
  readonly blob: string;
}

/** After so many that were not kept yet somebody looks at several files, and all that were changed are shown at once. */
const looksAtSeveral = 2;
/** After so many texts that were not kept yet somebody looks at a history, and all of it is shown at once. */
const looksAtHistory = 4;
/** Then no longer than this, so that whoever waits sees something; what is left is done when it is asked for. */
const mostMilliseconds = 4000;
const atOnce = 100;
/** Of more files than these that were changed at once the others are shown when they are asked for. */
const mostChanged = 300;

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

/** A formula file that is otherwise on disk or in the index than in the last commit: what it is in each, absent where it is not. */
export interface ChangedState {
  readonly path: string;
  readonly head?: Blob;
  readonly index?: Blob;
  readonly disk?: Buffer;
}
interface Blob {
  readonly id: string;
  readonly bytes: Buffer;
}

/**
 * The formula files that git would show as changed against the last commit, no more than some hundreds. Git is asked for what it
 * noted of files and not for their contents, so that it starts no filters.
 */
async function changedStates(): Promise<ChangedState[]> {
  const asked = ['diff-index', '--raw', '-z', '--no-renames', '--no-abbrev'];
  const [onDisk, staged] = await Promise.all(
    [[], ['--cached']].map((more) => git('.', [...asked, ...more, 'HEAD', '--', '*.dough'])),
  );
  if (!onDisk?.ok || !staged?.ok) return [];
  const ids = new Map<string, { readonly head: string; readonly index: string }>();
  for (const [answer, isStaged] of [
    [onDisk, false],
    [staged, true],
  ] as const) {
    const words = answer.out.toString().split('\0');
    for (let at = 0; at + 1 < words.length; at += 2) {
      const [, , head = '', index = ''] = (words[at] ?? '').split(' ');
      ids.set(words[at + 1] ?? '', { head, index: isStaged ? index : head });
    }
  }
  const some = [...ids].slice(0, mostChanged);
  const blobs = await blobsOf(
    '.',
    some.flatMap(([, { head, index }]) => [head, index]),
  );
  if (blobs === undefined) return [];
  const states: ChangedState[] = [];
  for (const [at, [path, ids]] of some.entries()) {
    const { bytes: disk } = await readBytes(path);
    const [head, index] = [blobs[2 * at], blobs[2 * at + 1]];
    states.push({
      path,
      ...(head === undefined ? {} : { head: { id: ids.head, bytes: head } }),
      ...(index === undefined ? {} : { index: { id: ids.index, bytes: index } }),
      ...(disk === undefined ? {} : { disk }),
    });
  }
  return states;
}

/** How git names what holds these bytes, as it names the blob `like`. */
function blobName(bytes: Buffer, like: string): string {
  return createHash(like.length === 64 ? 'sha256' : 'sha1')
    .update(`blob ${bytes.length}\0`)
    .update(bytes)
    .digest('hex');
}

/** Shows and keeps all that was changed since the last commit, once somebody looks at several files of it. */
export async function keepChanged(
  { folder, blob: own }: Keeping,
  shown: (text: string) => Promise<string>,
): Promise<void> {
  const kept = new Set(await readdir(folder).catch(() => []));
  if (kept.size < looksAtSeveral) return;
  const end = Date.now() + mostMilliseconds;
  for (const { head, index, disk } of await changedStates())
    for (const bytes of [disk, index?.bytes, head?.bytes]) {
      if (bytes === undefined || Date.now() > end) continue;
      const blob = blobName(bytes, own);
      const { text } = doughOf(bytes);
      if (text === undefined || kept.has(blob)) continue;
      kept.add(blob);
      await keepShown({ folder, blob }, await shown(text));
    }
}

/** A change as git hands it over: what a file was and is, absent where it was or is not there. */
export interface HandedChange {
  readonly path: string;
  readonly old?: Buffer;
  readonly now?: Buffer;
  /** The name of the blob before; of what is on disk none. */
  readonly oldId?: string;
}

/**
 * Tells and keeps every change that belongs to the one that was asked for, be it between the index and the disk, the last commit
 * and the index, or that and the disk, once somebody looks at several of them: starting this program takes longer than telling
 * ten of them. `told` is undefined for what is not to be kept.
 */
export async function keepChanges(
  { folder, blob: own }: Keeping,
  asked: HandedChange,
  told: (change: HandedChange) => Promise<string | undefined>,
): Promise<void> {
  const kept = new Set(await readdir(folder).catch(() => []));
  if (kept.size < looksAtSeveral) return;
  const end = Date.now() + mostMilliseconds;
  const states = await changedStates();
  const form = forms.find((one) => {
    const state = states.find(({ path }) => path === asked.path);
    const change = state && one(state);
    return change !== undefined && isSame(change.old, asked.old) && isSame(change.now, asked.now);
  });
  if (form === undefined) return;
  for (const state of states) {
    const change = form(state);
    if (Date.now() > end || isSame(change.old, change.now)) continue;
    const blob = keyOf(change, own);
    const text = kept.has(blob) ? undefined : await told(change);
    if (text !== undefined) await keepShown({ folder, blob }, text);
  }
}

const forms: readonly ((state: ChangedState) => HandedChange)[] = [
  ({ path, index, disk }) => changeOf(path, index, disk),
  ({ path, head, index }) => changeOf(path, head, index?.bytes),
  ({ path, head, disk }) => changeOf(path, head, disk),
];

const changeOf = (path: string, old: Blob | undefined, now: Buffer | undefined): HandedChange => ({
  path,
  ...(old === undefined ? {} : { old: old.bytes, oldId: old.id }),
  ...(now === undefined ? {} : { now }),
});

function isSame(one: Buffer | undefined, other: Buffer | undefined): boolean {
  return one === undefined || other === undefined ? one === other : one.equals(other);
}

/** The key of a change, as the script that git runs works it out. */
function keyOf({ path, old, now }: HandedChange, like: string): string {
  const nothing = Buffer.alloc(0);
  const marks = [old, now].map((side) => (side === undefined ? 'none' : ''));
  const names = [old, now].map((side) => blobName(side ?? nothing, like));
  return blobName(Buffer.from([path, '', ...marks, ...names, ''].join('\n')), like);
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
