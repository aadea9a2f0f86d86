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

export interface PanelPage {
  readonly page: Page;
  /** What the page has told the extension so far. */
  readonly sent: readonly FromPage[];
  /** What went wrong in the page, policy violations included. */
  readonly wrong: readonly string[];
  /** Sends the page a message as the extension would. */
  send(message: ToPage): Promise<void>;
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
}

const origin = 'https://panel.test';

/** Opens the panel's own page and bundle, under its own policy, with an editor made of paper around it. */
export async function openPanel(browser: Browser, options: PanelOptions = {}): Promise<PanelPage> {
  const theme = themes[options.theme ?? 'light'];
  const page = await browser.newPage({
    viewport: { width: options.width ?? 800, height: options.height ?? 1000 },
  });
  const sent: FromPage[] = [];
  const wrong: string[] = [];
  page.on('pageerror', (error) => wrong.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') wrong.push(message.text());
  });
  const { script, style } = await bundledPanel();
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
  await page.exposeFunction('tellExtension', (message: FromPage) => void sent.push(message));
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
  let sequence = 0;
  const send = (message: ToPage) =>
    page.evaluate(`window.postMessage(${JSON.stringify(message)}), new Promise((done) => setTimeout(done))`);
  return {
    page,
    sent,
    wrong,
    async send(message) {
      await send(message);
    },
    async show(sheet, { asked = {}, work = noWork } = {}) {
      sequence += 1;
      await send({ type: 'sheet', sequence, sheet, asked, work });
    },
    state: () => page.evaluate(`JSON.parse(sessionStorage.getItem('state') ?? 'null') ?? undefined`),
  };
}

let bundled: Promise<{ script: string; style: string }> | undefined;

function bundledPanel(): Promise<{ script: string; style: string }> {
  bundled ??= Promise.all([bundle('client/preview/page.ts'), bundle('client/preview/page.css')]).then(
    ([script, style]) => ({ script, style }),
  );
  return bundled;
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
