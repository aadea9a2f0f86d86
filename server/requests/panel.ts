import type { CancellationToken, HandlerResult } from 'vscode-languageserver';
import * as convert from '../convert/convert.ts';
import { checkpoint, guardedRequest } from '../host/guard.ts';
import { canonicalUri } from '../host/uris.ts';
import type {
  CompareParams,
  CompareRequest,
  CompareResult,
  EditParams,
  EditRequest,
  EditResult,
  ExperimentParams,
  ExperimentRequest,
  ExperimentResult,
  ImportedTable,
  ImportTableParams,
  ImportTableRequest,
  LogTestedParams,
  LogTestedRequest,
  NewFormulaParams,
  NewFormulaRequest,
  NewFormulaResult,
  OverlayParams,
  OverlayRequest,
  OverlayResult,
  OverviewRequest,
  OverviewResult,
  PlanParams,
  PlanRequest,
  PlanResult,
  SheetTextParams,
  SheetTextRequest,
  SheetTextResult,
} from '../protocol.ts';
import { inSteps } from '../sync/long-work.ts';
import { said } from '../sync/said.ts';
import type { QuestionParts } from './about.ts';
import { sheetOptionsOf } from './sheet-options.ts';

const overviewRequest: OverviewRequest = 'doughwright/overview';
const newFormulaRequest: NewFormulaRequest = 'doughwright/newFormula';
const editRequest: EditRequest = 'doughwright/edit';
const importTableRequest: ImportTableRequest = 'doughwright/importTable';
const compareRequest: CompareRequest = 'doughwright/compare';
const planRequest: PlanRequest = 'doughwright/plan';
const experimentRequest: ExperimentRequest = 'doughwright/experiment';
const logTestedRequest: LogTestedRequest = 'doughwright/logTested';
const overlayRequest: OverlayRequest = 'doughwright/overlay';
const sheetTextRequest: SheetTextRequest = 'doughwright/sheetText';

/** A list that is asked for while the folders are still being read waits this long for the rest of them. */
const filesWaitMilliseconds = 10_000;

type Answer = <P, R>(
  method: string,
  empty: R | (() => R),
  make: (params: P, token: CancellationToken) => Promise<R>,
) => void;

/** Answers what the side bar and the panel ask beyond sheets: lists, new texts, and edits for the editor to make. */
export function answerPanel(parts: QuestionParts): void {
  const { connection, workspace, schedule, log, naming, able, filesRead, asked, revisions } = parts;

  const answer: Answer = <P, R>(
    method: string,
    empty: R | (() => R),
    make: (params: P, token: CancellationToken) => Promise<R>,
  ): void => {
    const handler = guardedRequest<P, R>(log, method, empty, async (params, token) => {
      await schedule.quiet();
      checkpoint(token);
      return make(params, token);
    });
    connection.onRequest(method, (params: P, token: CancellationToken) => {
      asked();
      return handler(params, token) as HandlerResult<R, void>;
    });
  };

  answer<unknown, OverviewResult>(overviewRequest, { entries: [], templates: [] }, async (_, token) => {
    await filesRead(filesWaitMilliseconds);
    checkpoint(token);
    const found = await inSteps(parts, token, undefined, (service) => service.overviewInSteps());
    const entries = found.map((entry) => ({ ...entry, uri: naming.spell(entry.uri) }));
    return { entries, templates: workspace.now().templates() };
  });

  answer<NewFormulaParams, NewFormulaResult>(newFormulaRequest, { text: '' }, async ({ name, template }) => ({
    text: (await workspace.service()).newFormula(name, template),
  }));

  const noTable = (): ImportedTable => ({
    text: '',
    formulas: [],
    notes: [{ message: workspace.say(said('session.no-table')), doubtful: true }],
  });
  answer<ImportTableParams, ImportedTable>(
    importTableRequest,
    noTable,
    async ({ textDocument, table }, token) => {
      await filesRead(filesWaitMilliseconds);
      checkpoint(token);
      return (await workspace.service()).importTable(canonicalUri(textDocument.uri), table);
    },
  );

  answer<CompareParams, CompareResult>(compareRequest, null, async ({ textDocument, before }, token) => {
    await filesRead(filesWaitMilliseconds);
    checkpoint(token);
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return null;
    // What was committed may call flours by names that are not there any more: they are those of that commit.
    const isStrange = uri.startsWith('file:') && service.lacksNames(uri, before);
    const among = isStrange ? await revisions?.ofLastCommit(uri) : undefined;
    return service.comparePage(uri, before, undefined, among);
  });

  answer<SheetTextParams, SheetTextResult>(sheetTextRequest, null, async (params) => {
    const { textDocument, line, formula, format, origin } = params;
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return null;
    const view = service.sheet(uri, line, sheetOptionsOf(params), formula);
    if (view === undefined) return null;
    const { writeSheets } = await import('../../core/index.ts');
    return { formula: view.formula, text: writeSheets([{ view, origin }], format, service.speaker()) };
  });

  answer<PlanParams, PlanResult>(planRequest, null, async ({ textDocument, line, plan }, token) => {
    await filesRead(filesWaitMilliseconds);
    checkpoint(token);
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return null;
    const plans = service.plans(uri);
    const view =
      plans.find((one) => one.plan === plan) ?? plans.findLast((one) => one.line <= line) ?? plans[0];
    if (view === undefined) return { cannot: workspace.say(said('session.no-plan')) };
    const { pageAsHtml, planPage } = await import('../../core/index.ts');
    const page = planPage(view, service.speaker());
    return { page, html: pageAsHtml(page) };
  });

  answerExperiments(parts, answer);
  answerOverlays(parts, answer);

  const failed = () => ({ cannot: workspace.say(said('session.no-edit')) });
  answer<EditParams, EditResult>(editRequest, failed, async ({ textDocument, line, formula, change }) => {
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return { cannot: workspace.say(said('session.file-not-known')) };
    const edits = service.panelEdits(uri, line, change, formula);
    return 'refused' in edits
      ? { cannot: edits.refused }
      : { edit: convert.toWorkspaceEdit(edits, able, naming) };
  });
}

/** The experiment beside the editor, and the readings that are logged at the bench. */
function answerExperiments({ workspace, naming, able, filesRead }: QuestionParts, answer: Answer): void {
  answer<ExperimentParams, ExperimentResult>(experimentRequest, null, async (params, token) => {
    const { textDocument, line, experiment, here, sheet = {} } = params;
    if (here !== true) await filesRead(filesWaitMilliseconds);
    checkpoint(token);
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return null;
    const none = () => ({ cannot: workspace.say(said('session.no-experiment')) });
    const stands = service.experimentNameAt(uri, line);
    if (here === true && stands === undefined) return none();
    const all = service.experiments(uri);
    const named = (name: string | undefined) => all.find((one) => one.experiment === name);
    const view = named(experiment) ?? named(stands) ?? all.findLast((one) => one.line <= line) ?? all[0];
    if (view === undefined) return none();
    const { experimentBench, experimentPage, pageAsHtml } = await import('../../core/index.ts');
    const page = experimentPage(view, service.speaker(), sheet);
    const bench = { ...experimentBench(view, service.speaker()), uri: naming.spell(view.uri) };
    return { page, html: pageAsHtml(page), bench, shownIn: workspace.display };
  });

  const failed = () => ({ cannot: workspace.say(said('session.no-edit')) });
  answer<LogTestedParams, EditResult>(logTestedRequest, failed, async ({ textDocument, ...reading }) => {
    const service = await workspace.service();
    const uri = canonicalUri(textDocument.uri);
    if (!service.has(uri)) return { cannot: workspace.say(said('session.file-not-known')) };
    const edits = service.logTested(uri, reading);
    return 'refused' in edits
      ? { cannot: edits.refused }
      : { edit: convert.toWorkspaceEdit(edits, able, naming) };
  });
}

/** Formulas laid over each other. */
function answerOverlays({ workspace, filesRead }: QuestionParts, answer: Answer): void {
  answer<OverlayParams, OverlayResult>(overlayRequest, null, async ({ formulas }, token) => {
    await filesRead(filesWaitMilliseconds);
    checkpoint(token);
    const service = await workspace.service();
    const { mostOverlaid, overlayPage, pageAsHtml } = await import('../../core/index.ts');
    const laid = [];
    for (const { uri, formula, other } of formulas) {
      const found = service.overlaid(canonicalUri(uri), formula, other);
      if (found !== undefined) laid.push(found);
      else {
        const why = other === undefined ? said('panel.formula-removed') : notThere(formula, other.revision);
        return { cannot: workspace.say(why) };
      }
    }
    const count = laid.length;
    if (count < 2) return { cannot: workspace.say(said('overlay.too-few')) };
    if (count > mostOverlaid)
      return { cannot: workspace.say(said('overlay.too-many', { count, number: mostOverlaid })) };
    const page = overlayPage(laid, service.speaker());
    return { page, html: pageAsHtml(page) };
  });
}

const notThere = (name: string, revision: string) => said('overlay.not-there', { name, revision });
