import { describe, expect, it } from 'vitest';
import {
  CancellationTokenSource,
  type CompletionList,
  type DocumentSymbol,
  type FoldingRange,
  type Hover,
  type InlayHint,
  LSPErrorCodes,
  type SymbolInformation,
} from 'vscode-languageserver-protocol';
import type { Client } from './client.ts';
import { startClient } from './places.ts';

const uri = 'untitled:Harbour';
const text = `# Quay Lane is our own invention.
# It bakes every day.
formula Harbour Tin:
  yield 10 pieces of 880 g
  strong white   100%
  water          65%
  salt           2%

process:
  bulk 1 h at 25 °C
`;

function ask<R>(client: Client, method: string, params: object = {}): Promise<R> {
  return client.connection.sendRequest(`textDocument/${method}`, { textDocument: { uri }, ...params });
}

async function opened(of = text): Promise<Client> {
  const client = await startClient();
  await client.open(uri, of);
  return client;
}

describe('questions about a document', () => {
  it('hover tells of the line at the cursor', async () => {
    const client = await opened();
    const hover = await ask<Hover>(client, 'hover', { position: { line: 4, character: 4 } });
    expect(hover.contents).toMatchObject({
      kind: 'markdown',
      value: expect.stringContaining('strong white'),
    });
    expect(hover.range?.start.line).toBe(4);
  });

  it('hover is of the text as it was asked of, edits before it included', async () => {
    const client = await opened();
    client.change(uri, text.replace('strong white', 'wholemeal wheat'));
    const hover = ask<Hover>(client, 'hover', { position: { line: 4, character: 4 } });
    client.change(uri, '');
    expect(JSON.stringify((await hover).contents)).toContain('wholemeal wheat');
  });

  it('hints stand at the ends of lines within the range asked for', async () => {
    const client = await opened();
    const range = { start: { line: 4, character: 0 }, end: { line: 5, character: 0 } };
    const hints = await ask<InlayHint[]>(client, 'inlayHint', { range });
    expect(hints.map(({ position }) => position.line)).toEqual([4, 5]);
    expect(hints[0]!.position.character).toBe('  strong white   100%'.length);
  });

  it('hints go when the settings say so, and the client is told', async () => {
    const client = await opened();
    const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
    expect(await ask<InlayHint[]>(client, 'inlayHint', { range })).not.toEqual([]);
    const before = client.refreshes.hints;
    client.settings = { inlayHints: { enabled: false } };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(() => client.refreshes.hints).toBeGreaterThan(before);
    await expect.poll(() => ask<InlayHint[]>(client, 'inlayHint', { range })).toEqual([]);
  });

  it('the outline holds the formulas, each name within its range', async () => {
    const client = await opened();
    const symbols = await ask<DocumentSymbol[]>(client, 'documentSymbol');
    expect(symbols.map(({ name }) => name)).toEqual(['Harbour Tin']);
    expect(symbols[0]).toMatchObject({
      range: { start: { line: 2 } },
      selectionRange: { start: { line: 2 } },
    });
  });

  it('the outline is flat for a client without trees', async () => {
    const client = await startClient({ capabilities: {} });
    await client.open(uri, text);
    const symbols = await ask<SymbolInformation[]>(client, 'documentSymbol');
    expect(symbols[0]).toMatchObject({ name: 'Harbour Tin', location: { uri } });
  });

  it('the outline of a half-typed header has a name', async () => {
    const client = await opened('formula :\n  water 60%\n');
    for (const { name } of await ask<DocumentSymbol[]>(client, 'documentSymbol')) expect(name).not.toBe('');
  });

  it('completion offers what may stand here, as edits', async () => {
    const client = await opened(`${text}\nformula Other:\n  sal`);
    const { items } = await ask<CompletionList>(client, 'completion', {
      position: { line: 12, character: 5 },
    });
    const salt = items.find(({ label }) => label === 'salt');
    expect(salt?.textEdit).toMatchObject({ newText: expect.stringContaining('salt') });
  });

  it('completion has no placeholders for a client without snippets', async () => {
    const client = await startClient({ capabilities: {} });
    await client.open(uri, `${text}\n`);
    for (const line of [3, 7, 10]) {
      const { items } = await ask<CompletionList>(client, 'completion', { position: { line, character: 0 } });
      for (const { textEdit, insertTextFormat } of items) {
        expect(textEdit?.newText).not.toMatch(/\$\{|\$\d/);
        expect(insertTextFormat).not.toBe(2);
      }
    }
  });

  it('folds the formula', async () => {
    const client = await opened();
    const folds = await ask<FoldingRange[]>(client, 'foldingRange');
    expect(folds.length).toBeGreaterThan(0);
    for (const { startLine, endLine } of folds) expect(endLine).toBeGreaterThan(startLine);
  });

  it('tells the status of the formula at the cursor, and afterwards when its numbers change', async () => {
    const client = await opened();
    const changed = new Promise<{ uris: string[] }>((resolve) => {
      client.connection.onNotification('doughwright/changed', resolve);
    });
    const status = await client.connection.sendRequest<{ formula: string; text: string }>(
      'doughwright/status',
      {
        textDocument: { uri },
        line: 5,
      },
    );
    expect(status).toMatchObject({
      formula: expect.any(String),
      text: expect.any(String),
      tooltip: expect.any(String),
    });
    client.change(uri, text.replace('65%', '66%'));
    expect((await changed).uris).toContain(uri);
  });

  it('answers a request that was taken back as cancelled', async () => {
    const client = await opened();
    await client.findings(uri, 1);
    const source = new CancellationTokenSource();
    const asked = client.connection.sendRequest(
      'textDocument/documentSymbol',
      { textDocument: { uri } },
      source.token,
    );
    source.cancel();
    const outcome = await asked.then(
      () => 'answered',
      (error: { code: number }) => error.code,
    );
    // The answer may have been on its way already.
    expect(['answered', LSPErrorCodes.RequestCancelled]).toContain(outcome);
    expect(await ask<DocumentSymbol[]>(client, 'documentSymbol')).toHaveLength(1);
  });
});
