import { afterEach } from 'vitest';
import { screenshot } from './appearance.ts';
import type { Editor } from './code-server.ts';

/** After each failed test of a file, takes a picture of the window into test/screenshots. */
export function takePicturesOfFailures(editor: () => Editor | undefined): void {
  afterEach(async ({ task }) => {
    const page = editor()?.page;
    if (task.result?.state !== 'fail' || !page) return;
    const name = task.name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
    await screenshot(page, `failed-${name}`).catch(() => undefined);
  });
}
