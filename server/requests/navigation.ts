import {
  type CancellationToken,
  type CodeLens,
  type Location,
  type LocationLink,
  LSPErrorCodes,
  type Position,
  type PrepareRenameResult,
  ResponseError,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { DefinitionAnswer, Service, Snapshot, Steps } from '../../core/index.ts';
import { toRange, toWorkspaceEdit } from '../convert/convert.ts';
import * as convert from '../convert/convert-navigation.ts';
import { checkpoint, guardedRequest } from '../host/guard.ts';
import { canonicalUri } from '../host/uris.ts';
import { inSteps, modified } from '../sync/long-work.ts';
import { said } from '../sync/said.ts';
import type { About, QuestionParts } from './about.ts';

/** Questions about the whole workspace wait so long for its files to be read. */
const filesWaitMilliseconds = 10_000;

interface Asked {
  readonly textDocument: { readonly uri: string };
  readonly position: Position;
}

/** Answers where names lead and who uses what. Whatever looks at the whole workspace does so a step at a time. */
export function answerNavigation(parts: QuestionParts, about: About): void {
  const throughout = longWork(parts);
  answerDestinations(parts, throughout, about);
  answerRename(parts, throughout);
  answerCallHierarchy(parts, throughout, about);
  answerLenses(parts, throughout, about);
  const { connection, log, naming, diagnostics, filesRead } = parts;

  connection.onWorkspaceSymbol(
    guardedRequest(log, 'Symbols of the workspace', [], async ({ query }: { query: string }, token) => {
      await filesRead(filesWaitMilliseconds);
      checkpoint(token);
      const found = await inSteps(parts, token, undefined, (service) => service.symbolsMatching(query));
      return found.map((one) => convert.toSymbolInformation(one, naming));
    }),
  );

  connection.onDocumentLinks(
    about('Links', [], 'quiet', (service, uri) => {
      const { rulePages } = diagnostics;
      return rulePages === undefined
        ? []
        : service.ruleLinks(uri).map((link) => convert.toDocumentLink(link, rulePages));
    }),
  );

  connection.onSelectionRanges(
    about('Selection', null, 'now', (service, uri, { positions }) =>
      positions.map((position) =>
        convert.toSelectionRange(service.selections(uri, position.line, position.character), position),
      ),
    ),
  );
}

type LongWork = ReturnType<typeof longWork>;

/** Makes handlers of long work about a position: it waits for the files, and its answer belongs to one snapshot. */
function longWork(parts: QuestionParts) {
  const { documents, log, filesRead } = parts;
  return function throughout<P extends Asked, S, R>(
    name: string,
    empty: R,
    begin: (service: Service, uri: string, params: P) => Steps<S>,
    answer: (value: S, asked: Snapshot) => R,
  ) {
    return guardedRequest<P, R>(log, name, empty, async (params, token) => {
      const uri = canonicalUri(params.textDocument.uri);
      const of = { uri, version: documents.get(uri)?.version };
      await filesRead(filesWaitMilliseconds);
      checkpoint(token);
      let asked: Snapshot | undefined;
      const found = await inSteps(parts, token, of, (service) => {
        asked = service.snapshot;
        return begin(service, uri, params);
      });
      return answer(found, asked!);
    });
  };
}

function answerDestinations(parts: QuestionParts, throughout: LongWork, about: About): void {
  const { connection, naming, able } = parts;
  const destinations = (of: 'definition' | 'typeDefinition', links: boolean) =>
    throughout<Asked, DefinitionAnswer | undefined, Location[] | LocationLink[] | null>(
      'Definition',
      null,
      (service, uri, { position }) => atOnce(service[of](uri, position.line, position.character)),
      (answer) => (answer === undefined ? null : convert.toDestinations(answer, links, naming)),
    );
  connection.onDefinition(destinations('definition', able.definitionLinks) as DefinitionHandler);
  connection.onTypeDefinition(destinations('typeDefinition', able.typeDefinitionLinks) as DefinitionHandler);

  connection.onReferences(
    throughout(
      'References',
      [],
      (service, uri, { position, context }: Asked & { context: { includeDeclaration: boolean } }) =>
        service.references(uri, position.line, position.character, context.includeDeclaration),
      (found) => found.map((one) => convert.toLocation(one, naming)),
    ),
  );

  connection.onDocumentHighlight(
    about('Highlights', [], 'now', (service, uri, { position }) =>
      service.highlights(uri, position.line, position.character).map(convert.toHighlight),
    ),
  );
}

function answerRename(parts: QuestionParts, throughout: LongWork): void {
  const { connection, workspace, naming, able } = parts;
  connection.onPrepareRename(
    throughout(
      'Rename',
      null,
      (service, uri, { position }: Asked) =>
        atOnce(service.renameStart(uri, position.line, position.character)),
      (start): PrepareRenameResult | null => {
        if (start === undefined) return null;
        if ('refused' in start) throw refusal(start.refused);
        return { range: toRange(start.place), placeholder: start.text };
      },
    ),
  );
  connection.onRenameRequest(
    throughout(
      'Rename',
      null,
      (service, uri, { position, newName }: Asked & { newName: string }) =>
        service.rename(uri, position.line, position.character, newName),
      (answer, asked): WorkspaceEdit | null => {
        if ('refused' in answer) throw refusal(answer.refused);
        // An edit of a text that is another by now would hit other words.
        const { texts } = workspace.now().snapshot;
        if (answer.some(({ uri }) => texts.get(uri) !== asked.texts.get(uri))) throw modified(workspace);
        return toWorkspaceEdit(answer, able, naming);
      },
    ),
  );
}

function answerCallHierarchy(parts: QuestionParts, throughout: LongWork, about: About): void {
  const { connection, naming } = parts;
  connection.languages.callHierarchy.onPrepare(
    throughout(
      'What goes into what',
      null,
      (service, uri, { position }: Asked) => atOnce(service.goesItem(uri, position.line, position.character)),
      (item) => (item === undefined ? null : [convert.toCallItem(item, naming)]),
    ),
  );
  interface AskedItem {
    readonly item: { readonly uri: string; readonly selectionRange: { readonly start: Position } };
  }
  const ofItem = ({ item }: AskedItem): Asked => ({
    textDocument: { uri: item.uri },
    position: item.selectionRange.start,
  });
  const users = throughout(
    'Who uses it',
    [],
    (service, uri, { position }) => service.users(uri, position.line, position.character),
    (links) =>
      links.map(({ item, places }) => ({
        from: convert.toCallItem(item, naming),
        fromRanges: places.map(toRange),
      })),
  );
  connection.languages.callHierarchy.onIncomingCalls((params, token) => users(ofItem(params), token));
  const goesInto = about('What goes into it', [], 'now', (service, uri, { position }: Asked) =>
    service.goesInto(uri, position.line, position.character).map(({ item, places }) => ({
      to: convert.toCallItem(item, naming),
      fromRanges: places.map(toRange),
    })),
  );
  connection.languages.callHierarchy.onOutgoingCalls((params, token) => goesInto(ofItem(params), token));
}

function answerLenses(parts: QuestionParts, throughout: LongWork, about: About): void {
  const { connection, workspace, naming, lensCommands } = parts;
  connection.onCodeLens(
    about('Lenses', [], 'quiet', (service, uri) =>
      workspace.settings.lenses
        ? service
            .lenses(uri)
            // What nobody can open is no news.
            .filter(({ kind }) => kind !== 'plan' || lensCommands.openPlan)
            .map((lens) => convert.toCodeLens(lens, uri, lensCommands, naming))
        : [],
    ),
  );
  connection.onCodeLensResolve((lens: CodeLens, token: CancellationToken) => {
    const { uri } = (lens.data ?? {}) as { uri?: string };
    if (lens.command !== undefined || uri === undefined) return lens;
    const asked = { textDocument: { uri }, position: lens.range.start };
    return throughout(
      'Lens',
      lens,
      (service, of, { position }) => service.uses(of, position.line, position.character),
      (uses) => convert.withUses(lens, uses, lensCommands, naming, workspace.say(said('session.not-used'))),
    )(asked, token);
  });
}

type DefinitionHandler = Parameters<QuestionParts['connection']['onDefinition']>[0];

// biome-ignore lint/correctness/useYield: short work is one step
function* atOnce<T>(value: T): Steps<T> {
  return value;
}

function refusal(sentence: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, sentence);
}
