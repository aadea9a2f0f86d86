import { foldName } from '../text/names.ts';
import { message } from '../words/message.ts';
import type { CellRow, CellTable } from './delimited.ts';
import { listed, type Notes } from './notes.ts';
import { numberCell } from './numbers.ts';
import {
  isDoughName,
  isOverallName,
  isTotalName,
  sectionKindOf,
  unitOfHeading,
  useOf,
} from './table-words.ts';

/** A column of weights that are those of one part. */
interface PartColumn {
  readonly at: number;
  readonly name: string;
  readonly heading: string;
}

/**
 * A table that has the weights of each part in a column of its own, as one with a column of parts: `levain g`, `final dough g`. What
 * is said of the formula over all is left out, for it is the sum of them.
 */
export function unfoldedParts(table: CellTable, notes: Notes): CellTable {
  const first = table.rows.findIndex(({ cells }) => cells.filter((cell) => isAmount(cell)).length > 0);
  const head = table.rows[first - 1];
  if (first < 1 || head === undefined) return table;
  const names = table.rows
    .slice(0, first)
    .flatMap(({ cells }) => cells.filter((cell) => useOf(cell) === 'name'));
  if (names.length > 1) return table;
  const above = first > 1 ? table.rows[first - 2] : undefined;
  const columns = partColumns(head, above);
  const parts = columns.filter(({ name }) => !isOverallName(name));
  if (parts.length < 2 || !parts.some(({ name }) => isPartName(name))) return table;
  const isAboveOfParts = above !== undefined && columns.some(({ name }) => above.cells.includes(name));
  const title = table.rows.slice(0, isAboveOfParts ? first - 2 : first - 1);
  const nameAt = nameColumn(table.rows.slice(first), new Set(columns.map(({ at }) => at)));
  notes.say(message('import.parts-in-columns', { parts: listed(parts.map(({ name }) => name)) }));
  const body = table.rows.slice(first);
  return {
    ...table,
    rows: [
      ...title,
      { number: head.number, cells: ['part', 'ingredient', weightHeading(parts)] },
      ...parts.flatMap(({ at, name }) =>
        body.flatMap(({ number, cells }): CellRow[] => {
          const [said, amount] = [cells[nameAt] ?? '', cells[at] ?? ''];
          if (said === '' || !isAmount(amount) || /^[0.,]+$/.test(amount) || isTotalName(said)) return [];
          return [{ number, cells: [name, said, amount] }];
        }),
      ),
    ],
  };
}

/** The columns whose heading names a part beside a unit of weight, in one row or in two. */
function partColumns(head: CellRow, above: CellRow | undefined): PartColumn[] {
  let over = '';
  const twoRows =
    above !== undefined && above.cells.filter((cell) => isPartName(cell) || isOverallName(cell)).length > 1;
  return head.cells.flatMap((heading, at): PartColumn[] => {
    if (twoRows && (above.cells[at] ?? '') !== '') over = above.cells[at]!;
    const unit = unitOfHeading(heading);
    if (unit === '%' || useOf(heading) === 'name') return [];
    const name = twoRows ? over : withoutUnit(heading);
    if (twoRows ? name === '' || unit === undefined : !isPartName(name) && !isOverallName(name)) return [];
    return [{ at, name, heading }];
  });
}

/** `Levain (g)` without its unit. */
function withoutUnit(heading: string): string {
  return heading
    .replace(/[([]\s*\p{L}{1,9}\.?\s*[)\]]\s*$/u, '')
    .replace(/[\s,/]+(?:g|kg|gr|grams?|gramm|oz|lbs?)\.?$/i, '')
    .trim();
}

function weightHeading(parts: readonly PartColumn[]): string {
  const units = new Set(parts.map(({ heading }) => unitOfHeading(heading)));
  const [unit] = units;
  return units.size === 1 && unit !== undefined ? `weight (${unit})` : 'weight';
}

/** Whether a heading names something that is made: a preferment, a soaker, the dough. */
function isPartName(heading: string): boolean {
  const name = withoutUnit(heading);
  if (name === '' || numberCell(name) !== undefined) return false;
  return isDoughName(name) || sectionKindOf(name, '') !== 'part';
}

function nameColumn(rows: readonly CellRow[], taken: ReadonlySet<number>): number {
  const width = Math.max(...rows.map(({ cells }) => cells.length));
  let [best, most] = [0, -1];
  for (let at = 0; at < width; at++) {
    if (taken.has(at)) continue;
    const words = rows.filter(({ cells }) => /\p{L}{2}/u.test(cells[at] ?? '') && !isAmount(cells[at] ?? ''));
    if (words.length <= most) continue;
    [best, most] = [at, words.length];
  }
  return best;
}

function isAmount(cell: string): boolean {
  return foldName(cell) !== '' && numberCell(cell) !== undefined;
}
