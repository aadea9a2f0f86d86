import type { Analysis } from '../analysis/analysis.ts';
import type { Block } from '../syntax/tree.ts';
import { foldName } from '../text/names.ts';

/**
 * The figure of a history that a line of a formula's block is about, by its key: the share of its ingredient, of the header of the
 * formula the hydration, of that of a mix the minutes. Undefined where a line is about none.
 */
export function figureAt(block: Block, line: number, { solved }: Analysis): string | undefined {
  const statement = block.lines[line]?.statement;
  if (statement?.kind === 'header') {
    if (statement.section === 'formula') return 'hydration';
    return statement.section === 'mix' ? 'mix-minutes' : undefined;
  }
  if (statement?.kind !== 'ingredient') return undefined;
  const { folded } = statement.name;
  const found = solved?.overall.find(({ name }) => foldName(name) === folded);
  if (found === undefined) return undefined;
  if (found.role === 'salt') return 'salt';
  return found.role === 'water' ? 'hydration' : `ingredient: ${found.name}`;
}
