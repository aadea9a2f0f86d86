import { describe, expect, it, onTestFinished } from 'vitest';
import { Client, pulling } from './client.ts';
import { folderWith, startClient } from './places.ts';

/** The codes of JSON-RPC 2.0, section 5.1, and of the Language Server Protocol 3.17, `ErrorCodes`. */
const codes = {
  methodNotFound: -32601,
  invalidRequest: -32600,
  invalidParams: -32602,
  serverNotInitialized: -32002,
  requestFailed: -32803,
  contentModified: -32801,
  requestCancelled: -32800,
};
const uri = 'untitled:a';
const text = 'formula A:\n  bread flour 100%\n  water 60%\n';

/** The code that a request fails with; undefined where it is answered. */
async function codeOf(answer: Promise<unknown>): Promise<number | undefined> {
  return answer.then(
    () => undefined,
    (error: { code: number }) => error.code,
  );
}
const ask = (client: Client, method: string, params: object): Promise<unknown> =>
  client.connection.sendRequest(method, params);
const at = { textDocument: { uri }, position: { line: 1, character: 3 } };

describe('what a server answers with an error', () => {
  it('asked before it is initialized, of whatever, and told nothing', async () => {
    const client = new Client();
    onTestFinished(() => client.end());
    for (const method of ['textDocument/hover', 'doughwright/unheard-of', 'shutdown'])
      expect(await codeOf(ask(client, method, at)), method).toBe(codes.serverNotInitialized);
    await client.open(uri, text);
    const start = { processId: null, rootUri: null, capabilities: {} };
    expect(await codeOf(ask(client, 'initialize', start))).toBeUndefined();
    // The one that came too early was not kept.
    expect(await ask(client, 'textDocument/hover', at)).toBeNull();
    expect(await codeOf(ask(client, 'initialize', start))).toBe(codes.invalidRequest);
  });

  it('asked after it was shut down; it still ends with 0', async () => {
    const client = await startClient();
    await ask(client, 'shutdown', {});
    for (const method of ['textDocument/hover', 'doughwright/unheard-of', 'shutdown'])
      expect(await codeOf(ask(client, method, at)), method).toBe(codes.invalidRequest);
    await client.connection.sendNotification('exit');
    expect(await client.ended).toBe(0);
  });

  it('asked for what there is not', async () => {
    const client = await startClient();
    for (const method of ['textDocument/paint', 'doughwright/unheard-of', 'workspace/executeCommand'])
      expect(await codeOf(ask(client, method, {})), method).toBe(codes.methodNotFound);
  });

  it.each([
    ['textDocument/hover', {}],
    ['textDocument/hover', { textDocument: { uri } }],
    ['textDocument/hover', { textDocument: 7, position: 'here' }],
    ['textDocument/hover', { ...at, position: { line: -1, character: 0 } }],
    ['textDocument/hover', { ...at, position: { line: 1.5, character: 0 } }],
    ['textDocument/hover', { ...at, position: { line: 1, character: null } }],
    ['textDocument/completion', { textDocument: { uri: 5 }, position: at.position }],
    ['textDocument/rename', at],
    ['textDocument/rename', { ...at, newName: 7 }],
    ['textDocument/codeAction', { textDocument: { uri } }],
    ['textDocument/codeAction', { textDocument: { uri }, range: { start: at.position }, context: {} }],
    ['textDocument/inlayHint', { textDocument: { uri }, range: at.position }],
    ['textDocument/selectionRange', { textDocument: { uri }, positions: [at.position, {}] }],
    ['textDocument/documentSymbol', {}],
    ['textDocument/diagnostic', {}],
    ['workspace/symbol', {}],
    ['doughwright/sheet', { textDocument: { uri } }],
    ['doughwright/status', { textDocument: { uri }, line: 'one' }],
    ['doughwright/importTable', { textDocument: { uri } }],
    ['codeAction/resolve', { title: 'x', data: { uri } }],
  ])('asked %s with %j', async (method, params) => {
    const client = await startClient({ capabilities: pulling });
    await client.open(uri, text);
    expect(await codeOf(ask(client, method, params))).toBe(codes.invalidParams);
    // What is as it should be is answered, far outside of the text too.
    for (const position of [at.position, { line: 900, character: 900 }])
      expect(await codeOf(ask(client, 'textDocument/hover', { ...at, position }))).toBeUndefined();
    expect(client.logged.filter((one) => /TypeError|Error:/.test(one))).toEqual([]);
  });

  it('asked what cannot be done', async () => {
    const client = await startClient();
    await client.open(uri, text);
    const rename = (line: number, newName: string) =>
      codeOf(
        ask(client, 'textDocument/rename', {
          textDocument: { uri },
          position: { line, character: 9 },
          newName,
        }),
      );
    expect(await rename(0, '')).toBe(codes.requestFailed);
    // A name of the catalogue.
    expect(await rename(1, 'Quay white')).toBe(codes.requestFailed);
    expect(await codeOf(ask(client, 'textDocument/prepareRename', at))).toBe(codes.requestFailed);
    expect(await rename(0, 'B')).toBeUndefined();
  });

  it('asked and told that the answer is no longer wanted', async () => {
    const client = await startClient();
    await client.open(uri, text);
    // Cancelled while it waits for the edits behind it.
    const { connection } = client;
    const one = codeOf(
      connection.sendRequest('textDocument/documentSymbol', { textDocument: { uri } }, cancelled()),
    );
    expect(await one).toBe(codes.requestCancelled);
  });

  it('asked for edits of a text that is another by now', async () => {
    const folder = folderWith({ 'a.dough': text });
    const client = await startClient({
      folders: [folder.uri],
      capabilities: {
        textDocument: {
          codeAction: {
            codeActionLiteralSupport: { codeActionKind: { valueSet: [] } },
            dataSupport: true,
            resolveSupport: { properties: ['edit'] },
          },
        },
      },
    });
    const file = folder.uriOf('a.dough');
    await client.open(file, text);
    const range = { start: { line: 2, character: 2 }, end: { line: 2, character: 2 } };
    const asked = { textDocument: { uri: file }, range, context: { diagnostics: [], triggerKind: 1 } };
    const actions = (await ask(client, 'textDocument/codeAction', asked)) as { data?: object }[];
    const action = actions.find(({ data }) => data !== undefined)!;
    expect(action).toBeDefined();
    expect(await codeOf(ask(client, 'codeAction/resolve', action))).toBeUndefined();
    client.change(file, `${text}  salt 2%\n`);
    expect(await codeOf(ask(client, 'codeAction/resolve', action))).toBe(codes.contentModified);
  });
});

/** A token that asks to cancel right behind the request. */
function cancelled() {
  return {
    isCancellationRequested: false,
    onCancellationRequested: (listener: (event: unknown) => void) => {
      queueMicrotask(() => listener(undefined));
      return { dispose: () => {} };
    },
  } as never;
}
