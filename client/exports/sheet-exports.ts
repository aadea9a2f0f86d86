import { env, FileType, l10n, UIKind, type Uri, Uri as uris, window, workspace } from 'vscode';
import type { SheetFormat, SheetTextResult } from '../../server/protocol.ts';
import { fileNameFor } from '../list/file-name.ts';
import type { FollowedPlace } from '../preview/follower.ts';
import type { Kept } from '../preview/kept.ts';
import type { Wire } from '../wire.ts';
import { formatOfFile, nameOfFile, type SavedFormat, savedFormats } from './formats.ts';
import { originOf } from './state-of-files.ts';

export interface SheetExports {
  /** Asks where to, and writes the sheet as the ending of the name says. */
  saveAs(place: FollowedPlace): Promise<void>;
  /** Opens the sheet in the browser, which can print it; where there is none to reach, saves the page for one. */
  print(place: FollowedPlace): Promise<void>;
  /** Puts the sheet on the clipboard, as a table for a spreadsheet. */
  copy(place: FollowedPlace): Promise<void>;
}

export interface SheetExportsOptions {
  readonly wire: Wire;
  readonly kept: Kept;
  /** Where the extension may keep files of its own. */
  readonly storage: Uri;
}

/** Batch sheets for paper, files and spreadsheets, at the size and for the day tried in the panel; the server writes them. */
export function createSheetExports({ wire, kept, storage }: SheetExportsOptions): SheetExports {
  const written = async ({ uri, line, formula }: FollowedPlace, format: SheetFormat) => {
    const file = uris.parse(uri, true);
    const name = formula ?? (await wire.askStatus({ textDocument: { uri }, line }))?.formula;
    const answer = await wire.askSheetText({
      ...(name === undefined ? {} : { ...kept.asked(uri, name), formula: name }),
      ...{ textDocument: { uri }, line, format, origin: await originOf(file) },
    });
    if (!answer)
      void window.showInformationMessage(
        l10n.t(
          'There is no sheet to write: put the cursor into a formula; “Doughwright: Restart Language Server” helps where nothing is computed.',
        ),
      );
    return answer;
  };

  const save = async (place: FollowedPlace, title: string, only?: 'html'): Promise<Uri | undefined> => {
    const name = await nameOf(place);
    const titles = formatTitles();
    const formats = only ? [only] : savedFormats;
    const target = await window.showSaveDialog({
      title,
      defaultUri: uris.joinPath(folderOf(place), `${name}.html`),
      filters: Object.fromEntries(formats.map((ending) => [titles[ending], [ending]])),
    });
    if (!target) return undefined;
    const format = formatOfFile(target.path);
    if (!format) {
      const endings = savedFormats.map((ending) => `.${ending}`);
      void window.showWarningMessage(
        l10n.t(
          'Nothing was saved: give the name one of the endings {0}; “{1}” has none of them.',
          endings.join(', '),
          nameOfFile(target.path),
        ),
      );
      return undefined;
    }
    const answer = await written(place, format);
    if (!answer) return undefined;
    try {
      await workspace.fs.writeFile(target, new TextEncoder().encode(answer.text));
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      void window.showErrorMessage(
        l10n.t('{0} could not be written; save it elsewhere. ({1})', workspace.asRelativePath(target), why),
      );
      return undefined;
    }
    return target;
  };

  const nameOf = async ({ uri, line, formula }: FollowedPlace): Promise<string> =>
    fileNameFor(formula ?? (await wire.askStatus({ textDocument: { uri }, line }))?.formula ?? 'sheet');

  return {
    async saveAs(place) {
      const target = await save(place, l10n.t('Save Sheet As'));
      if (!target) return;
      const answer = await window.showInformationMessage(
        l10n.t('Saved as {0}.', workspace.asRelativePath(target)),
        l10n.t('Open'),
      );
      if (answer) await window.showTextDocument(target);
    },

    print: (place) => print(place, { written, save, storage }),

    async copy(place) {
      const answer = await written(place, 'tabbed');
      if (!answer) return;
      await env.clipboard.writeText(answer.text);
      window.setStatusBarMessage(
        l10n.t('The sheet of {0} is on the clipboard, as a table.', answer.formula),
        5_000,
      );
    },
  };
}

/** What printing takes of the exports. */
interface Printing {
  readonly written: (place: FollowedPlace, format: SheetFormat) => Promise<SheetTextResult>;
  readonly save: (place: FollowedPlace, title: string, only?: 'html') => Promise<Uri | undefined>;
  readonly storage: Uri;
}

async function print(place: FollowedPlace, { written, save, storage }: Printing): Promise<void> {
  // From a window in a browser, or on another machine, no file of ours can be opened here.
  if (env.uiKind === UIKind.Desktop && env.remoteName === undefined && storage.scheme === 'file') {
    const answer = await written(place, 'html');
    if (!answer) return;
    const folder = uris.joinPath(storage, 'print');
    const page = uris.joinPath(folder, `${fileNameFor(answer.formula)}.html`);
    await workspace.fs.createDirectory(folder);
    await workspace.fs.writeFile(page, new TextEncoder().encode(answer.text));
    if (await env.openExternal(page)) {
      window.setStatusBarMessage(l10n.t('The sheet is open in the browser; print it from there.'), 10_000);
      return;
    }
  }
  if (await canSave(folderOf(place))) {
    const target = await save(place, l10n.t('Save the Page to Print It from a Browser'), 'html');
    if (target)
      void window.showInformationMessage(
        l10n.t(
          'This editor cannot print by itself. Open {0} in a browser and print it there.',
          workspace.asRelativePath(target),
        ),
      );
    return;
  }
  const answer = await written(place, 'html');
  if (!answer) return;
  await window.showTextDocument(await workspace.openTextDocument({ language: 'html', content: answer.text }));
  void window.showInformationMessage(
    l10n.t(
      'This editor can neither print nor save here. This is the page: save it elsewhere, open it in a browser and print it there.',
    ),
  );
}

/** What a save dialog calls them. */
function formatTitles(): Readonly<Record<SavedFormat, string>> {
  return { html: l10n.t('Page to Print'), md: 'Markdown', csv: l10n.t('Table (CSV)'), json: 'JSON' };
}

/** Beside the formula's file, else in the first folder; a new text has no place of its own. */
function folderOf({ uri }: FollowedPlace): Uri {
  const file = uris.parse(uri, true);
  const first = workspace.workspaceFolders?.[0]?.uri;
  if (file.scheme === 'untitled') return first ?? uris.file('/');
  return uris.joinPath(file, '..');
}

async function canSave(folder: Uri): Promise<boolean> {
  if (workspace.fs.isWritableFileSystem(folder.scheme) === false) return false;
  return Promise.resolve(workspace.fs.stat(folder)).then(
    ({ type }) => (type & FileType.Directory) !== 0,
    () => false,
  );
}
