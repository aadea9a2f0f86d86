import { execFileSync } from 'node:child_process';
import { type Folder, folderWith } from '../server/places.ts';

/** A repository of git with its own git to call. */
export interface Repository extends Folder {
  /** Runs git in it, as a baker or as another one; throws where git fails. */
  git(...args: readonly string[]): string;
  gitAs(baker: string, ...args: readonly string[]): string;
  /** As `git`, where a failure is an answer: what it wrote on both outputs, and what it ended with. */
  gitTold(...args: readonly string[]): { readonly code: number; readonly out: string };
  commit(message: string, baker?: string): void;
}

/** An environment that knows nothing of the settings of whoever runs the tests. */
export function gitEnvironment(home: string): Record<string, string> {
  return {
    PATH: process.env.PATH!,
    HOME: home,
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_SYSTEM: '/dev/null',
    NO_COLOR: '1',
  };
}

/** Git in a folder that is a repository already, or will be. */
export function repositoryIn(folder: Folder): Repository {
  const env = gitEnvironment(folder.path);
  const gitAs = (baker: string, ...args: readonly string[]): string =>
    execFileSync(
      'git',
      [
        ...[
          '-c',
          `user.name=${baker}`,
          '-c',
          `user.email=${baker.toLowerCase().replace(/\W+/g, '-')}@quay-lane.invalid`,
        ],
        ...['-c', 'core.pager=cat', '-c', 'protocol.file.allow=always', '-c', 'advice.detachedHead=false'],
        ...args,
      ],
      { cwd: folder.path, env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 2 ** 26 },
    );
  const git = (...args: readonly string[]): string => gitAs('A Baker', ...args);
  return {
    ...folder,
    git,
    gitAs,
    gitTold: (...args) => {
      try {
        return { code: 0, out: git(...args) };
      } catch (error) {
        const { status, stdout, stderr } = error as { status: number; stdout: string; stderr: string };
        return { code: status, out: stdout + stderr };
      }
    },
    commit: (message, baker = 'A Baker') => {
      git('add', '--all');
      gitAs(baker, 'commit', '--quiet', `--message=${message}`);
    },
  };
}

/** A repository whose first commit holds these files. */
export function repositoryWith(files: Readonly<Record<string, string>>): Repository {
  const repository = repositoryIn(folderWith(files));
  repository.git('init', '--quiet', '--initial-branch=main');
  repository.commit('Start');
  return repository;
}
