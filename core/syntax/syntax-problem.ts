import type { LineEdit, Span } from '../text/span.ts';
import type { Message } from '../words/message.ts';

/** A cure the line itself knows: edits inside this line. */
export interface LineFix {
  readonly title: Message;
  readonly edits: readonly LineEdit[];
  /** The reading most bakers would mean; at most one a problem. */
  readonly preferred?: true;
}

/** Something wrong with the wording of one line. */
export interface SyntaxProblem {
  readonly code: string;
  readonly message: Message;
  readonly span: Span;
  readonly fixes: readonly LineFix[];
  /** Folded names: when one of them is known, the problem is none (`type 550 500 g`). */
  readonly unlessKnown?: string;
  /** Where what belongs to the line above begins, so that it can be put behind it. */
  readonly joinsAbove?: number;
  /** The property that the line says of the whole formula, as it stands below the formula’s header. */
  readonly ofFormula?: string;
  /** The lines of this section are the formula's own, and belong below its header. */
  readonly movesUp?: true;
}
