import * as nodeModule from 'node:module';

// The machine code of the program is kept from one call to the next, in the folder for passing files, which halves the
// start; where Node cannot, or `NODE_DISABLE_COMPILE_CACHE` is set, nothing is kept and nothing is lost.
nodeModule.enableCompileCache?.();
// An editor waits for its server, which needs nothing of the command line.
if (process.argv.slice(2).join(' ') === 'serve --stdio') require('../host/node.ts');
else require('./main.ts');
