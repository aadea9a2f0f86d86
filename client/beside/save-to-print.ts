import { l10n, Uri, window, workspace } from 'vscode';
import { fileNameFor } from '../list/file-name.ts';

/** Asks where a page is to be saved, beside the file that it is of, and writes it there. */
export async function saveToPrint(besideUri: string, name: string, html: string): Promise<void> {
  const target = await window.showSaveDialog({
    title: l10n.t('Save the Page to Print It from a Browser'),
    defaultUri: Uri.joinPath(Uri.parse(besideUri, true), '..', `${fileNameFor(name)}.html`),
    filters: { [l10n.t('Page to Print')]: ['html'] },
  });
  if (!target) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(html));
  void window.showInformationMessage(l10n.t('Saved as {0}.', workspace.asRelativePath(target)));
}
