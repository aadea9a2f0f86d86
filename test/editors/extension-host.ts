import { existsSync, realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { startEditor } from './code-server.ts';
import { formulaFile, formulaText } from './expectations.ts';
import { compiledSuite, extensionFolder } from './places.ts';

export interface SuiteResult {
  /** 0 when every test of the suite passed. */
  readonly exitCode: number;
  /** What the suite wrote to its console, a line each. */
  readonly console: readonly string[];
}

/**
 * Runs the bundled suite inside the extension host of real VS Code in Chromium, with the extension in development:
 * the same suite that `desktop.ts` runs in a desktop VS Code.
 *
 * @param say is told each line of the suite's console as it comes
 */
export async function runInExtensionHost(
  say: (line: string) => void = () => {},
  timeoutMilliseconds = 120_000,
): Promise<SuiteResult> {
  const suite = compiledSuite();
  if (!existsSync(suite)) throw new Error(`There is no ${suite} to run: run npm run build first.`);
  const lines: string[] = [];
  let finish: (exitCode: number) => void = () => {};
  const finished = new Promise<number>((resolve) => {
    finish = resolve;
  });
  const editor = await startEditor({
    files: { [formulaFile]: formulaText },
    beforeOpening: async (page, address) => {
      await page.exposeFunction('codeAutomationExit', (code: number) => finish(code));
      await page.exposeFunction('codeAutomationLog', (_type: string, values: unknown[]) => {
        for (const line of values.map(String).join(' ').split('\n')) {
          lines.push(line);
          say(line);
        }
      });
      await asExtensionDevelopment(page, address, extensionFolder(), suite);
    },
  });
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      const seen = [...lines, ...editor.console.slice(-30)].join('\n');
      reject(
        new Error(
          `Waited ${timeoutMilliseconds / 1000} s for the suite to end in the extension host:\n${seen}`,
        ),
      );
    }, timeoutMilliseconds);
  });
  try {
    return { exitCode: await Promise.race([finished, tooLong]), console: lines };
  } finally {
    clearTimeout(timer);
    await editor.stop();
  }
}

/**
 * The workbench in a page takes its options from an attribute of one element. We add to what it reads there, rather
 * than rewrite the page on its way, which would break its web sockets.
 */
async function asExtensionDevelopment(
  page: Page,
  address: string,
  extension: string,
  suite: string,
): Promise<void> {
  const remote = (path: string) => ({ scheme: 'vscode-remote', authority: address, path });
  const developmentOptions = {
    enableSmokeTestDriver: true,
    extensions: [remote(extension)],
    extensionTestsPath: remote(suite),
  };
  await page.addInitScript(`(() => {
    const original = Element.prototype.getAttribute;
    Element.prototype.getAttribute = function (name) {
      const value = original.call(this, name);
      if (name !== 'data-settings' || this.id !== 'vscode-workbench-web-configuration' || value === null) return value;
      return JSON.stringify({ ...JSON.parse(value), developmentOptions: ${JSON.stringify(developmentOptions)} });
    };
  })()`);
}

if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const result = await runInExtensionHost(console.log);
  process.exitCode = result.exitCode;
}
