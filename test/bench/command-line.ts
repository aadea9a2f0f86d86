import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { formulaCount, writeWorkspace } from './workspace-files.ts';

/**
 * Measures the command line on a folder of very many formulas: seconds on the clock and of work, and the most memory. Prints a
 * table; wants GNU time.
 *
 *   node test/bench/command-line.ts
 */
const workspace = writeWorkspace();
const other = mkdtempSync(join(tmpdir(), 'doughwright-bench-'));
try {
  cpSync(workspace.path, other, { recursive: true });
  const { uri, text } = workspace.formula(4321);
  const changed = join(other, fileURLToPath(uri).slice(workspace.path.length));
  writeFileSync(changed, text.replace(/^( {2}salt +)2%/m, '$12.2%'));
  if (readFileSync(changed, 'utf8') === text) throw new Error('No line was changed.');
  console.log(`${formulaCount} formula files`);
  measure('one file', 'check', fileURLToPath(uri));
  measure('all', 'check', workspace.path);
  measure('all', 'totals', workspace.path);
  measure('all as JSON', 'totals', '--json', workspace.path);
  measure('all', 'export', workspace.path);
  measure('one line changed', 'compare', workspace.path, other);
} finally {
  for (const path of [workspace.path, other]) rmSync(path, { recursive: true, force: true });
}

function measure(what: string, ...words: readonly string[]): void {
  const { stderr } = spawnSync(
    '/usr/bin/time',
    ['-f', '%e %U %S %M', process.execPath, 'dist/doughwright.cjs', ...words],
    { encoding: 'utf8', stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const [seconds, own, kernel, kilobytes] = (stderr.trim().split('\n').at(-1) ?? '').split(' ').map(Number);
  const work = (own ?? Number.NaN) + (kernel ?? Number.NaN);
  console.log(
    `${`${words[0]}, ${what}`.padEnd(28)}${(seconds ?? Number.NaN).toFixed(2).padStart(8)} s${work.toFixed(2).padStart(8)} s of work${((kilobytes ?? Number.NaN) / 1024).toFixed(0).padStart(7)} MB`,
  );
}
