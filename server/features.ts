import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Connection,
  type DocumentSymbol,
  type SymbolInformation,
} from 'vscode-languageserver';
import type { Service } from '../core/index.ts';
import type { Abilities } from './abilities.ts';
import * as convert from './convert.ts';
import type { Diagnostics } from './diagnostics.ts';
import type { OpenDocuments } from './documents.ts';
import { checkpoint, guardedRequest, type Log } from './guard.ts';
import type {
  SheetParams,
  SheetRequest,
  SheetResult,
  StatusParams,
  StatusRequest,
  StatusResult,
} from './protocol.ts';
import type { Schedule } from './schedule.ts';
import { canonicalUri } from './uris.ts';
import type { Workspace } from './workspace.ts';

export interface QuestionParts {
  readonly connection: Connection;
  readonly documents: OpenDocuments;
  readonly workspace: Workspace;
  readonly schedule: Schedule;
  readonly log: Log;
  readonly naming: convert.Naming;
  readonly able: Abilities;
  readonly diagnostics: Diagnostics;
  /** Called when the client shows that it knows our own requests. */
  readonly asked: () => void;
}

const sheetRequest: SheetRequest = 'doughwright/sheet';
const statusRequest: StatusRequest = 'doughwright/status';

/**
 * Answers what the client asks about a document. Questions about a position are answered from the very text they were
 * asked of; those about a whole document wait until the edits behind them are in.
 */
export function answerQuestions(parts: QuestionParts): void {
  const { connection, workspace, schedule, log, naming, able, diagnostics, asked } = parts;

  /** A handler that is given the core and the canonical URI, or answers `empty` where the file is not known. */
  function about<P extends { textDocument: { uri: string } }, R>(
    name: string,
    empty: R,
    when: 'now' | 'quiet',
    answer: (service: Service, uri: string, params: P, token: CancellationToken) => R,
  ) {
    return guardedRequest<P, R>(log, name, empty, async (params, token) => {
      if (when === 'quiet') await schedule.quiet();
      checkpoint(token);
      const service = await workspace.service();
      checkpoint(token);
      const uri = canonicalUri(params.textDocument.uri);
      return service.has(uri) ? answer(service, uri, params, token) : empty;
    });
  }

  connection.onHover(
    about('Hover', null, 'now', (service, uri, { position }) => {
      const answer = service.hover(uri, position.line, position.character);
      return answer ? convert.toHover(answer, able) : null;
    }),
  );

  connection.onCompletion(
    about('Completion', null, 'now', (service, uri, { position }) => ({
      isIncomplete: false,
      items: service
        .completions(uri, position.line, position.character)
        .map((completion) => convert.toCompletionItem(completion, able)),
    })),
  );

  connection.onCodeAction(
    about<CodeActionParams, CodeAction[]>('Quick fixes', [], 'now', (service, uri, params) => {
      const { only } = params.context;
      if (
        !able.codeActionLiterals ||
        (only && !only.some((kind) => isOrHolds(kind, CodeActionKind.QuickFix)))
      )
        return [];
      return service
        .findings(uri)
        .filter(({ place }) => touches(place, params.range))
        .flatMap((finding) =>
          convert.toCodeActions(
            finding,
            convert.toDiagnostic(finding, able, naming, diagnostics.rulePages),
            able,
            naming,
          ),
        );
    }),
  );

  connection.languages.inlayHint.on(
    about('Hints', [], 'quiet', (service, uri, { range }) =>
      workspace.settings.hints
        ? service.hints(uri, range.start.line, range.end.line).map(convert.toInlayHint)
        : [],
    ),
  );

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

  const sheet = about<SheetParams, SheetResult>(
    'Sheet',
    null,
    'quiet',
    (service, uri, { line, size, formula }) => {
      const view = service.sheet(uri, line, size ?? { by: 'file' }, formula);
      return view ? { ...view, uri: naming.spell(view.uri) } : null;
    },
  );
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
  connection.languages.diagnostics.onWorkspace((params, token) =>
    guardedRequest(log, 'Findings of the workspace', { items: [] }, async (asked: typeof params, cancel) => {
      const ids = new Map(asked.previousResultIds.map(({ uri, value }) => [canonicalUri(uri), value]));
      return { items: await diagnostics.pullWorkspace(ids, cancel) };
    })(params, token),
  );
}

/** Whether an action kind is another or an ancestor of it: `quickfix` holds `quickfix.spelling`. */
function isOrHolds(kind: string, other: string): boolean {
  return kind === '' || kind === other || other.startsWith(`${kind}.`);
}

interface Lines {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

function touches(place: { line: number; start: number; end: number }, range: Lines): boolean {
  if (place.line < range.start.line || place.line > range.end.line) return false;
  if (place.line === range.start.line && place.end < range.start.character) return false;
  return place.line < range.end.line || place.start <= range.end.character;
}
