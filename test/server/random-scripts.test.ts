import { describe, expect, it } from 'vitest';
import type {
  Diagnostic,
  ProtocolConnection,
  TextDocumentContentChangeEvent,
  WorkspaceDiagnosticReport,
} from 'vscode-languageserver/node';
import { CancellationTokenSource } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { exampleFiles } from '../syntax/texts.ts';
import { pulling } from './client.ts';
import { Dice } from './dice.ts';
import { FilesInMemory, type ServerInProcess, startInProcess } from './in-process.ts';

const root = 'file:///quay-lane';
const annex = 'file:///annex';
const fixed = `${root}/always.dough`;
const names = [
  `${root}/flours.dough`,
  `${root}/deep/er/r%C3%B6ggli.dough`,
  `${root}/deep/tin.dough`,
  `${root}/tin.dough`,
  `${annex}/mixers.dough`,
  `${annex}/shop.dough`,
  'untitled:Untitled-1',
];
const texts = [
  'flour mill white:\n  grain wheat\n  protein 12%\n\nflour mill rye:\n  grain rye\n',
  'formula White:\n  yield 1 kg\n  mill white  100%\n  water  60%\n  salt  2%\n',
  'formula Röggli 🥖:\r\n  yield 10 pieces of 60 g\r\n  mill rye  50%\r\n  mill white  50%\r\n  water  to 70% hydration\r\n  White  20%\r\n',
  'mixer big spiral:\n  kind spiral\n  speed 1 90 rpm\n  speed 2 180 rpm\n\nbakery Quay Lane:\n  room 25 °C\n',
  'formula Tin:\n  yield 1 kg\n  mill white  100%\n  water  65%\n  salt 2\nmix in big spiral:\n  load flour, water, salt\n  mix for 5 min on speed 1\n',
  ...exampleFiles().map(({ text }) => text),
];
const words = [
  '1',
  '%',
  '"',
  ':',
  '\n',
  ' ',
  '#',
  'water',
  'mill rye',
  '🥖',
  'ö',
  '  salt 3%\n',
  'formula X:\n',
  '\r\n',
  '\t',
];
const settings = [
  {},
  { rules: { 'salt-range': 'off' } },
  { rules: { 'unknown-ingredient': 'error' }, maxFindings: 3 },
  { inlayHints: { enabled: false } },
];

/** An editor with a disk, that does things at random and asks in between. */
class Editor {
  readonly dice: Dice;
  readonly server: ServerInProcess;
  readonly disk: FilesInMemory;
  readonly open = new Map<string, TextDocument>();
  readonly folders: string[] = [root];
  setting: unknown = settings[0];
  readonly asked: Promise<unknown>[] = [];
  /** The findings of each file as the client keeps them, with their names. */
  readonly view = new Map<string, { readonly id: string; readonly items: readonly Diagnostic[] }>();
  #version = 1;

  constructor(dice: Dice, server: ServerInProcess, disk: FilesInMemory) {
    this.dice = dice;
    this.server = server;
    this.disk = disk;
  }

  step(): void {
    const { dice } = this;
    const name = dice.one(names);
    const kind = dice.below(20);
    const document = dice.one([...this.open.values(), undefined]);
    if (document !== undefined && kind < 9) this.#edit(document);
    else if (kind < 11) this.#openOrClose(name);
    else if (kind < 13) this.#write(name);
    else if (kind < 14) this.#remove(name);
    else if (kind < 15) this.#renameFolder();
    else if (kind < 16) this.#set();
    else if (kind < 17) this.#changeFolders();
    else this.#ask(name);
  }

  #notify(method: string, params: object): void {
    void this.server.connection.sendNotification(method, params);
  }

  #edit(document: TextDocument): void {
    const { dice } = this;
    const contentChanges: TextDocumentContentChangeEvent[] = [];
    for (let count = 1 + dice.below(3); count > 0; count--) {
      const length = document.getText().length;
      const at = dice.below(length + 1);
      const range = {
        start: document.positionAt(at),
        end: document.positionAt(Math.min(length, at + dice.below(dice.below(8) === 0 ? 200 : 4))),
      };
      const change =
        dice.below(30) === 0 ? { text: dice.one(texts) } : { range, text: dice.one([...words, '']) };
      contentChanges.push(change);
      TextDocument.update(document, [change], ++this.#version);
    }
    this.#notify('textDocument/didChange', {
      textDocument: { uri: document.uri, version: this.#version },
      contentChanges,
    });
  }

  #openOrClose(uri: string): void {
    if (this.open.delete(uri)) {
      this.#notify('textDocument/didClose', { textDocument: { uri } });
      return;
    }
    const text = this.disk.texts.get(uri) ?? this.dice.one(texts);
    this.open.set(uri, TextDocument.create(uri, 'doughwright', ++this.#version, text));
    this.#notify('textDocument/didOpen', {
      textDocument: { uri, languageId: 'doughwright', version: this.#version, text },
    });
  }

  #write(uri: string): void {
    if (!uri.startsWith('file:')) return;
    const type = this.disk.texts.has(uri) ? 2 : 1;
    this.disk.texts.set(uri, this.dice.one(texts));
    this.#notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type }] });
  }

  #remove(uri: string): void {
    if (!this.disk.texts.delete(uri)) return;
    this.#notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 3 }] });
  }

  /** All files of a folder move to another, and open ones are closed and opened there, as an editor does it. */
  #renameFolder(): void {
    const [from, to] = this.dice.one([
      [`${root}/deep`, `${root}/other`],
      [`${root}/other`, `${root}/deep`],
      [`${root}/deep/er`, `${annex}/er`],
    ] as const);
    for (const [uri, text] of [...this.disk.texts]) {
      if (!uri.startsWith(`${from}/`)) continue;
      this.disk.texts.delete(uri);
      this.disk.texts.set(uri.replace(from, to), text);
    }
    for (const [uri, document] of [...this.open]) {
      if (!uri.startsWith(`${from}/`) || this.open.has(uri.replace(from, to))) continue;
      this.#openOrClose(uri);
      const moved = uri.replace(from, to);
      this.open.set(moved, TextDocument.create(moved, 'doughwright', ++this.#version, document.getText()));
      this.#notify('textDocument/didOpen', {
        textDocument: {
          uri: moved,
          languageId: 'doughwright',
          version: this.#version,
          text: document.getText(),
        },
      });
    }
    this.#notify('workspace/didRenameFiles', { files: [{ oldUri: from, newUri: to }] });
  }

  #set(): void {
    this.setting = this.dice.one(settings);
    this.#notify('workspace/didChangeConfiguration', { settings: { doughwright: this.setting } });
  }

  #changeFolders(): void {
    const at = this.folders.indexOf(annex);
    if (at < 0) this.folders.push(annex);
    else this.folders.splice(at, 1);
    const event = { uri: annex, name: 'annex' };
    this.#notify('workspace/didChangeWorkspaceFolders', {
      event: at < 0 ? { added: [event], removed: [] } : { added: [], removed: [event] },
    });
  }

  #ask(uri: string): void {
    const { dice, server } = this;
    const source = new CancellationTokenSource();
    const position = { line: dice.below(12), character: dice.below(20) };
    const textDocument = { uri };
    const [method, params] = dice.one<[string, object]>([
      ['textDocument/hover', { textDocument, position }],
      ['textDocument/diagnostic', { textDocument }],
      ['textDocument/documentSymbol', { textDocument }],
      ['textDocument/references', { textDocument, position, context: { includeDeclaration: true } }],
      ['textDocument/rename', { textDocument, position, newName: 'mill grey' }],
      ['workspace/symbol', { query: 'm' }],
      ['doughwright/overview', {}],
    ]);
    this.asked.push(
      server.connection.sendRequest(method, params, source.token).catch((error: { code?: number }) => {
        // Taken back, overtaken by an edit, or refused with a sentence.
        if (![-32800, -32801, -32803].includes(error.code ?? 0)) throw error;
      }),
    );
    if (dice.below(3) === 0) source.cancel();
  }

  /** Resolves when everything asked has been answered and everything on the disk is known. */
  async settle(): Promise<void> {
    await Promise.all(this.asked.splice(0));
    await this.server.connection.sendRequest('workspace/symbol', { query: '' });
  }

  /** Pulls what is new of the whole workspace, as an editor does, and keeps the rest. */
  async pullWorkspace(): Promise<ReadonlyMap<string, readonly Diagnostic[]>> {
    const previousResultIds = [...this.view].map(([uri, { id }]) => ({
      uri,
      value: uri === fixed ? '?' : id,
    }));
    const { items } = await this.server.connection.sendRequest<WorkspaceDiagnosticReport>(
      'workspace/diagnostic',
      {
        previousResultIds,
      },
    );
    for (const report of items) {
      if (report.kind === 'full') this.view.set(report.uri, { id: report.resultId!, items: report.items });
      else expect(this.view.get(report.uri)?.id, `unchanged ${report.uri}`).toBe(report.resultId);
    }
    return new Map(
      [...this.view]
        .filter(([, { items: found }]) => found.length > 0)
        .map(([uri, { items: found }]) => [uri, found]),
    );
  }
}

async function startEditor(dice: Dice): Promise<Editor> {
  const disk = new FilesInMemory();
  disk.texts.set(fixed, 'formula Always:\n  yield 1 kg\n  salt 2\n');
  for (const uri of names.slice(0, 4)) disk.texts.set(uri, dice.one(texts));
  const server = await startInProcess({ folders: [root], capabilities, settings: settings[0], files: disk });
  return new Editor(dice, server, disk);
}

/** The same files, texts, folders and settings, in a server that has never seen anything else. */
async function startAfresh(editor: Editor): Promise<Editor> {
  const disk = new FilesInMemory();
  for (const [uri, text] of editor.disk.texts) disk.texts.set(uri, text);
  const server = await startInProcess({
    folders: editor.folders,
    capabilities,
    settings: editor.setting,
    files: disk,
  });
  const fresh = new Editor(editor.dice, server, disk);
  for (const { uri, version, ...document } of editor.open.values()) {
    void document;
    const text = editor.open.get(uri)!.getText();
    void server.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'doughwright', version, text },
    });
  }
  await fresh.settle();
  return fresh;
}

const { configuration: _, ...workspace } = pulling.workspace!;
const capabilities = { ...pulling, workspace };

interface Question {
  readonly method: string;
  readonly params: object;
}

function questions(editor: Editor): Question[] {
  const { dice } = editor;
  return [...editor.open.values()].flatMap((document) => {
    const textDocument = { uri: document.uri };
    const range = { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } };
    const place = () => document.positionAt(dice.below(document.getText().length + 1));
    const at = (method: string): Question => ({ method, params: { textDocument, position: place() } });
    return [
      { method: 'textDocument/diagnostic', params: { textDocument } },
      { method: 'textDocument/inlayHint', params: { textDocument, range } },
      { method: 'textDocument/documentSymbol', params: { textDocument } },
      { method: 'textDocument/foldingRange', params: { textDocument } },
      {
        method: 'textDocument/formatting',
        params: { textDocument, options: { tabSize: 2, insertSpaces: true } },
      },
      at('textDocument/completion'),
      ...[
        'textDocument/hover',
        'textDocument/hover',
        'textDocument/definition',
        'textDocument/definition',
      ].map(at),
    ];
  });
}

async function answers(connection: ProtocolConnection, asked: readonly Question[]): Promise<unknown[]> {
  const told = await Promise.all(asked.map(({ method, params }) => connection.sendRequest(method, params)));
  return told.map(comparable);
}

/** Answers without what rightly differs: names of results, and the order in which equally near files were first read. */
function comparable(answer: unknown): unknown {
  if (Array.isArray(answer)) return answer.map(comparable);
  if (typeof answer !== 'object' || answer === null) return answer;
  return Object.fromEntries(
    Object.entries(answer).flatMap(([key, value]) => {
      if (key === 'resultId' || key === 'version') return [];
      const sorts = Array.isArray(value) && (key === 'relatedInformation' || key === 'items');
      return [[key, sorts ? value.map(comparable).sort(byText) : comparable(value)]];
    }),
  );
}

function byText(one: unknown, other: unknown): number {
  return JSON.stringify(one) < JSON.stringify(other) ? -1 : 1;
}

describe('whatever an editor does, in whatever order', () => {
  // More with SCRIPTS=10000; a failure names the seed, and SEED=that runs it alone.
  const count = Number(process.env.SCRIPTS ?? 60);
  const perServer = 25;
  const seeds = process.env.SEED
    ? [Number(process.env.SEED)]
    : Array.from({ length: Math.ceil(count / perServer) }, (_, index) => index + 1);
  it(`${count} scripts leave the answers of a server started afresh`, { timeout: 600_000 }, async () => {
    for (const seed of seeds) {
      const dice = new Dice(seed);
      const editor = await startEditor(dice);
      for (let script = 0; script < perServer; script++) {
        for (let steps = 3 + dice.below(12); steps > 0; steps--) {
          editor.step();
          if (dice.below(6) === 0) await new Promise((resolve) => setImmediate(resolve));
        }
        await editor.settle();
        const fresh = await startAfresh(editor);
        const holds = `${editor.folders}; ${[...editor.disk.texts.keys()]}; open ${[...editor.open.keys()]}`;
        const asked = questions(editor);
        const [now, anew] = [
          await answers(editor.server.connection, asked),
          await answers(fresh.server.connection, asked),
        ];
        for (const [index, question] of asked.entries()) {
          expect(now[index], `seed ${seed}, script ${script}: ${JSON.stringify(question)}, ${holds}`).toEqual(
            anew[index],
          );
        }
        const [view, viewAnew] = [await editor.pullWorkspace(), await fresh.pullWorkspace()];
        expect(comparableMap(view), `seed ${seed}, script ${script}: the workspace of ${holds}`).toEqual(
          comparableMap(viewAnew),
        );
        expect([...editor.server.errors, ...fresh.server.errors], `seed ${seed}, script ${script}`).toEqual(
          [],
        );
        fresh.server.stop();
      }
      editor.server.stop();
    }
  });
});

function comparableMap(view: ReadonlyMap<string, readonly Diagnostic[]>): unknown {
  return Object.fromEntries([...view].map(([uri, items]) => [uri, comparable({ items })]).toSorted(byText));
}
