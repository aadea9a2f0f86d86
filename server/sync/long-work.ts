import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Service, Steps } from '../../core/index.ts';
import { checkpoint } from '../host/guard.ts';
import type { OpenDocuments } from './documents.ts';
import { said } from './said.ts';
import type { Schedule } from './schedule.ts';
import type { Workspace } from './workspace.ts';

/** How long a piece of an answer may hold the event loop at a time, in milliseconds. */
const slice = 8;

/**
 * Works an answer out a step at a time, so that edits and other questions get their turn, and ends when the client takes
 * the question back. It is an answer of the workspace as it was when asked; when the document asked about has changed
 * meanwhile, the position asked about is no more, and the client is told so.
 */
export async function inSteps<T>(
  { workspace, schedule, documents }: { workspace: Workspace; schedule: Schedule; documents: OpenDocuments },
  token: CancellationToken,
  of: { readonly uri: string; readonly version: number | undefined } | undefined,
  begin: (service: Service) => Steps<T>,
): Promise<T> {
  const steps = begin(await workspace.service());
  while (of === undefined || documents.get(of.uri)?.version === of.version) {
    const until = performance.now() + slice;
    do {
      const { done, value } = steps.next();
      if (done) return value;
    } while (performance.now() < until);
    await schedule.quiet();
    checkpoint(token);
  }
  throw modified(workspace);
}

/** What a client is told that asked of a text which is another by now. */
export function modified(workspace: Workspace): ResponseError<void> {
  const why = workspace.say(said('session.changed-meanwhile'));
  return new ResponseError(LSPErrorCodes.ContentModified, why);
}
