import { guardedWork, type Log } from '../host/guard.ts';

/** How long the first findings wait for the files of the workspace, in milliseconds. */
const firstWait = 100;

/** How long those of files that are not open do, and those that a file yet to be read may settle. */
export const longestRead = 30_000;

/** Resolves when the first findings may be told; `allRead` is called when those may that wait for every file. */
export function mayTellFindings(
  filesRead: (atMostMilliseconds: number) => Promise<void>,
  log: Log,
  allRead: () => void,
): Promise<void> {
  guardedWork(log, 'Findings held back', async () => {
    await filesRead(longestRead);
    allRead();
  });
  return filesRead(firstWait);
}
