import { type FormulaTotals, message } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { type Input, readInput } from './input.ts';
import { say, speaker } from './speaker.ts';
import { complain, tell, visibleData } from './terminal.ts';
import { totalsText } from './totals-text.ts';

/** Writes what formulas come to: 0, 1 where a formula does not resolve, 2 when something could not be read. */
export async function totals(
  paths: readonly string[],
  options: { readonly json?: boolean; readonly label?: boolean; readonly at?: string },
): Promise<ExitCode> {
  const input = await readInput(paths, { forPrograms: options.json === true, at: options.at });
  const all = input.asked.flatMap(({ uri, shown }) =>
    input.service.totals(uri).map((formula): FormulaTotals => ({ ...formula, file: shown })),
  );
  if (options.json) process.stdout.write(asJson(all));
  else tell(all.map((one) => totalsText(visibleData(one), speaker(), options)).join('\n'));
  if (input.failed || saysNothing(input, all)) return 2;
  return all.every(({ resolved }) => resolved) ? 0 : 1;
}

function asJson(all: readonly FormulaTotals[]): string {
  return `${JSON.stringify(
    all.map(({ resolved: _, ...told }) => told),
    null,
    2,
  )}\n`;
}

/** Whether there is no formula in files that could be read, which is told. */
export function saysNothing(input: Input, all: readonly FormulaTotals[]): boolean {
  if (all.length > 0 || input.asked.length === 0) return false;
  const names = input.asked.map(({ shown }) => shown).join(', ');
  complain(names, say(message('command-files.no-formula')));
  return true;
}
