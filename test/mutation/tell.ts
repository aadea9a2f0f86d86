import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import type { MutantResult } from '@stryker-mutator/api/core';

/** A mutant as a reader finds it: where, what stood there, and what it was changed into. */
export function tell({
  fileName,
  location: { start, end },
  status,
  mutatorName,
  replacement,
}: MutantResult): string {
  const lines = readFileSync(fileName, 'utf8').split('\n');
  const was = lines
    .slice(start.line - 1, end.line)
    .join('\n')
    .trim();
  const place = `${relative(process.env.MUTATION_PROJECT ?? process.cwd(), fileName)}:${start.line}:${start.column}`;
  return `\n${status} ${mutatorName} ${place}\n- ${was.slice(0, 300)}\n+ … ${replacement?.slice(0, 300)}`;
}
