import {
  CancellationTokenSource,
  ConfigurationTarget,
  type Disposable,
  l10n,
  type Uri,
  type WebviewPanel,
  workspace,
} from 'vscode';
import type { Guard } from '../guard.ts';
import { languageId } from '../names.ts';
import { noFormulaWords, noServerWords } from '../nothing-words.ts';
import type { Wire } from '../wire.ts';
import { dressWebview } from './dress-webview.ts';
import type { Edits } from './edits.ts';
import { createFollower, type FollowedPlace, type Follower } from './follower.ts';
import type { Kept } from './kept.ts';
import type { FromPage, PageState, PanelMode, ToPage } from './messages.ts';
import { reveal } from './reveal.ts';

/** One batch sheet in a webview of its own. */
export interface SheetPanel {
  readonly webview: WebviewPanel;
  readonly follower: Follower;
  /** Stays with its formula, whatever the cursor does. */
  pinned: boolean;
  /** Marks the line of the cursor, when it is one of this sheet's. */
  markLine(uri: string, line: number): void;
  setMode(mode: PanelMode): void;
  tell(text: string): void;
}

export interface SheetPanelOptions {
  readonly wire: Wire;
  readonly guard: Guard;
  readonly extensionUri: Uri;
  readonly kept: Kept;
  readonly edits: Edits;
  /** Where a panel that is not pinned begins. */
  readonly cursorPlace: () => FollowedPlace | undefined;
  /** Something of a formula was tried or worked on: the other panels of it follow. */
  readonly changed: (from: SheetPanel, uri: string) => void;
  readonly worked: (uri: string, formula: string) => void;
}

/** Fills a webview with a batch sheet. `place` makes it a pinned one from the start. */
export function createSheetPanel(
  webview: WebviewPanel,
  options: SheetPanelOptions,
  start: { readonly place?: FollowedPlace; readonly mode?: PanelMode; readonly state?: PageState },
): SheetPanel & Disposable {
  const { wire, guard, extensionUri, kept, edits } = options;
  const post = (message: ToPage) => void webview.webview.postMessage(message);
  const nameTab = () => {
    const formula = follower.sheet?.formula;
    const kind = formula && panel.pinned ? l10n.t('Pinned Sheet') : l10n.t('Batch Sheet');
    webview.title = formula ? `${formula} · ${kind}` : kind;
  };
  const follower = createFollower({
    ask: (params, signal) => withToken(signal, (token) => wire.askSheet(params, token)),
    triedOf: kept.asked,
    show: (sequence, sheet) => {
      nameTab();
      const { uri, formula } = sheet;
      post({
        ...{ type: 'sheet', sequence, sheet },
        asked: kept.asked(uri, formula),
        work: kept.work(uri, formula),
      });
    },
    showNothing: (sequence, why) => {
      nameTab();
      post({ type: 'nothing', sequence, ...(why === 'no-server' ? noServerWords() : noFormulaWords()) });
    },
  });
  let mode: PanelMode | undefined = start.mode;
  const panel: SheetPanel & Disposable = {
    webview,
    follower,
    pinned: start.place !== undefined || start.state?.pinned === true,
    markLine: (uri, line) => post({ type: 'cursor', uri, line }),
    setMode(next) {
      mode = next;
      post({ type: 'mode', mode: next });
    },
    tell: (text) => post({ type: 'said', text }),
    dispose: () => webview.dispose(),
  };

  const pin = (pinned: boolean): Promise<void> | void => {
    panel.pinned = pinned;
    post({ type: 'pinned', pinned });
    nameTab();
    const { sheet } = follower;
    if (pinned && sheet) return follower.follow({ uri: sheet.uri, line: sheet.line, formula: sheet.formula });
    const place = options.cursorPlace();
    return !pinned && place ? follower.follow(place) : undefined;
  };
  const begin = (state: PageState | undefined) => {
    post({ type: 'pinned', pinned: panel.pinned });
    if (mode) post({ type: 'mode', mode });
    const place = panel.pinned
      ? (follower.place ?? start.place ?? placeKept(state ?? start.state))
      : (options.cursorPlace() ?? follower.place ?? placeKept(state ?? start.state));
    return place ? follower.follow(place) : follower.refresh();
  };
  const answer = async (message: FromPage): Promise<void> => {
    switch (message.type) {
      case 'ready':
        return begin(message.state);
      case 'reveal':
        await reveal(message.uri, message.line);
        return;
      case 'pin':
        return pin(message.pinned);
      case 'try':
        kept.setAsked(message.uri, message.formula, message.asked);
        options.changed(panel, message.uri);
        return follower.refresh();
      case 'scaleReading':
        return setSetting('sheet.scaleReading', message.shown);
      case 'work':
        kept.setWork(message.uri, message.formula, message.work);
        return options.worked(message.uri, message.formula);
      case 'keep':
        return panel.tell(await edits.applyOptions(message.uri, message.formula, lineOf(follower)));
      case 'teach':
        return panel.tell(
          await edits.teachMixer(message.uri, message.formula, lineOf(follower), message.line),
        );
      case 'reading':
        return panel.tell(
          await edits.logReading(message.uri, message.formula, lineOf(follower), message.reading),
        );
    }
  };

  webview.webview.onDidReceiveMessage(guard('batch sheet', answer));
  dressWebview(webview, extensionUri, 'preview.js', l10n.t('Batch Sheet'));
  return panel;
}

/** Sets one of our settings where it is set already: for this workspace, else for this user. */
async function setSetting(key: string, value: boolean): Promise<void> {
  const settings = workspace.getConfiguration(languageId);
  const isOfWorkspace = settings.inspect(key)?.workspaceValue !== undefined;
  await settings.update(
    key,
    value,
    isOfWorkspace ? ConfigurationTarget.Workspace : ConfigurationTarget.Global,
  );
}

const lineOf = (follower: Follower): number => follower.sheet?.line ?? follower.place?.line ?? 0;

function placeKept(state: PageState | undefined): FollowedPlace | undefined {
  if (state?.uri === undefined || state.line === undefined) return undefined;
  const { uri, line, formula } = state;
  return formula === undefined ? { uri, line } : { uri, line, formula };
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
