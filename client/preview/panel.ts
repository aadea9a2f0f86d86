import {
  CancellationTokenSource,
  type Disposable,
  Range,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { Cursor } from '../cursor.ts';
import type { Guard } from '../guard.ts';
import { sheetViewType } from '../names.ts';
import type { Wire } from '../wire.ts';
import { createFollower, type Follower } from './follower.ts';
import { panelHtml } from './html.ts';
import type { FromPage, PageState } from './messages.ts';

export interface PreviewOptions {
  readonly wire: Wire;
  readonly cursor: Cursor;
  readonly guard: Guard;
  readonly extensionUri: Uri;
}

export interface Preview extends Disposable {
  /** Opens the batch sheet beside the editor, or brings it to the front. */
  open(): void;
  /** Tells whether the language server runs; the sheet asks anew when it does. */
  serverRuns(runs: boolean): void;
}

/** The batch sheet beside the editor: one panel that follows the cursor's formula. */
export function createPreview({ wire, cursor, guard, extensionUri }: PreviewOptions): Preview {
  let panel: WebviewPanel | undefined;
  let follower: Follower | undefined;

  const adopt = (adopted: WebviewPanel, kept: PageState | undefined) => {
    panel?.dispose();
    panel = adopted;
    const itsFollower = createFollower({
      ask: (params, signal) => withToken(signal, (token) => wire.askSheet(params, token)),
      show: (message) => {
        adopted.title = message.type === 'sheet' ? `${message.sheet.formula} · Batch Sheet` : 'Batch Sheet';
        void adopted.webview.postMessage(message);
      },
    });
    follower = itsFollower;
    itsFollower.restoreSizes(kept?.sizes ?? {});
    adopted.iconPath = {
      light: Uri.joinPath(extensionUri, 'client', 'media', 'file-light.svg'),
      dark: Uri.joinPath(extensionUri, 'client', 'media', 'file-dark.svg'),
    };
    adopted.webview.options = {
      enableScripts: true,
      localResourceRoots: [Uri.joinPath(extensionUri, 'dist')],
    };
    const answer = guard('batch sheet', async (message: FromPage) => {
      if (message.type === 'reveal') return reveal(message.uri, message.line);
      if (message.type === 'size') return itsFollower.resize(message.uri, message.formula, message.size);
      itsFollower.restoreSizes(message.state?.sizes ?? {});
      const place = cursor.place ?? itsFollower.place ?? placeKept(message.state);
      return place ? itsFollower.follow(place) : itsFollower.refresh();
    });
    adopted.webview.onDidReceiveMessage(answer);
    adopted.onDidDispose(() => {
      if (panel !== adopted) return;
      panel = undefined;
      follower = undefined;
    });
    adopted.webview.html = panelHtml({
      cspSource: adopted.webview.cspSource,
      nonce: freshNonce(),
      scriptUri: adopted.webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', 'preview.js')).toString(),
      styleUri: adopted.webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', 'preview.css')).toString(),
    });
  };

  const subscriptions = [
    cursor.onDidMove(
      guard('follow the cursor', async (place) => {
        // The panel itself taking the focus is no reason to let go of the formula.
        if (place) await follower?.follow(place);
      }),
    ),
    wire.onChanged(guard('numbers changed', async (uris) => follower?.changed(uris))),
    window.registerWebviewPanelSerializer(sheetViewType, {
      deserializeWebviewPanel: async (restored, state: PageState | undefined) => adopt(restored, state),
    }),
  ];

  return {
    open() {
      if (panel) {
        panel.reveal(undefined, true);
        return;
      }
      const place = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      adopt(window.createWebviewPanel(sheetViewType, 'Batch Sheet', place), undefined);
    },
    serverRuns(runs) {
      if (runs) void guard('server runs', async () => follower?.refresh())();
      else follower?.clear('no-server');
    },
    dispose() {
      panel?.dispose();
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
}

function placeKept(state: PageState | undefined) {
  if (state?.uri === undefined || state.line === undefined) return undefined;
  const { uri, line, formula } = state;
  return formula === undefined ? { uri, line } : { uri, line, formula };
}

async function reveal(uri: string, line: number): Promise<void> {
  const target = Uri.parse(uri, true);
  const open = window.visibleTextEditors.find(
    (editor) => editor.document.uri.toString() === target.toString(),
  );
  const document = open?.document ?? (await workspace.openTextDocument(target));
  const at = document.lineAt(Math.min(line, document.lineCount - 1)).range.end;
  await window.showTextDocument(document, {
    viewColumn: open?.viewColumn ?? ViewColumn.One,
    selection: new Range(at, at),
  });
}

async function withToken<T>(
  signal: AbortSignal,
  ask: (token: CancellationTokenSource['token']) => Promise<T>,
): Promise<T> {
  const source = new CancellationTokenSource();
  const cancel = () => source.cancel();
  signal.addEventListener('abort', cancel);
  try {
    return await ask(source.token);
  } finally {
    signal.removeEventListener('abort', cancel);
    source.dispose();
  }
}

function freshNonce(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}
