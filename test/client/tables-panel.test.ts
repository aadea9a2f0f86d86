import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createPlanPanel } from '../../client/plan/plan-panel.ts';
import type { Wire } from '../../client/wire.ts';

interface Posted {
  readonly type: string;
  readonly about?: unknown;
  readonly what?: string;
}

/** As much of an editor as a page beside it touches. */
const editor = vi.hoisted(() => {
  const state = {
    posted: [] as Posted[],
    tell: (_: { type: string }): void => {},
    close: (): void => {},
    made: 0,
    restore: undefined as ((panel: unknown, about: unknown) => Promise<void>) | undefined,
  };
  const panelOf = () => ({
    webview: {
      asWebviewUri: () => '',
      cspSource: '',
      onDidReceiveMessage: (told: (message: { type: string }) => void) => {
        state.tell = told;
      },
      postMessage: (message: Posted) => state.posted.push(message),
    },
    reveal: () => {},
    dispose: () => state.posted.push({ type: 'disposed' }),
    onDidDispose: (closed: () => void) => {
      state.close = closed;
    },
  });
  return { state, panelOf };
});

vi.mock('vscode', () => ({
  l10n: { t: (text: string) => text },
  env: { language: 'en' },
  ViewColumn: { Beside: -2 },
  Uri: { joinPath: () => ({ toString: () => '' }) },
  workspace: { getConfiguration: () => ({ get: () => undefined }) },
  window: {
    createWebviewPanel: () => {
      editor.state.made += 1;
      return editor.panelOf();
    },
    registerWebviewPanelSerializer: (
      _: string,
      serializer: { deserializeWebviewPanel: (panel: unknown, about: unknown) => Promise<void> },
    ) => {
      editor.state.restore = serializer.deserializeWebviewPanel;
      return { dispose: () => {} };
    },
  },
}));

const place = { uri: 'file:///quay/plan.dough', line: 3 };

function panel(answer: () => unknown) {
  const asked: unknown[] = [];
  const wire = {
    onChanged: () => ({ dispose: () => {} }),
    askPlan: async (params: unknown) => {
      asked.push(params);
      return answer();
    },
  };
  const guard =
    (_: string, handler: (...args: never[]) => unknown) =>
    async (...args: never[]) =>
      void (await handler(...args));
  return { asked, plan: createPlanPanel(wire as unknown as Wire, guard as never, {} as never) };
}

const page = { title: 'Friday', language: 'en', facts: [], tables: [], notes: [] };
const settled = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('a page of tables beside its text', () => {
  beforeEach(() => {
    Object.assign(editor.state, { posted: [], made: 0 });
  });

  it('keeps what it is about, by the name that it has by then', async () => {
    const { plan, asked } = panel(() => ({ page, html: '' }));
    plan.open(place);
    editor.state.tell({ type: 'ready' });
    await settled();
    expect(asked).toEqual([{ textDocument: { uri: place.uri }, line: 3 }]);
    expect(editor.state.posted.map(({ type }) => type)).toEqual(['tables', 'about']);
    expect(editor.state.posted.at(-1)?.about).toEqual({ ...place, plan: 'Friday' });
  });

  it('comes back with it after the window is loaded anew, and asks again once the server runs', async () => {
    let runs = false;
    const { plan, asked } = panel(() => (runs ? { page, html: '' } : null));
    await editor.state.restore?.(editor.panelOf(), { ...place, plan: 'Friday' });
    expect(editor.state.made).toBe(0);
    editor.state.tell({ type: 'ready' });
    await settled();
    expect(asked).toEqual([{ textDocument: { uri: place.uri }, line: 3, plan: 'Friday' }]);
    expect(editor.state.posted[0]?.what).toBe('The language server is not running.');
    expect(editor.state.posted[1]?.about).toEqual({ ...place, plan: 'Friday' });
    runs = true;
    plan.refresh();
    await settled();
    expect(editor.state.posted.at(-2)?.type).toBe('tables');
    // It is the one that is brought to the front from now on.
    plan.open(place);
    expect(editor.state.made).toBe(0);
  });

  it('gives way where it knows nothing, or where another was opened meanwhile', async () => {
    const { plan } = panel(() => ({ page, html: '' }));
    await editor.state.restore?.(editor.panelOf(), undefined);
    expect(editor.state.posted).toEqual([{ type: 'disposed' }]);
    plan.open(place);
    await editor.state.restore?.(editor.panelOf(), place);
    expect(editor.state.posted.at(-1)).toEqual({ type: 'disposed' });
  });

  it('shows no answer that comes after it was closed', async () => {
    const { plan } = panel(() => ({ page, html: '' }));
    plan.open(place);
    editor.state.tell({ type: 'ready' });
    editor.state.close();
    await settled();
    expect(editor.state.posted).toEqual([]);
  });
});
