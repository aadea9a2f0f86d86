import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { createConnection } from 'vscode-languageserver/node';
import { connectionOptions, serve } from './connection.ts';
import { disk } from './disk.ts';
import { Schedule } from './schedule.ts';

// The language server as a process of Node, over the channel its arguments name: `--stdio`, or `--node-ipc` when an
// editor forked it. It ends when the client says `exit`, and when the channel closes.

// What an edit leaves behind is small and short-lived. Left to itself, the heap for it grows: the process is then 12 MB
// larger with a small file open and 25 MB with one of 500 lines, for no gain in time.
setFlagsFromString('--semi-space-growth-factor=1');
// The compiler between the quick one and the thorough one costs some 10 MB of code and gains nothing in short bursts.
setFlagsFromString('--no-maglev');

const schedule = new Schedule();
const connection = createConnection(connectionOptions(schedule));
process.on('unhandledRejection', (reason) => connection.console.error(`Unexpected: ${String(reason)}`));
const pages = join(dirname(realpathSync(process.argv[1] ?? '.')), '..', 'docs', 'rules');
serve(connection, schedule, {
  files: disk,
  ...(existsSync(pages) ? { rulePages: `${pathToFileURL(pages)}/` } : {}),
});
