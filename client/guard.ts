import type { LogOutputChannel } from 'vscode';

/** Runs a handler so that its failure is written to the log and never ends the extension. */
export type Guard = <Arguments extends unknown[]>(
  name: string,
  handler: (...args: Arguments) => unknown,
) => (...args: Arguments) => Promise<void>;

export function guardWith(log: LogOutputChannel): Guard {
  return (name, handler) =>
    async (...args) => {
      try {
        await handler(...args);
      } catch (error) {
        if (!isExpected(error))
          log.error(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      }
    };
}

/** A request that was given up is no failure: the answer would have been out of date. */
function isExpected(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if (error.name === 'Canceled' || error.name === 'AbortError') return true;
  const code = (error as { code?: unknown }).code;
  return typeof code === 'number' && givenUpCodes.has(code);
}

// RequestCancelled, ContentModified and ServerCancelled of the Language Server Protocol 3.17; the last two numbers are
// JSON-RPC's "connection is disposed" and "pending response rejected", which a restart brings about.
const givenUpCodes = new Set([-32800, -32801, -32802, -32099, -32097]);
