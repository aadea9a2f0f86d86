import { spawn } from 'node:child_process';
import { describe, expect, it, onTestFinished } from 'vitest';
import { ExitNotification, InitializeRequest, ShutdownRequest } from 'vscode-languageserver-protocol/node';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { Client, pulling, pushing } from './client.ts';
import { folderWith, startClient } from './places.ts';

describe('a server process', () => {
  it('says what it offers, in UTF-16 columns', async () => {
    const client = await startClient({ capabilities: pulling });
    expect(client.initialized?.capabilities).toMatchObject({
      positionEncoding: 'utf-16',
      textDocumentSync: { openClose: true, change: 2 },
      hoverProvider: true,
      inlayHintProvider: { resolveProvider: false },
      documentSymbolProvider: true,
      foldingRangeProvider: true,
      codeActionProvider: { codeActionKinds: expect.arrayContaining(['quickfix']) },
      completionProvider: { triggerCharacters: [' ', '#'] },
      diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true },
    });
    expect(client.initialized?.serverInfo?.name).toBe('doughwright');
  });

  it('offers no pulling of findings to a client that is sent them', async () => {
    const client = await startClient({ capabilities: pushing });
    expect(client.initialized?.capabilities.diagnosticProvider).toBeUndefined();
  });

  it('asks to watch the files and the settings', async () => {
    const client = await startClient();
    await expect
      .poll(() => client.registered.toSorted())
      .toEqual(['workspace/didChangeConfiguration', 'workspace/didChangeWatchedFiles']);
  });

  it('ends with 0 after shutdown and exit', async () => {
    const client = await startClient();
    await client.open(folderWith().uriOf('a.dough'), 'formula A:\n  water 60%\n');
    await client.connection.sendRequest(ShutdownRequest.type);
    const { ended } = client;
    await client.connection.sendNotification(ExitNotification.type);
    expect(await ended).toBe(0);
  });

  it('ends with 1 when told to exit without shutdown', async () => {
    const client = await startClient();
    await client.connection.sendNotification(ExitNotification.type);
    expect(await client.ended).toBe(1);
  });

  it('ends when its input closes', async () => {
    const client = await startClient();
    const { ended } = client;
    client.process.stdin!.end();
    expect(await ended).toBe(1);
  });

  it('ends when its input closes before it was initialized', async () => {
    const child = spawn(nodeProgram, [commandLineProgram(), 'serve', '--stdio'], { stdio: 'pipe' });
    onTestFinished(() => void child.kill('SIGKILL'));
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.stdin.end();
    expect(await ended).toBe(1);
  });

  it('starts again after it was killed', async () => {
    const first = await startClient();
    first.process.kill('SIGKILL');
    await first.ended;
    const second = await startClient();
    expect(await second.stop()).toBe(0);
  });
});

describe('a client that does not keep to the protocol', () => {
  const text = 'formula A:\n  water 60%\n';

  it('gets an error for what is asked before initialize, and can go on', async () => {
    const client = new Client();
    onTestFinished(() => client.end());
    await expect(client.connection.sendRequest('doughwright/unheard-of', {})).rejects.toThrow(
      /The server is not initialized/,
    );
    const answer = await client.connection.sendRequest(InitializeRequest.type, {
      processId: null,
      rootUri: null,
      capabilities: {},
    });
    expect(answer.capabilities.hoverProvider).toBe(true);
  });

  it('gets empty answers for documents it has not opened', async () => {
    const client = await startClient({ capabilities: pulling });
    const textDocument = { uri: 'file:///nowhere/at%20all.dough' };
    const at = { textDocument, position: { line: 3, character: 7 } };
    expect(await client.connection.sendRequest('textDocument/hover', at)).toBeNull();
    expect(await client.connection.sendRequest('textDocument/documentSymbol', { textDocument })).toEqual([]);
    expect(await client.connection.sendRequest('textDocument/foldingRange', { textDocument })).toEqual([]);
    expect(await client.connection.sendRequest('doughwright/sheet', { textDocument, line: 0 })).toBeNull();
    expect(await client.connection.sendRequest('doughwright/status', { textDocument, line: 0 })).toBeNull();
    expect(await client.pull(textDocument.uri)).toMatchObject({ kind: 'full', items: [] });
  });

  it.each([
    ['nothing', {}],
    ['a wrong type', { textDocument: 7, position: 'here' }],
    ['a position outside', { textDocument: { uri: 'untitled:a' }, position: { line: 900, character: 900 } }],
    ['a position before', { textDocument: { uri: 'untitled:a' }, position: { line: -1, character: -1 } }],
  ])('is still served after asking with %s', async (_, params) => {
    const client = await startClient();
    await client.open('untitled:a', text);
    for (const method of [
      'hover',
      'completion',
      'documentSymbol',
      'foldingRange',
      'inlayHint',
      'codeAction',
    ]) {
      await client.connection.sendRequest(`textDocument/${method}`, params).catch(() => undefined);
    }
    await client.connection.sendNotification('textDocument/didChange', params);
    await client.connection.sendNotification('textDocument/didOpen', params);
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', params);
    const version = client.change('untitled:a', `${text}  salt 2%\n`);
    await client.findings('untitled:a', version);
    expect(await client.stop()).toBe(0);
  });

  it('is still served after a message that is no JSON', async () => {
    const client = await startClient();
    client.process.stdin!.write('Content-Length: 9\r\n\r\n{"not js}');
    await client.open('untitled:a', text);
    await client.findings('untitled:a', 1);
  });
});
