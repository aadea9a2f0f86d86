import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { downloadAndUnzipVSCode, runTests } from '@vscode/test-electron';
import { formulaFile, formulaText } from './expectations.ts';
import { compiledSuite, extensionFolder } from './places.ts';

/** Exit code when desktop VS Code cannot be fetched: neither a pass nor a failure of the suite. */
const exitCodeNoVsCode = 77;

/**
 * Runs the suite of the extension host in a desktop VS Code. VS Code comes from its makers' download site, or from the
 * program that the environment variable VSCODE_PROGRAM names. A display is needed (`xvfb-run` gives one).
 */
async function runOnDesktop(): Promise<number> {
  const suite = compiledSuite();
  if (!existsSync(suite)) {
    console.error(`There is no ${suite} to run: run npm run build first.`);
    return 2;
  }
  const program = await findVsCode();
  if (!program) return exitCodeNoVsCode;
  const home = mkdtempSync(join(tmpdir(), 'doughwright-desktop-'));
  writeFileSync(join(home, formulaFile), formulaText);
  try {
    return await runTests({
      vscodeExecutablePath: program,
      extensionDevelopmentPath: extensionFolder(),
      extensionTestsPath: suite,
      launchArgs: [
        home,
        '--disable-extensions',
        '--disable-workspace-trust',
        '--skip-welcome',
        '--no-sandbox',
      ],
    });
  } catch (error) {
    console.error(`The suite failed in desktop VS Code: ${error}`);
    return 1;
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

async function findVsCode(): Promise<string | undefined> {
  const named = process.env.VSCODE_PROGRAM;
  if (named) return named;
  try {
    return await downloadAndUnzipVSCode('stable');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    console.error(
      `Desktop VS Code could not be fetched (${reason}), so the suite was not run. ` +
        `The same suite runs in VS Code in Chromium: npm run test:editors. Exit code ${exitCodeNoVsCode}.`,
    );
    return undefined;
  }
}

process.exitCode = await runOnDesktop();
