import { type Disposable, type Event, extensions, type Uri } from 'vscode';

/** As much of the interface of VS Code's own git extension as is used here; version 1 of it. */
interface GitExtension {
  readonly enabled: boolean;
  getAPI(version: 1): GitApi;
}
interface GitApi {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: Event<string>;
  getRepository(uri: Uri): Repository | null;
}
interface Repository {
  readonly rootUri: Uri;
  readonly state: {
    readonly HEAD: { readonly commit?: string } | undefined;
    readonly onDidChange: Event<void>;
  };
  show(ref: string, path: string): Promise<string>;
}

/** A file as the last commit has it, or what is so and what to do where there is none. */
export type Committed =
  | { readonly text: string; readonly commit: string; readonly changed: (listener: () => void) => Disposable }
  | { readonly what: string; readonly cure: string };

/** Reads a file out of the last commit, by the editor's own git. */
export async function lastCommitted(uri: Uri): Promise<Committed> {
  const extension = extensions.getExtension<GitExtension>('vscode.git');
  if (!extension) {
    return {
      what: 'There is no git here.',
      cure: 'This editor runs without its git extension, so earlier versions of the file cannot be read.',
    };
  }
  const git = extension.isActive ? extension.exports : await extension.activate();
  if (!git.enabled) {
    return {
      what: 'Git is switched off in this editor.',
      cure: 'The setting “git.enabled” switches it on; git itself has to be installed.',
    };
  }
  const api = git.getAPI(1);
  await untilReady(api);
  const repository = api.getRepository(uri);
  if (!repository) {
    return {
      what: 'This file is in no git repository.',
      cure: 'Under git every version of a formula is kept: “Git: Initialize Repository” begins one for the folder.',
    };
  }
  const commit = repository.state.HEAD?.commit;
  if (!commit) {
    return {
      what: 'Nothing is committed yet.',
      cure: 'With the first commit there is something to compare with.',
    };
  }
  try {
    const text = await repository.show(commit, uri.fsPath);
    return {
      text,
      commit: commit.slice(0, 8),
      changed: (listener) => repository.state.onDidChange(listener),
    };
  } catch {
    return {
      what: 'The last commit does not have this file.',
      cure: 'It is new, or was called otherwise: commit it, and the next change is told here.',
    };
  }
}

/** Repositories are found a moment after the window opens; two seconds are enough or there are none. */
async function untilReady(api: GitApi): Promise<void> {
  if (api.state === 'initialized') return;
  await new Promise<void>((resolve) => {
    const timer = setTimeout(done, 2_000);
    const subscription = api.onDidChangeState(done);
    function done(): void {
      clearTimeout(timer);
      subscription.dispose();
      resolve();
    }
  });
}
