import type { CancellationToken, HandlerResult } from 'vscode-languageserver';
import * as convert from './convert.ts';
import type { QuestionParts } from './features.ts';
import { checkpoint, guardedRequest } from './guard.ts';
import type {
  CompareParams,
  CompareRequest,
  Comparison,
  EditParams,
  EditRequest,
  EditResult,
  NewFormulaParams,
  NewFormulaRequest,
  NewFormulaResult,
  OverviewRequest,
  OverviewResult,
} from './protocol.ts';
import { canonicalUri } from './uris.ts';

const overviewRequest: OverviewRequest = 'doughwright/overview';
const newFormulaRequest: NewFormulaRequest = 'doughwright/newFormula';
const editRequest: EditRequest = 'doughwright/edit';
const compareRequest: CompareRequest = 'doughwright/compare';

/** A list that is asked for while the folders are still being read waits this long for the rest of them. */
const patienceMilliseconds = 3_000;

/** Answers what the side bar and the panel ask beyond sheets: lists, new texts, and edits for the editor to make. */
export function answerPanel(parts: QuestionParts): void {
  const { connection, workspace, schedule, log, naming, able, filesRead, asked } = parts;

  function answer<P, R>(
    method: string,
    empty: R,
    make: (params: P, token: CancellationToken) => Promise<R>,
  ): void {
    const handler = guardedRequest<P, R>(log, method, empty, async (params, token) => {
      await schedule.quiet();
      checkpoint(token);
      return make(params, token);
    });
    connection.onRequest(method, (params: P, token: CancellationToken) => {
      asked();
      return handler(params, token) as HandlerResult<R, void>;
    });
  }

  answer<unknown, OverviewResult>(overviewRequest, { entries: [], templates: [] }, async (_, token) => {
    await filesRead(patienceMilliseconds);
    checkpoint(token);
    const service = await workspace.service();
    const entries = service.overview().map((entry) => ({ ...entry, uri: naming.spell(entry.uri) }));
    return { entries, templates: service.templates };
  });

  answer<NewFormulaParams, NewFormulaResult>(newFormulaRequest, { text: '' }, async ({ name, template }) => ({
    text: (await workspace.service()).newFormula(name, template),
  }));

  answer<CompareParams, Comparison | null>(compareRequest, null, async ({ textDocument, before }) => {
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    return service.has(uri) ? service.compare(uri, before) : null;
  });

  const failed = { cannot: 'The edit could not be made; the log says why.' };
  answer<EditParams, EditResult>(editRequest, failed, async ({ textDocument, line, formula, change }) => {
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return { cannot: 'The file is not open and not in the workspace.' };
    const edits = service.panelEdits(uri, line, change, formula);
    return typeof edits === 'string'
      ? { cannot: edits }
      : { edit: convert.toWorkspaceEdit(edits, able, naming) };
  });
}
