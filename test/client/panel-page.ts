import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { panelHtml } from '../../client/preview/html.ts';
import {
  type FromPage,
  noWork,
  type PageState,
  type ToPage,
  type WorkState,
} from '../../client/preview/messages.ts';
import type { SheetOptions, ShownSheet } from '../../server/protocol.ts';
import { type ThemeName, themes } from './themes.ts';

export interface PanelPage extends Webview<FromPage, ToPage> {
  /** Sends a sheet under the next sequence number, with what is tried and how far the work has come. */
  show(sheet: ShownSheet, kept?: { readonly asked?: SheetOptions; readonly work?: WorkState }): Promise<void>;
  /** What the page keeps for a reload. */
  state(): Promise<PageState | undefined>;
}

export interface PanelOptions {
  readonly theme?: ThemeName;
  /** Width of the panel in CSS pixels. */
  readonly width?: number;
  readonly height?: number;
  readonly state?: PageState;
  /** How many pixels of the screen a CSS pixel has. */
  readonly scale?: number;
}

const origin = 'https://panel.test';

/** A page of ours in an editor made of paper. */
export interface Webview<From, To> {
  readonly page: Page;
  /** What the page has told the extension so far. */
  readonly sent: readonly From[];
  /** What went wrong in the page, policy violations included. */
  readonly wrong: readonly string[];
  /** Sends the page a message as the extension would. */
  send(message: To): Promise<void>;
}

/** Opens the panel's own page and bundle, under its own policy, with an editor made of paper around it. */
export async function openPanel(browser: Browser, options: PanelOptions = {}): Promise<PanelPage> {
  const opened = await openWebview<FromPage, ToPage>(browser, 'client/preview/page.ts', options);
  let sequence = 0;
  return {
    ...opened,
    async show(sheet, { asked = {}, work = noWork } = {}) {
      sequence += 1;
      await opened.send({ type: 'sheet', sequence, sheet, asked, work });
    },
    state: () => opened.page.evaluate(`JSON.parse(sessionStorage.getItem('state') ?? 'null') ?? undefined`),
  };
}

/** Opens one of our pages by the source of its script. */
export async function openWebview<From, To>(
  browser: Browser,
  entry: string,
  options: PanelOptions = {},
): Promise<Webview<From, To>> {
  const theme = themes[options.theme ?? 'light'];
  const page = await browser.newPage({
    viewport: { width: options.width ?? 800, height: options.height ?? 1000 },
    deviceScaleFactor: options.scale ?? 1,
  });
  const sent: From[] = [];
  const wrong: string[] = [];
  page.on('pageerror', (error) => wrong.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') wrong.push(message.text());
  });
  const { script, style } = await bundledPage(entry);
  const files: Record<string, { body: string; contentType: string }> = {
    '/': {
      body: panelHtml({
        cspSource: origin,
        nonce: '5f2c',
        scriptUri: `${origin}/preview.js`,
        styleUri: `${origin}/preview.css`,
        ...{ language: 'en', title: 'Batch Sheet' },
      }),
      contentType: 'text/html',
    },
    '/preview.js': { body: script, contentType: 'text/javascript' },
    '/preview.css': { body: style, contentType: 'text/css' },
  };
  await page.route('**/*', async (route) => {
    const file = files[new URL(route.request().url()).pathname];
    if (file) await route.fulfill(file);
    else {
      wrong.push(`asked for ${route.request().url()}`);
      await route.abort();
    }
  });
  await page.exposeFunction('tellExtension', (message: From) => void sent.push(message));
  await page.addInitScript(`
    const kept = sessionStorage.getItem('state');
    let state = kept ? JSON.parse(kept) : ${JSON.stringify(options.state ?? null)} ?? undefined;
    globalThis.acquireVsCodeApi = () => ({
      postMessage: (message) => void tellExtension(message),
      getState: () => state,
      setState: (next) => { state = next; sessionStorage.setItem('state', JSON.stringify(next)); },
    });
    addEventListener('DOMContentLoaded', () => {
      document.body.classList.add('${theme.bodyClass}');
      for (const [name, colour] of Object.entries(${JSON.stringify(theme.colours)})) {
        document.documentElement.style.setProperty('--vscode-' + name, colour);
      }
    });`);
  await page.goto(`${origin}/`);
  return {
    page,
    sent,
    wrong,
    async send(message) {
      await page.evaluate(
        `window.postMessage(${JSON.stringify(message)}), new Promise((done) => setTimeout(done))`,
      );
    },
  };
}

const bundled = new Map<string, Promise<{ script: string; style: string }>>();

function bundledPage(entry: string): Promise<{ script: string; style: string }> {
  const before = bundled.get(entry);
  if (before !== undefined) return before;
  const made = Promise.all([bundle(entry), bundle('client/preview/page.css')]).then(([script, style]) => ({
    script,
    style,
  }));
  bundled.set(entry, made);
  return made;
}

async function bundle(entry: string): Promise<string> {
  const result = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
  });
  return result.outputFiles[0]!.text;
}
