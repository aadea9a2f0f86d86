import { ErrorCodes, Message } from 'vscode-languageserver';

/** What a request is refused with before anything of ours hears of it: the codes of JSON-RPC 2.0 and of the protocol. */
export interface RefusedRequest {
  readonly code: number;
  readonly message: string;
}

/** What a member of the parameters has to be. */
type Want = (value: unknown) => boolean;

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isText: Want = (value) => typeof value === 'string';
/** `uinteger` of the protocol. */
const isCount: Want = (value) => Number.isInteger(value) && Number(value) >= 0 && Number(value) < 2 ** 31;
const isPlace: Want = (value) => isObject(value) && isCount(value.line) && isCount(value.character);
const isRange: Want = (value) => isObject(value) && isPlace(value.start) && isPlace(value.end);
const isDocument: Want = (value) => isObject(value) && isText(value.uri);

const ofDocument = { textDocument: isDocument };
const ofPlace = { ...ofDocument, position: isPlace };
const ofRange = { ...ofDocument, range: isRange };
const ofLine = { ...ofDocument, line: isCount };
const ofItem = {
  item: (value: unknown) => isObject(value) && isText(value.uri) && isRange(value.selectionRange),
};

/** The members that a request cannot do without, by its method. */
const wanted: Readonly<Record<string, Readonly<Record<string, Want>>>> = {
  ...Object.fromEntries(
    [
      ...['documentSymbol', 'foldingRange', 'codeLens', 'documentLink', 'formatting', 'diagnostic'],
      ...['semanticTokens/full', 'semanticTokens/full/delta'],
    ].map((name) => [`textDocument/${name}`, ofDocument]),
  ),
  'textDocument/hover': ofPlace,
  'textDocument/completion': ofPlace,
  'textDocument/signatureHelp': ofPlace,
  'textDocument/definition': ofPlace,
  'textDocument/typeDefinition': ofPlace,
  'textDocument/references': ofPlace,
  'textDocument/documentHighlight': ofPlace,
  'textDocument/prepareRename': ofPlace,
  'textDocument/rename': { ...ofPlace, newName: isText },
  'textDocument/prepareCallHierarchy': ofPlace,
  'textDocument/onTypeFormatting': ofPlace,
  'textDocument/rangeFormatting': ofRange,
  'textDocument/inlayHint': ofRange,
  'textDocument/semanticTokens/range': ofRange,
  'textDocument/codeAction': { ...ofRange, context: isObject },
  'textDocument/selectionRange': {
    ...ofDocument,
    positions: (value) => Array.isArray(value) && value.every(isPlace),
  },
  'callHierarchy/incomingCalls': ofItem,
  'callHierarchy/outgoingCalls': ofItem,
  'workspace/symbol': { query: isText },
  'workspace/diagnostic': { previousResultIds: Array.isArray },
  'codeAction/resolve': {
    title: isText,
    data: (value) =>
      value === undefined ||
      (isObject(value) && isText(value.uri) && isText(value.id) && isRange(value.range)),
  },
  'doughwright/sheet': ofLine,
  'doughwright/sheetText': ofLine,
  'doughwright/status': ofLine,
  'doughwright/edit': { ...ofLine, change: isObject },
  'doughwright/history': ofLine,
  'doughwright/plan': ofLine,
  'doughwright/since': ofLine,
  'doughwright/experiment': ofLine,
  'doughwright/logTested': ofDocument,
  'doughwright/importTable': { ...ofDocument, table: isText },
  'doughwright/compare': { ...ofDocument, before: isText },
  'doughwright/newFormula': { name: isText, template: isText },
};

/** The member of a request that is missing or is not what it has to be. */
function wrongMember(method: string, params: unknown): string | undefined {
  const members = Object.hasOwn(wanted, method) ? wanted[method]! : {};
  const given = isObject(params) ? params : {};
  return Object.entries(members).find(([name, isRight]) => !isRight(given[name]))?.[0];
}

/**
 * Holds a client to the order of the protocol, and its requests to the parameters that they need: whatever passes may be taken
 * as its type says. One for each connection.
 */
export class ProtocolGate {
  #state: 'fresh' | 'begun' | 'ended' = 'fresh';

  /**
   * Looks at a message that has come: what a request is refused with, `drop` for a notification at the wrong time, else
   * nothing.
   */
  refusal(message: Message): RefusedRequest | 'drop' | undefined {
    if (Message.isNotification(message)) {
      const isFree = message.method === 'exit' || message.method.startsWith('$/');
      return this.#state === 'begun' || isFree ? undefined : 'drop';
    }
    if (!Message.isRequest(message)) return undefined;
    const { method, params } = message;
    if (this.#state === 'fresh') {
      if (method !== 'initialize')
        return { code: ErrorCodes.ServerNotInitialized, message: 'The server is not initialized.' };
      this.#state = 'begun';
      return undefined;
    }
    if (this.#state === 'ended' || method === 'initialize')
      return {
        code: ErrorCodes.InvalidRequest,
        message: `The server is ${this.#state === 'ended' ? 'shut down' : 'initialized already'}.`,
      };
    if (method === 'shutdown') this.#state = 'ended';
    const wrong = wrongMember(method, params);
    return wrong === undefined
      ? undefined
      : { code: ErrorCodes.InvalidParams, message: `${method} needs “${wrong}” as the protocol has it.` };
  }
}
