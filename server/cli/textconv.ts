import { pathToFileURL } from 'node:url';
import { createService, mass, percent } from '../../core/index.ts';
import { readDough } from '../disk.ts';
import type { ExitCode } from './exit-code.ts';
import { cureOf } from './input.ts';

/**
 * A file for git to compare line by line in `git log -p` and `git show`: its own lines, and after the header of each formula
 * its totals as comments, so that a change of the hydration stands beside the line that made it. The file stands alone, for
 * git says neither where it is from nor what lay around it.
 */
export async function textconv(path: string): Promise<ExitCode> {
  const file = await readDough(path);
  if (file.text === undefined) {
    process.stderr.write(`doughwright: ${path}: ${cureOf(file.why)}\n`);
    return 2;
  }
  const service = createService();
  const uri = pathToFileURL(path).href;
  service.setText(uri, file.text);
  const totals = service.portrait(uri)?.formulas ?? [];
  const after = new Map(totals.map(({ line, totals: one }) => [line, summary(one)]));
  const lines = file.text.split('\n');
  process.stdout.write(
    lines.flatMap((line, index) => [line, ...(after.get(index) ?? []).map((one) => `#= ${one}`)]).join('\n'),
  );
  return 0;
}

function summary(totals: {
  readonly hydration?: number;
  readonly saltFraction?: number;
  readonly prefermentedFlour?: number;
  readonly flourGrams?: number;
  readonly doughGrams?: number;
}): string[] {
  const { hydration, saltFraction, prefermentedFlour, flourGrams, doughGrams } = totals;
  const rows: [string, number | undefined, (value: number) => string][] = [
    ['hydration', hydration, percent],
    ['salt', saltFraction, percent],
    ['prefermented flour', prefermentedFlour, percent],
    ['flour', flourGrams, mass],
    ['dough', doughGrams, mass],
  ];
  return rows.flatMap(([name, value, words]) => (value === undefined ? [] : [`${name} ${words(value)}`]));
}
