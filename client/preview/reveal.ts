import { Range, type TextEditor, TextEditorRevealType, Uri, ViewColumn, window, workspace } from 'vscode';

/** Shows a zero-based line in the editor that has the file, or opens one beside the panel, with the cursor at the line's end. */
export async function reveal(uri: string, line: number, preserveFocus = false): Promise<TextEditor> {
  const target = Uri.parse(uri, true);
  const open = window.visibleTextEditors.find(
    (editor) => editor.document.uri.toString() === target.toString(),
  );
  const document = open?.document ?? (await workspace.openTextDocument(target));
  const at = document.lineAt(Math.min(Math.max(line, 0), document.lineCount - 1)).range.end;
  const editor = await window.showTextDocument(document, {
    viewColumn: open?.viewColumn ?? ViewColumn.One,
    selection: new Range(at, at),
    preserveFocus,
  });
  editor.revealRange(new Range(at, at), TextEditorRevealType.InCenterIfOutsideViewport);
  return editor;
}
