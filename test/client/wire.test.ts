import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { createWire } from '../../client/wire.ts';

const editor = vi.hoisted(() => ({ documents: [] as { uri: { toString(): string }; version: number }[] }));

vi.mock('vscode', () => ({
  l10n: { t: (text: string) => text },
  EventEmitter: class {},
  workspace: {
    get textDocuments() {
      return editor.documents;
    },
  },
}));

const uri = 'file:///quay/tin.dough';
const params = { textDocument: { uri }, line: 0, change: { kind: 'keep', asked: {} } } as const;

/** A wire to a server that answers with an edit of this version of the file. */
function wireTo(version: number | null, meanwhile = () => {}) {
  const wire = createWire();
  wire.attach({
    isRunning: () => true,
    onNotification: () => {},
    sendRequest: async () => {
      meanwhile();
      return { edit: { documentChanges: [{ textDocument: { uri, version }, edits: [] }] } };
    },
    protocol2CodeConverter: { asWorkspaceEdit: async () => 'the edit', asUri: (of: string) => of },
  } as unknown as BaseLanguageClient);
  return wire;
}

describe('an edit that a panel asks for', () => {
  beforeEach(() => {
    editor.documents = [{ uri, version: 7 }];
  });

  it('is made in the text it was worked out for', async () => {
    expect(await wireTo(7).askEdit(params)).toBe('the edit');
  });

  it('is made in a file that is not open', async () => {
    editor.documents = [];
    expect(await wireTo(null).askEdit(params)).toBe('the edit');
  });

  it('is not made in lines that have moved since', async () => {
    const typing = () => {
      editor.documents = [{ uri, version: 8 }];
    };
    expect(await wireTo(7, typing).askEdit(params)).toMatch(/^The text has changed meanwhile/);
  });
});
