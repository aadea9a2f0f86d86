import type { Quantity } from '../syntax/tree.ts';
import { groupOf } from '../text/element.ts';
import { trimmed } from '../text/figures.ts';
import { type ChosenColumns, unitOfCell } from './column-choice.ts';
import type { AmountColumn, Columns } from './columns.ts';
import type { CellRow } from './delimited.ts';
import { numberCell, plainNumber, quantityOf, type Signs } from './numbers.ts';

/** An amount of a cell, as the notation reads it. */
export interface CellAmount {
  /** As it is written into a formula. */
  readonly text: string;
  readonly quantity: Quantity;
  readonly value: number;
  /** Other cells of its column have units, and this one has none. */
  readonly assumed?: true;
}

/** A row of a table with its cells read. */
export interface ReadRow {
  readonly number: number;
  readonly name: string;
  readonly formula: string;
  readonly part: string;
  readonly kind: string;
  /** The temperature that it goes in at, and words behind its name. */
  readonly celsius?: number;
  readonly remark?: string;
  readonly percent?: CellAmount;
  readonly weight?: CellAmount;
  /** All that the row says, for a comment where it becomes no line. */
  readonly said: string;
  /** Something stands where an amount should, and none could be read. */
  readonly unread: boolean;
}

/** Reads the cells of every row below the heading. */
export function readRows(columns: Columns, chosen: ChosenColumns, signs: Signs): ReadRow[] {
  return columns.body.map((row) => readRow(row, columns, chosen, signs));
}

function readRow(row: CellRow, columns: Columns, chosen: ChosenColumns, signs: Signs): ReadRow {
  const { cells, number } = row;
  const at = (column: number | undefined): string => (column === undefined ? '' : (cells[column] ?? ''));
  const percent = chosen.percent && readCell(chosen.percent, cells, '%', signs, chosen.isFraction);
  const weight = chosen.weight && readCell(chosen.weight, cells, chosen.weightUnit, signs, false);
  const places = [chosen.percent, chosen.weight].flatMap((column) =>
    column === undefined ? [] : [column.at],
  );
  const held = places.map((place) => at(place)).filter((cell) => !/^[-–—.]?$/.test(cell));
  return {
    number,
    name: nameIn(at(columns.name)),
    formula: at(columns.formula),
    part: at(columns.part),
    kind: at(columns.kind),
    ...warmthOf(at(columns.temperature), columns.headings?.[columns.temperature ?? -1] ?? ''),
    ...(at(columns.remark) === '' ? {} : { remark: at(columns.remark) }),
    ...(percent === undefined ? {} : { percent }),
    ...(weight === undefined ? {} : { weight }),
    said: cells.filter((cell) => cell !== '').join('  '),
    unread: held.length > 0 && percent === undefined && weight === undefined,
  };
}

/** The temperature in a cell, in degrees Fahrenheit where the cell or the heading of its column says so. */
function warmthOf(cell: string, heading: string): { readonly celsius?: number } {
  const found = /^([-−]?\d{1,3}(?:[.,]\d{1,2})?)\s*°?\s*([CF]?)$/i.exec(cell);
  if (found === null) return {};
  const degrees = Number(groupOf(found, 1).replace('−', '-').replace(',', '.'));
  const isFahrenheit =
    found[2] === '' ? /°\s*F|\bF\b|fahrenheit/i.test(heading) : found[2]?.toUpperCase() === 'F';
  return { celsius: isFahrenheit ? ((degrees - 32) * 5) / 9 : degrees };
}

/** A name without the marks of a list around it. */
function nameIn(cell: string): string {
  return cell
    .normalize('NFC')
    .replace(/["“”]/g, '')
    .replace(/^'(?=[=+@-])/, '')
    .replace(/^[-–•*·]\s+/, '')
    .replace(/\s*:$/, '')
    .trim();
}

function readCell(
  column: AmountColumn,
  cells: readonly string[],
  otherwise: string,
  signs: Signs,
  isFraction: boolean,
): CellAmount | undefined {
  const cell = numberCell(cells[column.at] ?? '');
  if (cell === undefined) return undefined;
  const unit = unitOfCell(column, cell.unit, cells, otherwise);
  const plain = inOneWay(plainNumber(cell.number, signs));
  const number = isFraction && cell.unit === undefined ? trimmed(Number(plain) * 100, 6) : plain;
  if (unit === undefined) return undefined;
  const quantity = quantityOf(number, unit);
  if (quantity === undefined) return undefined;
  const value = sizeOf(quantity);
  if (value === undefined) return undefined;
  const saysNone = cell.unit === undefined && (column.unitsAt === undefined || !cells[column.unitsAt]);
  return {
    text: unit === '%' ? `${number}%` : `${number} ${unit}`,
    quantity,
    value,
    ...(saysNone && column.unit === undefined && !column.isPercent && !column.isBare
      ? { assumed: true }
      : {}),
  };
}

/** Three decimals behind one to three digits would read as thousands too: a zero more or less, and they do not. */
function inOneWay(number: string): string {
  if (!/^[-+−]?[1-9]\d{0,2}\.\d{3}$/.test(number)) return number;
  const short = number.replace(/\.?0+$/, '');
  return short === number ? `${number}0` : short;
}

/** Percent, grams, millilitres or pieces; `undefined` for what is no amount. */
function sizeOf(quantity: Quantity): number | undefined {
  switch (quantity.kind) {
    case 'fraction':
      return quantity.fraction * 100;
    case 'mass':
      return quantity.grams;
    case 'volume':
      return quantity.millilitres;
    case 'count':
      return quantity.count;
    default:
      return undefined;
  }
}
