import { type Disposable, EventEmitter, type TextEditor, window } from 'vscode';
import { languageId } from './names.ts';

/** Where the baker's cursor stands: a document and a zero-based line. */
export interface CursorPlace {
  readonly uri: string;
  readonly line: number;
}

export interface Cursor extends Disposable {
  /** Where the cursor stands in the active editor, when that editor holds formulas. */
  readonly place: CursorPlace | undefined;
  /** Where it stood last in a formula's file, whatever has been opened since. */
  readonly last: CursorPlace | undefined;
  /** Fires when the line or the document changes, never for a move within a line. */
  onDidMove(listener: (place: CursorPlace | undefined) => void): Disposable;
}

/** Watches the cursor of the active editor, line by line. */
export function watchCursor(): Cursor {
  const moved = new EventEmitter<CursorPlace | undefined>();
  let place = placeOf(window.activeTextEditor);
  let last = place;
  const moveTo = (next: CursorPlace | undefined) => {
    if (next?.uri === place?.uri && next?.line === place?.line) return;
    place = next;
    last = next ?? last;
    moved.fire(next);
  };
  const subscriptions = [
    window.onDidChangeActiveTextEditor((editor) => moveTo(placeOf(editor))),
    window.onDidChangeTextEditorSelection((event) => {
      if (event.textEditor === window.activeTextEditor) moveTo(placeOf(event.textEditor));
    }),
    moved,
  ];
  return {
    get place() {
      return place;
    },
    get last() {
      return last;
    },
    onDidMove: (listener) => moved.event(listener),
    dispose: () => {
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
}

function placeOf(editor: TextEditor | undefined): CursorPlace | undefined {
  if (editor?.document.languageId !== languageId) return undefined;
  return { uri: editor.document.uri.toString(), line: editor.selection.active.line };
}
