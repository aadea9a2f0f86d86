import * as vscode from 'vscode';
import { languageId } from '../names.ts';
import type { TableImports } from './formula-from-table.ts';

/** A dropped file of cells that is larger is no table of a bread. */
const mostBytes = 1_000_000;

/** Kinds of pasted and dropped edits; the editors of the first promised version do not have them yet. */
interface EditKind {
  append(...parts: string[]): EditKind;
}
interface LaterVscode {
  readonly DocumentDropOrPasteEditKind?: { readonly Empty: EditKind };
  readonly DocumentPasteEdit?: new (text: string, title: string, kind: EditKind) => object;
  readonly languages: {
    registerDocumentPasteEditProvider?(
      selector: vscode.DocumentSelector,
      provider: {
        provideDocumentPasteEdits(
          document: vscode.TextDocument,
          ranges: readonly vscode.Range[],
          data: vscode.DataTransfer,
          context: unknown,
          token: vscode.CancellationToken,
        ): Promise<object[] | undefined>;
      },
      metadata: { providedPasteEditKinds: readonly EditKind[]; pasteMimeTypes: readonly string[] },
    ): vscode.Disposable;
  };
}

/** Makes a formula of a table that is pasted, or of a file of cells that is dropped, into a formula file. */
export function registerTablePaste(imports: TableImports): vscode.Disposable[] {
  const selector = { language: languageId };
  const drop = vscode.languages.registerDocumentDropEditProvider(selector, {
    async provideDocumentDropEdits(document, position, data, token) {
      const table = await droppedTable(data);
      if (table === undefined || token.isCancellationRequested) return undefined;
      const text = await imports.formulaOf(table, document.uri);
      return text === undefined ? undefined : new vscode.DocumentDropEdit(between(document, position, text));
    },
  });
  return [drop, ...pasteProvider(imports, selector)];
}

function pasteProvider(imports: TableImports, selector: vscode.DocumentSelector): vscode.Disposable[] {
  const { DocumentDropOrPasteEditKind, DocumentPasteEdit, languages } = vscode as unknown as LaterVscode;
  const register = languages.registerDocumentPasteEditProvider?.bind(languages);
  if (!DocumentDropOrPasteEditKind || !DocumentPasteEdit || !register) return [];
  const kind = DocumentDropOrPasteEditKind.Empty.append('text', 'doughwright', 'table');
  const provider = {
    async provideDocumentPasteEdits(
      document: vscode.TextDocument,
      ranges: readonly vscode.Range[],
      data: vscode.DataTransfer,
      _context: unknown,
      token: vscode.CancellationToken,
    ) {
      const [range] = ranges;
      const table = await data.get('text/plain')?.asString();
      // In the midst of a line somebody pastes words.
      if (!range || ranges.length !== 1 || table === undefined || !isTable(table)) return undefined;
      if (!range.isEmpty || range.end.character < document.lineAt(range.end.line).text.trimEnd().length)
        return undefined;
      const text = await imports.formulaOf(table, document.uri);
      if (text === undefined || token.isCancellationRequested) return undefined;
      const title = vscode.l10n.t('Formula from Table');
      return [new DocumentPasteEdit(between(document, range.start, text), title, kind)];
    },
  };
  return [register(selector, provider, { providedPasteEditKinds: [kind], pasteMimeTypes: ['text/plain'] })];
}

/** Cells as a spreadsheet puts them on the clipboard: two rows or more, each with a tab. */
function isTable(text: string): boolean {
  const rows = text.split(/\r?\n/).filter((row) => row.trim() !== '');
  return rows.length >= 2 && rows.every((row) => row.includes('\t'));
}

/** The text of the first dropped file whose name says that it holds cells. */
async function droppedTable(data: vscode.DataTransfer): Promise<string | undefined> {
  for (const [, item] of data) {
    const file = item.asFile();
    if (file === undefined || !isCells(file.name)) continue;
    const bytes = await file.data();
    return bytes.length <= mostBytes ? new TextDecoder().decode(bytes) : undefined;
  }
  // A file of the explorer comes as its address.
  const list = await data.get('text/uri-list')?.asString();
  const [first] = (list ?? '').split(/\r?\n/).filter((line) => line !== '' && !line.startsWith('#'));
  if (first === undefined || !isCells(first)) return undefined;
  const uri = vscode.Uri.parse(first, true);
  const { size } = await vscode.workspace.fs.stat(uri);
  return size <= mostBytes ? new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)) : undefined;
}

const isCells = (name: string): boolean => /\.(?:csv|tsv)$/i.test(name);

/** The text so that it stands between lines and never inside one. */
function between(document: vscode.TextDocument, { line }: vscode.Position, text: string): string {
  return document.lineAt(line).isEmptyOrWhitespace ? text : `\n\n${text.replace(/\n$/, '')}`;
}
