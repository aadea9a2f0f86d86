import { type Connection, type TextDocumentContentChangeEvent, TextDocuments } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { canonicalUri } from '../host/uris.ts';

export interface DocumentEvents {
  /** Edits that are about to be taken in. */
  edited(uri: string, changes: readonly TextDocumentContentChangeEvent[]): void;
  /** A document was opened or its text changed. */
  changed(uri: string): void;
  closed(uri: string): void;
  saved(uri: string): void;
}

/** The documents open in the editor, kept in step with it edit by edit. They are known here by canonical URI. */
export class OpenDocuments {
  readonly #texts = new TextDocuments(TextDocument);
  readonly #open = new Set<string>();
  /** How the client spells each document; kept after closing, for what is still to be said of it. */
  readonly #spelling = new Map<string, string>();

  listen(connection: Connection, events: DocumentEvents): void {
    this.#texts.onDidOpen(({ document }) => {
      const uri = canonicalUri(document.uri);
      this.#open.add(uri);
      this.#spelling.set(uri, document.uri);
    });
    this.#texts.onDidChangeContent(({ document }) => events.changed(canonicalUri(document.uri)));
    this.#texts.onDidSave(({ document }) => events.saved(canonicalUri(document.uri)));
    this.#texts.onDidClose(({ document }) => {
      const uri = canonicalUri(document.uri);
      this.#open.delete(uri);
      events.closed(uri);
    });
    // The library tells that a text has changed, and not where.
    const heard: Connection = Object.create(connection, {
      onDidChangeTextDocument: {
        value: (handler: Parameters<Connection['onDidChangeTextDocument']>[0]) =>
          connection.onDidChangeTextDocument((params) => {
            events.edited(canonicalUri(params.textDocument.uri), params.contentChanges);
            handler(params);
          }),
      },
    });
    this.#texts.listen(heard);
  }

  has(uri: string): boolean {
    return this.#open.has(uri);
  }

  get(uri: string): TextDocument | undefined {
    const spelling = this.#spelling.get(uri);
    return spelling === undefined || !this.#open.has(uri) ? undefined : this.#texts.get(spelling);
  }

  /** The URI as the client spells it. */
  spell(uri: string): string {
    return this.#spelling.get(uri) ?? uri;
  }

  uris(): string[] {
    return [...this.#open];
  }
}
