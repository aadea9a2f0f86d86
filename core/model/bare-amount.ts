import { memoByBlock } from '../syntax/block-memo.ts';
import { readNumber } from '../syntax/quantity.ts';
import type { Block, ParsedLine } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';

/** What a number without a unit means: a weight, or a share of the flour. */
export type BareAmount =
  | { readonly kind: 'mass'; readonly grams: number }
  | { readonly kind: 'fraction'; readonly fraction: number };

/**
 * What an amount without a unit means. Grams, as in `water 680`, where one number of its section is above any percent that a baker
 * writes, or another line of it has a weight; percent where several such numbers stand beside a percent, or those of its first lines come
 * to the 100 that flour is. Nothing where it may be either. Common practice, no source.
 */
export function bareAmount(block: Block, line: number): BareAmount | undefined {
  return amountByLine(block).get(line);
}

interface Bare {
  readonly at: number;
  readonly number: number;
  readonly isCounted: boolean;
}

const amountByLine = memoByBlock((block: Block): ReadonlyMap<number, BareAmount> => {
  const found = new Map<number, BareAmount>();
  for (const section of [block.top, ...block.subs]) {
    if (section === undefined) continue;
    let isInGrams = false;
    let isInPercent = false;
    let isWhole = false;
    let sum = 0;
    const bare: Bare[] = [];
    for (let at = section.headerLine + 1; at < section.endLine; at++) {
      const one = elementAt(block.lines, at);
      if (one.statement.kind !== 'ingredient') continue;
      const { amount } = one.statement;
      const number = bareNumber(one);
      if (number !== undefined) bare.push({ at, number, isCounted: isCounted(one) });
      isInGrams ||= amount.kind === 'mass' || (amount.kind !== 'count' && (number ?? 0) > mostPercent);
      isInPercent ||= amount.kind === 'fraction';
      // A line that is written whole tells of no other: its neighbour may be half typed.
      sum += number ?? Number.NaN;
      isWhole ||= Math.abs(sum - 100) < 1e-9;
    }
    for (const { at, number, isCounted } of bare) {
      if (isInGrams && !isCounted) found.set(at, { kind: 'mass', grams: number });
      else if (bare.length > 1 && (isWhole || (isInPercent && !isCounted)))
        found.set(at, { kind: 'fraction', fraction: number / 100 });
    }
  }
  return found;
});

/** Above twice the flour no ingredient goes. */
const mostPercent = 200;

function bareNumber({ statement, problems, text }: ParsedLine): number | undefined {
  if (statement.kind !== 'ingredient' || !['unknown', 'count'].includes(statement.amount.kind))
    return undefined;
  const found = problems.find(({ code, fixes }) => code === 'missing-unit' && fixes.length === 2);
  if (found === undefined) return undefined;
  const written = /\d+(?:[.,]\d+)?/.exec(text.slice(found.span.start, found.span.end))?.[0];
  return written === undefined ? undefined : readNumber(written);
}

/** Eggs, of which a number may be so many pieces. */
function isCounted({ problems }: ParsedLine): boolean {
  return problems.some(
    ({ code, message }) => code === 'missing-unit' && message.code === 'missing-unit.counted',
  );
}
