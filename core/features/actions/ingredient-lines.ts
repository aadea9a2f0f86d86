import type { LineModel } from '../../model/formula-model.ts';
import { replacedBy } from '../../model/variant.ts';
import { ownEdits } from '../../rules/engine/variant-edits.ts';
import { amountColumn } from '../../syntax/layout.ts';
import { withEdits } from '../../text/edits.ts';
import type { LineEdit } from '../../text/span.ts';
import type { WholeFormula } from './after.ts';
import type { LineChanges } from './line-changes.ts';

/** Several changes within lines, gathered by line before any is made. */
export class LineEdits {
  private readonly byLine = new Map<number, LineEdit[]>();

  add(line: number, edit: LineEdit): void {
    const list = this.byLine.get(line);
    if (list === undefined) this.byLine.set(line, [edit]);
    else list.push(edit);
  }

  /** All of them, by line. */
  all(): readonly (LineEdit & { readonly line: number })[] {
    return [...this.byLine].flatMap(([line, edits]) => edits.map((edit) => ({ line, ...edit })));
  }

  /** Writes them into a formula's own text, be it a variant, whose lines are counted as it is made whole; false where it has no way to say it. */
  writeOwn({ analysis }: WholeFormula, changes: LineChanges): boolean {
    const own = ownEdits(analysis.resolved.model.block, this.all());
    if (own === undefined) return false;
    for (const line of new Set(own.map((edit) => edit.line))) {
      const here = own.filter((edit) => edit.line === line).sort((one, other) => one.start - other.start);
      const placed = here.map((edit) => ({ ...edit, line: 0 }));
      changes.replace(line, ...withEdits(changes.text(line), placed).split('\n'));
    }
    return true;
  }
}

/** The lines of a formula, in whatever section, that are of one ingredient. */
export function linesOf({ analysis }: WholeFormula, key: string): { line: LineModel; section: string }[] {
  const { model, input } = analysis.resolved;
  return model.sections.flatMap((section) => {
    const read = input.sections.find(({ id }) => id === section.id)?.lines ?? [];
    return section.lines
      .filter(({ id }) => read.some((one) => one.id === id && !one.part && one.key === key))
      .map((line) => ({ line, section: section.id }));
  });
}

/**
 * Calls an ingredient by another name wherever the formula names it: in lines, with the amounts left in their column, in
 * what parts draw, and in what is loaded. Words for a role stay.
 */
export function rename(edits: LineEdits, whole: WholeFormula, key: string, name: string): void {
  const { block } = whole.analysis.resolved.model;
  const { model, input, mixes } = whole.analysis.resolved;
  for (const { line } of linesOf(whole, key)) {
    edits.add(line.line, renamed(line, name));
    // A line of a variant that stood in the place of one of its base would let that one back in.
    if (replacedBy(block, line.line)?.parsed === undefined) continue;
    const end = line.parsed.text.length;
    edits.add(line.line, { start: end, end, insert: `\n  without ${line.statement.name.text}` });
  }
  for (const section of model.sections.slice(1)) {
    const draws = input.sections.find(({ id }) => id === section.id)?.draws ?? [];
    for (const { line, statement } of section.said.get('draws') ?? []) {
      const draw = draws.find(({ id }) => id === `L${line}`);
      if (statement.value?.form !== 'draws' || draw?.of.kind !== 'ingredient' || draw.of.key !== key)
        continue;
      edits.add(line, { ...spanOf(statement.value.name), insert: name });
    }
  }
  const written = new Set(linesOf(whole, key).map(({ line }) => line.statement.name.folded));
  const roles = new Set(input.sections.flatMap(({ lines }) => lines.map(({ role }) => String(role))));
  for (const { loads } of mixes) {
    for (const { line, item, keys } of loads) {
      for (const left of item.allBut ?? [])
        if (written.has(left.folded)) edits.add(line, { ...spanOf(left), insert: name });
      if (item.allBut !== undefined) continue;
      if (keys.length !== 1 || keys[0] !== key || roles.has(item.name.folded)) continue;
      if (block.lines[line]?.statement.kind === 'property')
        edits.add(line, { ...spanOf(item.name), insert: name });
    }
  }
}

function renamed({ parsed, statement }: LineModel, name: string): LineEdit {
  const { start, end } = statement.name;
  const { start: amountStart } = statement.amount;
  const blank = parsed.text.slice(end, amountStart);
  // A comment or a comma may follow a name whose amount is still missing.
  if (blank.trim() !== '' || amountStart <= end) return { start, end, insert: name };
  // A long name had pushed its amount, and gives the column back.
  const column = blank.length === 2 ? Math.min(amountStart, amountColumn) : amountStart;
  return { start, end: amountStart, insert: name.padEnd(Math.max(column - start, name.length + 2)) };
}

const spanOf = ({ start, end }: { start: number; end: number }) => ({ start, end });
