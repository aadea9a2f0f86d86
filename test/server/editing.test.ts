import { describe, expect, it } from 'vitest';
import type {
  ClientCapabilities,
  CompletionItem,
  CompletionList,
  InlayHint,
  SemanticTokens,
  SemanticTokensDelta,
  SignatureHelp,
} from 'vscode-languageserver-protocol';
import { type Client, pushing } from './client.ts';
import { applyEdits, folderWith, startClient } from './places.ts';

const uri = 'untitled:Harbour';
const text = `formula Harbour Tin:
  yield 10 pieces of 880 g
  bread flour   100%   # 強力粉
  water          65%
  salt           2%
  nonesuch       1%
`;

/** An editor that asks for what is slow only when somebody looks at it. */
const asking: ClientCapabilities = {
  ...pushing,
  workspace: { ...pushing.workspace, semanticTokens: { refreshSupport: true } },
  textDocument: {
    ...pushing.textDocument,
    inlayHint: { resolveSupport: { properties: ['tooltip', 'textEdits'] } },
    signatureHelp: {
      signatureInformation: {
        parameterInformation: { labelOffsetSupport: true },
        activeParameterSupport: true,
      },
    },
  },
};

function ask<R>(client: Client, method: string, params: object = {}): Promise<R> {
  return client.connection.sendRequest(`textDocument/${method}`, { textDocument: { uri }, ...params });
}

async function opened(of = text, capabilities = asking): Promise<Client> {
  const client = await startClient({ capabilities });
  await client.open(uri, of);
  return client;
}

const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };

interface Word {
  readonly line: number;
  readonly words: string;
  readonly type: string;
  readonly modifiers: readonly string[];
}

/** The words with their types, as an editor reads the numbers. */
function decoded(client: Client, data: readonly number[], of: string): Word[] {
  const { legend } = client.initialized!.capabilities.semanticTokensProvider!;
  const lines = of.split('\n');
  const found: Word[] = [];
  let [line, start] = [0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [down, right, length, type, bits] = data.slice(at, at + 5) as [
      number,
      number,
      number,
      number,
      number,
    ];
    start = down === 0 ? start + right : right;
    line += down;
    const modifiers = legend.tokenModifiers.filter((_, bit) => (bits & (1 << bit)) !== 0);
    found.push({
      line,
      words: lines[line]!.slice(start, start + length),
      type: legend.tokenTypes[type]!,
      modifiers,
    });
  }
  return found;
}

describe('what each word is', () => {
  it('comes with the standard types, each once in the legend', async () => {
    const client = await opened();
    const { legend } = client.initialized!.capabilities.semanticTokensProvider!;
    expect(new Set(legend.tokenTypes).size).toBe(legend.tokenTypes.length);
    const { data, resultId } = await ask<SemanticTokens>(client, 'semanticTokens/full');
    expect(resultId).toBeDefined();
    const words = decoded(client, data, text);
    const told = (line: number): string[] =>
      words
        .filter((one) => one.line === line)
        .map((one) => [one.type, ...one.modifiers, one.words].join(' '));
    expect(told(0)).toEqual(['keyword formula', 'class declaration Harbour Tin']);
    expect(told(2)).toEqual([
      'type defaultLibrary bread flour',
      'number 100',
      'number %',
      'comment # 強力粉',
    ]);
    expect(told(5)[0]).toBe('unknownName nonesuch');
  });

  it('of a range are those of the whole', async () => {
    const client = await opened();
    const full = await ask<SemanticTokens>(client, 'semanticTokens/full');
    const range = { start: { line: 2, character: 0 }, end: { line: 3, character: 16 } };
    const some = await ask<SemanticTokens>(client, 'semanticTokens/range', { range });
    const inside = decoded(client, full.data, text).filter(({ line }) => line === 2 || line === 3);
    expect(decoded(client, some.data, text)).toEqual(inside);
    expect(inside.length).toBeGreaterThan(4);
  });

  it('is told as what changed, which turns the last answer into the next', async () => {
    const client = await opened();
    let { data, resultId } = await ask<SemanticTokens>(client, 'semanticTokens/full');
    const texts = [
      text.replace('65%', '65.5%'),
      text.replace('  salt           2%\n', ''),
      `# above\n${text}`,
      `${text}preferment p:\n  wat`,
      '',
      text,
      text,
    ];
    for (const now of texts) {
      client.change(uri, now);
      const delta = await ask<SemanticTokensDelta>(client, 'semanticTokens/full/delta', {
        previousResultId: resultId,
      });
      expect(delta.edits).toBeDefined();
      data = [...data];
      for (const { start, deleteCount, data: put = [] } of delta.edits.toReversed())
        data.splice(start, deleteCount, ...put);
      const full = await ask<SemanticTokens>(client, 'semanticTokens/full');
      expect(data).toEqual(full.data);
      resultId = full.resultId;
    }
    const same = await ask<SemanticTokensDelta>(client, 'semanticTokens/full/delta', {
      previousResultId: resultId,
    });
    expect(same.edits).toEqual([]);
  });

  it('is told whole to whoever asks with a result nobody knows', async () => {
    const client = await opened();
    await ask<SemanticTokens>(client, 'semanticTokens/full');
    const answer = await ask<SemanticTokens>(client, 'semanticTokens/full/delta', {
      previousResultId: 'of another day',
    });
    expect(answer.data.length).toBeGreaterThan(10);
  });

  it('changes when another file defines the name, and the client is told', async () => {
    const folder = folderWith({ 'flours.dough': '# nothing yet\n' });
    const client = await startClient({ folders: [folder.uri], capabilities: asking });
    let refreshed = 0;
    client.connection.onRequest('workspace/semanticTokens/refresh', () => {
      refreshed++;
    });
    const own = folder.uriOf('tin.dough');
    await client.open(own, text);
    const typeOfLast = async (): Promise<string | undefined> => {
      const { data } = await client.connection.sendRequest<SemanticTokens>(
        'textDocument/semanticTokens/full',
        {
          textDocument: { uri: own },
        },
      );
      return decoded(client, data, text).find(({ words }) => words === 'nonesuch')?.type;
    };
    expect(await typeOfLast()).toBe('unknownName');
    await client.open(folder.uriOf('flours.dough'), 'flour nonesuch:\n  grain rye\n');
    await expect.poll(typeOfLast).toBe('type');
    await expect.poll(() => refreshed).toBeGreaterThan(0);
  });
});

describe('the forms of a line', () => {
  const at = (line: number, character: number) => ({ position: { line, character } });

  it('come as signatures, the parameter at the cursor marked by its place in the label', async () => {
    const client = await opened(text.replace('65%', 'to 65% '));
    const help = await ask<SignatureHelp>(client, 'signatureHelp', at(3, '  water          to 65% '.length));
    const active = help.signatures[help.activeSignature!]!;
    expect(active.label).toBe('water  to PERCENT hydration[, at TEMPERATURE]');
    const [start, end] = active.parameters![active.activeParameter!]!.label as [number, number];
    expect(active.label.slice(start, end)).toBe('hydration');
    expect(help.activeParameter).toBe(active.activeParameter);
  });

  it('are plain words for a client that counts no places', async () => {
    const client = await opened(`${text}  yield 2 `, {});
    const help = await ask<SignatureHelp>(client, 'signatureHelp', at(6, 10));
    for (const { label, parameters } of help.signatures)
      for (const one of parameters!) expect(label).toContain(one.label);
  });

  it('stay away from comments and blank lines', async () => {
    const client = await opened(`${text}  \n  # why `);
    for (const place of [at(6, 2), at(7, 8), at(2, 40)])
      expect(await ask(client, 'signatureHelp', place)).toBeNull();
  });
});

describe('completion', () => {
  it('tells what an ingredient is made of once somebody looks at it', async () => {
    const client = await opened(`${text}  but`);
    const { items } = await ask<CompletionList>(client, 'completion', {
      position: { line: 6, character: 5 },
    });
    const butter = items.find(({ label }) => label === 'butter')!;
    expect(butter.detail).toContain('water');
    expect(butter.documentation).toBeUndefined();
    const resolved = await client.connection.sendRequest<CompletionItem>('completionItem/resolve', butter);
    expect(resolved.textEdit).toEqual(butter.textEdit);
    expect(resolved.documentation).toMatchObject({
      kind: 'markdown',
      value: expect.stringMatching(/fat 81/),
    });
    expect(JSON.stringify(resolved.documentation)).toContain('Figures: ');
  });

  it('leaves an item as it is that it never offered', async () => {
    const client = await opened();
    const item = { label: 'butter' };
    expect(await client.connection.sendRequest('completionItem/resolve', item)).toEqual(item);
  });

  it('leaves the choice between the rest of a word and its end, where the client has one', async () => {
    const place = { position: { line: 2, character: 10 } };
    const within = (line: number, start: number, end: number) => ({
      start: { line, character: start },
      end: { line, character: end },
    });
    const choosing = structuredClone(asking);
    choosing.textDocument!.completion!.completionItem!.insertReplaceSupport = true;
    for (const [capabilities, edit] of [
      [choosing, { newText: 'bread flour', insert: within(2, 2, 10), replace: within(2, 2, 13) }],
      [asking, { newText: 'bread flour', range: within(2, 2, 13) }],
    ] as const) {
      const client = await opened(text, capabilities);
      const { items } = await ask<CompletionList>(client, 'completion', place);
      expect(items.find(({ label }) => label === 'bread flour')?.textEdit).toEqual(edit);
    }
  });

  it('brings a header to the margin', async () => {
    const client = await opened(`${text}  mi`);
    const { items } = await ask<CompletionList>(client, 'completion', {
      position: { line: 6, character: 4 },
    });
    const { textEdit, additionalTextEdits } = items.find(({ label }) => label === 'mix')!;
    expect(additionalTextEdits).toEqual([
      { range: { start: { line: 6, character: 0 }, end: { line: 6, character: 2 } }, newText: '' },
    ]);
    expect((textEdit as { range: unknown }).range).toEqual({
      start: { line: 6, character: 2 },
      end: { line: 6, character: 4 },
    });
  });
});

describe('hints', () => {
  const hintOf = async (client: Client, line: number): Promise<InlayHint> =>
    (await ask<InlayHint[]>(client, 'inlayHint', { range: whole })).find(
      ({ position }) => position.line === line,
    )!;

  it('tell what they stand on and write themselves into the line, when pointed at', async () => {
    const client = await opened(text.replace('  nonesuch       1%\n', ''));
    const hint = await hintOf(client, 3);
    expect(hint.tooltip).toBeUndefined();
    expect(hint.textEdits).toBeUndefined();
    const resolved = await client.connection.sendRequest<InlayHint>('inlayHint/resolve', hint);
    expect(resolved.tooltip).toMatchObject({ value: expect.stringContaining('yield 10 pieces of 880 g') });
    const before = text.replace('  nonesuch       1%\n', '');
    const after = applyEdits(before, resolved.textEdits!);
    expect(after.split('\n')[3]).toMatch(/^ {2}water {10}3425 g$/);
    client.change(uri, after);
    expect((await hintOf(client, 3)).label).toBe('65%');
  });

  it('stay as they are when the text has moved on', async () => {
    const client = await opened();
    const hint = await hintOf(client, 3);
    client.change(uri, text.replace('  yield 10 pieces of 880 g\n', ''));
    const resolved = await client.connection.sendRequest<InlayHint>('inlayHint/resolve', hint);
    expect(resolved.textEdits).toBeUndefined();
  });

  it('tell what they stand on at once to a client that cannot ask', async () => {
    const client = await opened(text, pushing);
    expect(client.initialized!.capabilities.inlayHintProvider).toEqual({ resolveProvider: false });
    expect((await hintOf(client, 3)).tooltip).toMatchObject({ kind: 'markdown' });
  });
});
