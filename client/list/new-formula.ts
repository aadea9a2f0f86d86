import { FileType, l10n, Uri, window, workspace } from 'vscode';
import { languageId } from '../names.ts';
import type { Wire } from '../wire.ts';
import { fileNameFor } from './file-name.ts';
import { askForBakery } from './first-bakery.ts';

/** Asks for a name and a beginning, and opens a formula of the baker's own: a new file, or a new text without a folder. */
export async function newFormula(wire: Wire): Promise<void> {
  const overview = await wire.askOverview();
  if (!overview || overview.templates.length === 0) {
    void window.showWarningMessage(
      l10n.t('The language server is not running; “Doughwright: Restart Language Server” starts it.'),
    );
    return;
  }
  const name = await window.showInputBox({
    title: l10n.t('New Formula (1 of 2)'),
    prompt: l10n.t('What is the bread called?'),
    placeHolder: 'Harbour Tin',
    validateInput: (typed) => (typed.trim() === '' ? l10n.t('A formula needs a name.') : undefined),
  });
  if (name === undefined) return;
  const chosen = await window.showQuickPick(
    overview.templates.map(({ id, title, explanation }) => ({ id, label: title, detail: explanation })),
    { title: l10n.t('New Formula (2 of 2)'), placeHolder: l10n.t('What does it begin as?') },
  );
  if (!chosen) return;
  const made = await wire.askNewFormula({ name, template: chosen.id });
  if (!made) return;
  const folder = folderForNewFile();
  const document = folder
    ? await workspace.openTextDocument(await writeNew(folder, fileNameFor(name), made.text))
    : await workspace.openTextDocument({ language: languageId, content: made.text });
  await window.showTextDocument(document);
  const hasBakery = overview.entries.some(({ kind }) => kind === 'bakery');
  const isFirst = !overview.entries.some(({ kind }) => kind === 'formula');
  if (!folder || hasBakery || !isFirst) return;
  const text = await askForBakery(folder);
  // It holds for every file of the folder, so it stands at its top.
  const root = workspace.getWorkspaceFolder(folder)?.uri ?? folder;
  if (text !== undefined) await writeNew(root, 'bakery', text);
}

/** Beside the formula at hand, else in the first folder; nowhere when none is open or it cannot be written. */
function folderForNewFile(): Uri | undefined {
  const active = window.activeTextEditor?.document;
  const beside =
    active?.languageId === languageId && workspace.getWorkspaceFolder(active.uri)
      ? Uri.joinPath(active.uri, '..')
      : undefined;
  const folder = beside ?? workspace.workspaceFolders?.[0]?.uri;
  return folder && workspace.fs.isWritableFileSystem(folder.scheme) !== false ? folder : undefined;
}

/** Writes a file of that name, or with a number behind it where the name is taken: nothing is written over. */
async function writeNew(folder: Uri, name: string, text: string): Promise<Uri> {
  const there = new Set(
    (await workspace.fs.readDirectory(folder))
      .filter(([, type]) => type !== FileType.Unknown)
      .map(([other]) => other.toLowerCase()),
  );
  let free = `${name}.dough`;
  for (let number = 2; there.has(free.toLowerCase()); number += 1) free = `${name}-${number}.dough`;
  const file = Uri.joinPath(folder, free);
  await workspace.fs.writeFile(file, new TextEncoder().encode(text));
  return file;
}
