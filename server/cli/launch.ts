import { runCommand, runServer } from '../host/run-program.ts';

// An editor waits for its server, which needs nothing of the command line.
if (process.argv.slice(2).join(' ') === 'serve --stdio')
  runServer(require.resolve('../host/node.ts'), require);
else runCommand(require.resolve('./main.ts'), require);
