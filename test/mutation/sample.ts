import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Mutant } from '@stryker-mutator/api/core';
import { Instrumenter } from '@stryker-mutator/instrumenter';

/**
 * Whether a mutant belongs to the sample. It hangs on the seed and on what the mutant is and where, so that the same seed takes the
 * same ones, whatever part of the core is asked for.
 */
export function isTaken(
  { location: { start, end }, mutatorName, replacement }: Mutant,
  file: string,
  { share, seed }: { readonly share: number; readonly seed: string },
): boolean {
  const place = [start.line, start.column, end.line, end.column];
  const what = [seed, file, ...place, mutatorName, replacement];
  return createHash('sha256').update(what.join('\0')).digest().readUInt32BE(0) / 2 ** 32 < share;
}

/** The files of a folder, or the file itself. */
export function filesUnder(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(path, name))
    .sort();
}

const silent = () => undefined;
const logger = {
  ...{ isTraceEnabled: () => false, isDebugEnabled: () => false, isInfoEnabled: () => false },
  ...{ isWarnEnabled: () => false, isErrorEnabled: () => false, isFatalEnabled: () => false },
  ...{ trace: silent, debug: silent, info: silent, warn: silent, error: silent, fatal: silent },
};

/** All mutants of some files, each with its file. */
export async function mutantsOf(files: readonly string[]): Promise<{ file: string; mutant: Mutant }[]> {
  const instrumenter = new Instrumenter(logger);
  const found: { file: string; mutant: Mutant }[] = [];
  for (const file of files) {
    const name = join(process.cwd(), file);
    const content = readFileSync(name, 'utf8');
    const { mutants } = await instrumenter.instrument([{ name, mutate: true, content }], {
      ...{ plugins: null, ignorers: [], excludedMutations: [], noHeader: true },
    });
    found.push(...mutants.map((mutant) => ({ file, mutant })));
  }
  return found;
}
