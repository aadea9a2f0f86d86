import { readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the whole project. */
export const projectFolder = resolve(fileURLToPath(new URL('../..', import.meta.url)));

/** Version of the npm package `code-server`; it ships VS Code whole. */
export const codeServerVersion = '4.139.1';

/** Where large downloads live, outside the project and its dependencies: the user's cache folder. */
export function cacheFolder(): string {
  const base = process.env.XDG_CACHE_HOME || join(homedir(), '.cache');
  return join(base, 'doughwright');
}

/** Folder of the installed code-server, keyed by version; it need not exist yet. */
export function codeServerFolder(): string {
  return join(cacheFolder(), `code-server-${codeServerVersion}`);
}

/** The script that Node runs to start code-server. */
export function codeServerEntry(): string {
  return join(codeServerFolder(), 'node_modules', 'code-server', 'out', 'node', 'entry.js');
}

/** Chromium's program: the environment variable CHROMIUM, else where Debian puts it. */
export const chromiumProgram = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Version in the project's package.json. */
export function projectVersion(): string {
  const manifest: unknown = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8'));
  return (manifest as { version: string }).version;
}

/** The packaged extension; the environment variable DOUGHWRIGHT_VSIX puts another in its place. */
export function extensionPackage(): string {
  return resolve(process.env.DOUGHWRIGHT_VSIX ?? join(projectFolder, `doughwright-${projectVersion()}.vsix`));
}

/** The packaged browser variant; the environment variable DOUGHWRIGHT_WEB_VSIX puts another in its place. */
export function browserExtensionPackage(): string {
  return resolve(process.env.DOUGHWRIGHT_WEB_VSIX ?? join(projectFolder, 'dist', 'doughwright-web.vsix'));
}

/** Folder of the extension in development: the one with package.json; overridden by DOUGHWRIGHT_EXTENSION_FOLDER. */
export function extensionFolder(): string {
  return resolve(process.env.DOUGHWRIGHT_EXTENSION_FOLDER ?? projectFolder);
}

/** The bundled suite that runs inside the extension host; overridden by DOUGHWRIGHT_SUITE. */
export function compiledSuite(): string {
  return resolve(process.env.DOUGHWRIGHT_SUITE ?? join(projectFolder, 'dist', 'test', 'suite.cjs'));
}

/** The program that runs the bundles of the command line: this very Node, or that which the environment variable DOUGHWRIGHT_NODE names. */
export const nodeProgram = process.env.DOUGHWRIGHT_NODE ?? process.execPath;

/** The bundled command line whose `serve --stdio` is the language server; overridden by DOUGHWRIGHT_CLI. */
export function commandLineProgram(): string {
  return resolve(process.env.DOUGHWRIGHT_CLI ?? join(projectFolder, 'dist', 'doughwright.cjs'));
}
