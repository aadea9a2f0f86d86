import { describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-protocol';
import { applyEdits, startClient } from './places.ts';

const uri = 'untitled:Harbour';
const careless = 'formula Harbour Tin :\r\n strong white 100%\r\n🍞 flour  ,  3\r\n\r\n\r\nwater 65 %\r\n';
const options = { tabSize: 4, insertSpaces: true };

async function edits(method: string, params: object, text = careless): Promise<string> {
  const client = await startClient();
  await client.open(uri, text);
  const answer = await client.connection.sendRequest<TextEdit[]>(`textDocument/${method}`, {
    textDocument: { uri },
    options,
    ...params,
  });
  return applyEdits(text, answer);
}

describe('formatting through the server', () => {
  it('is offered', async () => {
    const client = await startClient();
    expect(client.initialized?.capabilities).toMatchObject({
      documentFormattingProvider: true,
      documentRangeFormattingProvider: true,
      documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n', moreTriggerCharacter: [':'] },
    });
  });

  it('brings a document into the canonical form and leaves a broken line', async () => {
    expect(await edits('formatting', {})).toBe(
      'formula Harbour Tin:\r\n  strong white       100%\r\n🍞 flour  ,  3\r\n\r\n  water              65%\r\n',
    );
  });

  it('touches only the lines of a range, and not the one it ends before', async () => {
    const range = { start: { line: 1, character: 3 }, end: { line: 5, character: 0 } };
    expect(await edits('rangeFormatting', { range })).toBe(
      'formula Harbour Tin :\r\n  strong white       100%\r\n🍞 flour  ,  3\r\n\r\nwater 65 %\r\n',
    );
  });

  it('puts the line right that Enter was just typed behind', async () => {
    expect(await edits('onTypeFormatting', { position: { line: 2, character: 0 }, ch: '\n' })).toBe(
      careless.replace(' strong white 100%', '  strong white       100%'),
    );
  });

  it('answers nothing for a document nobody opened', async () => {
    const client = await startClient();
    const asked = { textDocument: { uri: 'untitled:none' }, options };
    expect(await client.connection.sendRequest('textDocument/formatting', asked)).toEqual([]);
  });
});
