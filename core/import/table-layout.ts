import { elementAt, firstOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import type { CellRow, CellTable } from './delimited.ts';
import { listed, type Notes } from './notes.ts';
import { useOf } from './table-words.ts';
import { unfoldedParts } from './unfolded-parts.ts';

/**
 * A table as it would have been written below one another: a cell that was merged over several rows is said in each of
 * them, and parts that stand side by side, as blocks or as columns of weights, stand one below the other.
 */
export function tidied(table: CellTable, notes: Notes): CellTable {
  return carriedDown(stacked(unfoldedParts(table, notes), notes), notes);
}

/** The row of headings: the first that names a column of names. */
function headingOf(rows: readonly CellRow[]): number {
  return rows.findIndex(({ cells }) => cells.some((cell) => useOf(cell) === 'name'));
}

function stacked(table: CellTable, notes: Notes): CellTable {
  const { rows } = table;
  const at = headingOf(rows);
  const head = rows[at];
  if (head === undefined) return table;
  const starts = head.cells.flatMap((cell, column) => (useOf(cell) === 'name' ? [column] : []));
  if (starts.length < 2) return table;
  const width = Math.max(...rows.map(({ cells }) => cells.length));
  const blocks = starts.map((start, index) => ({ start, end: starts[index + 1] ?? width }));
  // Whatever stands left of the first name is of its block.
  blocks[0] = { ...firstOf(blocks), start: 0 };
  const titles = rows.slice(0, at);
  const titleOf = ({ start, end }: (typeof blocks)[number]): CellRow | undefined =>
    titles.findLast(({ cells }) => cells.slice(start, end).some((cell) => cell !== ''));
  const isTitled = blocks.every((block) => titleOf(block) !== undefined);
  // A row above with words over every block names the blocks; any other stays the name of the whole.
  const namesBlocks = new Set(isTitled ? blocks.map(titleOf) : []);
  notes.say(message('import.side-by-side', { count: blocks.length }));
  const uses = (block: (typeof blocks)[number]) =>
    head.cells.slice(block.start, block.end).map((cell) => useOf(cell) ?? cell);
  const order = uses(firstOf(blocks));
  return {
    ...table,
    rows: [
      ...titles.filter((row) => !namesBlocks.has(row)),
      { number: head.number, cells: head.cells.slice(firstOf(blocks).start, firstOf(blocks).end) },
      ...blocks.flatMap((block) => {
        const own = uses(block);
        // A column stands below the one of its use in the first block.
        const cellsOf = ({ cells, number }: CellRow): CellRow => ({
          number,
          cells: order.map((use, column) => {
            const from = own[column] === use ? column : own.indexOf(use);
            return from < 0 ? '' : (cells[block.start + from] ?? '');
          }),
        });
        const title = isTitled ? titleOf(block) : undefined;
        const words = title?.cells.slice(block.start, block.end).find((cell) => cell !== '');
        const name = order.indexOf('name');
        return [
          ...(words === undefined || title === undefined
            ? []
            : [{ number: title.number, cells: order.map((_, column) => (column === name ? words : '')) }]),
          ...rows
            .slice(at + 1)
            .map(cellsOf)
            .filter(({ cells }) => cells.some((cell) => cell !== '')),
        ];
      }),
    ],
  };
}

function carriedDown(table: CellTable, notes: Notes): CellTable {
  const at = headingOf(table.rows);
  const head = table.rows[at]?.cells ?? [];
  const name = head.findIndex((cell) => useOf(cell) === 'name');
  const merged = head.flatMap((cell, column) => {
    const use = useOf(cell);
    return use === 'part' || use === 'formula' || use === 'kind' ? [column] : [];
  });
  const below = table.rows.slice(at + 1);
  const hasGaps = merged.some(
    (column) =>
      (below[0]?.cells[column] ?? '') !== '' && below.some(({ cells }) => (cells[column] ?? '') === ''),
  );
  if (!hasGaps) return table;
  const held = new Map<number, string>();
  const rows = table.rows.map((row, index): CellRow => {
    if (index <= at) return row;
    const cells = [...row.cells];
    for (const column of merged) {
      const said = cells[column] ?? '';
      if (said !== '') held.set(column, said);
      else if ((cells[name] ?? '') !== '') cells[column] = held.get(column) ?? '';
    }
    return { ...row, cells };
  });
  notes.say(
    message('import.merged-cells', { parts: listed(merged.map((column) => elementAt(head, column))) }),
  );
  return { ...table, rows };
}
