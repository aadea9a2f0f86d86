import { afterAll, afterEach, beforeAll } from 'vitest';
import { screenshot } from './appearance.ts';
import { type Editor, type EditorOptions, startEditor } from './code-server.ts';
import { extensionPackage } from './places.ts';

/**
 * The real editor of a file of tests, with the packaged extension where no other is named: it starts before them, stops behind them, and
 * after each that fails a picture of the window is taken into test/screenshots. It can be asked for anything once it has started.
 *
 * @param ready is done before the first test
 */
export function editorFor(
  options: EditorOptions,
  ready: (editor: Editor) => Promise<unknown> = () => Promise.resolve(),
): Editor {
  let started: Editor | undefined;
  const editor = (): Editor => {
    if (started === undefined) throw new Error('The editor has not started yet: ask it in a test.');
    return started;
  };
  beforeAll(async () => {
    started = await startEditor({ packages: [extensionPackage()], ...options });
    await ready(started);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state !== 'fail' || started === undefined) return;
    const name = task.name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
    await screenshot(started.page, `failed-${name}`).catch(() => undefined);
  });
  afterAll(async () => {
    await started?.stop();
  });
  return {
    get page() {
      return editor().page;
    },
    get workspace() {
      return editor().workspace;
    },
    get extensions() {
      return editor().extensions;
    },
    get address() {
      return editor().address;
    },
    get console() {
      return editor().console;
    },
    setSetting: (name, value) => editor().setSetting(name, value),
    readFile: (name) => editor().readFile(name),
    stop: () => editor().stop(),
  };
}
