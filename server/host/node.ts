import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
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
let atRest = (): void => undefined;
serve(connection, schedule, encoding, {
  files: disk,
  atRest: () => atRest(),
  // What asks git needs the core, which is not loaded before it is wanted.
  revisions: {
    ofFormula: async (asked, pause) =>
      (await import('../history/revision-keeper.ts')).revisionsOf(asked, pause),
    ofLastCommit: async (uri) => (await import('../history/revision-keeper.ts')).textsOfLastCommit(uri),
  },
  ...(existsSync(join(docs, 'rules')) ? { rulePages: rulePagesBelow(docs) } : {}),
});

/** Does something once the first document has been answered for and nobody waits; to be called before that. */
export function whenAtRest(run: () => void): void {
  atRest = run;
}

/** The English pages lie in `rules`, those of another language in `rules` in the folder of its tag. */
function rulePagesBelow(folder: string): RulePageFolders {
  const setting = settingsTable.find(({ key }) => key === 'language');
  const tags = setting?.type === 'choice' ? setting.choices.filter((one) => one !== 'editor') : [];
  const found = tags
    .map((tag) => [tag, join(folder, ...(tag === 'en' ? [] : [tag]), 'rules')] as const)
    .filter(([, path]) => existsSync(path));
  return Object.fromEntries(found.map(([tag, path]) => [tag, `${pathToFileURL(path)}/`]));
}
