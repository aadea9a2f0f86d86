import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

/**
 * Looks for faults for an hour, or as long as is asked for: `npm run fuzz -- --seconds 600 --seed 7 --only rename`. Each run takes a seed of
 * its own and prints it; an input that shows a fault is kept in test/fixtures/fuzz.
 */
const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '3600' },
    seed: { type: 'string', default: String(Date.now() % 2 ** 31) },
    only: { type: 'string' },
  },
});
const seconds = Number(values.seconds);
if (!(seconds > 0)) throw new RangeError(`--seconds ${values.seconds}: above 0`);
console.log(`seed ${values.seed}, ${seconds} s`);
const project = fileURLToPath(new URL('../..', import.meta.url));
const only = values.only === undefined ? [] : ['-t', values.only];
const { status } = spawnSync('vitest', ['run', 'test/fuzz', '--disable-console-intercept', ...only], {
  cwd: project,
  stdio: 'inherit',
  shell: process.platform === 'win32',
  env: { ...process.env, FUZZ_SECONDS: values.seconds, FUZZ_SEED: values.seed, FUZZ_KEEP: '1' },
});
process.exitCode = status ?? 1;
