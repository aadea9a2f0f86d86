import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

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
  run(['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...words]);
  if (!existsSync(report)) {
    count.failed++;
    failures.push(`${title}: it gave no report`);
    return;
  }
  const { numPassedTests, numFailedTests, numPendingTests, testResults } = JSON.parse(
    readFileSync(report, 'utf8'),
  ) as {
    numPassedTests: number;
    numFailedTests: number;
    numPendingTests: number;
    testResults: { status: string; name: string; assertionResults: unknown[] }[];
  };
  count.passed += numPassedTests;
  count.failed += numFailedTests;
  count.skipped += numPendingTests;
  if (numFailedTests > 0) failures.push(`${title}: ${numFailedTests} tests`);
  // A file that breaks before its first test has no test to count.
  for (const file of testResults) {
    if (file.status !== 'failed' || file.assertionResults.length > 0) continue;
    count.failed++;
    failures.push(`${title}: ${file.name}`);
  }
}

step('Style', 'biome', 'check', '--error-on-warnings', '.');
step('Types', 'npm', 'run', '--silent', 'typecheck');
step('Bundles', 'node', 'esbuild.ts', '--tests');
step('Package', 'node', 'client/build/vsix.ts');
step('Package for the browser', 'node', 'client/build/web-vsix.ts');
suite('Tests', 'tests');

const editors: readonly (readonly [string, string])[] = [
  ['chromium', process.env.CHROMIUM ?? '/usr/bin/chromium'],
  ['neovim', process.env.NEOVIM ?? '/usr/bin/nvim'],
];
const missing = editors.filter(([, program]) => !existsSync(program)).map(([name]) => name);
if (missing.length === 0 || process.env.CI === 'true') {
  suite('Real editors', 'editors', '--config', 'test/editors/vitest.config.ts');
} else {
  console.log(
    `\n── Real editors: not run, for ${missing.join(' and ')} is missing. On Debian: apt-get install ${missing.join(' ')}`,
  );
  count.skipped++;
}

if (failures.length > 0) console.log(`\nFailed:\n${failures.map((one) => `  ${one}`).join('\n')}`);
console.log(
  `\n${count.passed} passed, ${count.failed} failed${count.skipped > 0 ? `, ${count.skipped} skipped` : ''}`,
);
process.exitCode = count.failed > 0 ? 1 : 0;
