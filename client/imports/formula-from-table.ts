import {
  env,
  type LogOutputChannel,
  l10n,
  Range,
  Selection,
  type TextDocument,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { ImportedTable } from '../../server/protocol.ts';
import { languageId } from '../names.ts';
import type { Wire } from '../wire.ts';

/** Makes formulas of tables that were copied or selected; what was guessed is written to the log. */
export interface TableImports {
  fromClipboard(): Promise<void>;
  fromSelection(): Promise<void>;
  /** The formula that a table makes, its names looked up from where a file stands; `undefined` where it makes none. */
  formulaOf(table: string, file: Uri): Promise<string | undefined>;
}

export function createTableImports(wire: Wire, log: LogOutputChannel): TableImports {
  const make = async (
    table: string,
    source: string,
    place = placeOfNames(),
  ): Promise<ImportedTable | undefined> => {
    const made = await wire.askImportTable({ textDocument: { uri: place }, table });
    if (!made) {
      void window.showWarningMessage(
        l10n.t('The language server is not running; “Doughwright: Restart Language Server” starts it.'),
      );
      return undefined;
    }
    tell(made, source, log);
    return made.text === '' ? undefined : made;
  };

  return {
    async formulaOf(table, file) {
      return (await make(table, l10n.t('pasted'), file.toString()))?.text;
    },
    async fromClipboard() {
      const table = await env.clipboard.readText();
      if (table.trim() === '') {
        void window.showInformationMessage(
          l10n.t('Copy the cells in the spreadsheet first, the names with the amounts.'),
        );
        return;
      }
      const made = await make(table, l10n.t('clipboard'));
      const editor = window.activeTextEditor;
      if (!made) return;
      if (editor?.document.languageId === languageId) {
        const at = editor.selection.active;
        const line = editor.document.lineAt(at.line);
        // Between lines and never inside one: behind a line that says something, in place of a blank one.
        const where = line.isEmptyOrWhitespace ? line.range : new Range(line.range.end, line.range.end);
        await put(editor.document, where, line.isEmptyOrWhitespace ? made.text : `\n\n${made.text}`);
      } else await openNew(made.text);
    },
    async fromSelection() {
      const editor = window.activeTextEditor;
      if (!editor || editor.selection.isEmpty) {
        void window.showInformationMessage(l10n.t('Select the table first, the names with the amounts.'));
        return;
      }
      const { document, selection } = editor;
      const { version } = document;
      const made = await make(document.getText(selection), l10n.t('selection'));
      if (!made) return;
      // Where somebody typed meanwhile, the table no longer stands where it was selected.
      if (document.languageId === languageId && document.version === version)
        await put(document, selection, made.text);
      else await openNew(made.text);
    },
  };
}

/** Names are looked up from the file at hand, else from the first folder. */
function placeOfNames(): string {
  const active = window.activeTextEditor?.document.uri;
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const place =
    active && workspace.getWorkspaceFolder(active) ? active : folder && Uri.joinPath(folder, 'new.dough');
  return (place ?? Uri.parse('untitled:new.dough')).toString();
}

async function openNew(text: string): Promise<void> {
  const document = await workspace.openTextDocument({ language: languageId, content: text });
  selectName(await window.showTextDocument(document), 0);
}

async function put(document: TextDocument, where: Range, text: string): Promise<void> {
  const editor = await window.showTextDocument(document);
  const start = where.start.line + (text.startsWith('\n\n') ? 2 : 0);
  const endsLine = document.lineAt(where.end.line).range.end.isEqual(where.end);
  await editor.edit((edit) => edit.replace(where, endsLine ? text.replace(/\n$/, '') : text));
  selectName(editor, start);
}

/** Selects the name in the header, so that it can be typed over. */
function selectName(editor: Awaited<ReturnType<typeof window.showTextDocument>>, line: number): void {
  const header = /^(formula )(.*):$/.exec(editor.document.lineAt(line).text);
  if (!header) return;
  const from = header[1]!.length;
  editor.selection = new Selection(line, from, line, from + header[2]!.length);
  editor.revealRange(editor.selection);
}

function tell({ notes, formulas, text }: ImportedTable, source: string, log: LogOutputChannel): void {
  const made = formulas.length === 0 ? l10n.t('no formula') : formulas.join(', ');
  log.info(l10n.t('Table ({0}): {1}', source, made));
  for (const { message, doubtful } of notes) {
    if (doubtful) log.warn(message);
    else log.info(message);
  }
  const doubts = notes.filter((note) => note.doubtful);
  const [first] = doubts;
  const report = l10n.t('Show Report');
  const more = doubts.length > 1 && text !== '' ? doubts.length - 1 : 0;
  const shown = first
    ? window.showWarningMessage(
        more === 0 ? first.message : l10n.t('{0} {1} more to look at.', first.message, more),
        report,
      )
    : window.showInformationMessage(l10n.t('{0}: made of the table.', formulas.join(', ')), report);
  void Promise.resolve(shown).then((chosen) => {
    if (chosen === report) log.show();
  });
}
