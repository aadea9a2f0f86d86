import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { countReport, isBuildServer, missingPrograms, type TestReport } from '../count.ts';
import { project } from './imports.ts';

/** The report of a real run of suites that are fixtures, and whether the run ended well. */
function runOf(...names: readonly string[]): [TestReport, boolean] {
  const folder = mkdtempSync(join(tmpdir(), 'doughwright-count-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, 'report.json');
  const config = join(project, 'test/fixtures/suites/vitest.config.ts');
  const words = ['run', '--config', config, '--reporter=json', `--outputFile=${file}`, ...names];
  const { status } = spawnSync(
    process.execPath,
    [join(project, 'node_modules/vitest/vitest.mjs'), ...words],
    {
      cwd: project,
    },
  );
  return [JSON.parse(readFileSync(file, 'utf8')) as TestReport, status === 0];
}

describe('the count of all tests', () => {
  it('takes a file that breaks before its first test for a failure', () => {
    const counted = countReport(...runOf('breaks-before-its-tests', 'passes'));
    expect(counted).toMatchObject({ passed: 1, failed: 1 });
    expect(counted.failures).toEqual([expect.stringMatching(/breaks-before-its-tests\.ts/)]);
  });

  it('names the test that failed and what it says', () => {
    const { failed, failures } = countReport(...runOf('fails', 'passes'));
    expect(failed).toBe(1);
    expect(failures).toEqual([expect.stringMatching(/fails\.ts: a suite that fails: .*expected 1 to be 2/)]);
  });

  it('of what passes has no failure', () => {
    expect(countReport(...runOf('passes'))).toEqual({ passed: 1, failed: 0, skipped: 1, failures: [] });
  });

  it('takes a run that failed without a failed test for a failure', () => {
    const nothing = { numPassedTests: 3, numFailedTests: 0, numPendingTests: 0, testResults: [] };
    expect(countReport(nothing, false).failed).toBe(1);
    expect(countReport(nothing, true).failed).toBe(0);
  });

  it('names the programs that are missing, and knows a build server', () => {
    expect(missingPrograms({ here: process.execPath, chromium: '/no/such/chromium' })).toEqual(['chromium']);
    expect(['true', '1', 'yes'].map((CI) => isBuildServer({ CI }))).toEqual([true, true, true]);
    expect([undefined, '', '0', 'false'].map((CI) => isBuildServer({ CI }))).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });
});
