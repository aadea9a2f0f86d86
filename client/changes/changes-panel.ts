import { type Disposable, l10n, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { Guard } from '../guard.ts';
import { changesViewType } from '../names.ts';
import { noServerWords } from '../nothing-words.ts';
import { dressWebview } from '../preview/dress-webview.ts';
import { reveal } from '../preview/reveal.ts';
import type { Wire } from '../wire.ts';
import { lastCommitted } from './git.ts';
import type { FromChanges, ToChanges } from './messages.ts';

export interface ChangesPanel extends Disposable {
  /** Shows beside the editor what changed in a file since the last commit. */
  open(uri: string): void;
  /** Asks anew, for instance once the server runs again. */
  refresh(): void;
}

/** What changed since the last commit, read as a baker reads it: git gives the text, the core tells the difference. */
export function createChangesPanel(wire: Wire, guard: Guard, extensionUri: Uri): ChangesPanel {
  let panel: WebviewPanel | undefined;
  let uri: string | undefined;
  let following: Disposable | undefined;
  let asked = 0;

  const refresh = guard('what changed', async () => {
    if (!panel || uri === undefined) return;
    asked += 1;
    const own = asked;
    const message = await compared(uri, () => own === asked);
    if (own === asked) void panel?.webview.postMessage(message);
  });
  const compared = async (file: string, isWanted: () => boolean): Promise<ToChanges> => {
    const target = Uri.parse(file, true);
    const committed = await lastCommitted(target);
    if ('what' in committed) return { type: 'none', ...committed };
    // Meanwhile another file may be shown, or the panel closed.
    if (isWanted()) {
      following?.dispose();
      following = committed.changed(() => void refresh());
    }
    const page = await wire.askCompare({ textDocument: { uri: file }, before: committed.text });
    if (!page) return { type: 'none', ...noServerWords() };
    const name = target.path.slice(target.path.lastIndexOf('/') + 1);
    const about = l10n.t('{0}, since the last commit, {1}', name, committed.commit);
    return { type: 'changes', about, page, showLine: l10n.t('Show this line in the editor') };
  };
  const subscription = wire.onChanged((uris) => {
    if (uri !== undefined && uris.includes(uri)) void refresh();
  });

  return {
    refresh: () => void refresh(),
    open(file) {
      uri = file;
      if (panel) {
        panel.reveal(undefined, true);
        void refresh();
        return;
      }
      panel = window.createWebviewPanel(changesViewType, l10n.t('What Changed'), {
        viewColumn: ViewColumn.Beside,
        preserveFocus: true,
      });
      panel.onDidDispose(() => {
        panel = undefined;
        asked += 1;
        following?.dispose();
        following = undefined;
      });
      panel.webview.onDidReceiveMessage(
        guard('what changed', async (message: FromChanges) => {
          if (message.type === 'ready') await refresh();
          else if (uri !== undefined) await reveal(uri, message.line);
        }),
      );
      dressWebview(panel, extensionUri, 'changes.js', l10n.t('What Changed'));
    },
    dispose() {
      panel?.dispose();
      following?.dispose();
      subscription.dispose();
    },
  };
}
