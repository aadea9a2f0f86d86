import type { HistoryPage } from '../../server/protocol.ts';

/** What the page of a history is shown. */
export type ToHistory =
  | { readonly type: 'history'; readonly page: HistoryPage }
  /** Git is being read; a long history takes a moment. */
  | { readonly type: 'reading'; readonly what: string }
  /** There is none: what is so, and what to do. */
  | { readonly type: 'none'; readonly what: string; readonly cure: string };

export interface FromHistory {
  readonly type: 'ready';
}
