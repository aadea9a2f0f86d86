import { type Disposable, type Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { Guard } from '../guard.ts';
import { dressWebview } from '../preview/dress-webview.ts';

export interface SidePageParts<From, State> {
  readonly guard: Guard;
  readonly extensionUri: Uri;
  readonly viewType: string;
  /** Ours, never from a file. */
  readonly title: string;
  /** The script of the page, a file of `dist`. */
  readonly script: string;
  readonly answer: (message: From) => unknown;
  /** Takes up what it was about before the window was loaded anew; where this is absent the page does not come back. */
  readonly restored?: (about: State) => void;
  readonly closed?: () => void;
}

/** One page of ours beside the editor. It is made when it is first wanted, and there is never a second of its kind. */
export interface SidePage<To, State> extends Disposable {
  readonly isOpen: boolean;
  /** Opens it, or brings it to the front; whether it was open already. */
  show(preserveFocus?: boolean): boolean;
  setTitle(title: string): void;
  /** Tells the page something; `about` is what it is to come back with after the window is loaded anew. */
  post(message: To, about?: State): void;
  /** What it is to come back with, where nothing is to be told. */
  keep(about: State): void;
  /** Begins to ask for what is to be shown; what it answers tells later whether nothing else was asked meanwhile and the page still stands. */
  asking(): () => boolean;
}

/** What the page keeps for a reload, told apart from what it shows. */
export interface KeepAbout<State> {
  readonly type: 'about';
  readonly about: State;
}

export function createSidePage<To, From, State = never>(
  parts: SidePageParts<From, State>,
): SidePage<To, State> {
  const { guard, extensionUri, viewType, title, script, restored } = parts;
  let panel: WebviewPanel | undefined;
  let asked = 0;
  const adopt = (made: WebviewPanel): void => {
    panel = made;
    made.onDidDispose(() => {
      if (panel !== made) return;
      panel = undefined;
      asked += 1;
      parts.closed?.();
    });
    made.webview.onDidReceiveMessage(guard(viewType, async (message: From) => parts.answer(message)));
    dressWebview(made, extensionUri, script, title);
  };
  const keep = (about: State): void => {
    const kept: KeepAbout<State> = { type: 'about', about };
    void panel?.webview.postMessage(kept);
  };
  const restoring =
    restored &&
    window.registerWebviewPanelSerializer(viewType, {
      deserializeWebviewPanel: async (made, about: State | undefined) => {
        // There is one of a kind: what was opened meanwhile is newer.
        if (panel !== undefined || about === undefined) return made.dispose();
        restored(about);
        adopt(made);
      },
    });
  return {
    get isOpen() {
      return panel !== undefined;
    },
    show(preserveFocus = true) {
      if (panel !== undefined) {
        panel.reveal(undefined, preserveFocus);
        return true;
      }
      adopt(window.createWebviewPanel(viewType, title, { viewColumn: ViewColumn.Beside, preserveFocus }));
      return false;
    },
    setTitle(next) {
      if (panel !== undefined) panel.title = next;
    },
    post(message, about) {
      void panel?.webview.postMessage(message);
      if (about !== undefined) keep(about);
    },
    keep,
    asking() {
      asked += 1;
      const own = asked;
      return () => own === asked && panel !== undefined;
    },
    dispose() {
      panel?.dispose();
      restoring?.dispose();
    },
  };
}
