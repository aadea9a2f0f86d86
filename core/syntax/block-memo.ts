import type { Block } from './tree.ts';

/** As many lines as the blocks have that are remembered for certain: those of the longest file anybody works on, several times. */
const mostLines = 20_000;

/**
 * What is made of a block, remembered for the blocks asked about last. Nothing is held of a block that is there no more, nor of
 * thousands of files that nobody works on: what was not asked for again, while others of so many lines were, is made anew.
 */
export function memoByBlock<T>(make: (block: Block) => T): (block: Block) => T {
  let recent = new WeakMap<Block, { readonly made: T }>();
  let older = recent;
  let lines = 0;
  return (block) => {
    const known = recent.get(block);
    if (known !== undefined) return known.made;
    const kept = older.get(block) ?? { made: make(block) };
    lines += 1 + block.lines.length;
    if (lines > mostLines) {
      older = recent;
      recent = new WeakMap();
      lines = 1 + block.lines.length;
    }
    recent.set(block, kept);
    return kept.made;
  };
}
