import {
  type Disposable,
  l10n,
  type Memento,
  type Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { Cursor } from '../cursor.ts';
import type { Guard } from '../guard.ts';
import { sheetViewType } from '../names.ts';
import type { Wire } from '../wire.ts';
import { createEdits } from './edits.ts';
import type { FollowedPlace } from './follower.ts';
import { createKept, type Kept } from './kept.ts';
import type { PageState, PanelMode } from './messages.ts';
import { createSheetPanel, type SheetPanel, type SheetPanelOptions } from './sheet-panel.ts';
import { createTimers } from './timers.ts';

export interface PanelsOptions {
  readonly wire: Wire;
  readonly cursor: Cursor;
  readonly guard: Guard;
  readonly extensionUri: Uri;
  readonly store: Memento;
}

export interface Panels extends Disposable {
  readonly kept: Kept;
  /** Opens the sheet that follows the cursor beside the editor, or brings it to the front. */
  open(mode?: PanelMode): void;
  /** Opens a sheet that stays with this formula, or brings the one that does to the front. */
  openPinned(place: FollowedPlace, mode?: PanelMode): void;
  /** Opens the sheet of a formula with its map of the gap, as it was last asked for, else minutes against water. */
  openMap(place: FollowedPlace): void;
  /** The formula that a command is about: that of the sheet in front, else that at the cursor. */
  placeAtHand(): FollowedPlace | undefined;
  /** Tells whether the language server runs; the sheets ask anew when it does. */
  serverRuns(runs: boolean): void;
}

/** The batch sheets beside the editor: one that follows the cursor, and any number that stay with their formula. */
export function createPanels({ wire, cursor, guard, extensionUri, store }: PanelsOptions): Panels {
  const open = new Set<SheetPanel>();
  const kept = createKept(store);
  const timers = createTimers((uri, formula, label, late) => {
    const minutes = Math.round(late / 60_000);
    const over =
      minutes >= 1
        ? l10n.t('{0}: {1} is over, since {2} min.', formula, label, minutes)
        : l10n.t('{0}: {1} is over.', formula, label);
    void window.showInformationMessage(over, l10n.t('Show')).then((answer) => {
      if (answer) panels.openPinned({ uri, line: 0, formula }, 'working');
    });
  });
  const following = () => [...open].filter((panel) => !panel.pinned);
  const worked = (uri: string, formula: string) => timers.set(uri, formula, kept.work(uri, formula));

  const options: SheetPanelOptions = {
    ...{ wire, guard, extensionUri, kept, worked },
    edits: createEdits(wire, kept),
    cursorPlace: () => cursor.place,
    changed: (from, uri) => {
      for (const panel of open) if (panel !== from && panel.follower.place?.uri === uri) void refresh(panel);
    },
  };
  const refresh = guard('refresh a sheet', (panel: SheetPanel) => panel.follower.refresh());
  const adopt = (
    webview: WebviewPanel,
    start: { readonly place?: FollowedPlace; readonly mode?: PanelMode; readonly state?: PageState },
  ) => {
    const panel = createSheetPanel(webview, options, start);
    open.add(panel);
    webview.onDidDispose(() => open.delete(panel));
  };
  const create = (preserveFocus: boolean) =>
    window.createWebviewPanel(sheetViewType, l10n.t('Batch Sheet'), {
      viewColumn: ViewColumn.Beside,
      preserveFocus,
    });
  const show = (panel: SheetPanel, mode: PanelMode | undefined) => {
    panel.webview.reveal(undefined, mode !== 'working');
    if (mode) panel.setMode(mode);
  };

  for (const { uri, formula, work } of kept.allWork()) timers.set(uri, formula, work);

  const subscriptions = [
    cursor.onDidMove(
      guard('follow the cursor', async (place) => {
        // The panel itself taking the focus is no reason to let go of the formula.
        if (!place) return;
        await Promise.all(following().map((panel) => panel.follower.follow(place)));
        for (const panel of open) panel.markLine(place.uri, place.line);
      }),
    ),
    wire.onChanged(
      guard('numbers changed', async (uris) => {
        await Promise.all([...open].map((panel) => panel.follower.changed(uris)));
      }),
    ),
    workspace.onDidRenameFiles(
      guard('a file has another name', async ({ files }) => {
        for (const { oldUri, newUri } of files) {
          kept.renamed(oldUri.toString(), newUri.toString());
          await Promise.all(
            [...open].map(({ follower }) => follower.renamed(oldUri.toString(), newUri.toString())),
          );
        }
      }),
    ),
    window.registerWebviewPanelSerializer(sheetViewType, {
      deserializeWebviewPanel: async (restored, state: PageState | undefined) =>
        adopt(restored, state ? { state } : {}),
    }),
    timers,
  ];

  const panels: Panels = {
    kept,
    open(mode) {
      const first = following()[0];
      if (first) show(first, mode);
      else adopt(create(mode !== 'working'), mode ? { mode } : {});
    },
    openPinned(place, mode) {
      const same = [...open].find(
        ({ pinned, follower }) =>
          pinned && follower.place?.uri === place.uri && follower.place.formula === place.formula,
      );
      if (same) show(same, mode);
      else adopt(create(mode !== 'working'), { place, ...(mode ? { mode } : {}) });
    },
    openMap(place) {
      const { uri, formula } = place;
      if (formula !== undefined) {
        const asked = kept.asked(uri, formula);
        kept.setAsked(uri, formula, { ...asked, map: asked.map ?? { against: 'water' } });
      }
      const shown = [...open].find(({ follower }) => {
        const { sheet } = follower;
        return sheet?.uri === uri && sheet.formula === formula;
      });
      if (!shown) return panels.openPinned(place);
      show(shown, 'sheet');
      void refresh(shown);
    },
    placeAtHand() {
      const active = [...open].find((panel) => panel.webview.active);
      const { sheet } = active?.follower ?? {};
      if (sheet) return { uri: sheet.uri, line: sheet.line, formula: sheet.formula };
      if (cursor.place) return cursor.place;
      const only = [...open][0]?.follower.sheet;
      return only && { uri: only.uri, line: only.line, formula: only.formula };
    },
    serverRuns(runs) {
      for (const panel of open) {
        if (runs) void refresh(panel);
        else panel.follower.clear('no-server');
      }
    },
    dispose() {
      for (const panel of [...open]) panel.webview.dispose();
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
  return panels;
}
