import {
  type Disposable,
  l10n,
  type QuickPickItem,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { OverlayParams } from '../../server/protocol.ts';
import { lastCommitted, repositoryOf } from '../changes/git.ts';
import type { Guard } from '../guard.ts';
import { fileName } from '../list/entries.ts';
import { fileNameFor } from '../list/file-name.ts';
import { overlayViewType } from '../names.ts';
import { noServerWords } from '../nothing-words.ts';
import type { FromPlan, ToPlan } from '../plan/messages.ts';
import { dressWebview } from '../preview/dress-webview.ts';
import type { Wire } from '../wire.ts';

export interface OverlayPanel extends Disposable {
  /** Asks what to lay over a formula, and shows them beside the editor. */
  choose(place: { readonly uri: string; readonly formula: string }): Promise<void>;
  refresh(): void;
}

type Laid = OverlayParams['formulas'][number];

interface Choice extends QuickPickItem {
  readonly laid?: () => Promise<Laid | undefined>;
}

/** Formulas, and revisions of them, laid over each other in one chart and one table. It follows every change of their files. */
export function createOverlayPanel(wire: Wire, guard: Guard, extensionUri: Uri): OverlayPanel {
  let panel: WebviewPanel | undefined;
  let formulas: readonly Laid[] = [];
  let asked = 0;

  const refresh = guard('overlay', async () => {
    if (!panel || formulas.length === 0) return;
    asked += 1;
    const own = asked;
    const answer = await wire.askOverlay({ formulas });
    if (own !== asked) return;
    const what = l10n.t('Nothing is laid over another.');
    const message: ToPlan = !answer
      ? { type: 'none', ...noServerWords() }
      : 'page' in answer
        ? { type: 'plan', page: answer.page, print: l10n.t('Save as a Page to Print…') }
        : { type: 'none', what, cure: answer.cannot };
    void panel?.webview.postMessage(message);
  });
  const print = async () => {
    const [first] = formulas;
    const answer = await wire.askOverlay({ formulas });
    if (!first || !answer || !('page' in answer)) return;
    const target = await window.showSaveDialog({
      title: l10n.t('Save the Page to Print It from a Browser'),
      defaultUri: Uri.joinPath(Uri.parse(first.uri, true), '..', `${fileNameFor(first.formula)}.html`),
      filters: { [l10n.t('Page to Print')]: ['html'] },
    });
    if (!target) return;
    await workspace.fs.writeFile(target, new TextEncoder().encode(answer.html));
    void window.showInformationMessage(l10n.t('Saved as {0}.', workspace.asRelativePath(target)));
  };
  const show = () => {
    if (panel) {
      panel.reveal(undefined, true);
      return void refresh();
    }
    panel = window.createWebviewPanel(overlayViewType, l10n.t('Laid Over'), {
      viewColumn: ViewColumn.Beside,
      preserveFocus: true,
    });
    panel.onDidDispose(() => {
      panel = undefined;
      asked += 1;
    });
    panel.webview.onDidReceiveMessage(
      guard('overlay', async ({ type }: FromPlan) => {
        await (type === 'print' ? print() : refresh());
      }),
    );
    dressWebview(panel, extensionUri, 'plan.js', l10n.t('Laid Over'));
  };
  const subscription = wire.onChanged(() => void refresh());

  return {
    refresh: () => void refresh(),
    async choose(place) {
      const chosen = await window.showQuickPick(await choicesOf(wire, place), {
        title: l10n.t('Lay Over {0}', place.formula),
        placeHolder: l10n.t('Other formulas, variants, or the same one as git has it'),
        canPickMany: true,
        matchOnDescription: true,
      });
      if (!chosen || chosen.length === 0) return;
      const over: Laid[] = [];
      for (const { laid } of chosen) {
        const one = await laid?.();
        if (one) over.push(one);
      }
      if (over.length === 0) return;
      formulas = [place, ...over];
      show();
    },
    dispose() {
      panel?.dispose();
      subscription.dispose();
    },
  };
}

/** The formula as git has it, then all others: those of its own file first. */
async function choicesOf(
  wire: Wire,
  place: { readonly uri: string; readonly formula: string },
): Promise<readonly Choice[]> {
  const overview = await wire.askOverview();
  const others = (overview?.entries ?? []).filter(
    ({ kind, name, uri }) => kind === 'formula' && !(name === place.formula && uri === place.uri),
  );
  const isHere = ({ uri }: { readonly uri: string }) => Number(uri === place.uri);
  return [
    {
      label: l10n.t('{0} as the last commit has it', place.formula),
      laid: async () => {
        const committed = await lastCommitted(Uri.parse(place.uri, true));
        if ('what' in committed) return refused(`${committed.what} ${committed.cure}`);
        return { ...place, other: { text: committed.text, revision: committed.commit } };
      },
    },
    { label: l10n.t('{0} as another revision has it…', place.formula), laid: () => atRevision(place) },
    ...others
      .toSorted((one, other) => isHere(other) - isHere(one))
      .map(({ name, uri, detail }) => ({
        label: name,
        description: [detail, fileName(uri)].filter(Boolean).join(' · '),
        laid: async () => ({ uri, formula: name }),
      })),
  ];
}

async function atRevision(place: {
  readonly uri: string;
  readonly formula: string;
}): Promise<Laid | undefined> {
  const uri = Uri.parse(place.uri, true);
  const found = await repositoryOf(uri);
  if (!('repository' in found)) return refused(`${found.what} ${found.cure}`);
  const revision = await window.showInputBox({
    title: l10n.t('Which revision of {0}?', place.formula),
    prompt: l10n.t('A commit, a tag, or so many commits back: HEAD~3'),
    value: 'HEAD~1',
  });
  if (!revision) return undefined;
  try {
    const text = await found.repository.show(revision.trim(), uri.fsPath);
    return { ...place, other: { text, revision: revision.trim() } };
  } catch {
    return refused(l10n.t('Git has no {0} of this file.', revision));
  }
}

function refused(why: string): undefined {
  void window.showInformationMessage(why);
  return undefined;
}
