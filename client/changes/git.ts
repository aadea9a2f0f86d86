import { type Disposable, type Event, extensions, l10n, type Uri, workspace } from 'vscode';
import type { NothingWords } from '../nothing-words.ts';

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
    readonly workingTreeChanges: readonly Change[];
    readonly indexChanges: readonly Change[];
    readonly mergeChanges: readonly Change[];
    /** Of newer editors; in older ones they are among the changes of the working tree. */
    readonly untrackedChanges?: readonly Change[];
    readonly onDidChange: Event<void>;
  };
  show(ref: string, path: string): Promise<string>;
}

interface Change {
  readonly uri: Uri;
}

/** A file as the last commit has it, or what is so and what to do where there is none. */
export type Committed =
  | { readonly text: string; readonly commit: string; readonly changed: (listener: () => void) => Disposable }
  | NothingWords;

/** The repository that a file is in, as the editor's own git knows it. */
export async function repositoryOf(uri: Uri): Promise<{ readonly repository: Repository } | NothingWords> {
  // What a folder says of its own git is not heeded before the folder is trusted.
  if (!workspace.isTrusted) {
    return {
      what: l10n.t('This folder is not trusted, so its git is not asked.'),
      cure: l10n.t(
        'Trust the folder, if you know where it comes from: “Workspaces: Manage Workspace Trust”.',
      ),
    };
  }
  const extension = extensions.getExtension<GitExtension>('vscode.git');
  if (!extension) {
    return {
      what: l10n.t('There is no git here.'),
      cure: l10n.t(
        'This editor runs without its git extension, so earlier versions of the file cannot be read.',
      ),
    };
  }
  const git = extension.isActive ? extension.exports : await extension.activate();
  if (!git.enabled) {
    return {
      what: l10n.t('Git is switched off in this editor.'),
      cure: l10n.t('The setting “git.enabled” switches it on; git itself has to be installed.'),
    };
  }
  const api = git.getAPI(1);
  await untilReady(api);
  const repository = api.getRepository(uri);
  if (!repository) {
    return {
      what: l10n.t('This file is in no git repository.'),
      cure: l10n.t(
        'Under git every version of a formula is kept: “Git: Initialize Repository” begins one for the folder.',
      ),
    };
  }
  return { repository };
}

/** Reads a file out of the last commit. */
export async function lastCommitted(uri: Uri): Promise<Committed> {
  if (uri.scheme === 'untitled') {
    return {
      what: l10n.t('This text is in no file yet.'),
      cure: l10n.t('Save it into a folder under git and commit it: what changes from then on is shown here.'),
    };
  }
  const found = await repositoryOf(uri);
  if (!('repository' in found)) return found;
  const { repository } = found;
  const commit = repository.state.HEAD?.commit;
  if (!commit) {
    return {
      what: l10n.t('Nothing is committed yet.'),
      cure: l10n.t('With the first commit there is something to compare with.'),
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
      what: l10n.t('The last commit does not have this file.'),
      cure: l10n.t('It is new, or was called otherwise: commit it, and the next change is shown here.'),
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
