import type { TablesPage } from '../../server/protocol.ts';

/** What the page of a plan is shown. */
export type ToPlan =
  | { readonly type: 'plan'; readonly page: TablesPage; readonly print: string }
  /** There is none: what is so, and what to do. */
  | { readonly type: 'none'; readonly what: string; readonly cure: string };

export interface FromPlan {
  readonly type: 'ready' | 'print';
}
