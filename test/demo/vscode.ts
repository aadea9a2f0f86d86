import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { serveEditor } from '../editors/code-server.ts';
import { extensionPackage, projectFolder } from '../editors/places.ts';

/**
 * Opens the demo bakery with the packaged extension: in the desktop's VS Code when its command `code` is there, else in
 * real VS Code in a browser at a printed address.
 */
const packaged = extensionPackage();
const examples = join(projectFolder, 'examples');
const hasCode = spawnSync('code', ['--version'], { stdio: 'ignore' }).status === 0;
if (hasCode) {
  spawnSync('code', ['--install-extension', packaged, '--force'], { stdio: 'inherit' });
  spawnSync('code', [examples], { stdio: 'inherit' });
} else {
  console.log(
    'No command “code” is here: starting VS Code in a browser. The first time it is installed, which takes two minutes.',
  );
  const editor = await serveEditor({ packages: [packaged], copyOf: examples });
  console.log(
    `\nOpen http://${editor.address}/?folder=${encodeURIComponent(editor.workspace)} in a browser. It works on a copy of the demo.\nEnd with Ctrl-C.`,
  );
  // Ctrl-C, a terminal that is closed, somebody who ends it: the server goes with us, and its folder.
  await new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGHUP', 'SIGTERM'] as const) process.once(signal, () => done());
  });
  await editor.stop();
}
