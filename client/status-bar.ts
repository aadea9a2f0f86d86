import { CancellationTokenSource, type Disposable, l10n, StatusBarAlignment, window } from 'vscode';
import type { Cursor } from './cursor.ts';
import type { Guard } from './guard.ts';
import { commandIds } from './names.ts';
import type { Wire } from './wire.ts';

export interface StatusBar extends Disposable {
  /** Asks anew, for instance once the server runs again. */
  refresh(): void;
}

/**
 * Hydration and dough weight of the formula at the cursor. It asks when the cursor changes its line and when the server
 * says that numbers changed; a newer question ends the older one.
 */
export function createStatusBar(wire: Wire, cursor: Cursor, guard: Guard): StatusBar {
  const item = window.createStatusBarItem('doughwright.status', StatusBarAlignment.Right, 100);
  item.name = l10n.t('Formula at the Cursor');
  item.command = commandIds.openSheet;
  let asking: CancellationTokenSource | undefined;

  const ask = guard('status bar', async () => {
    asking?.cancel();
    asking = undefined;
    const place = cursor.place;
    if (!place) return item.hide();
    const source = new CancellationTokenSource();
    asking = source;
    try {
      const status = await wire.askStatus(
        { textDocument: { uri: place.uri }, line: place.line },
        source.token,
      );
      if (source.token.isCancellationRequested) return;
      if (!status) return item.hide();
      item.text = status.text;
      item.tooltip = `${status.tooltip}\n${l10n.t('Click for the batch sheet.')}`;
      item.accessibilityInformation = {
        label: l10n.t('{0}. Opens the batch sheet.', status.text),
        role: 'button',
      };
      item.show();
    } finally {
      source.dispose();
      if (asking === source) asking = undefined;
    }
  });

  const subscriptions = [
    cursor.onDidMove(() => void ask()),
    wire.onChanged((uris) => {
      if (cursor.place && uris.includes(cursor.place.uri)) void ask();
    }),
    item,
  ];
  return {
    refresh: () => void ask(),
    dispose: () => {
      asking?.cancel();
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
}
