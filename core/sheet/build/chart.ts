/**
 * A chart, drawn and told. The drawings are SVG with classes and `currentColor` alone, so that a page in any theme and
 * paper show the same; they hold no script, no style and no link. Nothing is told by colour: each has its words, and the
 * table says the same to who cannot see it.
 */
export interface SheetChart {
  readonly kind: 'mixing' | 'timeline' | 'composition';
  readonly title: string;
  /** The chart in a sentence or two; the drawings' own description. */
  readonly description: string;
  /** SVG for a column from about 300 px wide, and for one from about 560 px or paper; show one of them. */
  readonly narrow: string;
  readonly wide: string;
  /** What the drawing shows, as a table. */
  readonly table: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}
