import type { ComparisonPage } from '../../server/protocol.ts';

/** What the page of changes is shown. */
export type ToChanges =
  | {
      readonly type: 'changes';
      /** Which file, and since when. */
      readonly about: string;
      readonly page: ComparisonPage;
      /** What a name does when it is pressed. */
      readonly showLine: string;
    }
  /** There is nothing to compare with: what is so, and what to do. */
  | { readonly type: 'none'; readonly what: string; readonly cure: string };

export type FromChanges =
  | { readonly type: 'ready' }
  /** Shows this zero-based line of the file as it is now. */
  | { readonly type: 'reveal'; readonly line: number };
