import type { CancellationToken, HandlerResult } from 'vscode-languageserver';
import type { History, Message } from '../../core/index.ts';
import { checkpoint, guardedRequest } from '../host/guard.ts';
import { canonicalUri } from '../host/uris.ts';
import type {
  HistoryParams,
  HistoryRequest,
  HistoryResult,
  SinceParams,
  SinceRequest,
  SinceResult,
} from '../protocol.ts';
import { said } from '../sync/said.ts';
import type { QuestionParts } from './about.ts';

const historyRequest: HistoryRequest = 'doughwright/history';
const sinceRequest: SinceRequest = 'doughwright/since';

/**
 * Answers what became of a formula over the revisions of git. Git is asked only when a client asks this, which a client
 * does only in a folder that is trusted. The work lets others pass between its steps, and ends where nobody wants it.
 */
export function answerHistory({ connection, workspace, schedule, log, revisions }: QuestionParts): void {
  const textsNow = async (): Promise<(readonly [string, string])[]> => {
    const { texts } = (await workspace.service()).snapshot;
    return [...texts.entries()].map(([uri, { text }]) => [uri, text]);
  };
  const historyOfFormula = async (
    uri: string,
    formula: string,
    token: CancellationToken,
    withNow: boolean,
  ): Promise<History | Message> => {
    if (revisions === undefined || !uri.startsWith('file:')) return said('session.no-history');
    const found = await revisions.ofFormula(
      {
        ...{ uri, formula, usual: workspace.settings.core.usual ?? {} },
        ...(withNow ? { texts: await textsNow() } : {}),
      },
      async () => {
        await schedule.quiet();
        checkpoint(token);
      },
    );
    checkpoint(token);
    if ('message' in found) return found.message;
    const { historyOf, message } = await import('../../core/index.ts');
    return historyOf(found) ?? message('history.no-such-formula', { name: formula, revision: 'HEAD' });
  };

  const history = guardedRequest<HistoryParams, HistoryResult>(
    log,
    historyRequest,
    null,
    async ({ textDocument, line, formula }, token) => {
      await schedule.quiet();
      checkpoint(token);
      const service = await workspace.service();
      const uri = canonicalUri(textDocument.uri);
      const name = formula ?? service.status(uri, line)?.formula;
      if (name === undefined) return null;
      const found = await historyOfFormula(uri, name, token, true);
      if ('code' in found) return { cannot: workspace.say(found) };
      const { historyPage } = await import('../../core/index.ts');
      return { page: historyPage(found, service.speaker()) };
    },
  );
  connection.onRequest(
    historyRequest,
    (params: HistoryParams, token) => history(params, token) as HandlerResult<HistoryResult, void>,
  );

  const since = guardedRequest<SinceParams, SinceResult>(
    log,
    sinceRequest,
    null,
    async ({ textDocument, line }, token) => {
      await schedule.quiet();
      checkpoint(token);
      const service = await workspace.service();
      const uri = canonicalUri(textDocument.uri);
      const at = service.figureAt(uri, line);
      if (at === undefined) return null;
      const found = await historyOfFormula(uri, at.formula, token, false);
      if ('code' in found) return null;
      const { sinceWhen } = await import('../../core/index.ts');
      const text = sinceWhen(found, at.figure, service.speaker());
      return text === undefined ? null : { text };
    },
  );
  connection.onRequest(
    sinceRequest,
    (params: SinceParams, token) => since(params, token) as HandlerResult<SinceResult, void>,
  );
}
