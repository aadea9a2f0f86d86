import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import { type Client, pushing } from './client.ts';
import { folderWith, startClient } from './places.ts';

const formula = 'formula A:\n  quayside mill special   100%\n  water   60%\n';
const flour = 'flour quayside mill special:\n  grain wheat\n';

/** Whether the flour of the formula is known, as its line shows. */
function knowsFlour(findings: readonly Diagnostic[]): boolean {
  return findings.every(({ range }) => range.start.line !== 1);
}

function told(client: Client, uri: string, known: boolean) {
  return client.publication(uri, ({ diagnostics }) => knowsFlour(diagnostics) === known);
}

function watched(client: Client, changes: readonly { uri: string; type: 1 | 2 | 3 }[]): Promise<void> {
  return client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes });
}

describe('the files around a document', () => {
  it('are read from the folders of the workspace', async () => {
    const folder = folderWith({ 'flours.dough': flour, 'deep/er/a.dough': formula });
    const client = await startClient({ folders: [folder.uri] });
    const uri = folder.uriOf('deep/er/a.dough');
    await client.open(uri, formula);
    await told(client, uri, true);
  });

  it('may yet define a name while they are being read: it is not told as unknown before they are', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 6000 }, (_, index) => [
        `days/day-${index}.dough`,
        `${formula.replace('A', `D${index}`)}`,
      ]),
    );
    const folder = folderWith({ ...many, 'zz/flours.dough': flour });
    const client = await startClient({ folders: [folder.uri] });
    const [a, b] = [folder.uriOf('a.dough'), folder.uriOf('b.dough')];
    await client.open(a, formula);
    await client.open(b, formula.replace('mill special', 'mill spezial'));
    const { diagnostics } = await client.publication(b, (one) => !knowsFlour(one.diagnostics));
    expect(diagnostics.map(({ code }) => code)).toContain('unknown-ingredient');
    await told(client, a, true);
    const unknown = client.published.filter(
      ({ uri, diagnostics: all }) => uri === a && all.some(({ code }) => code === 'unknown-ingredient'),
    );
    expect(unknown).toEqual([]);
  });

  it('are read around a file of no folder', async () => {
    const folder = folderWith({ 'flours.dough': flour, 'a.dough': formula });
    const client = await startClient();
    await client.open(folder.uriOf('a.dough'), formula);
    await told(client, folder.uriOf('a.dough'), true);
  });

  it('are taken as the editor has them while open, as the disk has them after', async () => {
    const folder = folderWith({ 'flours.dough': flour, 'a.dough': formula });
    const client = await startClient({ folders: [folder.uri] });
    const [a, flours] = [folder.uriOf('a.dough'), folder.uriOf('flours.dough')];
    await client.open(a, formula);
    await told(client, a, true);
    await client.open(flours, '# given up\n');
    await told(client, a, false);
    await client.close(flours);
    await told(client, a, true);
  });

  it('are followed when something outside the editor changes, makes and removes them', async () => {
    const folder = folderWith({ 'a.dough': formula });
    const client = await startClient({ folders: [folder.uri] });
    const [a, flours] = [folder.uriOf('a.dough'), folder.uriOf('flours.dough')];
    await client.open(a, formula);
    await told(client, a, false);
    folder.write('flours.dough', flour);
    await watched(client, [{ uri: flours, type: 1 }]);
    await told(client, a, true);
    folder.write('flours.dough', '# nothing\n');
    await watched(client, [{ uri: flours, type: 2 }]);
    await told(client, a, false);
    folder.write('flours.dough', flour);
    await watched(client, [{ uri: flours, type: 2 }]);
    await told(client, a, true);
    folder.remove('flours.dough');
    await watched(client, [{ uri: flours, type: 3 }]);
    await told(client, a, false);
  });

  it('go with their folder', async () => {
    const folder = folderWith({ 'a.dough': formula, 'mill/flours.dough': flour });
    const client = await startClient({ folders: [folder.uri] });
    await client.open(folder.uriOf('a.dough'), formula);
    await told(client, folder.uriOf('a.dough'), true);
    folder.remove('mill');
    await client.connection.sendNotification('workspace/didDeleteFiles', {
      files: [{ uri: folder.uriOf('mill') }],
    });
    await told(client, folder.uriOf('a.dough'), false);
  });

  it('are never those that git ignores, or of hidden folders and of packages, whatever a watcher tells', async () => {
    const left = ['old/flours.dough', '.history/flours.dough', 'node_modules/mill/flours.dough'];
    const folder = folderWith({ 'a.dough': formula, 'b.dough': formula, '.gitignore': 'old/\n' });
    const client = await startClient({ folders: [folder.uri] });
    const [a, b] = [folder.uriOf('a.dough'), folder.uriOf('b.dough')];
    await client.open(a, formula);
    await told(client, a, false);
    for (const name of left) folder.write(name, flour);
    await watched(
      client,
      left.map((name) => ({ uri: folder.uriOf(name), type: 1 as const })),
    );
    // One that was looked at and closed again goes as well.
    await client.open(folder.uriOf(left[0]!), flour);
    await client.close(folder.uriOf(left[0]!));
    await client.open(b, formula);
    await told(client, b, false);
    client.change(a, `${formula}\n`);
    await told(client, a, false);
    folder.write('.gitignore', '# nothing\n');
    await watched(client, [{ uri: folder.uriOf('.gitignore'), type: 2 }]);
    await told(client, a, true);
    folder.write('.gitignore', 'old/\n');
    await watched(client, [{ uri: folder.uriOf('.gitignore'), type: 2 }]);
    await told(client, a, false);
  });

  it('come and go with a folder that is moved outside the editor, of which a watcher tells the folder alone', async () => {
    const folder = folderWith({ 'a.dough': formula, 'mill/fine/flours.dough': flour });
    const client = await startClient({ folders: [folder.uri] });
    const a = folder.uriOf('a.dough');
    await client.open(a, formula);
    await told(client, a, true);
    folder.remove('mill');
    await watched(client, [{ uri: folder.uriOf('mill'), type: 3 }]);
    await told(client, a, false);
    folder.write('miller/fine/flours.dough', flour);
    await watched(client, [{ uri: folder.uriOf('miller'), type: 1 }]);
    await told(client, a, true);
  });

  it('count once, though one was looked at through a link to its folder', async () => {
    const folder = folderWith({ 'a.dough': formula, 'mill/flours.dough': flour });
    symlinkSync(join(folder.path, 'mill'), join(folder.path, 'link'));
    const client = await startClient({ folders: [folder.uri] });
    const a = folder.uriOf('a.dough');
    await client.open(a, formula);
    await told(client, a, true);
    await client.open(folder.uriOf('link/flours.dough'), flour);
    await told(client, a, false);
    await client.close(folder.uriOf('link/flours.dough'));
    await told(client, a, true);
  });

  it('come and go with the folders of the workspace', async () => {
    const [bakery, mill] = [folderWith({ 'a.dough': formula }), folderWith({ 'flours.dough': flour })];
    const client = await startClient({ folders: [bakery.uri] });
    const a = bakery.uriOf('a.dough');
    await client.open(a, formula);
    await told(client, a, false);
    const change = (added: string[], removed: string[]) =>
      client.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
        event: {
          added: added.map((uri) => ({ uri, name: '' })),
          removed: removed.map((uri) => ({ uri, name: '' })),
        },
      });
    await change([mill.uri], []);
    await told(client, a, true);
    await change([], [mill.uri]);
    await told(client, a, false);
  });

  it('have findings of their own, which go when the file goes', async () => {
    const folder = folderWith({ 'b.dough': formula });
    const client = await startClient({ folders: [folder.uri] });
    await told(client, folder.uriOf('b.dough'), false);
    folder.remove('b.dough');
    await watched(client, [{ uri: folder.uriOf('b.dough'), type: 3 }]);
    expect((await told(client, folder.uriOf('b.dough'), true)).diagnostics).toEqual([]);
  });

  it('leave no findings behind when one is renamed in the editor', async () => {
    const folder = folderWith({ 'old.dough': formula });
    const client = await startClient({ folders: [folder.uri] });
    const [old, renamed] = [folder.uriOf('old.dough'), folder.uriOf('new.dough')];
    await client.open(old, formula);
    await told(client, old, false);
    folder.remove('old.dough');
    folder.write('new.dough', formula);
    await client.close(old);
    await client.open(renamed, formula);
    await watched(client, [
      { uri: old, type: 3 },
      { uri: renamed, type: 1 },
    ]);
    expect((await told(client, old, true)).diagnostics).toEqual([]);
    await told(client, renamed, false);
  });

  it('are known by one name, however the editor spells it', async () => {
    const folder = folderWith({ 'rye (new) & old.dough': formula, 'flours.dough': flour });
    const client = await startClient({ folders: [folder.uri] });
    const spelt = folder.uriOf('flours.dough').replace('flours', '%66lours');
    const a = folder.uriOf('rye (new) & old.dough').replace('(', '%28');
    await client.open(spelt, flour);
    await client.open(a, formula);
    await told(client, a, true);
    client.change(spelt, '# nothing\n');
    await told(client, a, false);
  });

  it('are not those of older revisions that the editor shows', async () => {
    const folder = folderWith({ 'flours.dough': flour, 'a.dough': formula });
    const client = await startClient({ folders: [folder.uri] });
    await client.open(`git:${new URL(folder.uriOf('flours.dough')).pathname}?HEAD`, flour);
    await client.open(folder.uriOf('a.dough'), formula);
    await told(client, folder.uriOf('a.dough'), true);
  });

  it('are looked at again on saving when the client cannot watch', async () => {
    const folder = folderWith({ 'a.dough': formula });
    const client = await startClient({
      folders: [folder.uri],
      capabilities: { ...pushing, workspace: { workspaceFolders: true } },
    });
    await client.open(folder.uriOf('a.dough'), formula);
    await told(client, folder.uriOf('a.dough'), false);
    folder.write('flours.dough', flour);
    await client.connection.sendNotification('textDocument/didSave', {
      textDocument: { uri: folder.uriOf('a.dough') },
    });
    await told(client, folder.uriOf('a.dough'), true);
  });
});
