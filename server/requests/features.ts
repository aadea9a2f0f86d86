import type {
  DocumentSymbol,
  SymbolInformation,
  WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import * as convert from '../convert/convert.ts';
import { withMapLink } from '../convert/convert-navigation.ts';
import { guardedRequest } from '../host/guard.ts';
import { canonicalUri } from '../host/uris.ts';
import type {
  SheetParams,
  SheetRequest,
  SheetResult,
  StatusParams,
  StatusRequest,
  StatusResult,
} from '../protocol.ts';
import type { Diagnostics } from '../sync/diagnostics.ts';
import { aboutDocuments, type QuestionParts } from './about.ts';
import { answerActions } from './actions.ts';
import { answerCompletion } from './completion.ts';
import { answerFormatting } from './formatting.ts';
import { answerHints } from './hints.ts';
import { answerHistory } from './history.ts';
import { answerNavigation } from './navigation.ts';
import { answerPanel } from './panel.ts';
import { answerSemanticTokens } from './semantic-tokens.ts';
import { sheetOptionsOf } from './sheet-options.ts';
import { answerSignatures } from './signature.ts';

const sheetRequest: SheetRequest = 'doughwright/sheet';
const statusRequest: StatusRequest = 'doughwright/status';

/**
 * Answers what the client asks about a document. Questions about a position are answered from the very text they were
 * asked of; those about a whole document wait until the edits behind them are in.
 */
export function answerQuestions(parts: QuestionParts): void {
  const { connection, workspace, schedule, log, naming, able, diagnostics, asked } = parts;

  const about = aboutDocuments({ workspace, schedule, log });

  connection.onHover(
    about('Hover', null, 'now', (service, uri, { position }) => {
      const answer = service.hover(uri, position.line, position.character);
      if (!answer) return null;
      const markdown = withMapLink(answer, naming.spell(uri), parts.lensCommands.openMap);
      // A picture is one only where Markdown is shown and images in it are.
      const shown =
        parts.showsPictures && answer.picture !== undefined ? `${answer.picture}\n\n${markdown}` : markdown;
      return convert.toHover({ ...answer, markdown: shown }, able);
    }),
  );

  answerCompletion(parts, about);
  answerSignatures(parts, about);
  answerSemanticTokens(parts, about);
  answerHints(parts, about);
  answerActions(parts, about);
  answerNavigation(parts, about);
  answerFormatting(connection, about);

  connection.onDocumentSymbol(
    about<{ textDocument: { uri: string } }, DocumentSymbol[] | SymbolInformation[]>(
      'Outline',
      [],
      'quiet',
      (service, uri) => {
        const nodes = service.symbols(uri);
        return able.symbolTree
          ? nodes.map(convert.toDocumentSymbol)
          : convert.toFlatSymbols(nodes, naming.spell(uri));
      },
    ),
  );

  connection.onFoldingRanges(
    about('Folding', [], 'quiet', (service, uri) => service.folds(uri).map(convert.toFoldingRange)),
  );

  const sheet = about<SheetParams, SheetResult>('Sheet', null, 'quiet', (service, uri, params) => {
    const view = service.sheet(uri, params.line, sheetOptionsOf(params), params.formula);
    return view ? { ...view, uri: naming.spell(view.uri), shownIn: workspace.display } : null;
  });
  connection.onRequest(sheetRequest, (params: SheetParams, token) => {
    asked();
    return sheet(params, token);
  });

  const status = about<StatusParams, StatusResult | null>(
    'Status',
    null,
    'quiet',
    (service, uri, { line }) => {
      return service.status(uri, line) ?? null;
    },
  );
  connection.onRequest(statusRequest, (params: StatusParams, token) => {
    asked();
    return status(params, token);
  });

  answerPanel(parts);
  answerHistory(parts);

  if (!able.pullsFindings) return;
  connection.languages.diagnostics.on((params, token) =>
    guardedRequest<typeof params, Awaited<ReturnType<Diagnostics['pull']>>>(
      log,
      'Findings',
      { kind: 'full', items: [] },
      (asked, cancel) =>
        diagnostics.pull(canonicalUri(asked.textDocument.uri), asked.previousResultId, cancel),
    )(params, token),
  );
  connection.languages.diagnostics.onWorkspace((params, token, _, partial) =>
    guardedRequest(log, 'Findings of the workspace', { items: [] }, async (asked: typeof params, cancel) => {
      const ids = new Map(asked.previousResultIds.map(({ uri, value }) => [canonicalUri(uri), value]));
      const tell = partial && ((items: WorkspaceDocumentDiagnosticReport[]) => partial.report({ items }));
      return { items: await diagnostics.pullWorkspace(ids, cancel, tell) };
    })(params, token),
  );
}
