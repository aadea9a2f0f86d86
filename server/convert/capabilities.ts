import { PositionEncodingKind, type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import { actionKinds } from '../requests/actions.ts';
import { legend } from '../requests/semantic-tokens.ts';
import type { Abilities } from './abilities.ts';

/** What the server offers to a client of these abilities. */
export function capabilities(
  able: Abilities,
  hasFiles: boolean,
  positionEncoding: PositionEncodingKind,
): ServerCapabilities {
  const folders = { filters: [{ scheme: 'file', pattern: { glob: '**/*', matches: 'folder' as const } }] };
  return {
    positionEncoding,
    textDocumentSync: {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
      save: { includeText: false },
    },
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', '#'], resolveProvider: true },
    signatureHelpProvider: { triggerCharacters: [' '], retriggerCharacters: [' ', ','] },
    semanticTokensProvider: {
      legend,
      range: true,
      full: { delta: positionEncoding === PositionEncodingKind.UTF16 },
    },
    documentSymbolProvider: true,
    codeActionProvider: { codeActionKinds: actionKinds, resolveProvider: able.resolvesActions },
    foldingRangeProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n', moreTriggerCharacter: [':'] },
    inlayHintProvider: { resolveProvider: able.resolvesHints },
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
