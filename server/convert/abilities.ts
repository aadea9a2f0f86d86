import { type ClientCapabilities, MarkupKind } from 'vscode-languageserver';

/** What the client can do, as far as it changes what we say to it. */
export interface Abilities {
  readonly pullsFindings: boolean;
  /** Shows how far long work has come. */
  readonly progress: boolean;
  readonly refreshesFindings: boolean;
  readonly refreshesHints: boolean;
  readonly refreshesLenses: boolean;
  readonly refreshesTokens: boolean;
  /** Asks for the tooltip and the edits of a hint when it is pointed at. */
  readonly resolvesHints: boolean;
  readonly signatureOffsets: boolean;
  readonly signatureActive: boolean;
  readonly definitionLinks: boolean;
  readonly typeDefinitionLinks: boolean;
  readonly preparesRename: boolean;
  readonly relatedPlaces: boolean;
  readonly unusedTag: boolean;
  readonly codeLinks: boolean;
  readonly findingData: boolean;
  readonly markdownHover: boolean;
  readonly markdownCompletion: boolean;
  readonly snippets: boolean;
  /** Lets the baker choose whether a completion replaces the rest of the word behind the cursor. */
  readonly insertsOrReplaces: boolean;
  readonly symbolTree: boolean;
  readonly versionedEdits: boolean;
  readonly codeActionLiterals: boolean;
  readonly resolvesActions: boolean;
  readonly snippetEdits: boolean;
  readonly configuration: boolean;
  readonly registersConfiguration: boolean;
  readonly registersWatchers: boolean;
  readonly workspaceFolders: boolean;
}

/** Reads the client's capabilities; whatever is not stated counts as absent. */
export function readAbilities(capabilities: ClientCapabilities): Abilities {
  const text = capabilities.textDocument ?? {};
  const workspace = capabilities.workspace ?? {};
  const findings = { ...text.publishDiagnostics, ...text.diagnostic };
  return {
    pullsFindings: text.diagnostic !== undefined,
    progress: capabilities.window?.workDoneProgress === true,
    refreshesFindings: workspace.diagnostics?.refreshSupport === true,
    refreshesHints: workspace.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace.codeLens?.refreshSupport === true,
    refreshesTokens: workspace.semanticTokens?.refreshSupport === true,
    resolvesHints: ['tooltip', 'textEdits'].every(
      (property) => text.inlayHint?.resolveSupport?.properties.includes(property) === true,
    ),
    signatureOffsets:
      text.signatureHelp?.signatureInformation?.parameterInformation?.labelOffsetSupport === true,
    signatureActive: text.signatureHelp?.signatureInformation?.activeParameterSupport === true,
    definitionLinks: text.definition?.linkSupport === true,
    typeDefinitionLinks: text.typeDefinition?.linkSupport === true,
    preparesRename: text.rename?.prepareSupport === true,
    relatedPlaces: findings.relatedInformation === true,
    unusedTag: findings.tagSupport !== undefined,
    codeLinks: findings.codeDescriptionSupport === true,
    findingData: findings.dataSupport === true,
    markdownHover: text.hover?.contentFormat?.includes(MarkupKind.Markdown) === true,
    markdownCompletion:
      text.completion?.completionItem?.documentationFormat?.includes(MarkupKind.Markdown) === true,
    snippets: text.completion?.completionItem?.snippetSupport === true,
    insertsOrReplaces: text.completion?.completionItem?.insertReplaceSupport === true,
    symbolTree: text.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    versionedEdits: workspace.workspaceEdit?.documentChanges === true,
    codeActionLiterals: text.codeAction?.codeActionLiteralSupport !== undefined,
    resolvesActions:
      text.codeAction?.dataSupport === true &&
      text.codeAction.resolveSupport?.properties.includes('edit') === true,
    snippetEdits:
      workspace.workspaceEdit?.documentChanges === true &&
      workspace.workspaceEdit.snippetEditSupport === true,
    configuration: workspace.configuration === true,
    registersConfiguration: workspace.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace.didChangeWatchedFiles?.dynamicRegistration === true,
    workspaceFolders: workspace.workspaceFolders === true,
  };
}
