import type { AmountColumn, Columns } from './columns.ts';
import { type NumberCell, numberCell, plainNumber, type Signs } from './numbers.ts';
import { unitOf } from './table-words.ts';

/** Which columns the amounts are taken from. */
export interface ChosenColumns {
  readonly percent?: AmountColumn;
  /** Numbers of the column of percentages are fractions: 0.65 for 65 %. */
  readonly isFraction: boolean;
  readonly weight?: AmountColumn;
  /** The unit of weights that have none. */
  readonly weightUnit: string;
  readonly leftOut: readonly AmountColumn[];
  /** What was taken for percent, or for grams, without anybody saying so. */
  readonly guessed: { readonly percent: boolean; readonly grams: boolean };
}

/**
 * The column of percentages and the column of weights. What says no unit is a percentage where the flours come to 100,
 * and grams otherwise.
 */
export function chooseColumns(
  { amounts, body, name }: Columns,
  signs: Signs,
  isFlour: (name: string) => boolean,
): ChosenColumns {
  const bare = amounts.filter((column) => column.isBare);
  const flourSum = ({ at }: AmountColumn): number =>
    body
      .filter(({ cells }) => isFlour(cells[name] ?? ''))
      .reduce((sum, { cells }) => sum + numberOf(numberCell(cells[at] ?? ''), signs), 0);
  const comesTo = (column: AmountColumn, whole: number): boolean => {
    const sum = flourSum(column);
    if (sum > 0) return Math.abs(sum - whole) < whole / 500;
    // No flour is known by its name: the first line of a percentage table is 100.
    return (
      whole === 100 && bare.length > 1 && numberOf(numberCell(body[0]?.cells[column.at] ?? ''), signs) === 100
    );
  };
  const saidPercent = amounts.find((column) => column.isPercent);
  const likePercent =
    saidPercent ?? bare.find((column) => comesTo(column, 100)) ?? bare.find((column) => comesTo(column, 1));
  const isFraction = likePercent !== undefined && hasNoSign(likePercent) && comesTo(likePercent, 1);
  const weight = amounts.find((column) => !column.isPercent && column !== likePercent);
  const leftOut = amounts.filter((column) => column !== likePercent && column !== weight);
  return {
    ...(likePercent === undefined ? {} : { percent: likePercent }),
    isFraction,
    ...(weight === undefined ? {} : { weight }),
    weightUnit: weight?.unit ?? 'g',
    leftOut,
    guessed: {
      percent: likePercent !== undefined && saidPercent === undefined,
      grams: weight?.isBare === true,
    },
  };

  /** Whether none of a column’s cells has a percent sign, so that its numbers may be fractions. */
  function hasNoSign({ at }: AmountColumn): boolean {
    return body.every(({ cells }) => numberCell(cells[at] ?? '')?.unit === undefined);
  }
}

function numberOf(cell: NumberCell | undefined, signs: Signs): number {
  const value = cell === undefined ? 0 : Number(plainNumber(cell.number, signs));
  return Number.isFinite(value) ? value : 0;
}

/** The unit of one cell: its own, else that of the cell beside it, else the column’s; none for a word that is no unit. */
export function unitOfCell(
  column: AmountColumn,
  own: string | undefined,
  cells: readonly string[],
  otherwise: string,
): string | undefined {
  const beside = column.unitsAt === undefined ? '' : (cells[column.unitsAt] ?? '');
  return own ?? (beside === '' ? otherwise : unitOf(beside));
}

/** Numbers that the signs are judged by: those of the columns with amounts, of all rows. */
export function numbersOf({ amounts, body }: Columns): string[] {
  return body.flatMap(({ cells }) => amounts.flatMap(({ at }) => numberCell(cells[at] ?? '')?.number ?? []));
}
