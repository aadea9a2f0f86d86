import {
  commands,
  type DocumentSymbol,
  type Location,
  l10n,
  Position,
  Range,
  type TextDocument,
  Uri,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type { OverviewEntry } from '../../server/protocol.ts';
import { isEntry, showChosen } from './chosen.ts';
import { fileName } from './entries.ts';

/** Shows the file of an entry in the explorer. */
export async function revealEntry(chosen: unknown): Promise<void> {
  if (isEntry(chosen)) await commands.executeCommand('revealInExplorer', Uri.parse(chosen.uri, true));
}

/** Renames what an entry names wherever it is named: the editor's own rename, with its preview, at the entry's header. */
export async function renameEntry(chosen: unknown): Promise<void> {
  const found = await written(chosen);
  if (!found) return;
  await showChosen(found.entry);
  const editor = window.activeTextEditor;
  if (editor?.document !== found.document) return;
  await commands.executeCommand('editor.action.rename', [found.document.uri, nameOf(found).start]);
}

/** Writes an entry once more below itself, under a name that is asked for. */
export async function duplicateEntry(chosen: unknown): Promise<void> {
  const found = await written(chosen);
  if (!found) return;
  const { entry, document, symbol } = found;
  const name = await window.showInputBox({
    title: l10n.t('Duplicate {0}', entry.name),
    prompt: l10n.t('What is the copy called?'),
    value: `${entry.name} 2`,
    validateInput: (typed) => (typed.trim() === '' ? l10n.t('It needs a name.') : undefined),
  });
  if (name === undefined) return;
  const { start, end } = linesOf(document, symbol);
  const old = nameOf(found);
  const copy =
    document.getText(new Range(start, old.start)) + quoted(name) + document.getText(new Range(old.end, end));
  const edit = new WorkspaceEdit();
  edit.insert(document.uri, end, `\n\n${copy}`);
  await workspace.applyEdit(edit);
  const editor = await window.showTextDocument(document);
  const at = new Position(end.line + 2, 0);
  editor.revealRange(new Range(at, at));
}

/** Takes an entry out of its file, once the baker has agreed; what names it is told first, and undo brings it back. */
export async function deleteEntry(chosen: unknown): Promise<void> {
  const found = await written(chosen);
  if (!found) return;
  const { entry, document, symbol } = found;
  const uses = await commands.executeCommand<Location[] | undefined>(
    'vscode.executeReferenceProvider',
    document.uri,
    nameOf(found).start,
  );
  const others = (uses ?? []).filter(
    ({ uri, range }) => uri.toString() !== document.uri.toString() || !symbol.range.contains(range),
  ).length;
  const remove = l10n.t('Delete');
  const answer = await window.showWarningMessage(
    l10n.t('Delete {0} from {1}?', entry.name, fileName(entry.uri)),
    {
      modal: true,
      detail:
        others === 0
          ? l10n.t('Nothing else names it. Undo in its file brings it back.')
          : l10n.t('{0} other places name it and will not find it. Undo in its file brings it back.', others),
    },
    remove,
  );
  if (answer !== remove) return;
  const lines = linesOf(document, symbol);
  const next = Math.min(document.lineCount, lines.end.line + 1);
  const edit = new WorkspaceEdit();
  edit.delete(document.uri, document.validateRange(new Range(lines.start.line, 0, next, 0)));
  await workspace.applyEdit(edit);
  await window.showTextDocument(document);
}

interface Written {
  readonly entry: OverviewEntry;
  readonly document: TextDocument;
  readonly symbol: DocumentSymbol;
}

/** Where an entry is written now: the list may be a moment behind the text. */
async function written(chosen: unknown): Promise<Written | undefined> {
  if (!isEntry(chosen)) return undefined;
  const document = await workspace.openTextDocument(Uri.parse(chosen.uri, true));
  const symbols = await commands.executeCommand<DocumentSymbol[] | undefined>(
    'vscode.executeDocumentSymbolProvider',
    document.uri,
  );
  const near = (symbols ?? [])
    .filter(({ name }) => name === chosen.name)
    .toSorted(
      (one, other) =>
        Math.abs(one.range.start.line - chosen.line) - Math.abs(other.range.start.line - chosen.line),
    );
  const [symbol] = near;
  if (symbol) return { entry: chosen, document, symbol };
  void window.showInformationMessage(
    l10n.t('{0} is no longer written in {1}; the list will follow.', chosen.name, fileName(chosen.uri)),
  );
  return undefined;
}

/** Where the name stands in the header: behind the word that says what it is of. */
function nameOf({ document, symbol: { selectionRange } }: Written): Range {
  const [word = ''] = /^\S+\s*/.exec(document.getText(selectionRange)) ?? [];
  return new Range(selectionRange.start.translate(0, word.length), selectionRange.end);
}

/** All lines of a section, without blank ones at its end. */
function linesOf(document: TextDocument, { range }: DocumentSymbol): Range {
  let last =
    range.end.character === 0 && range.end.line > range.start.line ? range.end.line - 1 : range.end.line;
  while (last > range.start.line && document.lineAt(last).isEmptyOrWhitespace) last -= 1;
  return new Range(range.start.line, 0, last, document.lineAt(last).text.length);
}

/** A name as a header takes it: between quotes where it has signs of the notation in it. */
function quoted(name: string): string {
  const plain = name.trim().replaceAll('"', '');
  return /[:#,()]/.test(plain) ? `"${plain}"` : plain;
}
