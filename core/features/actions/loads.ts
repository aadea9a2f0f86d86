import { doughOf } from '../../calc/formula/formula-input.ts';
import type { ResolvedLoad } from '../../model/resolve-mix.ts';
import { elementAt } from '../../text/element.ts';
import type { ActionContext } from './action.ts';
import type { WholeFormula } from './after.ts';
import type { LineChanges } from './line-changes.ts';

/** The lines of the dough’s own programmes that put something into the bowl, with what each of their items stands for. */
export function doughLoads({ analysis }: WholeFormula): Map<number, ResolvedLoad[]> {
  const { mixes, input } = analysis.resolved;
  const byLine = new Map<number, ResolvedLoad[]>();
  for (const mix of mixes) {
    if (mix.sectionId !== doughOf(input).id) continue;
    for (const load of mix.loads) byLine.set(load.line, [...(byLine.get(load.line) ?? []), load]);
  }
  return byLine;
}

/** Writes the items of a `load` or `add` line anew; a line without items goes. */
export function writeLoads(
  changes: LineChanges,
  { block }: ActionContext,
  line: number,
  items: readonly string[],
): void {
  const { statement } = elementAt(block.lines, line);
  if (statement.kind !== 'property') return;
  if (items.length === 0) {
    changes.remove(line);
    return;
  }
  changes.edit(line, {
    start: statement.valueSpan.start,
    end: statement.valueSpan.end,
    insert: items.join(', '),
  });
}

/** An item as the baker wrote it. */
export function itemText({ block }: ActionContext, { line, item }: ResolvedLoad): string {
  return elementAt(block.lines, line).text.slice(item.start, item.end);
}
