import {
  type CodeAction,
  CodeActionKind,
  type CompletionItem,
  CompletionItemKind,
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type DocumentSymbol,
  type FoldingRange,
  FoldingRangeKind,
  type Hover,
  type InlayHint,
  InsertTextFormat,
  type MarkupContent,
  MarkupKind,
  type Range,
  type SnippetTextEdit,
  type SymbolInformation,
  SymbolKind,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type * as core from '../../core/index.ts';
import type { Abilities } from './abilities.ts';

/** How files are named to the client, and which version of them it has; `null` when it has none. */
export interface Naming {
  spell(uri: string): string;
  version(uri: string): number | null;
}

const severities = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
} as const satisfies Record<core.Level, DiagnosticSeverity>;

export const symbolKinds = {
  formula: SymbolKind.Class,
  part: SymbolKind.Struct,
  mix: SymbolKind.Method,
  process: SymbolKind.Function,
  trial: SymbolKind.Event,
  flour: SymbolKind.Constant,
  ingredient: SymbolKind.Constant,
  mixer: SymbolKind.Object,
  bakery: SymbolKind.Package,
  plan: SymbolKind.Array,
  experiment: SymbolKind.Array,
  line: SymbolKind.Field,
} as const satisfies Record<core.SymbolKind, SymbolKind>;

const completionKinds = {
  section: CompletionItemKind.Class,
  property: CompletionItemKind.Property,
  ingredient: CompletionItemKind.Constant,
  part: CompletionItemKind.Struct,
  formula: CompletionItemKind.Reference,
  mixer: CompletionItemKind.Module,
  unit: CompletionItemKind.Unit,
  word: CompletionItemKind.Keyword,
  rule: CompletionItemKind.EnumMember,
} as const satisfies Record<core.CompletionKind, CompletionItemKind>;

/** A finding as the editor draws it. `rulePages` is where the pages of the rules are, each named after its code. */
export function toDiagnostic(
  finding: core.Finding,
  able: Abilities,
  naming: Naming,
  rulePages?: string,
): Diagnostic {
  const diagnostic: Diagnostic = {
    range: toRange(finding.place),
    severity: severities[finding.level],
    code: finding.code,
    source: 'doughwright',
    message: finding.message,
  };
  if (rulePages && able.codeLinks) diagnostic.codeDescription = { href: `${rulePages}${finding.code}.md` };
  if (finding.unused && able.unusedTag) diagnostic.tags = [DiagnosticTag.Unnecessary];
  if (finding.related.length > 0 && able.relatedPlaces) {
    diagnostic.relatedInformation = finding.related.map(({ uri, place, message }) => ({
      location: { uri: naming.spell(uri), range: toRange(place) },
      message,
    }));
  }
  if (finding.fixes.length > 0 && able.findingData)
    diagnostic.data = { fixes: finding.fixes.map((fix) => fix.title) };
  return diagnostic;
}

/** The quick fixes of a finding, the finding attached to each. */
export function toCodeActions(
  finding: core.Finding,
  diagnostic: Diagnostic,
  able: Abilities,
  naming: Naming,
): CodeAction[] {
  return finding.fixes.map((fix) => ({
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    edit: toWorkspaceEdit(fix.edits, able, naming),
    ...(fix.preferred && { isPreferred: true }),
  }));
}

export function toHover(answer: core.HoverAnswer, able: Abilities): Hover {
  const kind = able.markdownHover ? MarkupKind.Markdown : MarkupKind.PlainText;
  return {
    contents: { kind, value: able.markdownHover ? answer.markdown : plain(answer.markdown) },
    range: toRange(answer.place),
  };
}

export function toInlayHint(hint: core.Hint): InlayHint {
  const { line, column, label } = hint;
  return { position: { line, character: column }, label, paddingLeft: true };
}

export function toDocumentSymbol(node: core.SymbolNode): DocumentSymbol {
  return {
    // An editor refuses the whole outline when one name is empty, as it is while a header is being typed.
    name: node.name.trim() || `(${node.kind})`,
    detail: node.detail,
    kind: symbolKinds[node.kind],
    range: nodeRange(node),
    selectionRange: toRange(node.place),
    children: node.children.map(toDocumentSymbol),
  };
}

/** The outline for a client that knows no trees. */
export function toFlatSymbols(
  nodes: readonly core.SymbolNode[],
  uri: string,
  container?: string,
): SymbolInformation[] {
  return nodes.flatMap((node) => {
    const { name, kind, range } = toDocumentSymbol(node);
    const own = { name, kind, location: { uri, range }, ...(container && { containerName: container }) };
    return [own, ...toFlatSymbols(node.children, uri, name)];
  });
}

export function toCompletionItem(completion: core.Completion, able: Abilities): CompletionItem {
  const { label, detail, documentation, insert, snippet, replace, wordEnd, outdent, sort } = completion;
  const newText = snippet && !able.snippets ? withoutPlaceholders(insert) : insert;
  const whole = toRange({ ...replace, end: wordEnd ?? replace.end });
  return {
    label,
    kind: completionKinds[completion.kind],
    // A client that cannot choose gets the whole word replaced: half a word behind the new one is never meant.
    textEdit:
      able.insertsOrReplaces && wordEnd !== undefined
        ? { newText, insert: toRange(replace), replace: whole }
        : { newText, range: whole },
    ...(outdent && { additionalTextEdits: [{ range: toRange(outdent), newText: '' }] }),
    insertTextFormat: snippet && able.snippets ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    ...(detail && { detail }),
    ...(documentation && { documentation: toDocumentation(documentation, able) }),
    ...(sort && { sortText: sort }),
  };
}

/** Markdown about a completion, for a client that shows it or does not. */
export function toDocumentation(markdown: string, able: Abilities): MarkupContent {
  return able.markdownCompletion
    ? { kind: MarkupKind.Markdown, value: markdown }
    : { kind: MarkupKind.PlainText, value: plain(markdown) };
}

export function toFoldingRange(fold: core.Fold): FoldingRange {
  return {
    startLine: fold.firstLine,
    endLine: fold.lastLine,
    kind: fold.comment ? FoldingRangeKind.Comment : FoldingRangeKind.Region,
  };
}

export function toRange(place: core.Finding['place']): Range {
  return {
    start: { line: place.line, character: place.start },
    end: { line: place.line, character: place.end },
  };
}

export function toWorkspaceEdit(
  files: readonly core.FileEdit[],
  able: Abilities,
  naming: Naming,
): WorkspaceEdit {
  if (!able.versionedEdits) {
    const changes: Record<string, TextEdit[]> = {};
    for (const { uri, edits } of files)
      changes[naming.spell(uri)] = [...(changes[naming.spell(uri)] ?? []), ...edits.map(toTextEdit)];
    return { changes };
  }
  return {
    documentChanges: files.map(({ uri, edits }) => ({
      textDocument: { uri: naming.spell(uri), version: naming.version(uri) },
      edits: edits.map((edit) =>
        edit.snippet && able.snippetEdits ? toSnippetEdit(edit) : toTextEdit(edit),
      ),
    })),
  };
}

export function toTextEdit(edit: core.TextEdit): TextEdit {
  return {
    range: {
      start: { line: edit.line, character: edit.start },
      end: { line: edit.endLine ?? edit.line, character: edit.end },
    },
    newText: edit.snippet ? withoutPlaceholders(edit.insert) : edit.insert,
  };
}

function toSnippetEdit(edit: core.TextEdit): SnippetTextEdit {
  return { range: toTextEdit(edit).range, snippet: { kind: 'snippet', value: edit.insert } };
}

// The range must hold the name, or an editor refuses the outline.
function nodeRange(node: core.SymbolNode): Range {
  const end =
    node.lastLine > node.place.line
      ? { line: node.lastLine, character: node.lastColumn }
      : { line: node.place.line, character: Math.max(node.lastColumn, node.place.end) };
  return { start: { line: Math.min(node.firstLine, node.place.line), character: 0 }, end };
}

/** Markdown without its marks, for clients that show text as it is. */
function plain(markdown: string): string {
  return markdown.replace(/[*`]+/g, '').replace(/\[([^\]]*)\]\([^)]*\)/g, '$1');
}

function withoutPlaceholders(snippet: string): string {
  return snippet
    .replace(/\$\{\d+\|([^,|}]*)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\$\{?\d+\}?/g, '')
    .replace(/\\([\\$}])/g, '$1');
}
