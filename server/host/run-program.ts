import { setFlagsFromString } from 'node:v8';
import { KeptCode } from './kept-code.ts';
import { isThread } from './thread.ts';

/** Runs the language server, whose program stands at a path; `own` is the `require` of who asks. */
export function runServer(path: string, own: NodeJS.Require): void {
  // Machine code is kept for the flags that it was made under.
  const { saveMemory } = require('./frugal-heap.ts') as typeof import('./frugal-heap.ts');
  const kept = new KeptCode('serve', own);
  const { whenAtRest } = kept.run(path) as typeof import('./node.ts');
  // Whoever ends a server may give it no time to keep anything.
  whenAtRest(() => {
    kept.keep();
    saveMemory();
  });
}

/** Runs the command line, whose program stands at a path, in the process and in each thread of it. */
export function runCommand(path: string, own: NodeJS.Require): void {
  const command = isThread() ? 'check' : (process.argv[2] ?? '');
  if (passesOver.has(command)) setFlagsFromString('--semi-space-growth-factor=1');
  const kept = new KeptCode(/^[a-z-]+$/.test(command) ? command : 'help', own);
  // A command that came to nothing, as one that there is not, has used little of the program.
  if (!isThread()) process.once('exit', (code) => code < 2 && kept.keep());
  kept.run(path);
}

/**
 * Commands that work one file out and give it up at the next: left to itself, the heap for what is young grows by a hundred megabytes and
 * more. One file would take a tenth longer.
 */
const passesOver: ReadonlySet<string> = new Set(['totals', 'export', 'compare', 'rename']);
