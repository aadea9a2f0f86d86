import {
  type CancellationToken,
  type Disposable,
  EventEmitter,
  l10n,
  type WorkspaceEdit,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type {
  ChangedNotification,
  ChangedParams,
  CompareParams,
  CompareRequest,
  CompareResult,
  EditParams,
  EditRequest,
  EditResult,
  ExperimentParams,
  ExperimentRequest,
  ExperimentResult,
  HistoryParams,
  HistoryRequest,
  HistoryResult,
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
  SheetParams,
  SheetRequest,
  SheetResult,
  SheetTextParams,
  SheetTextRequest,
  SheetTextResult,
  SinceParams,
  SinceRequest,
  SinceResult,
  StatusParams,
  StatusRequest,
  StatusResult,
} from '../server/protocol.ts';

type ServerEdit = Extract<EditResult, { edit: unknown }>['edit'];

const sheetRequest: SheetRequest = 'doughwright/sheet';
const sheetTextRequest: SheetTextRequest = 'doughwright/sheetText';
const statusRequest: StatusRequest = 'doughwright/status';
const overviewRequest: OverviewRequest = 'doughwright/overview';
const newFormulaRequest: NewFormulaRequest = 'doughwright/newFormula';
const editRequest: EditRequest = 'doughwright/edit';
const importTableRequest: ImportTableRequest = 'doughwright/importTable';
const compareRequest: CompareRequest = 'doughwright/compare';
const historyRequest: HistoryRequest = 'doughwright/history';
const planRequest: PlanRequest = 'doughwright/plan';
const experimentRequest: ExperimentRequest = 'doughwright/experiment';
const overlayRequest: OverlayRequest = 'doughwright/overlay';
const logTestedRequest: LogTestedRequest = 'doughwright/logTested';
const sinceRequest: SinceRequest = 'doughwright/since';
const changedNotification: ChangedNotification = 'doughwright/changed';

/** The language server as the client's own features see it: typed calls, whichever server runs at the moment. */
export interface Wire {
  /** Batch sheet of a formula, or `null` where none stands and while no server runs. Rejects when cancelled. */
  askSheet(params: SheetParams, token: CancellationToken): Promise<SheetResult>;
  /** The sheet written out, or `null` where no formula stands and while no server runs. */
  askSheetText(params: SheetTextParams): Promise<SheetTextResult>;
  /** Words for the status bar, or `null` where no formula stands and while no server runs. Rejects when cancelled. */
  askStatus(params: StatusParams, token?: CancellationToken): Promise<StatusResult | null>;
  /** What the files of the workspace define, or `null` while no server runs. */
  askOverview(): Promise<OverviewResult | null>;
  /** The text of a new formula, or `null` while no server runs. */
  askNewFormula(params: NewFormulaParams): Promise<NewFormulaResult | null>;
  /** A pasted table as formulas, or `null` while no server runs. */
  askImportTable(params: ImportTableParams): Promise<ImportedTable | null>;
  /** An edit of a file, computed by the core, or a sentence that says why there is none. */
  askEdit(params: EditParams): Promise<WorkspaceEdit | string>;
  /** What changed in a file since another text of it, or `null` while no server runs. */
  askCompare(params: CompareParams): Promise<CompareResult>;
  /** The history of a formula, or `null` while no server runs. Rejects when cancelled. */
  askHistory(params: HistoryParams, token?: CancellationToken): Promise<HistoryResult>;
  /** Since when the figure of a line is as it is, or `null` where that is not known. Rejects when cancelled. */
  askSince(params: SinceParams, token: CancellationToken): Promise<SinceResult>;
  /** A production run, or `null` while no server runs. */
  askPlan(params: PlanParams): Promise<PlanResult>;
  /** An experiment, or `null` while no server runs. */
  askExperiment(params: ExperimentParams): Promise<ExperimentResult>;
  /** Formulas laid over each other, or `null` while no server runs. */
  askOverlay(params: OverlayParams): Promise<OverlayResult>;
  /** The edit that logs a reading of an experiment's dough, or a sentence that says why there is none. */
  askLogTested(params: LogTestedParams): Promise<WorkspaceEdit | string>;
  /** Called with the documents whose numbers may have changed. */
  onChanged(listener: (uris: readonly string[]) => void): Disposable;
}

export interface WireEnd extends Wire, Disposable {
  /** Speaks to this client from now on, and to no other. */
  attach(client: BaseLanguageClient): void;
}

/** So often an edit is asked for anew while its text changes. */
const mostTurns = 4;

export function createWire(): WireEnd {
  const changed = new EventEmitter<readonly string[]>();
  let client: BaseLanguageClient | undefined;
  const ask = async <Result>(
    request: string,
    params: object,
    token?: CancellationToken,
  ): Promise<Result | null> => {
    if (!client?.isRunning()) return null;
    // A token that is not there would be sent as a second parameter.
    return token
      ? client.sendRequest<Result>(request, params, token)
      : client.sendRequest<Result>(request, params);
  };
  const askForEdit = async (request: string, params: object): Promise<WorkspaceEdit | string> => {
    for (let turn = 1; ; turn++) {
      const result = await ask<EditResult>(request, params);
      if (!result) return l10n.t('The language server is not running.');
      if ('cannot' in result) return result.cannot;
      if (isOfTextsAtHand(result.edit)) {
        const edit = await client?.protocol2CodeConverter.asWorkspaceEdit(result.edit);
        return edit ?? l10n.t('The language server is not running.');
      }
      // Somebody types: what was asked is asked of the text as it is now.
      if (turn === mostTurns)
        return l10n.t('The text has changed meanwhile; nothing was written. Ask again.');
    }
  };
  return {
    askSheet: (params, token) => ask(sheetRequest, params, token),
    askSheetText: (params) => ask(sheetTextRequest, params),
    askStatus: (params, token) => ask(statusRequest, params, token),
    askOverview: () => ask(overviewRequest, {}),
    askNewFormula: (params) => ask(newFormulaRequest, params),
    askImportTable: (params) => ask(importTableRequest, params),
    askEdit: (params) => askForEdit(editRequest, params),
    askExperiment: (params) => ask(experimentRequest, params),
    askOverlay: (params) => ask(overlayRequest, params),
    askLogTested: (params) => askForEdit(logTestedRequest, params),
    askCompare: (params) => ask(compareRequest, params),
    askHistory: (params, token) => ask(historyRequest, params, token),
    askPlan: (params) => ask(planRequest, params),
    askSince: (params, token) => ask(sinceRequest, params, token),
    onChanged: (listener) => changed.event(listener),
    attach(next) {
      client = next;
      next.onNotification(changedNotification, (params: ChangedParams) => changed.fire(params.uris));
    },
    dispose: () => changed.dispose(),
  };
}

/** Whether an edit is of the texts as they stand in the editor: in others it would write at the wrong place. */
function isOfTextsAtHand({ documentChanges = [] }: ServerEdit): boolean {
  return documentChanges.every((change) => {
    if (!('textDocument' in change) || typeof change.textDocument.version !== 'number') return true;
    const { uri, version } = change.textDocument;
    const document = workspace.textDocuments.find((one) => one.uri.toString() === uri);
    return document?.version === version;
  });
}
