import type { TablesPage } from '../../server/protocol.ts';

/** What a page of tables is shown. */
export type ToTables =
  | { readonly type: 'tables'; readonly page: TablesPage; readonly print: string }
  /** There is none: what is so, and what to do. */
  | { readonly type: 'none'; readonly what: string; readonly cure: string };

export interface FromTables {
  readonly type: 'ready' | 'print';
}
