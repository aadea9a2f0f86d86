import { PositionEncodingKind, type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import type { Abilities } from './abilities.ts';
import { actionKinds } from './actions.ts';

/** What the server offers to a client of these abilities. */
export function capabilities(able: Abilities, hasFiles: boolean): ServerCapabilities {
  const folders = { filters: [{ scheme: 'file', pattern: { glob: '**/*', matches: 'folder' as const } }] };
  return {
    positionEncoding: PositionEncodingKind.UTF16,
    textDocumentSync: {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
      save: { includeText: false },
    },
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', '#'] },
    documentSymbolProvider: true,
    codeActionProvider: { codeActionKinds: actionKinds, resolveProvider: able.resolvesActions },
    foldingRangeProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n', moreTriggerCharacter: [':'] },
    inlayHintProvider: true,
    definitionProvider: true,
    typeDefinitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: able.preparesRename ? { prepareProvider: true } : true,
    workspaceSymbolProvider: true,
    callHierarchyProvider: true,
    documentLinkProvider: {},
    codeLensProvider: { resolveProvider: true },
    selectionRangeProvider: true,
    ...(able.pullsFindings && {
      diagnosticProvider: {
        identifier: 'doughwright',
        interFileDependencies: true,
        workspaceDiagnostics: hasFiles,
      },
    }),
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
      fileOperations: { didDelete: folders, didRename: folders },
    },
  };
}
