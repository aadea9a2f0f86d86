import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
  type Connection,
  LSPErrorCodes,
  type Range,
  ResponseError,
} from 'vscode-languageserver';
import type { ActionKind, OfferedAction, Service, TextRange } from '../../core/index.ts';
import type { Abilities } from '../convert/abilities.ts';
import * as convert from '../convert/convert.ts';
import { guardedRequest, type Log } from '../host/guard.ts';
import type { Diagnostics } from '../sync/diagnostics.ts';
import { said } from '../sync/said.ts';
import type { Workspace } from '../sync/workspace.ts';
import type { About } from './about.ts';

export interface ActionParts {
  readonly connection: Connection;
  readonly workspace: Workspace;
  readonly log: Log;
  readonly naming: convert.Naming;
  readonly able: Abilities;
  readonly diagnostics: Diagnostics;
}

const kinds = {
  fix: CodeActionKind.QuickFix,
  rewrite: CodeActionKind.RefactorRewrite,
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline,
  sort: CodeActionKind.RefactorRewrite,
  fixAll: `${CodeActionKind.SourceFixAll}.doughwright`,
} as const satisfies Record<ActionKind, string>;

/** Rewritings have a kind each, `refactor.rewrite.sort-by-weight`, so that a baker may bind one to a key. */
export function kindOf({ id, kind }: Pick<OfferedAction, 'id' | 'kind'>): string {
  return kind === 'fix' || kind === 'fixAll' ? kinds[kind] : `${kinds[kind]}.${id}`;
}

/** The kinds under which all others stand, for the client to know them. */
export const actionKinds: CodeActionKind[] = [...new Set(Object.values(kinds))];

/** What an offered action needs to be found again when the client wants its edits. */
interface ActionData {
  readonly uri: string;
  readonly version: number | null;
  readonly range: Range;
  readonly id: string;
  readonly argument?: string;
}

/**
 * Answers what can be done at a place: the fixes of its findings, and the actions of the core. What an action writes is
 * worked out when the client takes it, where the client can ask again, else at once.
 */
export function answerActions(parts: ActionParts, about: About): void {
  const { connection, workspace, log, naming, able } = parts;

  connection.onCodeAction(
    about<CodeActionParams, CodeAction[]>('Actions', [], 'now', (service, uri, { range, context }) => {
      if (!able.codeActionLiterals) return [];
      const wanted = (kind: string): boolean =>
        context.only === undefined || context.only.some((asked) => isOrHolds(asked, kind));
      const fixes = wanted(kinds.fix) ? fixesAt(parts, service, uri, toTextRange(range)) : [];
      // A kind asked for may hold one of ours, or be one below it.
      const mayHold = (kind: string): boolean =>
        wanted(kind) || context.only!.some((asked) => isOrHolds(kind, asked));
      const only = (Object.keys(kinds) as ActionKind[]).filter((kind) => mayHold(kinds[kind]));
      // Whoever asks with each move of the cursor wants to know what is to be mended here, not all that could be rewritten.
      const isUnasked = context.triggerKind === CodeActionTriggerKind.Automatic && context.only === undefined;
      const offered = service
        .actions(uri, toTextRange(range), only)
        .filter((one) => wanted(kindOf(one)) && (!isUnasked || one.findings.length > 0));
      return [...fixes, ...offered.flatMap((one) => actionOf(parts, service, uri, range, one))];
    }),
  );

  connection.onCodeActionResolve(
    guardedRequest<CodeAction, CodeAction>(log, 'Action', { title: '' }, async (action) => {
      const data = action.data as ActionData | undefined;
      if (data === undefined) return action;
      const service = await workspace.service();
      if (naming.version(data.uri) !== data.version)
        throw new ResponseError(
          LSPErrorCodes.ContentModified,
          workspace.say(said('session.changed-since-offered')),
        );
      const edits = service.actionEdits(data.uri, toTextRange(data.range), data.id, data.argument);
      if (edits === undefined)
        throw new ResponseError(
          LSPErrorCodes.RequestFailed,
          workspace.say(said('session.cannot-be-done', { name: action.title })),
        );
      return { ...action, edit: convert.toWorkspaceEdit(edits, able, naming) };
    }),
  );
}

function fixesAt(
  { able, naming, diagnostics }: ActionParts,
  service: Service,
  uri: string,
  range: TextRange,
): CodeAction[] {
  return service
    .findingsAt(uri, range)
    .flatMap((finding) =>
      convert.toCodeActions(
        finding,
        convert.toDiagnostic(finding, able, naming, diagnostics.rulePages),
        able,
        naming,
      ),
    );
}

function actionOf(
  { able, naming, diagnostics }: ActionParts,
  service: Service,
  uri: string,
  range: Range,
  { id, argument, kind, title, preferred, findings }: OfferedAction,
): CodeAction[] {
  const action: CodeAction = {
    title,
    kind: kindOf({ id, kind }),
    ...(preferred && { isPreferred: true }),
    ...(findings.length > 0 && {
      diagnostics: findings.map((one) => convert.toDiagnostic(one, able, naming, diagnostics.rulePages)),
    }),
  };
  if (able.resolvesActions) {
    const data: ActionData = {
      uri,
      version: naming.version(uri),
      range,
      id,
      ...(argument !== undefined && { argument }),
    };
    return [{ ...action, data }];
  }
  const edits = service.actionEdits(uri, toTextRange(range), id, argument);
  return edits === undefined ? [] : [{ ...action, edit: convert.toWorkspaceEdit(edits, able, naming) }];
}

function toTextRange({ start, end }: Range): TextRange {
  return { line: start.line, start: start.character, endLine: end.line, end: end.character };
}

/** Whether an action kind is another or an ancestor of it: `quickfix` holds `quickfix.spelling`. */
function isOrHolds(kind: string, other: string): boolean {
  return kind === '' || kind === other || other.startsWith(`${kind}.`);
}
