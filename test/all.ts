import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { countReport, editorPrograms, isBuildServer, missingPrograms, type TestReport } from './count.ts';
import { lowestNode, nodeOfMajor, versionOf } from './lowest-node.ts';

/**
 * Everything: style, types, the bundles and packages, the unit and process tests, and the suites in real editors. Ends
 * with one line that counts all of it. Where a real editor is missing its suites are counted as failed on a build
 * server and as skipped, with the cure, on a developer's machine.
 */
const project = fileURLToPath(new URL('..', import.meta.url));
const reports = join(project, 'dist', 'test');
const count = { passed: 0, failed: 0, skipped: 0 };
const failures: string[] = [];

function run(words: readonly string[], env: Readonly<Record<string, string>> = {}): boolean {
  const [program, ...rest] = words;
  // Windows starts what npm installs by a script, which wants its shell.
  const shell = process.platform === 'win32';
  const options = { cwd: project, stdio: 'inherit', env: { ...process.env, ...env }, shell } as const;
  return spawnSync(program!, rest, options).status === 0;
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
function suite(
  title: string,
  name: string,
  words: readonly string[] = [],
  env: Readonly<Record<string, string>> = {},
): void {
  console.log(`\n── ${title}`);
  const report = join(reports, `${name}.json`);
  rmSync(report, { force: true });
  mkdirSync(reports, { recursive: true });
  // From the project's folder on: the shell of Windows would part the whole path at its blanks.
  const reporters = [
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${relative(project, report).replaceAll('\\', '/')}`,
  ];
  const ok = run(['vitest', 'run', ...reporters, ...words], env);
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

/** The tests that run the bundles as processes once more, on the lowest Node that is promised, where the machine has it. */
function programsOnLowestNode(): void {
  const major = lowestNode();
  const program = nodeOfMajor(major);
  if (program !== undefined) {
    const files = ['check', 'totals', 'plan', 'language', 'format'];
    const paths = [...files.map((name) => `test/cli/${name}.test.ts`), 'test/server/lifecycle.test.ts'];
    suite(`Programs on Node ${versionOf(program)}`, 'lowest', paths, { DOUGHWRIGHT_NODE: program });
    return;
  }
  console.log(`\n── Programs on Node ${major}: not run, for no Node ${major} is on the path of this machine`);
  count.skipped++;
}

/**
 * Installs VS Code for a browser beside the other tests: it takes minutes the first time and mostly waits. What fails there fails
 * again, and is told, where the suites begin.
 */
function installEditor(): Promise<unknown> {
  const child = spawn(process.execPath, ['test/editors/install-code-server.ts'], {
    cwd: project,
    stdio: 'ignore',
  });
  return once(child, 'close');
}

// They are installed from packages of Debian, so other systems run the rest.
const promisesEditors = isBuildServer(process.env) && process.platform === 'linux';
const missing = missingPrograms(editorPrograms(process.env));
const editorInstalled = missing.length === 0 || promisesEditors ? installEditor() : undefined;

step('Style', 'biome', 'check', '--error-on-warnings', '.');
step('Types', 'npm', 'run', '--silent', 'typecheck');
step('Bundles', 'node', 'esbuild.ts', '--tests');
step('Package', 'node', 'client/build/vsix.ts');
step('Package for the browser', 'node', 'client/build/web-vsix.ts');
suite('Tests', 'tests');
programsOnLowestNode();

if (missing.length > 0) {
  const said = `Real editors: ${missing.join(' and ')} is missing. On Debian: apt-get install ${missing.join(' ')}`;
  console.log(`\n── ${said}`);
  // A build server promises all suites; who works without one of the programs is told what was left out.
  if (promisesEditors) {
    count.failed++;
    failures.push(said);
  } else count.skipped++;
}
if (editorInstalled !== undefined) {
  await editorInstalled;
  suite('Real editors', 'editors', ['--config', 'test/editors/vitest.config.ts']);
}

if (failures.length > 0) console.log(`\nFailed:\n${failures.map((one) => `  ${one}`).join('\n')}`);
console.log(
  `\n${count.passed} passed, ${count.failed} failed${count.skipped > 0 ? `, ${count.skipped} skipped` : ''}`,
);
process.exitCode = count.failed > 0 ? 1 : 0;
