import { sectionAt } from '../syntax/line-place.ts';
import { readNumber } from '../syntax/quantity.ts';
import type { Block, ParsedLine } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';

/**
 * The grams that an amount without a unit means: `water 680` where one number of its section is above any percent that a baker
 * writes, or another line of it has a weight. Nothing where it may be a percentage. Common practice, no source.
 */
export function bareGrams(block: Block, line: number): number | undefined {
  const own = bareNumber(elementAt(block.lines, line));
  const section = own === undefined ? undefined : sectionAt(block, line);
  if (own === undefined || section === undefined) return undefined;
  for (let at = section.headerLine + 1; at < section.endLine; at++) {
    const other = elementAt(block.lines, at);
    const isWeighed = other.statement.kind === 'ingredient' && other.statement.amount.kind === 'mass';
    if (isWeighed || (bareNumber(other) ?? 0) > mostPercent) return own;
  }
  return undefined;
}

/** Above twice the flour no ingredient goes. */
const mostPercent = 200;

function bareNumber({ statement, problems, text }: ParsedLine): number | undefined {
  if (statement.kind !== 'ingredient' || statement.amount.kind !== 'unknown') return undefined;
  const found = problems.find(({ code, fixes }) => code === 'missing-unit' && fixes.length === 2);
  if (found === undefined) return undefined;
  const written = /\d+(?:[.,]\d+)?/.exec(text.slice(found.span.start, found.span.end))?.[0];
  return written === undefined ? undefined : readNumber(written);
}
