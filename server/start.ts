import * as nodeModule from 'node:module';
import { isMainThread } from 'node:worker_threads';

/**
 * What the extension ships to run on Node: the language server, and for its tasks the command line. Each is a file of its own, and
 * the core that both hold is another. Machine code is kept as it is for the command line, see `launch.ts`.
 */
nodeModule.enableCompileCache?.();
if (process.argv[2] === 'check' || !isMainThread) require('./cli/main.ts');
else require('./host/node.ts');
