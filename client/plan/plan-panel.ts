import { type Disposable, l10n, Uri, ViewColumn, type WebviewPanel, window, workspace } from 'vscode';
import type { Guard } from '../guard.ts';
import { fileNameFor } from '../list/file-name.ts';
import { planViewType } from '../names.ts';
import { noServerWords } from '../nothing-words.ts';
import { dressWebview } from '../preview/dress-webview.ts';
import type { Wire } from '../wire.ts';
import type { FromPlan, ToPlan } from './messages.ts';

export interface PlanPanel extends Disposable {
  /** Shows beside the editor the plan at a line, or of that name. */
  open(place: PlanPlace): void;
  /** Asks anew, for instance once the server runs again. */
  refresh(): void;
}

export interface PlanPlace {
  readonly uri: string;
  readonly line: number;
  readonly plan?: string;
}

/** A production run beside its text: who and what is busy when, batches, stores. It follows every change of its files. */
export function createPlanPanel(wire: Wire, guard: Guard, extensionUri: Uri): PlanPanel {
  let panel: WebviewPanel | undefined;
  let place: PlanPlace | undefined;
  let asked = 0;

  const ask = async () => {
    if (!place) return null;
    const { uri, line, plan } = place;
    return wire.askPlan({ textDocument: { uri }, line, ...(plan === undefined ? {} : { plan }) });
  };
  const refresh = guard('plan', async () => {
    if (!panel || !place) return;
    asked += 1;
    const own = asked;
    const answer = await ask();
    if (own !== asked || !panel) return;
    // The name stays the plan's while lines above it are typed.
    if (answer && 'page' in answer) place = { ...place, plan: answer.page.title };
    const message: ToPlan = !answer
      ? { type: 'none', ...noServerWords() }
      : 'page' in answer
        ? { type: 'plan', page: answer.page, print: l10n.t('Save as a Page to Print…') }
        : { type: 'none', what: l10n.t('There is no plan here.'), cure: answer.cannot };
    void panel.webview.postMessage(message);
  });
  const print = guard('save the plan', async () => {
    const answer = await ask();
    if (!place || !answer || !('page' in answer)) return;
    const target = await window.showSaveDialog({
      title: l10n.t('Save the Page to Print It from a Browser'),
      defaultUri: Uri.joinPath(Uri.parse(place.uri, true), '..', `${fileNameFor(answer.page.title)}.html`),
      filters: { [l10n.t('Page to Print')]: ['html'] },
    });
    if (!target) return;
    await workspace.fs.writeFile(target, new TextEncoder().encode(answer.html));
    void window.showInformationMessage(l10n.t('Saved as {0}.', workspace.asRelativePath(target)));
  });

  const following = wire.onChanged(() => void refresh());
  return {
    refresh: () => void refresh(),
    open(next) {
      place = next;
      if (panel) {
        panel.reveal(undefined, true);
        void refresh();
        return;
      }
      panel = window.createWebviewPanel(planViewType, l10n.t('Plan'), {
        viewColumn: ViewColumn.Beside,
        preserveFocus: true,
      });
      panel.onDidDispose(() => {
        panel = undefined;
        asked += 1;
      });
      panel.webview.onDidReceiveMessage(
        guard('plan', async ({ type }: FromPlan) => {
          await (type === 'print' ? print() : refresh());
        }),
      );
      dressWebview(panel, extensionUri, 'plan.js', l10n.t('Plan'));
    },
    dispose() {
      panel?.dispose();
      following.dispose();
    },
  };
}
