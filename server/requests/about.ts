import type { CancellationToken, Connection } from 'vscode-languageserver';
import type { Service } from '../../core/index.ts';
import type { Abilities } from '../convert/abilities.ts';
import type { Naming } from '../convert/convert.ts';
import type { LensCommands } from '../convert/convert-navigation.ts';
import { checkpoint, guardedRequest, type Log } from '../host/guard.ts';
import type { HostRevisions } from '../host/host.ts';
import { canonicalUri } from '../host/uris.ts';
import type { Diagnostics } from '../sync/diagnostics.ts';
import type { OpenDocuments } from '../sync/documents.ts';
import type { Schedule } from '../sync/schedule.ts';
import type { Workspace } from '../sync/workspace.ts';

/** What answers to questions stand on. */
export interface QuestionParts {
  readonly connection: Connection;
  readonly documents: OpenDocuments;
  readonly workspace: Workspace;
  readonly schedule: Schedule;
  readonly log: Log;
  readonly naming: Naming;
  readonly able: Abilities;
  readonly diagnostics: Diagnostics;
  /** Resolves once the files of the workspace are read, and in any case after so many milliseconds. */
  readonly filesRead: (atMostMilliseconds: number) => Promise<unknown>;
  /** The commands of the client that lenses may call. */
  readonly lensCommands: LensCommands;
  /** The client shows images in hovers. */
  readonly showsPictures: boolean;
  /** The revisions of git, where this machine can ask it. */
  readonly revisions?: HostRevisions | undefined;
  /** Called when the client shows that it knows our own requests. */
  readonly asked: () => void;
}

/** Makes handlers of questions about one document. */
export type About = ReturnType<typeof aboutDocuments>;

/**
 * A handler is given the core and the canonical URI, or answers `empty` where the file is not known. `now` answers from
 * the very text the question was asked of; `quiet` waits until the edits behind the question are in.
 */
export function aboutDocuments({
  workspace,
  schedule,
  log,
}: {
  readonly workspace: Workspace;
  readonly schedule: Schedule;
  readonly log: Log;
}) {
  return <P extends { textDocument: { uri: string } }, R>(
    name: string,
    empty: R,
    when: 'now' | 'quiet',
    answer: (service: Service, uri: string, params: P, token: CancellationToken) => R,
  ) =>
    guardedRequest<P, R>(log, name, empty, async (params, token) => {
      if (when === 'quiet') await schedule.quiet();
      checkpoint(token);
      const service = await workspace.service();
      checkpoint(token);
      const uri = canonicalUri(params.textDocument.uri);
      return service.has(uri) ? answer(service, uri, params, token) : empty;
    });
}
