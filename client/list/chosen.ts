import { Range, Uri, window, workspace } from 'vscode';
import type { OverviewEntry } from '../../server/protocol.ts';
import type { CursorPlace } from '../cursor.ts';

/**
 * What a menu hands to a command: an entry of the list, a file of the explorer, or nothing from the palette. Shows it in
 * the editor, so that the cursor stands in the formula.
 */
export async function showChosen(chosen: unknown): Promise<void> {
  if (chosen instanceof Uri) {
    const open = window.visibleTextEditors.find(
      ({ document }) => document.uri.toString() === chosen.toString(),
    );
    await window.showTextDocument(open?.document ?? (await workspace.openTextDocument(chosen)), {
      ...(open?.viewColumn ? { viewColumn: open.viewColumn } : {}),
    });
    return;
  }
  if (!isEntry(chosen)) return;
  const document = await workspace.openTextDocument(Uri.parse(chosen.uri, true));
  const open = window.visibleTextEditors.find((editor) => editor.document === document);
  await window.showTextDocument(document, {
    ...(open?.viewColumn ? { viewColumn: open.viewColumn } : {}),
    selection: new Range(chosen.line, 0, chosen.line, 0),
  });
}

/** Shows a text that is still open once more, with the cursor where it stood. */
export async function showAgain(place: CursorPlace | undefined): Promise<void> {
  const document = workspace.textDocuments.find(({ uri }) => uri.toString() === place?.uri);
  if (place && document)
    await window.showTextDocument(document, { selection: new Range(place.line, 0, place.line, 0) });
}

export function isEntry(chosen: unknown): chosen is OverviewEntry {
  const entry = chosen as Partial<OverviewEntry> | undefined;
  return typeof entry?.uri === 'string' && typeof entry.line === 'number';
}
