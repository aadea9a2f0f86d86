import { type CodeAction, commands, l10n, window } from 'vscode';

const kind = 'refactor.rewrite.convert-mix';

/** Opens the menu of the cursor’s line with nothing but the mixers to convert to; off a programme says where they are. */
export async function convertMixing(): Promise<void> {
  const editor = window.activeTextEditor;
  const offered =
    editor &&
    (await commands.executeCommand<CodeAction[]>(
      'vscode.executeCodeActionProvider',
      editor.document.uri,
      editor.selection,
      kind,
    ));
  if (!offered?.length) {
    // The editor’s own words would name the kind of the action and not what to do.
    void window.showInformationMessage(
      l10n.t('Nothing to convert here: put the cursor into a mixing programme, below its line “mix in …:”.'),
    );
    return;
  }
  await commands.executeCommand('editor.action.codeAction', { kind, apply: 'never' });
}
