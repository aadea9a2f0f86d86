import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { MutantResult } from '@stryker-mutator/api/core';
import { Stryker } from '@stryker-mutator/core';
import { filesUnder, isTaken, mutantsOf } from './sample.ts';
import { type Equivalent, isEquivalent, scoreOf } from './score.ts';
import { tell } from './tell.ts';

/**
 * Changes the core in small ways, one at a time, and counts which changes the tests notice.
 *
 *     npm run mutation -- core/calc/heat              every mutant of a folder or a file
 *     npm run mutation -- --share 0.01 --seed 7       a hundredth of all mutants of the core, the same ones for the same seed
 *
 * All of the core takes hours. Ends with each mutant that survived, and with the score and the bounds of what it stands for.
 */
const project = fileURLToPath(new URL('../..', import.meta.url));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { share: { type: 'string', default: '1' }, seed: { type: 'string', default: '1' } },
});
const share = Number(values.share);
if (!(share > 0 && share <= 1)) throw new RangeError(`--share ${values.share}: above 0, and 1 at most`);
process.chdir(project);
process.env.MUTATION_SHARE = values.share;
process.env.MUTATION_SEED = values.seed;

const asked = positionals.length === 0 ? ['core'] : positionals;
const missing = asked.filter((path) => !existsSync(path));
if (missing.length > 0) throw new Error(`There is no ${missing.join(', ')}.`);

process.env.MUTATION_PROJECT = process.cwd();
const taken = (await mutantsOf(asked.flatMap(filesUnder))).filter(({ file, mutant }) =>
  isTaken(mutant, file, { share, seed: values.seed }),
);
console.log(`${taken.length} mutants`);
// Only what is taken is built into the core, so that the core runs about as quickly as ever.
const mutate = taken.map(({ file, mutant: { location } }) => {
  const { start, end } = location;
  return `${file}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`;
});
const work = join('dist', 'mutation');
const results = await new Stryker({
  testRunner: 'vitest',
  plugins: [
    '@stryker-mutator/vitest-runner',
    fileURLToPath(new URL('./sampled-checker.ts', import.meta.url)),
  ],
  vitest: { configFile: 'test/mutation/vitest.config.ts', related: false },
  checkers: ['sampled'],
  mutate,
  coverageAnalysis: 'perTest',
  concurrency: 1,
  // A machine that others work on is slow at times; a mutant that only runs late is not killed by that.
  timeoutMS: 60_000,
  timeoutFactor: 4,
  dryRunTimeoutMinutes: 30,
  disableTypeChecks: false,
  // The reader of its configuration is of a compiler that ours no longer is; nothing here needs it.
  tsconfigFile: join(work, 'none.json'),
  tempDirName: join(work, 'work'),
  ignorePatterns: ['dist', 'docs/images', 'client/media'],
  reporters: ['progress-append-only', 'survivors', 'html'],
  htmlReporter: { fileName: join(work, 'report.html') },
  allowEmpty: true,
} as ConstructorParameters<typeof Stryker>[0]).runMutationTest();

const equivalents = JSON.parse(
  readFileSync(new URL('./equivalent.json', import.meta.url), 'utf8'),
) as Equivalent[];
const left: MutantResult[] = [];
let equal = 0;
for (const mutant of results) {
  if (mutant.status !== 'Survived' && mutant.status !== 'NoCoverage') continue;
  if (
    isEquivalent(
      mutant,
      readFileSync(mutant.fileName, 'utf8'),
      relative(project, mutant.fileName),
      equivalents,
    )
  )
    equal++;
  else left.push(mutant);
}
for (const mutant of left) console.log(tell(mutant));
rmSync(join(work, 'work'), { recursive: true, force: true });

const count = (...statuses: MutantResult['status'][]): number =>
  results.filter(({ status }) => statuses.includes(status)).length;
const { fraction, low, high } = scoreOf(count('Killed', 'Timeout'), left.length);
const percent = (figure: number): string => `${(100 * figure).toFixed(1)} %`;
console.log(`
seed ${values.seed}, share ${values.share} of ${asked.join(', ')}: ${taken.length} mutants
${count('Killed')} killed, ${count('Timeout')} never ended, ${left.length} survived (${count('NoCoverage')} on code that no test runs), ${equal} equivalent
score ${percent(fraction)}, which stands for ${percent(low)} to ${percent(high)} (95 %)`);
