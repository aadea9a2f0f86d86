import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createHistoryPanel } from '../../client/history/history-panel.ts';
import { registerSinceHover } from '../../client/history/since-hover.ts';
import type { Wire } from '../../client/wire.ts';

interface Provider {
  provideHover(document: object, position: object, token: object): Promise<unknown>;
}

/** As much of an editor as panel and hover touch: a webview, and a repository whose commit can change. */
const editor = vi.hoisted(() => ({
  posted: [] as { type: string; cure?: string }[],
  changed: undefined as (() => void) | undefined,
  typed: undefined as ((event: object) => void) | undefined,
  state: { HEAD: { commit: 'first' } },
  isTrusted: true,
  provider: undefined as Provider | undefined,
}));

vi.mock('vscode', () => ({
  l10n: { t: (text: string) => text },
  env: { language: 'en' },
  ViewColumn: { Beside: -2 },
  Uri: { parse: (uri: string) => ({ path: uri }), joinPath: () => ({ toString: () => '' }) },
  Hover: class {
    readonly contents: unknown;
    constructor(contents: unknown) {
      this.contents = contents;
    }
  },
  MarkdownString: class {
    value = '';
    appendText(text: string) {
      this.value = text.replace(/[\\`*_{}[\]()#+\-!]/g, '\\$&');
      return this;
    }
  },
  languages: {
    registerHoverProvider: (_: unknown, provider: Provider) => {
      editor.provider = provider;
      return { dispose: () => {} };
    },
  },
  workspace: {
    get isTrusted() {
      return editor.isTrusted;
    },
    getConfiguration: () => ({ get: () => undefined }),
    onDidChangeTextDocument: (listener: (event: object) => void) => {
      editor.typed = listener;
      return { dispose: () => {} };
    },
  },
  extensions: {
    getExtension: () => ({
      isActive: true,
      exports: {
        enabled: true,
        getAPI: () => ({
          state: 'initialized',
          getRepository: () => ({
            state: {
              get HEAD() {
                return editor.state.HEAD;
              },
              onDidChange: (listener: () => void) => {
                editor.changed = listener;
                return { dispose: () => {} };
              },
            },
          }),
        }),
      },
    }),
  },
  window: {
    createWebviewPanel: () => ({
      webview: {
        asWebviewUri: () => '',
        cspSource: '',
        onDidReceiveMessage: () => {},
        postMessage: (message: { type: string }) => editor.posted.push(message),
      },
      reveal: () => {},
      dispose: () => {},
      onDidDispose: () => {},
    }),
  },
}));

const place = { uri: 'file:///quay/tin.dough', line: 0, formula: 'Harbour Tin' };
const guard =
  (_: string, handler: (...args: never[]) => unknown) =>
  async (...args: never[]) =>
    void (await handler(...args));
const lastPosted = () => editor.posted.at(-1);

beforeEach(() => {
  Object.assign(editor, {
    posted: [],
    changed: undefined,
    isTrusted: true,
    state: { HEAD: { commit: 'first' } },
  });
});

describe('the panel of a history', () => {
  const panel = (askHistory: () => Promise<unknown>) =>
    createHistoryPanel({ askHistory } as unknown as Wire, guard as never, {} as never);

  it('asks again at another commit, and at nothing else that git says', async () => {
    const ask = vi.fn(async () => ({ page: {} }));
    const history = panel(ask);
    history.open(place);
    history.refresh();
    await vi.waitFor(() => expect(lastPosted()?.type).toBe('history'));
    const before = ask.mock.calls.length;
    editor.changed!();
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(ask).toHaveBeenCalledTimes(before);
    editor.state.HEAD = { commit: 'second' };
    editor.changed!();
    await vi.waitFor(() => expect(ask).toHaveBeenCalledTimes(before + 1));
  });

  it('asks again once the hand rests that typed in a formula file, and shows the old page until then', async () => {
    const ask = vi.fn(async () => ({ page: {} }));
    const history = panel(ask);
    history.open(place);
    history.refresh();
    await vi.waitFor(() => expect(lastPosted()?.type).toBe('history'));
    const before = ask.mock.calls.length;
    editor.posted = [];
    vi.useFakeTimers();
    for (const languageId of ['doughwright', 'markdown', 'doughwright'])
      editor.typed!({ document: { languageId }, contentChanges: [{}] });
    expect(ask).toHaveBeenCalledTimes(before);
    vi.advanceTimersByTime(1000);
    vi.useRealTimers();
    await vi.waitFor(() => expect(ask).toHaveBeenCalledTimes(before + 1));
    await vi.waitFor(() => expect(editor.posted.map(({ type }) => type)).toEqual(['history']));
  });

  it('asks nothing of the git of a folder that is not trusted, and says so', async () => {
    editor.isTrusted = false;
    const ask = vi.fn(async () => null);
    const history = panel(ask);
    history.open(place);
    history.refresh();
    await vi.waitFor(() => expect(lastPosted()?.type).toBe('none'));
    expect(JSON.stringify(lastPosted())).toContain('not trusted');
    expect(ask).not.toHaveBeenCalled();
  });

  it('says what the server says where there is no history', async () => {
    const history = panel(async () => ({ cannot: 'no formula “Harbour Tin” in the history of HEAD' }));
    history.open(place);
    history.refresh();
    await vi.waitFor(() => expect(lastPosted()?.cure).toMatch(/^no formula/));
  });
});

describe('the hover of since when', () => {
  const hovered = async (askSince: () => Promise<unknown>, uri = 'file:///quay/tin.dough') => {
    registerSinceHover({ askSince } as unknown as Wire);
    const token = { isCancellationRequested: false };
    return (await editor.provider!.provideHover({ uri: { toString: () => uri } }, { line: 5 }, token)) as
      | { contents: { value: string } }
      | undefined;
  };

  it('shows the words of a commit as text, and asks nothing where the folder is not trusted', async () => {
    const ask = vi.fn(async () => ({ text: 'in git: salt 2% ([click](command:x))' }));
    expect((await hovered(ask))?.contents.value).not.toContain('[click](');
    editor.isTrusted = false;
    ask.mockClear();
    expect(await hovered(ask)).toBeUndefined();
    expect(ask).not.toHaveBeenCalled();
  });

  it('shows nothing where the server has nothing, or gives up', async () => {
    expect(await hovered(async () => null)).toBeUndefined();
    expect(await hovered(() => Promise.reject(new Error('cancelled')))).toBeUndefined();
  });
});
