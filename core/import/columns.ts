import { elementAt } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import type { CellRow, CellTable } from './delimited.ts';
import { numberCell } from './numbers.ts';
import { type ColumnUse, titleIn, unitOf, unitOfHeading, useOf } from './table-words.ts';

/** A column with amounts. */
export interface AmountColumn {
  readonly at: number;
  /** As the heading has it; empty where it has none. */
  readonly title: string;
  /** The unit of cells without one, where heading or another column say it. */
  readonly unit?: string;
  /** A column of units beside it. */
  readonly unitsAt?: number;
  /** Whether heading or cells say that these are percentages. */
  readonly isPercent: boolean;
  /** Neither the heading nor any cell says a unit. */
  readonly isBare: boolean;
}

/** What the columns of a table hold. */
export interface Columns {
  readonly name: number;
  /** How the column of names was known. */
  readonly nameByHeading: boolean;
  readonly headings?: readonly string[];
  readonly part?: number;
  readonly kind?: number;
  readonly formula?: number;
  readonly temperature?: number;
  readonly remark?: number;
  readonly amounts: readonly AmountColumn[];
  /** The one cell above the heading, if there is one. */
  readonly title?: string;
  readonly body: readonly CellRow[];
}

/** Finds out what each column of a table is for; `undefined` where there are no names with numbers. */
export function columnsOf({ rows }: CellTable): Columns | undefined {
  const first = rows.findIndex(({ cells }) => cells.some((cell) => numberCell(cell) !== undefined));
  if (first < 0) return undefined;
  const above = rows.slice(0, first);
  const headAt = headingOf(above);
  const headings = headAt < 0 ? undefined : elementAt(above, headAt).cells;
  const lone = above
    .slice(0, headAt < 0 ? above.length : headAt)
    .find(({ cells }) => titleIn(cells) !== undefined);
  const isTitle =
    lone !== undefined && (headAt >= 0 || (above.length === 1 && !isPartHeading(lone, rows.slice(first))));
  const body = rows.filter((row, index) => index > headAt && !(isTitle && row === lone));
  const width = Math.max(...rows.map(({ cells }) => cells.length));
  const said = Array.from({ length: width }, (_, at) => useOf(headings?.[at] ?? ''));
  const bySaid = (use: ColumnUse): number | undefined => {
    const at = said.indexOf(use);
    return at < 0 ? undefined : at;
  };
  const amounts = amountColumns(body, width, headings ?? [], said);
  const taken = new Set(amounts.map(({ at }) => at));
  const named = bySaid('name');
  const name = named ?? mostWords(body, width, (at) => taken.has(at) || said[at] !== undefined);
  if (name === undefined || amounts.length === 0) return undefined;
  const [part, kind, formula] = [bySaid('part'), bySaid('kind'), bySaid('formula')];
  const [temperature, remark] = [bySaid('temperature'), bySaid('remark')];
  return {
    name,
    nameByHeading: named !== undefined,
    ...(headings === undefined ? {} : { headings }),
    ...(part === undefined ? {} : { part }),
    ...(kind === undefined ? {} : { kind }),
    ...(formula === undefined || formula === name ? {} : { formula }),
    ...(temperature === undefined ? {} : { temperature }),
    ...(remark === undefined ? {} : { remark }),
    amounts,
    ...(isTitle ? { title: titleIn(lone.cells)! } : {}),
    body,
  };
}

const filled = (cells: readonly string[]): number => cells.filter((cell) => cell !== '').length;
const isHeading = (cells: readonly string[]): boolean => cells.some((cell) => useOf(cell) === 'name');

/**
 * The row of headings above the first number: the lowest of several cells, and not a line whose amount cannot be read,
 * which has a name where the heading says that names stand.
 */
function headingOf(above: readonly CellRow[]): number {
  const lowest = above.findLastIndex(({ cells }) => filled(cells) > 1 || isHeading(cells));
  const named = above.findLastIndex(({ cells }) => isHeading(cells));
  const names = named < 0 ? -1 : elementAt(above, named).cells.findIndex((cell) => useOf(cell) === 'name');
  const isLine = ({ cells }: CellRow): boolean => filled(cells) > 1 && (cells[names] ?? '') !== '';
  return named >= 0 && above.slice(named + 1).some(isLine) ? named : lowest;
}

/** Whether a lone name opens a part and names no formula: others like it follow, or a later row takes it in. */
function isPartHeading(lone: CellRow, below: readonly CellRow[]): boolean {
  const name = foldName(lone.cells.find((cell) => cell !== '')!);
  const opensLines = (at: number): boolean =>
    filled(below[at + 1]?.cells ?? []) > 1 && filled(elementAt(below, at).cells) === 1;
  return below.some(({ cells }, at) => opensLines(at) || cells.some((cell) => foldName(cell) === name));
}

function amountColumns(
  body: readonly CellRow[],
  width: number,
  headings: readonly string[],
  said: readonly (ColumnUse | undefined)[],
): AmountColumn[] {
  const cellsAt = (at: number): string[] =>
    body.map(({ cells }) => cells[at] ?? '').filter((cell) => cell !== '');
  const holdsUnits = (at: number): boolean => {
    const cells = cellsAt(at);
    return cells.length > 0 && cells.filter((cell) => unitOf(cell) !== undefined).length >= cells.length / 2;
  };
  const found: AmountColumn[] = [];
  for (let at = 0; at < width; at++) {
    const use = said[at];
    if (use !== undefined && use !== 'percent' && use !== 'amount') continue;
    const cells = cellsAt(at);
    const numbers = cells.map(numberCell).filter((cell) => cell !== undefined);
    if (numbers.length === 0 || numbers.length < cells.length / 2) continue;
    const unit = unitOfHeading(headings[at] ?? '');
    const inCells = numbers.filter((cell) => cell.unit !== undefined);
    const beside = [at + 1, at - 1].find((next) => next >= 0 && next < width && holdsUnits(next));
    const percents = inCells.filter((cell) => cell.unit === '%').length;
    found.push({
      at,
      title: headings[at] ?? '',
      ...(unit === undefined ? {} : { unit }),
      ...(inCells.length > 0 || unit !== undefined || beside === undefined ? {} : { unitsAt: beside }),
      isPercent: unit === '%' || percents > (unit === undefined ? inCells : numbers).length / 2,
      isBare: unit === undefined && inCells.length === 0 && beside === undefined,
    });
  }
  return found;
}

/** The column in which most cells are words, the leftmost of those with as many. */
function mostWords(
  body: readonly CellRow[],
  width: number,
  isTaken: (at: number) => boolean,
): number | undefined {
  let best: number | undefined;
  let most = 0;
  for (let at = 0; at < width; at++) {
    if (isTaken(at)) continue;
    const words = body.filter(({ cells }) => isName(cells[at] ?? '')).length;
    if (words <= most) continue;
    best = at;
    most = words;
  }
  return best;
}

function isName(cell: string): boolean {
  return /\p{L}{2}/u.test(cell) && numberCell(cell) === undefined && unitOf(cell) === undefined;
}
