import { type Disposable, l10n, Uri } from 'vscode';
import { createSidePage } from '../beside/side-page.ts';
import type { Guard } from '../guard.ts';
import { changesViewType } from '../names.ts';
import { noServerWords } from '../nothing-words.ts';
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
  let uri: string | undefined;
  let following: Disposable | undefined;
  const page = createSidePage<ToChanges, FromChanges>({
    ...{
      guard,
      extensionUri,
      viewType: changesViewType,
      title: l10n.t('What Changed'),
      script: 'changes.js',
    },
    answer: (message) => {
      if (message.type === 'ready') return refresh();
      return uri === undefined ? undefined : reveal(uri, message.line);
    },
    closed: () => {
      following?.dispose();
      following = undefined;
    },
  });

  const refresh = guard('what changed', async () => {
    if (!page.isOpen || uri === undefined) return;
    const isWanted = page.asking();
    const message = await compared(uri, isWanted);
    if (isWanted()) page.post(message);
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
    const compared = await wire.askCompare({ textDocument: { uri: file }, before: committed.text });
    if (!compared) return { type: 'none', ...noServerWords() };
    const name = target.path.slice(target.path.lastIndexOf('/') + 1);
    const since = l10n.t('{0}, since the last commit, {1}', name, committed.commit);
    return {
      type: 'changes',
      about: since,
      page: compared,
      showLine: l10n.t('Show this line in the editor'),
    };
  };
  const subscription = wire.onChanged((uris) => {
    if (uri !== undefined && uris.includes(uri)) void refresh();
  });

  return {
    refresh: () => void refresh(),
    open(file) {
      uri = file;
      if (page.show()) void refresh();
    },
    dispose() {
      page.dispose();
      following?.dispose();
      subscription.dispose();
    },
  };
}
