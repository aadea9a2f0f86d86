import { spawn } from 'node:child_process';
import { accessSync, constants, realpathSync, statSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { devNull } from 'node:os';
import { delimiter, dirname, isAbsolute, join, resolve } from 'node:path';
import { type Message, message } from '../../core/index.ts';
import { isWithin } from './paths.ts';

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

/** What git tells a hook of the repository that it works in; to another one, as a submodule is, it would be a lie. */
const ofOneRepository = [
  ...['GIT_DIR', 'GIT_WORK_TREE', 'GIT_COMMON_DIR', 'GIT_INDEX_FILE', 'GIT_PREFIX', 'GIT_SHALLOW_FILE'],
  ...['GIT_OBJECT_DIRECTORY', 'GIT_ALTERNATE_OBJECT_DIRECTORIES', 'GIT_GRAFT_FILE'],
  ...['GIT_NO_REPLACE_OBJECTS', 'GIT_REPLACE_REF_BASE', 'GIT_IMPLICIT_WORK_TREE'],
];
const elsewhere = Object.fromEntries(ofOneRepository.map((name) => [name, undefined]));

/** Where git is asked: a folder, or that of a submodule, of which the surroundings of this run say nothing. */
export type Where = string | { readonly submodule: string };

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
export function git(where: Where, args: readonly string[], input?: string): Promise<GitAnswer> {
  const isSubmodule = typeof where !== 'string';
  const folder = isSubmodule ? where.submodule : where;
  return new Promise((settle) => {
    const program = gitProgram(folder);
    if (program === undefined) return settle({ ok: false, message: message('command-git.not-installed') });
    const child = spawn(program, [...nothingRuns, ...args], {
      cwd: folder,
      env: { ...process.env, ...quietly, ...(isSubmodule ? elsewhere : {}) },
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

/** The folder that a path is, or lies in; where neither is there, as of a file that was removed since, the current one. */
export async function folderOf(path: string): Promise<string> {
  for (const place of [path, dirname(path)])
    if ((await stat(place).catch(() => undefined))?.isDirectory() === true) return place;
  return '.';
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
