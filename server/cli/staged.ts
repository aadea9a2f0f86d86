import { basename, dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Message, message } from '../../core/index.ts';
import { doughFilesBelow, readBytes } from '../host/disk.ts';
import { commitOf, repositoryOf } from '../host/git.ts';
import {
  blobsOf,
  type Entry,
  entriesOfCommit,
  entriesOfIndex,
  filesOfEntries,
  isBlob,
  isFormulaFile,
  type RevisionFile,
} from '../host/git-files.ts';
import { isWithin, wayTo } from '../host/paths.ts';
import { canonicalUri } from '../host/uris.ts';
import { projectFileName } from '../project/project-settings.ts';
import { type ChangedFile, withUsers } from './changed-files.ts';
import { type ProjectFiles, settingsAbove } from './project.ts';
import { cureOf, shownPath } from './shown-path.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import type { AskedFile, Texts } from './texts.ts';

/** What is about to be committed, and what has to do with it. */
export interface Staged extends Texts {
  /** Something is defined no more under its name. */
  readonly takesAway: boolean;
  /** Which of these files are otherwise on disk than staged, as they are shown; without them which of all, also of those that are not staged at all. */
  otherOnDisk(uris?: ReadonlySet<string>): Promise<string[]>;
}

/**
 * The formula files that are about to be committed, and those that use what these define, define no more or define otherwise:
 * a flour that got another name is told where it is missing. All as the index of git has them, for that is what a commit
 * takes; what is only on disk is not there. Where the project file gives rules other levels, all files below it are asked for.
 */
export async function readStaged(): Promise<Staged | { readonly message: Message }> {
  const repository = await repositoryOf('.');
  if (repository.root === undefined) return { message: repository.message };
  const { root } = repository;
  if (repository.isBare) return { message: message('command-check.nothing-staged') };
  const [index, head] = await Promise.all([entriesOfIndex(root), entriesOfHead(root)]);
  if ('message' in index) return index;
  if ('message' in head) return head;
  const torn = index.find((one) => one.stage > 0 && (isFormulaFile(one) || isProjectFile(one)));
  if (torn !== undefined) {
    const file = shownPath(join(root, torn.path));
    return { message: message('command-git.in-conflict', { file, command: 'git add' }) };
  }
  const [was, is] = [head, index].map((side) => new Map(side.map((one) => [one.path, one])));
  const differs = ({ path }: Entry): boolean =>
    was?.get(path)?.id !== is?.get(path)?.id || was?.get(path)?.mode !== is?.get(path)?.mode;
  const [before, now, same] = await Promise.all([
    filesOfEntries(root, head.filter(differs)),
    filesOfEntries(root, index.filter(differs)),
    filesOfEntries(
      root,
      index.filter((one) => !differs(one)),
    ),
  ]);
  if ('message' in before) return before;
  if ('message' in now) return now;
  if ('message' in same) return same;

  const olds = new Map(before.files.map(({ path, text }) => [path, text]));
  const changed: ChangedFile[] = [];
  for (const { path, text } of now.files) {
    const old = olds.get(path);
    if (text === undefined || text !== old)
      changed.push({ path, after: text ?? '', ...(olds.has(path) ? { before: old ?? '' } : {}) });
    olds.delete(path);
  }
  // What a submodule has that is not here is not known, and none of it is gone.
  const isKnown = (path: string): boolean => !now.missing.some((module) => isWithin(path, module.path));
  for (const [path, text] of olds) if (isKnown(path)) changed.push({ path, before: text ?? '' });

  const files = new Map([...same.files, ...now.files].map((file) => [file.path, file]));
  const texts = [...files.values()].flatMap(({ path, text }) =>
    text === undefined ? [] : [[path, text] as const],
  );
  const { paths, takesAway } = withUsers(changed, texts);
  const below = await newLevelsBelow(root, head, index);
  const wanted =
    below === undefined
      ? paths
      : new Set([...paths, ...[...files.keys()].filter((path) => isWithin(join(root, path), below))]);

  const troubles: Texts['troubles'][number][] = [];
  const asked: AskedFile[] = [];
  for (const path of wanted) {
    const file = files.get(path);
    if (file === undefined) continue;
    const shown = shownPath(join(root, path));
    if (file.text !== undefined) asked.push({ uri: file.uri, shown });
    const trouble = troubleOf(file);
    if (trouble === undefined) continue;
    troubles.push({ path: shown, message: say(trouble) });
    complain(shown, say(trouble));
  }
  const shown = new Map([...files.values()].map(({ uri, path }) => [uri, shownPath(join(root, path))]));
  return {
    texts: [...files.values()].flatMap(({ uri, text }) => (text === undefined ? [] : [[uri, text] as const])),
    roots: [canonicalUri(pathToFileURL(root).href)],
    asked,
    shown: (uri) => shown.get(uri) ?? uri,
    troubles,
    failed: troubles.length > 0,
    takesAway,
    otherOnDisk: async (uris) => {
      const others: string[] = [];
      for (const { path, uri } of files.values()) {
        const id = is?.get(path)?.id;
        if (id === undefined || uris?.has(uri) === false) continue;
        const { bytes } = await readBytes(join(root, path));
        if (bytes !== undefined && !isBlob(bytes, id)) others.push(shownPath(join(root, path)));
      }
      if (uris !== undefined) return others;
      for await (const path of doughFilesBelow(root))
        if (!files.has(wayTo(path, root))) others.push(shownPath(path));
      return others;
    },
  };
}

/** Before the first commit nothing is there. */
async function entriesOfHead(root: string): Promise<readonly Entry[] | { readonly message: Message }> {
  const commit = await commitOf(root, 'HEAD');
  if (typeof commit === 'string') return entriesOfCommit(root, commit);
  return commit.message.code === 'command-git.no-commit' ? [] : commit;
}

/** What keeps a file from being looked at as a whole. */
function troubleOf(file: RevisionFile): Message | undefined {
  const { path } = file;
  if (file.why !== undefined) return cureOf(file.why, path);
  // A name that is no UTF-8 stands for several.
  if (path.includes('\ufffd')) return cureOf('missing', path);
  const { otherLettersInLine: number } = file;
  return number === undefined ? undefined : message('command-files.other-letters', { number });
}

const isProjectFile = ({ path }: Entry): boolean => basename(path) === projectFileName;

/** The project files of the index of the repository around the current folder; none where there is no repository. */
export async function projectFilesStaged(): Promise<ProjectFiles> {
  const { root } = await repositoryOf('.');
  const index = root === undefined ? [] : await entriesOfIndex(root);
  return projectFilesAmong(root ?? '', 'message' in index ? [] : index);
}

function projectFilesAmong(root: string, entries: readonly Entry[]): ProjectFiles {
  const known = new Map(entries.map((one) => [resolve(root, one.path), one]));
  const blob = async (path: string): Promise<Buffer | undefined> => {
    const entry = known.get(path);
    return entry && (await blobsOf(root, [entry.id]))?.[0];
  };
  return {
    has: async (path) => known.has(path),
    read: async (path) => {
      const bytes = await blob(path);
      const isLink = known.get(path)?.mode === '120000' && bytes !== undefined;
      const there = isLink ? await blob(resolve(dirname(path), bytes.toString())) : bytes;
      return there === undefined ? { why: 'missing' } : { bytes: there };
    },
  };
}

/** The folder of the project file of this run, where it is about to give rules other levels, or usual temperatures. */
async function newLevelsBelow(
  root: string,
  head: readonly Entry[],
  index: readonly Entry[],
): Promise<string | undefined> {
  const [before, now] = await Promise.all(
    [head, index].map((side) => settingsAbove(resolve('.'), projectFilesAmong(root, side))),
  );
  const said = [before, now].map((one) => JSON.stringify([one?.settings.rules, one?.settings.usual]));
  const file = now?.file ?? before?.file;
  return said[0] === said[1] || file === undefined ? undefined : dirname(file);
}
