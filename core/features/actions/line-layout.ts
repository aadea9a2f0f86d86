import type { SectionModel } from '../../model/formula-model.ts';
import { amountColumn, indent, upTo } from '../../syntax/layout.ts';
import type { ParsedLine } from '../../syntax/tree.ts';
import { entryOf } from '../../text/element.ts';
import { indentOf } from '../../text/indent.ts';

/** How the lines of a section are laid out: what stands before a line, and the column of the amounts. */
export interface Layout {
  readonly indent: string;
  readonly column: number;
}

/** The layout of the canonical form. */
export const canonical: Layout = { indent, column: amountColumn };

/** The layout that most lines of a section have; the canonical one where there is nothing to go by. */
export function layoutOf(section: Pick<SectionModel, 'lines'> | undefined): Layout {
  const lines = section?.lines ?? [];
  const indents = lines.map(({ parsed }) => indentOf(parsed.text));
  const columns = lines.flatMap(({ statement }) =>
    statement.amount.kind === 'unknown' ? [] : [statement.amount.start],
  );
  return {
    indent: mostCommon(indents) ?? canonical.indent,
    column: mostCommon(columns) ?? canonical.column,
  };
}

/** A line that names something and says how much of it. Longer names push only their own line. */
export function ingredientLine(name: string, amount: string, { indent, column }: Layout): string {
  return upTo(indent + name, column) + amount;
}

/** The comment of a line with the blanks before it, empty where it has none. */
export function commentOf({ text, tokens }: ParsedLine): string {
  const comment = tokens.find((token) => token.kind === 'comment');
  if (comment === undefined) return '';
  return text.slice(text.slice(0, comment.start).trimEnd().length);
}

function mostCommon<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let best: T | undefined;
  for (const [value, count] of counts) if (best === undefined || count > entryOf(counts, best)) best = value;
  return best;
}
