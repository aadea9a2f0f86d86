import type { Block } from '../../syntax/tree.ts';
import type { Span } from '../../text/span.ts';

/** The words of a line without the blanks around them and the comment behind them. */
export function wordsOf(block: Block, line: number): Span {
  const tokens =
    block.lines[line]?.tokens.filter((token) => token.kind !== 'blank' && token.kind !== 'comment') ?? [];
  return { start: tokens[0]?.start ?? 0, end: tokens[tokens.length - 1]?.end ?? 0 };
}
