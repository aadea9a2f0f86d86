import type { FormulaSummary } from '../compare/file-summary.ts';
import { pair } from '../compare/pairs.ts';
import { foldName } from '../text/names.ts';

/**
 * Which of the formulas of an earlier state one of a later state was: the one of its name, else the one whose lines it has, if
 * that one is no longer there by its own name. Undefined where it is new.
 */
export function formerSelf(
  before: readonly FormulaSummary[],
  after: readonly FormulaSummary[],
  file: string,
  name: string,
): FormulaSummary | undefined {
  const folded = foldName(name);
  return pair(before, after, 'one').find(([, now]) => now?.file === file && now.folded === folded)?.[0];
}
