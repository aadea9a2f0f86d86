import { describe, expect, it } from 'vitest';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CodeLens,
  Diagnostic,
  DocumentHighlight,
  DocumentLink,
  Location,
  LocationLink,
  SelectionRange,
  SymbolInformation,
  TextDocumentEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { type Client, pushing } from './client.ts';
import { applyEdits, type Folder, folderWith, startClient } from './places.ts';

const flours = 'flour mill white:\n  grain wheat\n  milling white\n  protein 12%\n';
const bread = `formula Harbour Tin:
  yield 10 pieces of 880 g
  mill white         100%
  water              65%
  salt               2%   # accept salt-range: a test

preferment poolish:
  draws 20% of mill white
  mill white         100%
  water              100%
`;
const files = { 'flours.dough': flours, 'breads/harbour.dough': bread };

interface Opened {
  readonly client: Client;
  readonly folder: Folder;
  readonly flours: string;
  readonly bread: string;
  ask<R>(method: string, uri: string, line: number, character: number, more?: object): Promise<R>;
}

async function opened(options: Parameters<typeof startClient>[0] = {}): Promise<Opened> {
  const folder = folderWith(files);
  const client = await startClient({ folders: [folder.uri], ...options });
  const [uri, floursUri] = [folder.uriOf('breads/harbour.dough'), folder.uriOf('flours.dough')];
  await client.open(uri, bread);
  await client.findings(uri, 1);
  return {
    client,
    folder,
    flours: floursUri,
    bread: uri,
    ask: (method, of, line, character, more = {}) =>
      client.connection.sendRequest(`textDocument/${method}`, {
        textDocument: { uri: of },
        position: { line, character },
        ...more,
      }),
  };
}

const lineLinks = {
  ...pushing,
  textDocument: {
    ...pushing.textDocument,
    definition: { linkSupport: true },
    rename: { prepareSupport: true },
  },
};

describe('names over the wire', () => {
  it('lead to their definition, as links for a client that has them', async () => {
    const { ask, flours: uri, bread: from } = await opened({ capabilities: lineLinks });
    expect(await ask<LocationLink[]>('definition', from, 2, 5)).toEqual([
      {
        originSelectionRange: { start: { line: 2, character: 2 }, end: { line: 2, character: 12 } },
        targetUri: uri,
        targetRange: { start: { line: 0, character: 0 }, end: { line: 3, character: 13 } },
        targetSelectionRange: { start: { line: 0, character: 6 }, end: { line: 0, character: 16 } },
      },
    ]);
    expect(await ask<LocationLink[]>('definition', from, 3, 5)).toEqual([]);
    expect(await ask('definition', from, 5, 0)).toBeNull();
  });

  it('lead to what they are made of, as places for a client without links', async () => {
    const { ask, flours: uri, bread: from } = await opened();
    const [place] = await ask<Location[]>('typeDefinition', from, 7, 18);
    expect(place).toMatchObject({ uri, range: { start: { line: 0, character: 6 } } });
  });

  it('are found wherever they stand, in files that are not open too', async () => {
    const { ask, flours: uri, bread: from } = await opened();
    const context = { includeDeclaration: true };
    const found = await ask<Location[]>('references', from, 2, 5, { context });
    expect(found.map((one) => [one.uri === uri, one.range.start.line])).toEqual([
      [false, 2],
      [false, 7],
      [false, 8],
      [true, 0],
    ]);
    const uses = await ask<Location[]>('references', from, 2, 5, { context: { includeDeclaration: false } });
    expect(uses).toHaveLength(3);
  });

  it('are marked where they stand in the document', async () => {
    const { ask, bread: from } = await opened();
    const marks = await ask<DocumentHighlight[]>('documentHighlight', from, 2, 5);
    expect(marks.map(({ kind, range }) => [kind, range.start.line])).toEqual([
      [3, 2],
      [2, 7],
      [3, 8],
    ]);
  });

  it('are renamed across files, and mean the same afterwards', async () => {
    const { client, ask, folder, flours: uri, bread: from } = await opened({ capabilities: lineLinks });
    const start = await ask<{ placeholder: string }>('prepareRename', from, 2, 5);
    expect(start).toMatchObject({ placeholder: 'mill white', range: { start: { line: 2, character: 2 } } });
    const edit = await ask<WorkspaceEdit>('rename', from, 2, 5, { newName: 'weiße Mühle' });
    const changes = new Map(
      (edit.documentChanges as TextDocumentEdit[]).map((one) => [one.textDocument.uri, one]),
    );
    expect([...changes.keys()].sort()).toEqual([from, uri].sort());
    expect(changes.get(from)!.textDocument.version).toBe(1);
    expect(changes.get(uri)!.textDocument.version).toBeNull();
    const renamed = applyEdits(bread, changes.get(from)!.edits as Parameters<typeof applyEdits>[1]);
    expect(renamed).toBe(
      bread.replaceAll('mill white', 'weiße Mühle').replaceAll('Mühle         ', 'Mühle        '),
    );
    folder.write(
      'flours.dough',
      applyEdits(flours, changes.get(uri)!.edits as Parameters<typeof applyEdits>[1]),
    );
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri, type: 2 }],
    });
    const version = client.change(from, renamed);
    const isKnown = (one: { version?: number; diagnostics: Diagnostic[] }) =>
      one.version === version && one.diagnostics.every(({ code }) => code !== 'unknown-ingredient');
    await client.publication(from, isKnown);
    const [place] = await ask<LocationLink[]>('definition', from, 2, 5);
    expect(place?.targetUri).toBe(uri);
  });

  it('are not renamed where that cannot be, and the sentence says why', async () => {
    const { ask, bread: from } = await opened({ capabilities: lineLinks });
    await expect(ask('prepareRename', from, 3, 4)).rejects.toThrow(
      /“water” is a name of the built-in catalogue/,
    );
    await expect(ask('rename', from, 2, 5, { newName: 'water' })).rejects.toThrow(
      /“water” is a word of the notation/,
    );
    await expect(ask('rename', from, 2, 5, { newName: 'poolish' })).rejects.toThrow(/Choose another name/);
    expect(await ask('prepareRename', from, 5, 0)).toBeNull();
  });

  it('are found by a few letters, in every file', async () => {
    const { client, bread: from } = await opened();
    const found = await client.connection.sendRequest<SymbolInformation[]>('workspace/symbol', {
      query: 'pool',
    });
    expect(found).toMatchObject([{ name: 'poolish', containerName: 'Harbour Tin', location: { uri: from } }]);
  });
});

describe('what goes into what, over the wire', () => {
  it('goes up to the formulas and down to the lines', async () => {
    const { client, ask, bread: from, flours: uri } = await opened();
    const [formula] = await ask<CallHierarchyItem[]>('prepareCallHierarchy', from, 0, 10);
    expect(formula).toMatchObject({ name: 'Harbour Tin', uri: from });
    const down = await client.connection.sendRequest<CallHierarchyOutgoingCall[]>(
      'callHierarchy/outgoingCalls',
      { item: formula },
    );
    expect(down.map(({ to }) => [to.name, to.detail])).toEqual([
      ['mill white', '100% · flour'],
      ['water', '65% · catalogue'],
      ['salt', '2% · catalogue'],
      ['poolish', 'drawn · preferment of Harbour Tin'],
    ]);
    const flour = down[0]!.to;
    expect(flour.uri).toBe(uri);
    const up = await client.connection.sendRequest<CallHierarchyIncomingCall[]>(
      'callHierarchy/incomingCalls',
      {
        item: flour,
      },
    );
    expect(up.map((call) => [call.from.name, call.fromRanges.length])).toEqual([
      ['Harbour Tin', 1],
      ['poolish', 1],
    ]);
  });
});

describe('words above headers', () => {
  const commands = ['doughwright.openSheet', 'doughwright.showUses'];
  const lensesOf = async ({ client }: Opened, uri: string) => {
    // Lenses come at once and again when more is known; a question about the workspace waits until all is read.
    await client.connection.sendRequest('workspace/symbol', { query: '' });
    const lenses = await client.connection.sendRequest<CodeLens[]>('textDocument/codeLens', {
      textDocument: { uri },
    });
    return Promise.all(
      lenses.map((lens) => client.connection.sendRequest<CodeLens>('codeLens/resolve', lens)),
    );
  };

  it('tell totals and users, and lead to them in a client that has the commands', async () => {
    const workspace = await opened({ initializationOptions: { commands } });
    const [totals] = await lensesOf(workspace, workspace.bread);
    expect(totals?.command).toMatchObject({
      title: expect.not.stringContaining('hydration'),
      command: 'doughwright.openSheet',
      arguments: [{ uri: workspace.bread, line: 0 }],
    });
    const [uses] = await lensesOf(workspace, workspace.flours);
    expect(uses?.command).toMatchObject({ title: 'used by 1 formula', command: 'doughwright.showUses' });
    expect(uses?.command?.arguments?.[2]).toHaveLength(2);
  });

  it('open a plan, and say by how long it is late, in a client that has the command', async () => {
    const text = `${bread}process:\n  bake 40 min\n\nplan Friday:\n  ready 2026-05-15 06:00\n  begin 05:30\n  Harbour Tin  10 kg\n`;
    const over = async (all: readonly string[]) => {
      const { client, bread: uri } = await opened({ initializationOptions: { commands: all } });
      await client.change(uri, text);
      const lenses = await client.connection.sendRequest<CodeLens[]>('textDocument/codeLens', {
        textDocument: { uri },
      });
      const line = text.split('\n').indexOf('plan Friday:');
      return lenses.filter(({ range }) => range.start.line === line).map(({ command }) => command);
    };
    expect(await over(['doughwright.openPlan'])).toMatchObject([
      { title: expect.stringMatching(/^Open the plan: \d.* late$/), command: 'doughwright.openPlan' },
    ]);
    expect(await over([])).toEqual([]);
  });

  it('are only words in a client without the commands', async () => {
    const workspace = await opened();
    for (const lens of await lensesOf(workspace, workspace.flours)) expect(lens.command?.command).toBe('');
  });

  it('go when the settings say so', async () => {
    const workspace = await opened({ settings: { codeLens: { enabled: false } } });
    await expect.poll(() => lensesOf(workspace, workspace.bread)).toEqual([]);
  });
});

/** By the formula of WCAG 2.2, of two colours as `#rrggbb`. */
function contrast(one: string, other: string): number {
  const light = (colour: string): number => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [low, high] = [light(one), light(other)].toSorted((a, b) => a - b);
  return (high! + 0.05) / (low! + 0.05);
}

describe('the hover of a mixing programme', () => {
  const text =
    'formula Harbour Tin:\n  bread flour 100%\n  water 65%\n\nmix in spiral:\n  load all\n  speed 1 for 8 min\n';
  const hoverIn = async ({ client, bread: uri }: Opened): Promise<string> => {
    await client.open(uri, text);
    const hover = await client.connection.sendRequest<{ contents: { value: string } }>('textDocument/hover', {
      textDocument: { uri },
      position: { line: 4, character: 2 },
    });
    return hover.contents.value;
  };

  it('leads to the map of the gap in a client that has the command, and in no other', async () => {
    const commands = ['doughwright.openMap'];
    const workspace = await opened({ initializationOptions: { commands } });
    const [, link] = /\[The map of the gap\]\(command:doughwright\.openMap\?([^)]*)\)$/.exec(
      await hoverIn(workspace),
    )!;
    expect(JSON.parse(decodeURIComponent(link!))).toEqual([{ uri: workspace.bread, line: 4 }]);
    expect(await hoverIn(await opened())).not.toContain('command:');
  });

  it('begins with a drawing of the dough in a client that shows images, and in no other', async () => {
    const said = await hoverIn(await opened({ initializationOptions: { pictures: true } }));
    const [, words, data] = /^!\[([a-z-]+)\]\(data:image\/svg\+xml,([^)\s]+)\)\n\n/.exec(said)!;
    expect(['pick-up', 'clean-up', 'developing', 'developed']).toContain(words);
    expect(said).toContain(words);
    const svg = decodeURIComponent(data!);
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg".*<path d="M[^"]+".*<\/svg>$/);
    // It reads on the grounds of light and dark themes and of both high contrasts; WCAG 2.2 wants 3 of a graphic (1.4.11).
    const [, grey] = /stroke="(#[0-9a-f]{6})"/.exec(svg)!;
    for (const ground of ['#ffffff', '#1e1e1e', '#000000'])
      expect(contrast(grey!, ground), ground).toBeGreaterThan(3);
    expect(await hoverIn(await opened())).not.toContain('data:');
  });
});

describe('links and selections', () => {
  it('lead from an accepted code to its page', async () => {
    const { client, bread: uri } = await opened({ initializationOptions: { rulePages: 'file:///pages/' } });
    const links = await client.connection.sendRequest<DocumentLink[]>('textDocument/documentLink', {
      textDocument: { uri },
    });
    expect(links).toMatchObject([{ target: 'file:///pages/salt-range.md', range: { start: { line: 4 } } }]);
  });

  it('lead to the page in the language that is written, by its title there', async () => {
    const rulePages = { en: 'file:///pages/', de: 'file:///seiten/' };
    const initializationOptions = { rulePages, settings: { language: 'de' } };
    const settings = { language: 'de' };
    const { client, bread: uri } = await opened({ initializationOptions, settings });
    const links = await client.connection.sendRequest<DocumentLink[]>('textDocument/documentLink', {
      textDocument: { uri },
    });
    expect(links).toMatchObject([
      { target: 'file:///seiten/salt-range.md', tooltip: 'Salz außerhalb des Üblichen' },
    ]);
  });

  it('grow from the word to the file', async () => {
    const { client, bread: uri } = await opened();
    const [selection] = await client.connection.sendRequest<SelectionRange[]>('textDocument/selectionRange', {
      textDocument: { uri },
      positions: [{ line: 2, character: 4 }],
    });
    const starts: string[] = [];
    for (let one: SelectionRange | undefined = selection; one; one = one.parent)
      starts.push(
        `${one.range.start.line}:${one.range.start.character}–${one.range.end.line}:${one.range.end.character}`,
      );
    expect(starts.slice(0, 2)).toEqual(['2:2–2:6', '2:2–2:12']);
    expect(starts.at(-1)).toBe('0:0–10:0');
  });
});
