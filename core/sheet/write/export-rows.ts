import type { FormulaTotals } from '../../facts/totals.ts';
import { trimmed } from '../../text/figures.ts';
import { asCsv } from '../build/csv-records.ts';

/** One line of one part of a formula, for a spreadsheet; what is not known is absent, never zero. */
export interface ExportRow {
  readonly file: string;
  readonly formula: string;
  readonly part: string;
  /** `dough` for what goes into the final mix, else the word of the section. */
  readonly partKind: string;
  readonly ingredient: string;
  readonly role?: string;
  /** Of the flour of the part; where it has none, of its lines written as 100 %. */
  readonly percentOfPartFlour?: number;
  /** Of all flour of the formula. */
  readonly percentOfAllFlour?: number;
  readonly grams?: number;
}

const columns = [
  'file',
  'formula',
  'part',
  'partKind',
  'ingredient',
  'role',
  'percentOfPartFlour',
  'percentOfAllFlour',
  'grams',
] as const satisfies readonly (keyof ExportRow)[];

/** Percent to four places, grams to two: a hundredth of a gram in a ton of flour is none too few. */
const rounded = (value: number, places: number): number => Number(trimmed(value, places));

/** The lines of a formula in the order of its parts, the dough first. */
export function exportRows({ file, formula, flourGrams, parts }: FormulaTotals): ExportRow[] {
  return parts.flatMap((part) =>
    part.lines.map(({ name, role, fraction, grams }) => ({
      ...{ file, formula, part: part.name, partKind: kindOf(part), ingredient: name },
      ...(role === undefined ? {} : { role }),
      ...(fraction === undefined ? {} : { percentOfPartFlour: rounded(fraction * 100, 4) }),
      ...(grams === undefined || flourGrams === undefined || flourGrams === 0
        ? {}
        : { percentOfAllFlour: rounded((grams / flourGrams) * 100, 4) }),
      ...(grams === undefined ? {} : { grams: rounded(grams, 2) }),
    })),
  );
}

/** A table has no step that encloses a part: a filling stays out of the bowl when it is read back. */
function kindOf({ kind, enclosed }: FormulaTotals['parts'][number]): string {
  return enclosed ? 'filling' : kind;
}

/**
 * The rows as a spreadsheet reads them, with a heading; numbers with a decimal point between commas, or with a decimal comma
 * between semicolons, as a spreadsheet has it where the comma is the decimal sign. Rows that follow others need no heading.
 */
export function rowsAsCsv(
  rows: readonly ExportRow[],
  {
    decimalComma = false,
    isHeaded = true,
  }: { readonly decimalComma?: boolean; readonly isHeaded?: boolean } = {},
): string {
  const cell = (value: string | number | undefined): string => {
    const text = String(value ?? '');
    return decimalComma && typeof value === 'number' ? text.replace('.', ',') : text;
  };
  const records = [
    ...(isHeaded ? [[...columns]] : []),
    ...rows.map((row) => columns.map((column) => cell(row[column]))),
  ];
  return asCsv(records, decimalComma ? ';' : ',');
}
