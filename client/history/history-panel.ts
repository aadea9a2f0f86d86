import { type Disposable, l10n, Uri, workspace } from 'vscode';
import { createSidePage } from '../beside/side-page.ts';
import { repositoryOf } from '../changes/git.ts';
import type { Guard } from '../guard.ts';
import { historyViewType, languageId } from '../names.ts';
import { noServerWords } from '../nothing-words.ts';
import type { FollowedPlace } from '../preview/follower.ts';
import type { Wire } from '../wire.ts';
import type { FromHistory, ToHistory } from './messages.ts';

/** So long a hand rests before what was typed is read. */
const restMilliseconds = 700;

export interface HistoryPanel extends Disposable {
  /** Shows beside the editor what became of a formula over the revisions of git. */
  open(place: FollowedPlace): void;
  /** Asks anew, for instance once the server runs again. */
  refresh(): void;
}

/** What became of the figures of a formula: a row a revision and a chart a figure, as the server works them out. */
export function createHistoryPanel(wire: Wire, guard: Guard, extensionUri: Uri): HistoryPanel {
  let place: FollowedPlace | undefined;
  let following: Disposable | undefined;
  /** The commit that was shown last: only another one is another history. */
  let head: string | undefined;
  /** What the page shows already: it is not blanked while the same is read anew. */
  let shown: string | undefined;
  let typed: ReturnType<typeof setTimeout> | undefined;

  const page = createSidePage<ToHistory, FromHistory>({
    ...{ guard, extensionUri, viewType: historyViewType, title: l10n.t('History'), script: 'history.js' },
    answer: () => refresh(),
    closed: () => {
      following?.dispose();
      following = undefined;
      shown = undefined;
      clearTimeout(typed);
    },
  });
  const refresh = guard('history of the formula', async () => {
    if (!page.isOpen || !place) return;
    const isWanted = page.asking();
    const show = (message: ToHistory): void => {
      if (isWanted()) page.post(message);
    };
    const found = await repositoryOf(Uri.parse(place.uri, true));
    if ('what' in found) {
      show({ type: 'none', ...found });
      return;
    }
    const { state } = found.repository;
    if (!isWanted()) return;
    head = state.HEAD?.commit;
    following?.dispose();
    following = state.onDidChange(() => {
      if (state.HEAD?.commit !== head) void refresh();
    });
    const { uri, line, formula } = place;
    const what = JSON.stringify([uri, formula]);
    if (what !== shown)
      show({ type: 'reading', what: l10n.t('Reading the revisions of {0} …', place.formula ?? '') });
    shown = what;
    const answer = await wire.askHistory({
      ...{ textDocument: { uri }, line },
      ...(formula === undefined ? {} : { formula }),
    });
    if (!answer) show({ type: 'none', ...noServerWords() });
    else if ('page' in answer) show({ type: 'history', page: answer.page });
    else show({ type: 'none', what: l10n.t('There is no history to show.'), cure: answer.cannot });
  });

  // The last row is of the text as it stands: it follows what is typed, once the hand rests.
  const follower = workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
    if (!page.isOpen || document.languageId !== languageId || contentChanges.length === 0) return;
    clearTimeout(typed);
    typed = setTimeout(() => void refresh(), restMilliseconds);
  });

  return {
    refresh: () => void refresh(),
    open(next) {
      place = next;
      if (page.show()) void refresh();
    },
    dispose() {
      page.dispose();
      following?.dispose();
      follower.dispose();
      clearTimeout(typed);
    },
  };
}
