import {
  type Connection,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  WatchKind,
} from 'vscode-languageserver';
import type { Abilities } from '../convert/abilities.ts';
import { projectFileName } from '../project/project-settings.ts';
import type { OpenDocuments } from '../sync/documents.ts';
import type { WorkspaceFiles } from '../sync/files.ts';
import type { Workspace } from '../sync/workspace.ts';
import { guardedWork, type Log } from './guard.ts';
import { canonicalUri } from './uris.ts';

/**
 * Keeps up with the folders of the workspace and the files in them; `changed` is told when the folders are others, and
 * `projectChanged` when its settings may be. To be called once the client has initialized.
 */
export function followFolders(
  connection: Connection,
  able: Abilities,
  log: Log,
  workspace: Workspace,
  files: WorkspaceFiles,
  documents: OpenDocuments,
  changed: () => void,
  projectChanged: () => void,
): void {
  connection.onDidChangeWatchedFiles(({ changes }) => {
    files.watched(changes);
    if (changes.some(({ uri }) => uri.endsWith(`/${projectFileName}`))) projectChanged();
  });
  // Of a folder that goes or is renamed in the editor, its own events tell sooner than a watcher.
  connection.workspace.onDidDeleteFiles((params) => files.watched(params.files.map(({ uri }) => gone(uri))));
  connection.workspace.onDidRenameFiles((params) => {
    files.watched(params.files.map(({ oldUri }) => gone(oldUri)));
    files.readFolders(workspace.roots);
  });
  if (able.registersWatchers) {
    guardedWork(log, 'Watching files', () =>
      connection.client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [
          { globPattern: '**/*.dough' },
          { globPattern: '**/.gitignore' },
          { globPattern: `**/${projectFileName}` },
          // A folder that comes or goes as a whole is told without the files in it.
          { globPattern: '**/*', kind: WatchKind.Create | WatchKind.Delete },
        ],
      }),
    );
  }
  if (!able.workspaceFolders) return;
  connection.workspace.onDidChangeWorkspaceFolders((event) => {
    const removed = new Set(event.removed.map(({ uri }) => canonicalUri(uri)));
    const added = event.added.map(({ uri }) => canonicalUri(uri));
    workspace.folders = [...workspace.folders.filter((folder) => !removed.has(folder)), ...added];
    files.forgetOutside();
    projectChanged();
    files.readFolders(added);
    for (const uri of documents.uris()) files.readAround(uri);
    changed();
  });
}

function gone(uri: string): { uri: string; type: typeof FileChangeType.Deleted } {
  return { uri, type: FileChangeType.Deleted };
}
