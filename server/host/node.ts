import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { createConnection, type MessageReader } from 'vscode-languageserver/node';
import { connectionOptions, serve } from '../connection.ts';
import { PositionEncoding } from '../convert/convert-encoding.ts';
import { encodedWriter } from '../convert/encoded-writer.ts';
import type { RulePageFolders } from '../convert/rule-pages.ts';
import { transportOf } from '../convert/transport.ts';
import { Schedule } from '../sync/schedule.ts';
import { settingsTable } from '../sync/settings-table.ts';
import { disk } from './disk.ts';

// The language server as a process of Node, over the channel its arguments name: `--stdio`, or `--node-ipc` when an
// editor forked it. It ends when the client says `exit`, and when the channel closes.

// What an edit leaves behind is small and short-lived. Left to itself, the heap for it grows: the process is then 12 MB
// larger with a small file open and 25 MB with one of 500 lines, for no gain in time.
setFlagsFromString('--semi-space-growth-factor=1');
// What was held of former letters is given up when it is half as much again as what is still held, where it would else grow to
// several times that: a third less memory with a long file or many open, for some more work beside the answers.
setFlagsFromString('--heap-growing-percent=50');
// The compiler between the quick one and the thorough one costs some 10 MB of code and gains nothing in short bursts.
setFlagsFromString('--no-maglev');

const schedule = new Schedule();
const encoding = new PositionEncoding();
const channel = transportOf(process.argv.slice(2));
if (channel === undefined)
  throw new Error('Name the channel: --stdio, --node-ipc, --socket=PORT or --pipe=NAME.');
const [input, writer] = channel;
const connection = createConnection(
  // A stream for one and a writer for the other is what the library takes, though its types do not say so.
  input as MessageReader,
  encodedWriter(writer, encoding),
  connectionOptions(schedule, encoding),
);
// Standard output is the channel; nothing else may be written there.
for (const name of ['log', 'info', 'debug'] as const) console[name] = console.error;
process.on('unhandledRejection', (reason) => connection.console.error(`Unexpected: ${String(reason)}`));
const docs = join(dirname(realpathSync(process.argv[1] ?? '.')), '..', 'docs');
serve(connection, schedule, encoding, {
  files: disk,
  // What asks git needs the core, which is not loaded before it is wanted.
  revisions: {
    ofFormula: async (asked, pause) =>
      (await import('../history/revision-keeper.ts')).revisionsOf(asked, pause),
  },
  ...(existsSync(join(docs, 'rules')) ? { rulePages: rulePagesBelow(docs) } : {}),
});

/** The English pages lie in `rules`, those of another language in `rules` in the folder of its tag. */
function rulePagesBelow(folder: string): RulePageFolders {
  const setting = settingsTable.find(({ key }) => key === 'language');
  const tags = setting?.type === 'choice' ? setting.choices.filter((one) => one !== 'editor') : [];
  const found = tags
    .map((tag) => [tag, join(folder, ...(tag === 'en' ? [] : [tag]), 'rules')] as const)
    .filter(([, path]) => existsSync(path));
  return Object.fromEntries(found.map(([tag, path]) => [tag, `${pathToFileURL(path)}/`]));
}
