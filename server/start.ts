import { isMainThread } from 'node:worker_threads';

/**
 * What the extension ships to run on Node: the language server, and for its tasks the command line, in one bundle, for both
 * hold the same core. Nothing of the one is evaluated where the other is wanted. The threads of a check start here too.
 */
if (process.argv[2] === 'check' || !isMainThread) void import('./cli/main.ts');
else void import('./host/node.ts');
