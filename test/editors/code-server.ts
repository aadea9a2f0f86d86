import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { installCodeServer } from './install-code-server.ts';
import { installedOnce } from './installed-once.ts';
import { chromiumProgram } from './places.ts';
import { freePort, runProgram, startProgram, waitUntil } from './processes.ts';

export interface EditorOptions {
  /** The packaged extensions to install first, as a user would. */
  readonly packages?: readonly string[];
  /** Files to write into the workspace folder, by path relative to it. */
  readonly files?: Readonly<Record<string, string>>;
  /** A folder copied into the workspace before `files` are written. */
  readonly copyOf?: string;
  /** User settings beside the quiet ones every run has. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Size of the browser window in pixels. */
  readonly width?: number;
  readonly height?: number;
  /** Called before the page is opened: the place for init scripts and exposed functions. */
  readonly beforeOpening?: (page: Page, address: string) => Promise<void>;
}

export interface Editor {
  readonly page: Page;
  /** Folder that is open in the editor. */
  readonly workspace: string;
  /** Folder of the installed extensions. */
  readonly extensions: string;
  /** Host and port of the server: `127.0.0.1:PORT`. */
  readonly address: string;
  /** What the page's console said so far, one entry a message. */
  readonly console: readonly string[];
  /** Changes one setting of the workspace; the running editor follows (it does not watch the user's settings). */
  setSetting(name: string, value: unknown): void;
  /** Text of a file of the workspace as it is on disk. */
  readFile(name: string): string;
  /** Ends the browser and the server and removes the run's folder. */
  stop(): Promise<void>;
}

const quietSettings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'telemetry.telemetryLevel': 'off',
  // In a browser VS Code saves by itself after a second; the desktop does not.
  'files.autoSave': 'off',
  'extensions.ignoreRecommendations': true,
  'git.openRepositoryInParentFolders': 'never',
  // Settings changed during a run are the workspace's; their folder would stand in the pictures.
  'files.exclude': { '**/.vscode': true },
};

const chromiumFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** VS Code served at an address of this machine, with no browser yet. */
export interface ServedEditor {
  readonly workspace: string;
  readonly extensions: string;
  readonly address: string;
  /** Does this too when the editor is stopped, before the server ends. */
  readonly onStop: (step: () => Promise<unknown>) => void;
  readonly stop: () => Promise<void>;
}

/** Starts code-server on a workspace of its own, with the packages installed. */
export async function serveEditor(options: EditorOptions = {}): Promise<ServedEditor> {
  const entry = await installCodeServer(console.log);
  const home = mkdtempSync(join(tmpdir(), 'doughwright-editor-'));
  const workspace = join(home, 'bakery');
  mkdirSync(workspace, { recursive: true });
  if (options.copyOf) cpSync(options.copyOf, workspace, { recursive: true });
  for (const [name, text] of Object.entries(options.files ?? {})) writeFileIn(join(workspace, name), text);
  writeJson(join(home, 'data', 'User', 'settings.json'), { ...quietSettings, ...options.settings });
  const extensions = join(home, 'extensions');
  const serverFlags = [entry, ...ownFolders(home), '--extensions-dir', extensions];

  const stops: (() => Promise<unknown>)[] = [
    async () => rmSync(home, { recursive: true, force: true, maxRetries: 5 }),
  ];
  const stop = async () => {
    for (const step of stops.splice(0).reverse()) await step().catch(() => undefined);
  };
  try {
    await installPackages(entry, options.packages ?? [], extensions);
    const address = `127.0.0.1:${await freePort()}`;
    const server = startProgram(process.execPath, [
      ...serverFlags,
      ...['--auth', 'none', '--bind-addr', address, '--disable-telemetry', '--disable-update-check'],
    ]);
    stops.push(server.stop);
    await waitUntil(
      'code-server to answer',
      () => answers(`http://${address}/healthz`),
      30_000,
      server.output,
    );
    return { workspace, extensions, address, onStop: (step) => stops.push(step), stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** Starts real VS Code (code-server) on a free loopback port and opens its workspace folder in Chromium. */
export async function startEditor(options: EditorOptions = {}): Promise<Editor> {
  if (!existsSync(chromiumProgram)) {
    throw new Error(
      `No Chromium at ${chromiumProgram}: install Debian's chromium or set CHROMIUM to its program.`,
    );
  }
  const served = await serveEditor(options);
  const { workspace, extensions, address, stop } = served;
  const workspaceSettings: Record<string, unknown> = {};
  try {
    const browser = await launchChromium();
    served.onStop(() => browser.close());
    const viewport = { width: options.width ?? 1280, height: options.height ?? 900 };
    const page = await browser.newPage({ viewport, locale: 'en-GB' });
    const consoleLines: string[] = [];
    page.on('console', (message) => consoleLines.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => consoleLines.push(`page error: ${error.message}`));
    await options.beforeOpening?.(page, address);
    await page.goto(`http://${address}/?folder=${encodeURIComponent(workspace)}`, {
      waitUntil: 'domcontentloaded',
    });
    await waitForWorkbench(page, () => consoleLines.slice(-20).join('\n'));
    return {
      page,
      workspace,
      extensions,
      address,
      console: consoleLines,
      setSetting(name, value) {
        workspaceSettings[name] = value;
        writeJson(join(workspace, '.vscode', 'settings.json'), workspaceSettings);
      },
      readFile: (name) => readFileSync(join(workspace, name), 'utf8'),
      stop,
    };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** Starts Chromium without a display. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumProgram, args: chromiumFlags, timeout: 60_000 });
}

function ownFolders(home: string): string[] {
  return ['--config', join(home, 'config.yaml'), '--user-data-dir', join(home, 'data')];
}

/**
 * Puts packages into a folder of extensions as a user would. Where the environment variable of `installed-once.ts` names a folder they
 * are installed there, once in a run of all tests, and copied.
 */
async function installPackages(
  entry: string,
  packages: readonly string[],
  extensions: string,
): Promise<void> {
  if (packages.length === 0) return;
  const shared = process.env[installedOnce];
  if (shared === undefined) return installInto(entry, packages, extensions);
  const installed = join(shared, createHash('sha256').update(packages.join('\n')).digest('hex'));
  if (!existsSync(installed)) {
    // Another file of tests may do the same at this moment.
    const own = mkdtempSync(`${installed}-`);
    await installInto(entry, packages, own);
    if (!existsSync(installed)) renameSync(own, installed);
  }
  cpSync(installed, extensions, { recursive: true });
}

async function installInto(entry: string, packages: readonly string[], extensions: string): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'doughwright-install-'));
  const flags = [entry, ...ownFolders(home), '--extensions-dir', extensions];
  try {
    for (const file of packages) {
      if (!existsSync(file)) throw new Error(`There is no ${file} to install: run npm run package first.`);
      const said = await runProgram(process.execPath, [...flags, '--install-extension', file], 120_000);
      if (!said.includes('successfully installed')) throw new Error(`${file} was not installed:\n${said}`);
    }
  } finally {
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function waitForWorkbench(page: Page, consoleText: () => string): Promise<void> {
  const ready = async () =>
    (await page.locator('.part.statusbar .statusbar-item').count()) > 0 &&
    (await page.locator('.explorer-folders-view .monaco-list').count()) > 0
      ? true
      : undefined;
  await waitUntil('the workbench to stand in the browser', ready, 90_000, consoleText);
}

async function answers(address: string): Promise<true | undefined> {
  const answer = await fetch(address).catch(() => undefined);
  return answer?.ok ? true : undefined;
}

function writeJson(path: string, value: unknown): void {
  writeFileIn(path, `${JSON.stringify(value, null, 2)}\n`);
}

function writeFileIn(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
