import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The main job on the demo bakery: totals and findings of its formulas, and how to open it in an editor. */
const project = fileURLToPath(new URL('../..', import.meta.url));
const doughwright = (...words: string[]): number => {
  const { status } = spawnSync(process.execPath, ['dist/doughwright.cjs', ...words], {
    cwd: project,
    stdio: 'inherit',
  });
  return status ?? 2;
};

console.log('Totals of the Quay Lane bakery, our own invention (examples/):\n');
const totals = doughwright('totals', 'examples');
console.log('\nWhat the checker says of it. One formula is over-mixed on purpose:\n');
const check = doughwright('check', 'examples');
console.log(`
To open it in VS Code:            npm run vscode
Totals of your own files:         node dist/doughwright.cjs totals PATH
To check your own files:          node dist/doughwright.cjs check PATH
The notation in two minutes:      docs/guide/README.md`);
// A finding in the demo is what the demo shows; only a command that could not run is a failure.
process.exitCode = Math.max(totals, check) > 1 ? 1 : 0;
