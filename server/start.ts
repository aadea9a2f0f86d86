import { runCommand, runServer } from './host/run-program.ts';
import { isThread } from './host/thread.ts';

/**
 * What the extension ships to run on Node: the language server, and for its tasks the command line. Each is a file of its own, and
 * the core that both hold is another.
 */
if (process.argv[2] === 'check' || isThread()) runCommand(require.resolve('./cli/main.ts'), require);
else runServer(require.resolve('./host/node.ts'), require);
