import type { Place } from '../text/span.ts';

/**
 * What an editor is told, in the words of an editor but of none in particular: zero-based lines, UTF-16 columns,
 * plain serialisable data. The server turns these into protocol messages and adds nothing of its own.
 */
export interface HoverAnswer {
  readonly place: Place;
  readonly markdown: string;
  /** It is of a programme that has a map of the gap, and a client that can show it may link to it in these words. */
  readonly mapLink?: string;
  /** The dough at the stage that it tells of, an image in Markdown for a client that shows images in hovers. */
  readonly picture?: string;
}

/** What a hint tells of: an ingredient line, all of a formula, a part of it, or a line of a mixing programme. */
export type HintKind = 'amount' | 'totals' | 'part' | 'mixing';

/** A figure at the end of a line; `hintDetail` says what it stands on. */
export interface Hint {
  readonly line: number;
  readonly column: number;
  readonly label: string;
  readonly kind: HintKind;
}

export type SymbolKind =
  | 'formula'
  | 'part'
  | 'mix'
  | 'process'
  | 'trial'
  | 'flour'
  | 'ingredient'
  | 'mixer'
  | 'bakery'
  | 'plan'
  | 'experiment'
  | 'line';

export interface SymbolNode {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly place: Place;
  readonly firstLine: number;
  readonly lastLine: number;
  readonly lastColumn: number;
  readonly children: readonly SymbolNode[];
}

export type CompletionKind =
  | 'section'
  | 'property'
  | 'ingredient'
  | 'part'
  | 'formula'
  | 'mixer'
  | 'unit'
  | 'word'
  | 'rule';

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  readonly documentation?: string;
  /** The text that takes the place of `replace`; a snippet where `snippet` is set. */
  readonly insert: string;
  readonly snippet?: true;
  /** What has been typed of it, up to the cursor. */
  readonly replace: Place;
  /** The column where the word ends that the cursor stands in; absent where it stands at the end of one. */
  readonly wordEnd?: number;
  /** The blanks before a header go, for headers stand at the margin. */
  readonly outdent?: Place;
  readonly sort?: string;
}

export interface Fold {
  readonly firstLine: number;
  readonly lastLine: number;
  readonly comment?: true;
}
