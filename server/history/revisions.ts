import { type Message, message } from '../../core/index.ts';
import { doughOf } from '../host/disk.ts';
import { git } from '../host/git.ts';
import { blobsOf, filesOfSubmodule } from '../host/git-files.ts';

/** A commit with what it changed in the formula files against its first parent. */
export interface Commit {
  readonly commit: string;
  readonly parents: readonly string[];
  readonly seconds: number;
  readonly date: string;
  readonly author: string;
  readonly words: string;
  readonly changes: readonly FileChange[];
}

/** A formula file that is other than in the first parent; `text` is absent where it is removed, or is no text. */
export interface FileChange {
  readonly path: string;
  readonly text?: string;
}

/** The commits that lead to a revision, parents before children. */
export interface Commits {
  readonly commits: readonly Commit[];
  /** A shallow clone holds only the end of its history; its first commit stands here. */
  readonly beginsAt?: string;
}

const fields = ['%H', '%P', '%T', '%at', '%ad', '%an', '%s'];
/** Blobs that are asked for at once, so that git's answer does not fill the memory. */
const atOnce = 500;

/**
 * All commits up to one, each with the formula files that it changed: whole trees are set beside each other, and those that
 * are the same tree are not looked into. Three calls of git whatever the length of the history, and one for so many texts.
 */
export async function commitsUpTo(
  root: string,
  commit: string,
): Promise<Commits | { readonly message: Message }> {
  const listed = await git(root, [
    'rev-list',
    '--date-order',
    '--reverse',
    '--date=format:%Y-%m-%d',
    `--format=${fields.join('%x00')}`,
    commit,
    '--',
  ]);
  if (!listed.ok) return { message: listed.message };
  const found = listed.out
    .toString()
    .split('\n')
    .flatMap((line) => {
      const parts = line.split('\0');
      if (parts.length !== fields.length) return [];
      const [id, parents, tree, seconds, date, author, words] = parts as [
        ...[string, string, string, string],
        ...[string, string, string],
      ];
      return [
        {
          ...{ commit: id, parents: parents.split(' ').filter((one) => one !== '') },
          ...{ tree, seconds: Number(seconds), date, author, words },
        },
      ];
    });
  const trees = new Map(found.map((one) => [one.commit, one.tree]));
  const empty = await git(root, ['hash-object', '-t', 'tree', '--stdin']);
  if (!empty.ok) return { message: empty.message };
  const none = empty.out.toString().trim();
  const pairs = found.map(({ parents, tree }) => [trees.get(parents[0] ?? '') ?? none, tree] as const);
  const asked = pairs.filter(([before, after]) => before !== after);
  const differences = await git(
    root,
    ['diff-tree', '--stdin', '-r', '--raw', '-z', '--no-renames', '--no-abbrev', '--no-textconv'],
    asked.map(([before, after]) => `${before} ${after}\n`).join(''),
  );
  if (!differences.ok) return { message: differences.message };
  const entries = entriesOf(differences.out.toString());
  const texts = await textsOf(
    root,
    [...entries.values()].flatMap((some) => some.flatMap(({ blob }) => blob ?? [])),
  );
  if (texts === undefined) return { message: message('command-git.unreadable', { command: 'git fsck' }) };
  const modules = new Modules(root);
  const commits: Commit[] = [];
  for (const [index, { tree: _, ...about }] of found.entries()) {
    const pair = pairs[index]?.join(' ') ?? '';
    const changes: FileChange[] = [];
    for (const { path, blob, module } of entries.get(pair) ?? []) {
      if (module !== undefined) changes.push(...(await modules.changes(path, module)));
      else {
        const text = blob === undefined ? undefined : texts.get(blob);
        changes.push({ path, ...(text === undefined ? {} : { text }) });
      }
    }
    commits.push({ ...about, changes });
  }
  const shallow = await git(root, ['rev-parse', '--is-shallow-repository']);
  const isShallow = shallow.ok && shallow.out.toString().trim() === 'true';
  const first = commits[0]?.commit;
  return { commits, ...(isShallow && first !== undefined ? { beginsAt: first.slice(0, 8) } : {}) };
}

interface Entry {
  readonly path: string;
  /** Absent where the file is removed. */
  readonly blob?: string;
  /** Of a submodule, the commits that it was and is at. */
  readonly module?: { readonly before?: string; readonly after?: string };
}

/**
 * What `diff-tree --stdin -z` writes: `TREE TREE`, a line end; for each file `:mode mode before after letter`, a zero byte, the
 * path, a zero byte. Formula files and submodules of it, hidden folders and `node_modules` left out as on disk.
 */
function entriesOf(raw: string): Map<string, Entry[]> {
  const entries = new Map<string, Entry[]>();
  let pair = '';
  const words = raw.split('\0');
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? '';
    const header = /^[0-9a-f]{40,64} [0-9a-f]{40,64}\n/.exec(word)?.[0] ?? '';
    if (header !== '') pair = header.trimEnd();
    const about = word.slice(header.length);
    if (!about.startsWith(':')) continue;
    const path = words[++at] ?? '';
    const [modeBefore, modeAfter, before, after] = about.slice(1).split(' ') as [
      ...[string, string],
      ...[string, string],
    ];
    if (/(?:^|\/)(?:\.[^/]*|node_modules)\//.test(path)) continue;
    const list = entries.get(pair) ?? [];
    entries.set(pair, list);
    const [wasModule, isModule] = [modeBefore === '160000', modeAfter === '160000'];
    if (wasModule || isModule)
      list.push({ path, module: { ...(wasModule && { before }), ...(isModule && { after }) } });
    if (!path.endsWith('.dough')) continue;
    if (modeAfter.startsWith('100')) list.push({ path, blob: after });
    else if (modeBefore.startsWith('100')) list.push({ path });
  }
  return entries;
}

/** The texts of blobs by their ids; what is no text, or too large, is not among them. */
async function textsOf(root: string, ids: readonly string[]): Promise<Map<string, string> | undefined> {
  const texts = new Map<string, string>();
  const wanted = [...new Set(ids)];
  for (let at = 0; at < wanted.length; at += atOnce) {
    const some = wanted.slice(at, at + atOnce);
    const contents = await blobsOf(root, some);
    if (contents === undefined) return undefined;
    for (const [index, id] of some.entries()) {
      const { text } = doughOf(contents[index]);
      if (text !== undefined) texts.set(id, text);
    }
  }
  return texts;
}

/** The files of submodules, each commit of one read once. */
class Modules {
  readonly #root: string;
  readonly #read = new Map<string, ReadonlyMap<string, string>>();

  constructor(root: string) {
    this.#root = root;
  }

  /** What changes in the files of a submodule from one of its commits to another. */
  async changes(path: string, { before, after }: NonNullable<Entry['module']>): Promise<FileChange[]> {
    const [old, now] = [await this.#filesOf(path, before), await this.#filesOf(path, after)];
    return [
      ...[...now].flatMap(([file, text]) => (old.get(file) === text ? [] : [{ path: file, text }])),
      ...[...old.keys()].flatMap((file) => (now.has(file) ? [] : [{ path: file }])),
    ];
  }

  /** A commit that is not here has no files. */
  async #filesOf(path: string, commit: string | undefined): Promise<ReadonlyMap<string, string>> {
    if (commit === undefined) return new Map();
    const key = `${commit} ${path}`;
    const known = this.#read.get(key);
    if (known !== undefined) return known;
    const found = await filesOfSubmodule(this.#root, path, commit);
    const files = new Map(
      found?.files.flatMap((file) =>
        file.text === undefined ? [] : [[`${path}/${file.path}`, file.text] as const],
      ),
    );
    this.#read.set(key, files);
    return files;
  }
}
