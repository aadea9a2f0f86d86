import { describe, expect, it } from 'vitest';
import type { CodeAction, Diagnostic, Range, TextDocumentEdit } from 'vscode-languageserver-protocol';
import { type Client, pulling } from './client.ts';
import { applyEdits, folderWith, startClient } from './places.ts';

const uri = 'untitled:Harbour';
const sound = 'formula Harbour Tin:\n  strong white   100%\n  water          65%\n  salt           2%\n';
/** The unit of the salt is forgotten: an error of the notation, with a fix, on the last line. */
const unsound = sound.replace('2%', '2');
const saltLine = 3;

function onLine(findings: readonly Diagnostic[], line: number): Diagnostic[] {
  return findings.filter(({ range }) => range.start.line === line);
}

function quickFixes(
  client: Client,
  of: string,
  range: Range,
  diagnostics: Diagnostic[] = [],
): Promise<CodeAction[]> {
  return client.connection.sendRequest('textDocument/codeAction', {
    textDocument: { uri: of },
    range,
    context: { diagnostics },
  });
}

describe('findings that are sent', () => {
  it('carry the version, code, source and the fixes there are', async () => {
    const client = await startClient();
    await client.open(uri, unsound, 7);
    const [finding] = onLine(await client.findings(uri, 7), saltLine);
    expect(finding).toMatchObject({
      source: 'doughwright',
      severity: 1,
      code: expect.stringMatching(/^[a-z]+(-[a-z]+)*$/),
      message: expect.stringMatching(/\S/),
      data: { fixes: expect.arrayContaining([expect.any(String)]) },
    });
  });

  it('go when the mistake goes, and come again', async () => {
    const client = await startClient();
    await client.open(uri, unsound);
    expect(onLine(await client.findings(uri, 1), saltLine)).toHaveLength(1);
    const end = { line: saltLine, character: '  salt           2'.length };
    const healed = client.change(uri, '%', { start: end, end });
    expect(onLine(await client.findings(uri, healed), saltLine)).toEqual([]);
    const broken = client.change(uri, '', { start: end, end: { ...end, character: end.character + 1 } });
    expect(onLine(await client.findings(uri, broken), saltLine)).toHaveLength(1);
  });

  it('of the line that is typed wait until the hand rests, where the client asks for that', async () => {
    const client = await startClient({ initializationOptions: { calmWhileTyping: true } });
    await client.open(uri, sound);
    await client.findings(uri, 1);
    const end = { line: saltLine, character: '  salt           2'.length };
    const broken = client.change(uri, '', { start: end, end: { ...end, character: end.character + 1 } });
    expect(onLine(await client.findings(uri, broken), saltLine)).toEqual([]);
    const rested = await client.publication(
      uri,
      ({ version, diagnostics }) => version === broken && onLine(diagnostics, saltLine).length > 0,
    );
    expect(onLine(rested.diagnostics, saltLine)).toHaveLength(1);
  });

  it('of a line that was typed are told as soon as another line is edited', async () => {
    const client = await startClient({ initializationOptions: { calmWhileTyping: true } });
    await client.open(uri, sound);
    await client.findings(uri, 1);
    const end = { line: saltLine, character: '  salt           2'.length };
    client.change(uri, '', { start: end, end: { ...end, character: end.character + 1 } });
    const water = { line: 2, character: '  water          65%'.length };
    const elsewhere = client.change(uri, '  # cold', { start: water, end: water });
    expect(onLine(await client.findings(uri, elsewhere), saltLine)).toHaveLength(1);
  });

  it('of the line before one that is only begun wait too: the flour to come may make them a hundred', async () => {
    const client = await startClient({ initializationOptions: { calmWhileTyping: true } });
    await client.open(uri, 'formula Quay Tin:\n  bread flour  70');
    await client.findings(uri, 1);
    const typed = { line: 1, character: '  bread flour  70'.length };
    client.change(uri, '%', { start: typed, end: typed });
    const end = { ...typed, character: typed.character + 1 };
    const begun = client.change(uri, '\n  ', { start: end, end });
    expect(onLine(await client.findings(uri, begun), 1)).toEqual([]);
    const rested = await client.publication(
      uri,
      ({ version, diagnostics }) => version === begun && onLine(diagnostics, 1).length > 0,
    );
    expect(onLine(rested.diagnostics, 1)[0]!.code).toBe('flour-not-hundred');
  });

  it('are taken back when a document of no folder is closed', async () => {
    const client = await startClient();
    await client.open(uri, unsound);
    await client.findings(uri, 1);
    await client.close(uri);
    expect((await client.publication(uri, ({ version }) => version === undefined)).diagnostics).toEqual([]);
  });

  it('answer a burst of edits with the last version only', async () => {
    const client = await startClient();
    await client.open(uri, sound);
    await client.findings(uri, 1);
    const before = client.published.length;
    let last = 1;
    const at = { line: saltLine, character: 6 };
    for (let edit = 0; edit < 100; edit++) {
      client.change(uri, 'x', { start: at, end: at });
      last = client.change(uri, '', { start: at, end: { ...at, character: 7 } });
    }
    expect(onLine(await client.findings(uri, last), saltLine)).toEqual([]);
    const publications = client.published.slice(before).filter((told) => told.uri === uri);
    expect(publications.at(-1)?.version).toBe(last);
    // A slow machine may have to divide the burst; each edit must not be answered for itself.
    expect(publications.length).toBeLessThan(20);
  });

  it('follow the settings, without a restart', async () => {
    const client = await startClient({ settings: {} });
    await client.open(uri, unsound);
    const [finding] = onLine(await client.findings(uri, 1), saltLine);
    client.settings = { rules: { [String(finding!.code)]: 'hint' } };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.publication(uri, (told) => onLine(told.diagnostics, saltLine)[0]?.severity === 4);
    client.settings = { rules: { [String(finding!.code)]: 'off' } };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.publication(uri, (told) => onLine(told.diagnostics, saltLine).length === 0);
  });

  it('know the settings that came with initialize from the first on', async () => {
    const probe = await startClient();
    await probe.open(uri, unsound);
    const code = String(onLine(await probe.findings(uri, 1), saltLine)[0]!.code);
    const settings = { rules: { [code]: 'off' } };
    const client = await startClient({ settings, initializationOptions: { settings } });
    await client.open(uri, unsound);
    expect(onLine(await client.findings(uri, 1), saltLine)).toEqual([]);
  });

  it('say which setting makes no sense', async () => {
    const client = await startClient({ settings: { rules: { 'some-rule': 'loud' }, maxFindings: -1 } });
    await expect.poll(() => client.logged.join('\n')).toMatch(/some-rule.*error, warning[\s\S]*maxFindings/);
  });

  it('link to the page of their rule when the client has pages', async () => {
    const client = await startClient({
      initializationOptions: { rulePages: 'file:///pages/' },
      capabilities: { textDocument: { publishDiagnostics: { codeDescriptionSupport: true } } },
    });
    await client.open(uri, unsound);
    const [finding] = onLine(await client.findings(uri, 1), saltLine);
    expect(finding?.codeDescription?.href).toBe(`file:///pages/${finding?.code}.md`);
  });

  it('link to the page in the language that is written, else to the English one', async () => {
    const capabilities = { textDocument: { publishDiagnostics: { codeDescriptionSupport: true } } };
    const pages = { en: 'file:///pages/', de: 'file:///seiten/' };
    const hrefIn = async (rulePages: unknown, language: string) => {
      const settings = { language };
      const client = await startClient({ capabilities, initializationOptions: { rulePages, settings } });
      await client.open(uri, unsound);
      const [finding] = onLine(await client.findings(uri, 1), saltLine);
      return finding?.codeDescription?.href.replace(/[^/]*\.md$/, '');
    };
    expect(await hrefIn(pages, 'de')).toBe('file:///seiten/');
    expect(await hrefIn(pages, 'en')).toBe('file:///pages/');
    expect(await hrefIn({ en: pages.en }, 'de')).toBe('file:///pages/');
    expect(await hrefIn(pages.en, 'de')).toBe('file:///pages/');
    // Where the client says nothing that makes sense, the pages of the checkout are meant.
    expect(await hrefIn([7], 'de')).toMatch(/\/docs\/de\/rules\/$/);
    expect(await hrefIn(undefined, 'en')).toMatch(/\/docs\/rules\/$/);
  });

  it('say of a file above 4 MiB that it is too large', async () => {
    const client = await startClient();
    await client.open(uri, `${'# Quay Lane\n'.repeat(400_000)}`);
    expect(await client.findings(uri, 1)).toMatchObject([{ code: 'file-too-large' }]);
    expect(await client.findings(uri, client.change(uri, sound))).not.toContainEqual(
      expect.objectContaining({ code: 'file-too-large' }),
    );
  });
});

describe('findings that are pulled', () => {
  it('come with an id and are not sent twice', async () => {
    const client = await startClient({ capabilities: pulling });
    await client.open(uri, unsound);
    const first = await client.pull(uri);
    expect(first).toMatchObject({ kind: 'full', resultId: expect.any(String) });
    expect(onLine(first.kind === 'full' ? first.items : [], saltLine)).toHaveLength(1);
    expect(await client.pull(uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
    client.change(uri, sound);
    const second = await client.pull(uri, first.resultId);
    expect(onLine(second.kind === 'full' ? second.items : [{} as Diagnostic], saltLine)).toEqual([]);
    expect(client.published).toEqual([]);
  });

  it('are to be pulled again when another file changes them', async () => {
    const folder = folderWith();
    const client = await startClient({ capabilities: pulling, folders: [folder.uri] });
    const formula = folder.uriOf('a.dough');
    const flours = folder.uriOf('flours.dough');
    await client.open(flours, '# nothing yet\n');
    await client.open(formula, 'formula A:\n  quayside mill special   100%\n  water   60%\n');
    const before = await client.pull(formula);
    expect(onLine(before.kind === 'full' ? before.items : [], 1)).not.toEqual([]);
    client.change(flours, 'flour quayside mill special:\n  grain wheat\n');
    await client.pull(flours);
    await expect.poll(() => client.refreshes.findings).toBeGreaterThan(0);
    const after = await client.pull(formula, before.resultId);
    expect(after.kind === 'full' ? onLine(after.items, 1) : before).toEqual([]);
  });

  it('are to be pulled again though those of the whole workspace came in between', async () => {
    const folder = folderWith();
    const client = await startClient({ capabilities: pulling, folders: [folder.uri] });
    const formula = folder.uriOf('a.dough');
    await client.open(formula, 'formula A:\n  quayside mill special   100%\n  water   60%\n');
    const before = await client.pull(formula);
    expect(onLine(before.kind === 'full' ? before.items : [], 1)).not.toEqual([]);
    const everything = () =>
      client.connection.sendRequest('workspace/diagnostic', { previousResultIds: [] }).catch(() => undefined);
    await everything();
    // A document of which the client knows what is found only by the pull for all.
    folder.write('flours.dough', 'flour quayside mill special:\n  grain wheat\n');
    const changes = [{ uri: folder.uriOf('flours.dough'), type: 1 }];
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes });
    // It is answered when there is something new, which need not be.
    void everything();
    await expect.poll(() => client.refreshes.findings).toBeGreaterThan(0);
    const after = await client.pull(formula, before.resultId);
    expect(after.kind === 'full' ? onLine(after.items, 1) : before).toEqual([]);
  });

  it('of the whole workspace hold the files that are not open', async () => {
    const folder = folderWith({ 'unsound.dough': unsound, 'sound.dough': sound });
    const client = await startClient({ capabilities: pulling, folders: [folder.uri] });
    const ask = (previousResultIds: { uri: string; value: string }[]) =>
      client.connection.sendRequest<{ items: { uri: string; resultId: string; items: Diagnostic[] }[] }>(
        'workspace/diagnostic',
        { previousResultIds },
      );
    const { items } = await ask([]);
    const told = items.find((item) => item.uri === folder.uriOf('unsound.dough'));
    expect(onLine(told!.items, saltLine)).toHaveLength(1);
    const next = ask(items.map((item) => ({ uri: item.uri, value: item.resultId })));
    folder.write('unsound.dough', sound);
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: folder.uriOf('unsound.dough'), type: 2 }],
    });
    const again = (await next).items.find((item) => item.uri === folder.uriOf('unsound.dough'));
    expect(onLine(again!.items, saltLine)).toEqual([]);
  });
});

describe('findings of a workspace without any', () => {
  it('are told at once to a client that asks once', async () => {
    const folder = folderWith({ 'sound.dough': sound });
    const client = await startClient({ capabilities: pulling, folders: [folder.uri] });
    const answer = await client.connection.sendRequest('workspace/diagnostic', { previousResultIds: [] });
    expect(answer).toEqual({ items: [] });
  });
});

describe('quick fixes', () => {
  it('mend the text they stand at', async () => {
    const client = await startClient();
    await client.open(uri, unsound);
    const [finding] = onLine(await client.findings(uri, 1), saltLine);
    const actions = await quickFixes(client, uri, finding!.range, [finding!]);
    const [fix] = actions.filter(({ diagnostics }) => diagnostics?.[0]?.code === finding!.code);
    expect(fix).toMatchObject({
      kind: 'quickfix',
      title: expect.any(String),
      diagnostics: [{ range: finding!.range }],
    });
    const [file] = fix!.edit!.documentChanges as TextDocumentEdit[];
    expect(file!.textDocument).toEqual({ uri, version: 1 });
    const mended = applyEdits(unsound, file!.edits as { range: Range; newText: string }[]);
    expect(onLine(await client.findings(uri, client.change(uri, mended)), saltLine)).toEqual([]);
    expect(mended).toBe(sound);
  });

  it('are edits of a URI for a client without versions', async () => {
    const client = await startClient({
      capabilities: {
        textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
      },
    });
    await client.open(uri, unsound);
    const [finding] = onLine(await client.findings(uri, 1), saltLine);
    const [fix] = await quickFixes(client, uri, finding!.range);
    expect(applyEdits(unsound, fix!.edit!.changes![uri]!)).toBe(sound);
  });

  it('are none where nothing is wrong or another kind is asked for', async () => {
    const client = await startClient();
    await client.open(uri, unsound);
    const line = (at: number) => ({ start: { line: at, character: 0 }, end: { line: at, character: 30 } });
    const refactorings = await client.connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri },
      range: line(saltLine),
      context: { diagnostics: [], only: ['refactor'] },
    });
    expect(refactorings).toEqual([]);
  });

  it.each([
    ['CRLF', '\r\n', ''],
    ['CR', '\r', ''],
    ['emoji before it', '\n', '🥖 '],
  ])('stand right in a text with %s', async (_, ending, emoji) => {
    const client = await startClient();
    const spoilt = unsound.replace('salt', `"${emoji}sea salt"`).replaceAll('\n', ending);
    await client.open(uri, spoilt);
    const findings = onLine(await client.findings(uri, 1), saltLine);
    const bare = findings.find(
      ({ data }) => data?.fixes?.length > 0 && spoilt.split(ending)[saltLine]!.endsWith('2'),
    );
    const actions = await quickFixes(client, uri, bare!.range);
    const texts = actions.map(({ edit }) =>
      applyEdits(
        spoilt,
        (edit!.documentChanges as TextDocumentEdit[])[0]!.edits as { range: Range; newText: string }[],
      ),
    );
    expect(texts).toContain(spoilt.replace(/2([\r\n]+)$/, '2%$1'));
  });
});
