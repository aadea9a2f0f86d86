import { exportRows, rowsAsCsv } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import { saysNothing } from './totals.ts';
import { formatOf, writeOut } from './write-out.ts';

export interface ExportOptions {
  readonly format?: 'json' | 'csv';
  readonly out?: string;
  readonly decimalComma?: boolean;
}

/** Writes the lines of formulas for a spreadsheet: 0, 1 where a formula does not resolve, 2 when something could not be read. */
export async function exportFiles(paths: readonly string[], options: ExportOptions): Promise<ExitCode> {
  const input = await readInput(paths, { forPrograms: true });
  const all = input.asked.flatMap(({ uri, shown }) =>
    input.service.totals(uri).map((formula) => ({ ...formula, file: shown })),
  );
  if (all.length === 0 && (saysNothing(input, all) || input.failed)) return 2;
  const rows = all.flatMap(exportRows);
  const text =
    formatOf(options) === 'json'
      ? `${JSON.stringify(rows, null, 2)}\n`
      : rowsAsCsv(rows, options.decimalComma === true);
  if (!(await writeOut(text, options.out, { isData: true })) || input.failed) return 2;
  return all.every(({ resolved }) => resolved) ? 0 : 1;
}
