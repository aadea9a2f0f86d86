/** What a thread of a check is started with, in the place of a command. */
export const threadWord = 'thread-of-a-check';

/** Whether this is a thread of a check. Nothing is loaded to find out for those who are not called so. */
export function isThread(): boolean {
  if (process.argv[2] !== threadWord) return false;
  return !(require('node:worker_threads') as typeof import('node:worker_threads')).isMainThread;
}
