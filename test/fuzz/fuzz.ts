import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { it } from 'vitest';

/**
 * How long all properties together are looked for a fault: a minute as part of `npm test`, with the same seed each time, so that what
 * fails there fails because of a change; as long as is asked for, with a seed of its own, by `npm run fuzz`.
 */
const seconds = Number(process.env.FUZZ_SECONDS ?? 60);
const seed = Number(process.env.FUZZ_SEED ?? 1);

/** Of all the time, the hundredths that each property gets. They make a hundred together. */
const hundredths = {
  'edits of one file': 15,
  'edits of many files': 10,
  formatter: 10,
  rename: 10,
  'fixes and actions': 25,
  'import and export': 10,
  'panel edits': 10,
  'server in three encodings': 10,
} as const;

const folder = join(import.meta.dirname, '..', 'fixtures', 'fuzz');

/** As many as are tried with every change, so that a quick machine tries no others than a slow one. */
const mostInputs = 1000;

/** The inputs that once showed a fault, each with what it was: they are tried first, always. */
function keptInputs<Input>(name: string): { readonly fault: string; readonly input: Input }[] {
  const path = join(folder, `${name}.json`);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : [];
}

/**
 * A property that inputs as people make them are held against, until its share of the time is over. What fails is made smaller; by
 * `npm run fuzz` it is written to `test/fixtures/fuzz`, where it stays, as the case of what is to be mended and then of what was.
 */
export function fuzz<Input>(
  name: keyof typeof hundredths,
  inputs: fc.Arbitrary<Input>,
  check: (input: Input) => void | Promise<void>,
): void {
  const milliseconds = (1000 * seconds * hundredths[name]) / 100;
  it(name, { timeout: milliseconds + 240_000 }, async () => {
    const kept = keptInputs<Input>(name);
    const told = await fc.check(
      fc.asyncProperty(inputs, async (input) => check(input)),
      {
        seed,
        examples: kept.map(({ input }): [Input] => [input]),
        numRuns: process.env.FUZZ_SECONDS === undefined ? mostInputs : Number.MAX_SAFE_INTEGER,
        interruptAfterTimeLimit: milliseconds,
      },
    );
    console.log(`${name}: ${told.numRuns} inputs with seed ${seed}`);
    if (!told.failed) return;
    const [input] = told.counterexample ?? [];
    const fault =
      told.errorInstance instanceof Error ? told.errorInstance.message : String(told.errorInstance);
    const isKept = kept.some((one) => JSON.stringify(one.input) === JSON.stringify(input));
    if (process.env.FUZZ_KEEP === '1' && input !== undefined && !isKept) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(
        join(folder, `${name}.json`),
        `${JSON.stringify([...kept, { fault: fault.split('\n')[0], input }], null, 2)}\n`,
      );
    }
    throw new Error(
      `${name}, seed ${seed}, path ${told.counterexamplePath}:\n${fault}\n${JSON.stringify(input)}`,
      { cause: told.errorInstance },
    );
  });
}
