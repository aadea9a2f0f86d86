import { readFileSync } from 'node:fs';
import { createService } from '../../core/index.ts';

/**
 * Measures the map of the gap: its grid of 80 × 40 points worked out, worded and drawn, a different water at each step so that
 * nothing is remembered. Prints a table.
 *
 *   node test/bench/map.ts
 */
const examples = new URL('../../examples/', import.meta.url);
const formulas = ['ferry-loaf', 'mooring-wholemeal', 'slipway-hearth'];
const steps = 40;

console.log('\nThe map of the gap, 80 × 40 points, milliseconds.');
for (const name of formulas) {
  const service = createService();
  const read = (path: string): string => readFileSync(new URL(path, examples), 'utf8');
  for (const file of ['bakery.dough', 'flours.dough', 'mixers.dough', 'stores.dough'])
    service.setText(`file:///quay/${file}`, read(file));
  const uri = `file:///quay/formulas/${name}.dough`;
  const text = read(`formulas/${name}.dough`);
  const line = text.split('\n').findIndex((one) => one.startsWith('formula'));
  const times: number[] = [];
  // Of the processor: what else a machine does leaves it alone.
  const worked: number[] = [];
  let points = 0;
  for (let step = 0; step <= steps; step++) {
    service.setText(uri, text.replace(/^( {2}salt +)[\d.]+%/m, `$1${(1.8 + step / 100).toFixed(2)}%`));
    // The key itself is not the map's.
    service.totals(uri);
    const began = process.cpuUsage();
    const from = performance.now();
    const map = service.map(uri, line, {});
    times.push(performance.now() - from);
    const { user, system } = process.cpuUsage(began);
    worked.push((user + system) / 1000);
    points = map?.data?.rows.reduce((sum, { cells }) => sum + cells.length, 0) ?? 0;
  }
  const [first] = times.splice(0, 1);
  times.sort((one, other) => one - other);
  print(`${name}: ${points} points, first`, first!, '');
  print(`${name}: ${points} points, p50`, times[steps / 2]!, '< 60');
  worked.sort((one, other) => one - other);
  print(`${name}: ${points} points, p50 of the processor`, worked[steps / 2]!, '< 60');
  print(`${name}: ${points} points, p95`, times[Math.floor(steps * 0.95)]!, '< 60');
}

function print(name: string, milliseconds: number, aim: string): void {
  console.log(`${name.padEnd(50)}${milliseconds.toFixed(1).padStart(8)}   ${aim}`);
}
