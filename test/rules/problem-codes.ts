import { readdirSync, readFileSync } from 'node:fs';

/** The codes of all problems that the reading of lines can report, read off its source. */
export function problemCodes(): string[] {
  const folder = new URL('../../core/syntax/', import.meta.url);
  const codes = new Set<string>();
  for (const name of readdirSync(folder)) {
    for (const [, code] of readFileSync(new URL(name, folder), 'utf8').matchAll(/\bproblem\(\s*'([a-z-]+)'/g))
      codes.add(code!);
  }
  return [...codes];
}
