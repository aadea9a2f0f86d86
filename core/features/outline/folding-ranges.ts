import type { SourceFile } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Fold } from '../answers.ts';

/** Sections fold under their header, a formula with all that belongs to it, and so do runs of comment lines. */
export function foldsOf(file: SourceFile): Fold[] {
  const folds: Fold[] = [];
  const push = (first: number, end: number): void => {
    let last = end - 1;
    while (last > first && elementAt(file.lines, last).empty) last--;
    if (last > first) folds.push({ firstLine: first, lastLine: last });
  };
  for (const { block, firstLine } of file.blocks) {
    if (block.top !== undefined) push(firstLine + block.top.headerLine, firstLine + block.lines.length);
    for (const section of block.subs) push(firstLine + section.headerLine, firstLine + section.endLine);
  }
  let start = -1;
  file.lines.forEach((line, index) => {
    const comment = line.empty && line.tokens.some((token) => token.kind === 'comment');
    if (comment && start < 0) start = index;
    if (comment && index < file.lines.length - 1) return;
    const last = comment ? index : index - 1;
    if (start >= 0 && last > start) folds.push({ firstLine: start, lastLine: last, comment: true });
    start = -1;
  });
  return folds.sort((one, other) => one.firstLine - other.firstLine);
}
