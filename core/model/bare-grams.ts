import { memoByBlock } from '../syntax/block-memo.ts';
import { readNumber } from '../syntax/quantity.ts';
import type { Block, ParsedLine } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';

/**
 * The grams that an amount without a unit means: `water 680` where one number of its section is above any percent that a baker
 * writes, or another line of it has a weight. Nothing where it may be a percentage. Common practice, no source.
 */
export function bareGrams(block: Block, line: number): number | undefined {
  return gramsByLine(block).get(line);
}

const gramsByLine = memoByBlock((block: Block): ReadonlyMap<number, number> => {
  const found = new Map<number, number>();
  for (const section of [block.top, ...block.subs]) {
    if (section === undefined) continue;
    let isInGrams = false;
    const bare: [number, number][] = [];
    for (let at = section.headerLine + 1; at < section.endLine; at++) {
      const one = elementAt(block.lines, at);
      const number = bareNumber(one);
      if (number !== undefined) bare.push([at, number]);
      isInGrams ||= one.statement.kind === 'ingredient' && one.statement.amount.kind === 'mass';
      isInGrams ||= (number ?? 0) > mostPercent;
    }
    if (isInGrams) for (const [at, number] of bare) found.set(at, number);
  }
  return found;
});

/** Above twice the flour no ingredient goes. */
const mostPercent = 200;

function bareNumber({ statement, problems, text }: ParsedLine): number | undefined {
  if (statement.kind !== 'ingredient' || statement.amount.kind !== 'unknown') return undefined;
  const found = problems.find(({ code, fixes }) => code === 'missing-unit' && fixes.length === 2);
  if (found === undefined) return undefined;
  const written = /\d+(?:[.,]\d+)?/.exec(text.slice(found.span.start, found.span.end))?.[0];
  return written === undefined ? undefined : readNumber(written);
}
