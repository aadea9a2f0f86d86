import { describe, expect, it } from 'vitest';
import type {
  ClientCapabilities,
  CodeAction,
  CodeActionContext,
  Range,
  TextDocumentEdit,
} from 'vscode-languageserver-protocol';
import { type Client, pushing } from './client.ts';
import { startClient } from './places.ts';

const uri = 'untitled:Harbour';
const text = `formula Harbour Tin:
  salt           9%
  water          65%
  strong white   100%
  butter         4
`;

const resolving: ClientCapabilities = {
  ...pushing,
  workspace: {
    ...pushing.workspace,
    workspaceEdit: { documentChanges: true, snippetEditSupport: true },
  },
  textDocument: {
    ...pushing.textDocument,
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source'] } },
      dataSupport: true,
      isPreferredSupport: true,
      resolveSupport: { properties: ['edit'] },
    },
  },
};

const at = (line: number, character = 4): Range => ({
  start: { line, character },
  end: { line, character },
});

async function opened(capabilities?: ClientCapabilities, of = text): Promise<Client> {
  const client = await startClient(capabilities === undefined ? {} : { capabilities });
  await client.open(uri, of);
  return client;
}

function ask(client: Client, range: Range, context: Partial<CodeActionContext> = {}): Promise<CodeAction[]> {
  return client.connection.sendRequest('textDocument/codeAction', {
    textDocument: { uri },
    range,
    context: { diagnostics: [], ...context },
  });
}

const titled = (actions: readonly CodeAction[], words: string): CodeAction => {
  const found = actions.find(({ title }) => title.includes(words));
  expect(found, words).toBeDefined();
  return found!;
};

describe('actions', () => {
  it('names its kinds, and that it resolves where the client can', async () => {
    const able = (await opened(resolving)).initialized!.capabilities.codeActionProvider;
    expect(able).toMatchObject({ resolveProvider: true });
    expect((able as { codeActionKinds: string[] }).codeActionKinds).toEqual(
      expect.arrayContaining(['quickfix', 'refactor.rewrite', 'refactor.extract', 'refactor.inline']),
    );
    const plain = (await opened()).initialized!.capabilities.codeActionProvider;
    expect(plain).toMatchObject({ resolveProvider: false });
  });

  it('come with their edits to a client that cannot ask for them', async () => {
    const sort = titled(await ask(await opened(), at(1)), 'Sort by weight');
    expect(sort).toMatchObject({ kind: 'refactor.rewrite.sort-by-weight', edit: { documentChanges: [{}] } });
    expect(sort).not.toHaveProperty('data');
  });

  it('come without edits to a client that can ask, which then get them', async () => {
    const client = await opened(resolving);
    const sort = titled(await ask(client, at(1)), 'Sort by weight');
    expect(sort).not.toHaveProperty('edit');
    const resolved = await client.connection.sendRequest<CodeAction>('codeAction/resolve', sort);
    const [changed] = resolved.edit!.documentChanges as TextDocumentEdit[];
    expect(changed!.textDocument).toEqual({ uri, version: 1 });
    expect(changed!.edits.length).toBeGreaterThan(0);
    expect(resolved.title).toBe(sort.title);
  });

  it('are not worked out for a text that has changed since', async () => {
    const client = await opened(resolving);
    const sort = titled(await ask(client, at(1)), 'Sort by weight');
    client.change(uri, `# ${text}`);
    await expect(client.connection.sendRequest('codeAction/resolve', sort)).rejects.toMatchObject({
      code: -32801,
    });
  });

  it('are only of the kinds asked for', async () => {
    const client = await opened(resolving);
    const kindsOf = async (only?: string[]) =>
      new Set((await ask(client, at(4, 18), only && { only })).map(({ kind }) => kind));
    expect(await kindsOf(['quickfix'])).toEqual(new Set(['quickfix']));
    expect([...(await kindsOf(['refactor']))].every((kind) => kind!.startsWith('refactor.'))).toBe(true);
    const one = 'refactor.rewrite.sort-by-weight';
    expect(await kindsOf([one])).toEqual(new Set([one]));
    expect(await kindsOf(['source.fixAll'])).toEqual(new Set(['source.fixAll.doughwright']));
    expect(await kindsOf(['refactor.move'])).toEqual(new Set());
    expect([...(await kindsOf())].sort()).toEqual(
      expect.arrayContaining(['quickfix', 'refactor.rewrite.sort-by-weight', 'source.fixAll.doughwright']),
    );
  });

  it('leave the cursor on the reason of an accept, and write a plain word where the client knows no snippets', async () => {
    const salty = text.replace('butter         4\n', 'butter         4%\n');
    const client = await opened(resolving, salty);
    const accept = titled(await ask(client, at(1)), 'Accept “salt-range”');
    expect(accept).toMatchObject({ kind: 'quickfix', diagnostics: [{ code: 'salt-range' }] });
    const { edit } = await client.connection.sendRequest<CodeAction>('codeAction/resolve', accept);
    expect(edit!.documentChanges).toMatchObject([
      {
        edits: [
          { snippet: { kind: 'snippet', value: `${' '.repeat(17)}# accept salt-range: $${'{1:reason}'}` } },
        ],
      },
    ]);
    const plain = titled(await ask(await opened(pushing, salty), at(1)), 'Accept “salt-range”');
    expect(plain.edit!.documentChanges).toMatchObject([
      { edits: [{ newText: `${' '.repeat(17)}# accept salt-range: reason` }] },
    ]);
  });

  it('mend all that can be mended, as an editor asks on saving', async () => {
    const client = await opened(resolving);
    const [all, ...others] = await ask(client, at(0, 0), { only: ['source.fixAll'] });
    expect(others).toEqual([]);
    const { edit } = await client.connection.sendRequest<CodeAction>('codeAction/resolve', all!);
    expect(JSON.stringify(edit)).toContain('%');
  });

  it('are none in an empty file, and in one nobody knows', async () => {
    const client = await opened(resolving);
    client.change(uri, '');
    expect(await ask(client, at(0, 0))).toEqual([]);
    expect(
      await client.connection.sendRequest('textDocument/codeAction', {
        textDocument: { uri: 'file:///nowhere.dough' },
        range: at(0, 0),
        context: { diagnostics: [] },
      }),
    ).toEqual([]);
  });
});
