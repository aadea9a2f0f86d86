import { type ExportRow, exportRows, rowsAsCsv } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import { jsonList } from './json-list.ts';
import { saysNothing, TotalsOfFiles } from './totals.ts';
import { formatOf, writeOut } from './write-out.ts';

export interface ExportOptions {
  readonly format?: 'json' | 'csv';
  readonly out?: string;
  readonly decimalComma?: boolean;
}

/** Writes the lines of formulas for a spreadsheet: 0, 1 where a formula does not resolve, 2 when something could not be read. */
export async function exportFiles(paths: readonly string[], options: ExportOptions): Promise<ExitCode> {
  const input = await readInput(paths, { forPrograms: true });
  const all = new TotalsOfFiles(input);
  const rows = rowsOf(all);
  // Where there is no formula at all nothing is written, so the first is asked for before.
  const first = rows.next();
  if (all.count === 0 && (saysNothing(input, 0) || input.failed)) return 2;
  const every = (function* () {
    if (!first.done) yield first.value;
    yield* rows;
  })();
  const pieces =
    formatOf(options) === 'json'
      ? jsonList(rowsAlone(every))
      : csvPieces(every, options.decimalComma === true);
  if (!(await writeOut(pieces, options.out, { isData: true })) || input.failed) return 2;
  return all.areResolved ? 0 : 1;
}

/** The rows of one formula after another. */
function* rowsOf(all: TotalsOfFiles): Generator<readonly ExportRow[], undefined> {
  for (const formula of all.each()) yield exportRows(formula);
}

function* rowsAlone(all: Iterable<readonly ExportRow[]>): Iterable<ExportRow> {
  for (const rows of all) yield* rows;
}

function* csvPieces(all: Iterable<readonly ExportRow[]>, decimalComma: boolean): Iterable<string> {
  yield rowsAsCsv([], { decimalComma });
  for (const rows of all) if (rows.length > 0) yield rowsAsCsv(rows, { decimalComma, isHeaded: false });
}
