import { type Disposable, l10n, type Uri } from 'vscode';
import type { Guard } from '../guard.ts';
import { planViewType } from '../names.ts';
import { createTablesPanel } from '../tables/tables-panel.ts';
import type { Wire } from '../wire.ts';

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

/** A production run beside its text: who and what is busy when, batches, stores. */
export function createPlanPanel(wire: Wire, guard: Guard, extensionUri: Uri): PlanPanel {
  const { show, refresh, dispose } = createTablesPanel<PlanPlace>({
    ...{ wire, guard, extensionUri, viewType: planViewType, title: l10n.t('Plan') },
    ask: ({ uri, line, plan }) =>
      wire.askPlan({ textDocument: { uri }, line, ...(plan === undefined ? {} : { plan }) }),
    settled: (place, page) => ({ ...place, plan: page.title }),
    printed: ({ uri }, page) => ({ uri, name: page.title }),
    none: l10n.t('There is no plan here.'),
  });
  return { open: show, refresh, dispose };
}
