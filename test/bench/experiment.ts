import { createService } from '../../core/index.ts';

/**
 * Measures an experiment of twelve doughs read twenty times each: worked out, worded, and found fault with, another water at each step
 * so that nothing is remembered. Prints a table.
 *
 *   node test/bench/experiment.ts
 */
const doughs = Array.from({ length: 11 }, (_, index) => `White ${index}`);
const minutes = Array.from({ length: 20 }, (_, index) => `${3 * (index + 1)} min`);
const textAt = (step: number): string =>
  [
    'formula White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load all\n  speed 1 for 9 min\n',
    ...doughs.map((name, index) => `formula ${name} like White:\n  water  ${60 + index + step / 100}%\n`),
    'experiment Twelve doughs:\n  dough White, in planetary, speed 1 for 60 min',
    ...doughs.map((name) => `  dough ${name}, in planetary, speed 1 for 60 min`),
    `  read at ${minutes.join(', ')}\n`,
  ].join('\n');

const steps = 20;
const uri = 'file:///quay/experiment.dough';
const service = createService();
const times = { sheet: [] as number[], findings: [] as number[] };
for (let step = 0; step <= steps; step++) {
  service.setText(uri, textAt(step));
  const from = performance.now();
  service.findings(uri);
  const found = performance.now();
  const [view] = service.experiments(uri);
  times.findings.push(found - from);
  times.sheet.push(performance.now() - found);
  if (view?.doughs.length !== 12 || view.complete !== true) throw new Error('Not all doughs are predicted.');
}

console.log('\nAn experiment of 12 doughs read 20 times, milliseconds.');
for (const [name, all] of Object.entries(times)) {
  const [first = Number.NaN, ...others] = all;
  others.sort((one, other) => one - other);
  console.log(`${`${name}, first`.padEnd(50)}${first.toFixed(1).padStart(8)}`);
  console.log(`${`${name}, p50`.padEnd(50)}${others[steps / 2]?.toFixed(1).padStart(8)}`);
}
