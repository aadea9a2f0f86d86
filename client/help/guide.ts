import { commands, l10n, Uri, window, workspace } from 'vscode';
import { languageOfAnswers } from '../language.ts';

/** Shows the guide that ships with the extension, rendered, in the language of the answers where it is written in that. */
export async function openGuide(extensionUri: Uri): Promise<void> {
  const folder = languageOfAnswers() === 'de' ? ['docs', 'de', 'guide'] : ['docs', 'guide'];
  const page = Uri.joinPath(extensionUri, ...folder, 'README.md');
  try {
    // The editor's own extension for Markdown is started by its command, and may be switched off.
    await commands.executeCommand('markdown.showPreview', page);
    return;
  } catch {
    // The text says the same.
  }
  await window.showTextDocument(await workspace.openTextDocument(page), { preview: true });
  void window.showInformationMessage(
    l10n.t('The editor’s own Markdown preview is switched off; this is the text of the guide.'),
  );
}
