import { existsSync, readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { expect, it } from 'vitest';
import type { PublishDiagnosticsParams } from 'vscode-languageserver-protocol';

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: { readonly capabilities?: object };
}

const bundle = new URL('../../dist/server-worker.js', import.meta.url);

/** Runs the worker's bundle with no more around it than a worker in a browser has; nothing of Node. */
function startWorker(): {
  send(message: object): void;
  next(wanted: (message: Message) => boolean): Promise<Message>;
} {
  if (!existsSync(bundle)) throw new Error('dist/server-worker.js is not there; run npm run build first');
  const received: Message[] = [];
  const waiting = new Set<() => void>();
  const scope = createContext({
    addEventListener: () => undefined,
    postMessage: (message: Message) => {
      received.push(JSON.parse(JSON.stringify(message)));
      for (const look of waiting) look();
    },
    setTimeout,
    clearTimeout,
    setInterval,
    clearInterval,
    performance,
    console,
    TextEncoder,
    TextDecoder,
    URL,
    crypto,
  }) as { onmessage?: (event: { data: unknown }) => void };
  runInContext(readFileSync(bundle, 'utf8'), scope);
  return {
    send: (message) => scope.onmessage?.({ data: { jsonrpc: '2.0', ...message } }),
    next: (wanted) =>
      new Promise((resolve) => {
        const look = () => {
          const message = received.find(wanted);
          if (!message) return;
          waiting.delete(look);
          resolve(message);
        };
        waiting.add(look);
        look();
      }),
  };
}

it('speaks German there too, without a file beside it', async () => {
  const worker = startWorker();
  const params = { processId: null, rootUri: null, capabilities: {}, locale: 'de' };
  worker.send({ id: 1, method: 'initialize', params });
  await worker.next(({ id }) => id === 1);
  worker.send({ method: 'initialized', params: {} });
  const text = 'formula A:\n  salt 2\n';
  worker.send({
    method: 'textDocument/didOpen',
    params: {
      textDocument: { uri: 'vscode-vfs://quay/a.dough', languageId: 'doughwright', version: 1, text },
    },
  });
  const told = await worker.next(({ method }) => method === 'textDocument/publishDiagnostics');
  const { diagnostics } = told.params as PublishDiagnosticsParams;
  expect(diagnostics.map(({ message }) => message).join()).toContain('Die Einheit fehlt: 2% vom Mehl');
});

it('the server runs as a web worker and tells findings of open documents', async () => {
  const worker = startWorker();
  worker.send({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
  const started = await worker.next(({ id }) => id === 1);
  expect(started.result?.capabilities).toMatchObject({ hoverProvider: true });
  worker.send({ method: 'initialized', params: {} });
  const uri = 'vscode-vfs://quay/a.dough';
  worker.send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri, languageId: 'doughwright', version: 1, text: 'formula A:\n  salt 2\n' } },
  });
  const told = await worker.next(({ method }) => method === 'textDocument/publishDiagnostics');
  const { version, diagnostics } = told.params as PublishDiagnosticsParams;
  expect(version).toBe(1);
  expect(diagnostics.filter(({ range }) => range.start.line === 1)).not.toEqual([]);
});
