import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';

export interface Log {
  error(message: string): void;
  warn(message: string): void;
  info(message: string): void;
  /** How long something took, for a client that traces. */
  took?(name: string, milliseconds: number): void;
}

/**
 * Makes a handler that never fails: what goes wrong in it is logged, and the client gets the empty answer. A request
 * the client has taken back is answered as cancelled.
 */
export function guardedRequest<P, R>(
  log: Log,
  name: string,
  empty: R | (() => R),
  answer: (params: P, token: CancellationToken) => Promise<R>,
): (params: P, token: CancellationToken) => Promise<R> {
  return async (params, token) => {
    const from = performance.now();
    try {
      checkpoint(token);
      return await answer(params, token);
    } catch (error) {
      if (error instanceof ResponseError) throw error;
      log.error(`${name}: ${describe(error)}`);
      return typeof empty === 'function' ? (empty as () => R)() : empty;
    } finally {
      log.took?.(name, performance.now() - from);
    }
  };
}

/** Does a piece of work nobody waits for; what goes wrong in it is logged. */
export function guardedWork(log: Log, name: string, work: () => Promise<unknown>): void {
  const from = performance.now();
  work()
    .catch((error: unknown) => log.error(`${name}: ${describe(error)}`))
    .finally(() => log.took?.(name, performance.now() - from));
}

/** Ends a guarded request when the client has taken it back; to be called between the steps of long work. */
export function checkpoint(token: CancellationToken): void {
  if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
}

function describe(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
