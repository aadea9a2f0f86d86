import { existsSync } from 'node:fs';

/** What a run of tests tells for machines, as far as it is counted. */
export interface TestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly {
      readonly status: string;
      readonly fullName: string;
      readonly failureMessages?: readonly string[];
    }[];
  }[];
}

export interface Counted {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  /** In a line each. */
  readonly failures: readonly string[];
}

/**
 * Counts a run. A file that failed though none of its tests did is a failure of its own: what breaks before the first test,
 * as a `beforeAll` does, leaves its tests skipped. `endedWell` is what the run ended with; a run that says it failed and
 * shows nothing that did is a failure too.
 */
export function countReport(report: TestReport, endedWell: boolean): Counted {
  const { numPassedTests, numFailedTests, numPendingTests, testResults } = report;
  const failures: string[] = [];
  let failed = numFailedTests;
  for (const { status, name, message, assertionResults } of testResults) {
    const tests = assertionResults.filter((one) => one.status === 'failed');
    failures.push(...tests.map((one) => told(name, one.fullName, one.failureMessages?.[0])));
    if (status !== 'failed' || tests.length > 0) continue;
    failed++;
    failures.push(told(name, message));
  }
  if (!endedWell && failed === 0) {
    failed++;
    failures.push('it ended with an error that no test has');
  }
  return { passed: numPassedTests, failed, skipped: numPendingTests, failures };
}

/** The first line of each, in one: the end of a log may be all that is kept of it. */
function told(...words: readonly (string | undefined)[]): string {
  return words.flatMap((one) => one?.split('\n')[0] || []).join(': ');
}

/** Where what the tests in real editors need stands, by the name of its package in Debian. */
export function editorPrograms(env: Readonly<Record<string, string | undefined>>): Record<string, string> {
  return {
    chromium: env.CHROMIUM ?? '/usr/bin/chromium',
    neovim: env.NEOVIM ?? '/usr/bin/nvim',
    'emacs-nox': env.EMACS_PROGRAM ?? '/usr/bin/emacs',
    vim: env.VIM_PROGRAM ?? '/usr/bin/vim',
    'vim-ale': '/usr/share/vim/vimfiles/pack/dist-bundle/opt/ale',
  };
}

/** The names of those programs that are not there. */
export function missingPrograms(programs: Readonly<Record<string, string>>): string[] {
  return Object.entries(programs).flatMap(([name, path]) => (existsSync(path) ? [] : [name]));
}

/** Whether this runs on a build server, as those say it: `CI` set to anything that is no no. */
export function isBuildServer({ CI }: { readonly CI?: string | undefined }): boolean {
  return CI !== undefined && !['', '0', 'false', 'no'].includes(CI.toLowerCase());
}
