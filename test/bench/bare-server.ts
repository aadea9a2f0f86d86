import { createConnection, TextDocumentSyncKind, TextDocuments } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

/** The least a language server can be: it keeps the texts, and answers that it knows nothing. */
const connection = createConnection();
const documents = new TextDocuments(TextDocument);
connection.onInitialize(() => ({
  capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental, hoverProvider: true },
}));
documents.onDidChangeContent(({ document: { uri, version } }) => {
  void connection.sendDiagnostics({ uri, version, diagnostics: [] });
});
connection.onHover(() => null);
documents.listen(connection);
connection.listen();
