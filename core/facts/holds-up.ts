import type { Finding } from '../rules/engine/finding.ts';
import { sectionAt } from '../syntax/line-place.ts';
import type { Block } from '../syntax/tree.ts';

/**
 * Whether a finding holds up what is worked out of a formula: an error does, but for one in a trial, which is a record of a day
 * gone by and changes no weight. `firstLine` is where the formula’s block begins in its file.
 */
export function holdsUp(
  block: Block,
  firstLine: number,
  { level, place }: Pick<Finding, 'level' | 'place'>,
): boolean {
  return level === 'error' && sectionAt(block, place.line - firstLine)?.kind !== 'trial';
}
