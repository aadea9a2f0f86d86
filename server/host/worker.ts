import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { connectionOptions, serve } from '../connection.ts';
import { PositionEncoding } from '../convert/convert-encoding.ts';
import { encodedWriter } from '../convert/encoded-writer.ts';
import { Schedule } from '../sync/schedule.ts';

/**
 * The language server as a web worker, for editors in a browser. There is no file system: the open documents are all
 * there is.
 */
const port = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
const schedule = new Schedule();
const encoding = new PositionEncoding();
serve(
  createConnection(
    new BrowserMessageReader(port),
    encodedWriter(new BrowserMessageWriter(port), encoding),
    connectionOptions(schedule, encoding),
  ),
  schedule,
  encoding,
  {},
);
