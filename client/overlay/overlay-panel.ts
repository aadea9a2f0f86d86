import { type Disposable, l10n, type QuickPickItem, Uri, window } from 'vscode';
import type { OverlayParams } from '../../server/protocol.ts';
import { lastCommitted, repositoryOf } from '../changes/git.ts';
import type { Guard } from '../guard.ts';
import { fileName } from '../list/entries.ts';
import { overlayViewType } from '../names.ts';
import { createTablesPanel } from '../tables/tables-panel.ts';
import type { Wire } from '../wire.ts';

export interface OverlayPanel extends Disposable {
  /** Asks what to lay over a formula, and shows them beside the editor. */
  choose(place: { readonly uri: string; readonly formula: string }): Promise<void>;
  refresh(): void;
}

type Laid = OverlayParams['formulas'][number];
/** A formula, and what is laid over it. */
type Overlaid = readonly [Laid, ...Laid[]];

interface Choice extends QuickPickItem {
  readonly laid?: () => Promise<Laid | undefined>;
}

/** Formulas, and revisions of them, laid over each other in one chart and one table. */
export function createOverlayPanel(wire: Wire, guard: Guard, extensionUri: Uri): OverlayPanel {
  const { show, refresh, dispose } = createTablesPanel<Overlaid>({
    ...{ wire, guard, extensionUri, viewType: overlayViewType, title: l10n.t('Laid Over') },
    ask: (formulas) => wire.askOverlay({ formulas }),
    printed: ([{ uri, formula }]) => ({ uri, name: formula }),
    none: l10n.t('Nothing is laid over another.'),
  });
  return {
    refresh,
    dispose,
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
      show([place, ...over]);
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
