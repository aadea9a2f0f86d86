import { type FormulaTotals, message } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { type Input, readInput } from './input.ts';
import { jsonList } from './json-list.ts';
import { say, speaker } from './speaker.ts';
import { complain, noOrders, visibleData } from './terminal.ts';
import { totalsText } from './totals-text.ts';
import { writePieces } from './write-out.ts';

/** Writes what formulas come to: 0, 1 where a formula does not resolve, 2 when something could not be read. */
export async function totals(
  paths: readonly string[],
  options: { readonly json?: boolean; readonly label?: boolean; readonly at?: string },
): Promise<ExitCode> {
  const input = await readInput(paths, { forPrograms: options.json === true, at: options.at });
  const all = new TotalsOfFiles(input);
  if (options.json) await writePieces(jsonList(all.each(), ({ resolved: _, ...told }) => told));
  else await writePieces(asText(all.each(), options));
  if (input.failed || saysNothing(input, all.count)) return 2;
  return all.areResolved ? 0 : 1;
}

function* asText(all: Iterable<FormulaTotals>, show: { readonly label?: boolean }): Iterable<string> {
  let between = '';
  for (const one of all) {
    yield noOrders(`${between}${totalsText(visibleData(one), speaker(), show)}`);
    between = '\n';
  }
}

/** The totals of the files asked for, worked out one formula after another as they are taken: thousands need no room at once. */
export class TotalsOfFiles {
  /** How many formulas have been taken. */
  count = 0;
  /** Whether all formulas taken so far resolve. */
  areResolved = true;
  readonly #input: Input;

  constructor(input: Input) {
    this.#input = input;
  }

  *each(): Iterable<FormulaTotals> {
    for (const { uri, shown } of this.#input.asked) {
      for (const formula of this.#input.service.totals(uri)) {
        this.count++;
        this.areResolved &&= formula.resolved;
        yield { ...formula, file: shown };
      }
    }
  }
}

/** Whether there is no formula in files that could be read, which is told. */
export function saysNothing(input: Input, count: number): boolean {
  if (count > 0 || input.asked.length === 0) return false;
  const names = input.asked.map(({ shown }) => shown).join(', ');
  complain(names, say(message('command-files.no-formula')));
  return true;
}
