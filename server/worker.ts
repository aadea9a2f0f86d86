import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { connectionOptions, serve } from './connection.ts';
import { Schedule } from './schedule.ts';

/**
 * The language server as a web worker, for editors in a browser. There is no file system: the open documents are all
 * there is.
 */
const port = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
const schedule = new Schedule();
serve(
  createConnection(
    new BrowserMessageReader(port),
    new BrowserMessageWriter(port),
    connectionOptions(schedule),
  ),
  schedule,
  {},
);
