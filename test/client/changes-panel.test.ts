import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createChangesPanel } from '../../client/changes/changes-panel.ts';
import type { Wire } from '../../client/wire.ts';

/** As much of an editor as the panel touches: a webview, and a repository for each file that answers when it is told to. */
const editor = vi.hoisted(() => {
  const state = {
    posted: [] as { type: string; about?: string }[],
    /** Who listens to which repository. */
    listening: new Set<string>(),
    answers: new Map<string, () => void>(),
    close: () => {},
    isTrusted: true,
  };
  const repository = (uri: { path: string }) => ({
    state: {
      HEAD: { commit: '0123456789' },
      onDidChange: () => {
        state.listening.add(uri.path);
        return { dispose: () => state.listening.delete(uri.path) };
      },
    },
    show: () => new Promise((resolve) => state.answers.set(uri.path, () => resolve('# before\n'))),
  });
  return { state, repository };
});

vi.mock('vscode', () => ({
  l10n: {
    t: (text: string, ...parts: string[]) => text.replace(/\{(\d)\}/g, (_, at) => String(parts[Number(at)])),
  },
  env: { language: 'en' },
  ViewColumn: { Beside: -2 },
  Uri: {
    parse: (uri: string) => ({ path: uri.slice('file://'.length), fsPath: uri.slice('file://'.length) }),
    joinPath: () => ({ toString: () => '' }),
  },
  workspace: {
    get isTrusted() {
      return editor.state.isTrusted;
    },
    getConfiguration: () => ({ get: () => undefined }),
  },
  extensions: {
    getExtension: () => ({
      isActive: true,
      exports: {
        enabled: true,
        getAPI: () => ({ state: 'initialized', getRepository: editor.repository }),
      },
    }),
  },
  window: {
    createWebviewPanel: () => ({
      webview: {
        asWebviewUri: () => '',
        cspSource: '',
        onDidReceiveMessage: () => {},
        postMessage: (message: { type: string }) => editor.state.posted.push(message),
      },
      reveal: () => {},
      dispose: () => editor.state.close(),
      onDidDispose: (closed: () => void) => {
        editor.state.close = closed;
      },
    }),
  },
}));

const one = 'file:///quay/one.dough';
const other = 'file:///harbour/other.dough';
const answered = async (path: string) => {
  await expect.poll(() => editor.state.answers.has(path)).toBe(true);
  editor.state.answers.get(path)!();
  await new Promise((resolve) => setTimeout(resolve, 5));
};

function panel(comparison: () => unknown = () => ({ verdict: 'same', formulas: [], definitions: [] })) {
  const wire = { onChanged: () => ({ dispose: () => {} }), askCompare: async () => comparison() };
  const guard =
    (_: string, handler: (...args: never[]) => unknown) =>
    async (...args: never[]) =>
      void (await handler(...args));
  return createChangesPanel(wire as unknown as Wire, guard as never, {} as never);
}

describe('the panel of what changed', () => {
  beforeEach(() => {
    Object.assign(editor.state, { posted: [], listening: new Set(), answers: new Map(), isTrusted: true });
  });

  it('follows the repository of the file it shows, however late an earlier answer comes', async () => {
    const changes = panel();
    changes.open(one);
    changes.refresh();
    changes.open(other);
    await answered('/harbour/other.dough');
    await answered('/quay/one.dough');
    expect([...editor.state.listening]).toEqual(['/harbour/other.dough']);
    expect(editor.state.posted.map(({ about }) => about)).toEqual([
      'other.dough, since the last commit, 01234567',
    ]);
  });

  it('follows nothing once it is closed', async () => {
    const changes = panel();
    changes.open(one);
    changes.refresh();
    editor.state.close();
    await answered('/quay/one.dough');
    expect([...editor.state.listening]).toEqual([]);
  });

  it('asks nothing of the git of a folder that is not trusted, and says so', async () => {
    editor.state.isTrusted = false;
    const changes = panel();
    changes.open(one);
    changes.refresh();
    await vi.waitFor(() => expect(editor.state.posted.at(-1)?.type).toBe('none'));
    expect(JSON.stringify(editor.state.posted.at(-1))).toContain('not trusted');
    expect(editor.state.answers.size).toBe(0);
    expect([...editor.state.listening]).toEqual([]);
  });

  it('asks again when the server runs again', async () => {
    let runs = false;
    const changes = panel(() => (runs ? { verdict: 'same', formulas: [], definitions: [] } : null));
    changes.open(one);
    changes.refresh();
    await answered('/quay/one.dough');
    expect(editor.state.posted.at(-1)?.type).toBe('none');
    runs = true;
    editor.state.answers.clear();
    changes.refresh();
    await answered('/quay/one.dough');
    expect(editor.state.posted.at(-1)?.type).toBe('changes');
  });
});
