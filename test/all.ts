import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { countReport, isBuildServer, missingPrograms, type TestReport } from './count.ts';

/**
 * Everything: style, types, the bundles and packages, the unit and process tests, and the suites in real editors. Ends
 * with one line that counts all of it. Where a real editor is missing its suites are counted as failed on a build
 * server and as skipped, with the cure, on a developer's machine.
 */
const project = fileURLToPath(new URL('..', import.meta.url));
const reports = join(project, 'dist', 'test');
const count = { passed: 0, failed: 0, skipped: 0 };
const failures: string[] = [];

function run(words: readonly string[]): boolean {
  const [program, ...rest] = words;
  return spawnSync(program!, rest, { cwd: project, stdio: 'inherit' }).status === 0;
}

function step(title: string, ...words: string[]): boolean {
  console.log(`\n── ${title}`);
  const ok = run(words);
  if (ok) count.passed++;
  else {
    count.failed++;
    failures.push(title);
  }
  return ok;
}

/** Runs test files and counts their tests from the machine-readable report; a run that gives none has failed. */
function suite(title: string, name: string, ...words: string[]): void {
  console.log(`\n── ${title}`);
  const report = join(reports, `${name}.json`);
  rmSync(report, { force: true });
  mkdirSync(reports, { recursive: true });
  const ok = run([
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...words,
  ]);
  if (!existsSync(report)) {
    count.failed++;
    failures.push(`${title}: it gave no report`);
    return;
  }
  const counted = countReport(JSON.parse(readFileSync(report, 'utf8')) as TestReport, ok);
  count.passed += counted.passed;
  count.failed += counted.failed;
  count.skipped += counted.skipped;
  failures.push(...counted.failures.map((one) => `${title}: ${one}`));
}

step('Style', 'biome', 'check', '--error-on-warnings', '.');
step('Types', 'npm', 'run', '--silent', 'typecheck');
step('Bundles', 'node', 'esbuild.ts', '--tests');
step('Package', 'node', 'client/build/vsix.ts');
step('Package for the browser', 'node', 'client/build/web-vsix.ts');
suite('Tests', 'tests');

const missing = missingPrograms({
  chromium: process.env.CHROMIUM ?? '/usr/bin/chromium',
  neovim: process.env.NEOVIM ?? '/usr/bin/nvim',
});
if (missing.length > 0) {
  const said = `Real editors: ${missing.join(' and ')} is missing. On Debian: apt-get install ${missing.join(' ')}`;
  console.log(`\n── ${said}`);
  // A build server promises all suites; who works without one of the programs is told what was left out.
  if (isBuildServer(process.env)) {
    count.failed++;
    failures.push(said);
  } else count.skipped++;
}
if (missing.length === 0 || isBuildServer(process.env))
  suite('Real editors', 'editors', '--config', 'test/editors/vitest.config.ts');

if (failures.length > 0) console.log(`\nFailed:\n${failures.map((one) => `  ${one}`).join('\n')}`);
console.log(
  `\n${count.passed} passed, ${count.failed} failed${count.skipped > 0 ? `, ${count.skipped} skipped` : ''}`,
);
process.exitCode = count.failed > 0 ? 1 : 0;
