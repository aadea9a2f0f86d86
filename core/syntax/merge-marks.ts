import type { Block } from './tree.ts';

/** Whether lines by which git marks the two sides of a merge stand in a block. */
export function holdsMergeMarks({ lines }: Block): boolean {
  return lines.some(({ problems }) => problems.some(({ message }) => message.code === 'unreadable.merge'));
}
