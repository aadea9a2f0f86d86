import type { SheetView, SizeRequest } from '../../server/protocol.ts';

/** What the page tells the extension. */
export type FromPage =
  /** The page stands and can be written to; `state` is what it kept from before a reload. */
  | { readonly type: 'ready'; readonly state?: PageState }
  /** The baker sized this formula; the sheet is asked for anew. */
  | { readonly type: 'size'; readonly uri: string; readonly formula: string; readonly size: SizeRequest }
  /** The baker wants to see this zero-based line in the editor. */
  | { readonly type: 'reveal'; readonly uri: string; readonly line: number };

/** What the extension tells the page. Sequences only grow while a page lives; a page ignores one that has been overtaken. */
export type ToPage =
  | { readonly type: 'sheet'; readonly sequence: number; readonly sheet: SheetView }
  | { readonly type: 'nothing'; readonly sequence: number; readonly why: 'no-formula' | 'no-server' };

/** What outlives a reload: what was shown, and how each formula was sized, by `sizeKey`. */
export interface PageState {
  readonly uri?: string;
  readonly line?: number;
  readonly formula?: string;
  readonly sizes: Readonly<Record<string, SizeRequest>>;
}

/** Names one formula of one file. A line break can stand in neither, so two formulas never share a key. */
export function sizeKey(uri: string, formula: string): string {
  return `${uri}\n${formula}`;
}
