import { PassThrough } from 'node:stream';
import { onTestFinished } from 'vitest';
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  InitializeRequest,
  type InitializeResult,
  LogMessageNotification,
  MessageType,
  type ProtocolConnection,
  RegistrationRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { connectionOptions, serve } from '../../server/connection.ts';
import { PositionEncoding } from '../../server/convert/convert-encoding.ts';
import { encodedWriter } from '../../server/convert/encoded-writer.ts';
import type { HostFiles } from '../../server/host/host.ts';
import { Schedule } from '../../server/sync/schedule.ts';

/** A server in this very process, behind its real connection, over streams in memory. */
export interface ServerInProcess {
  readonly connection: ProtocolConnection;
  readonly initialized: InitializeResult;
  /** What the server has logged as an error. */
  readonly errors: string[];
  stop(): void;
}

export interface InProcessOptions {
  readonly folders?: readonly string[];
  readonly capabilities: ClientCapabilities;
  readonly settings?: unknown;
  readonly files?: HostFiles;
  /** Sees the connection before it listens. */
  readonly prepare?: (connection: ProtocolConnection) => void;
}

export async function startInProcess(options: InProcessOptions): Promise<ServerInProcess> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const schedule = new Schedule();
  const encoding = new PositionEncoding();
  const server = createConnection(
    new StreamMessageReader(up),
    encodedWriter(new StreamMessageWriter(down), encoding),
    connectionOptions(schedule, encoding),
  );
  serve(server, schedule, encoding, options.files === undefined ? {} : { files: options.files });
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const errors: string[] = [];
  connection.onNotification(LogMessageNotification.type, ({ type, message }) => {
    if (type === MessageType.Error) errors.push(message);
  });
  connection.onRequest(RegistrationRequest.type, () => undefined);
  for (const what of ['inlayHint', 'codeLens', 'semanticTokens', 'diagnostic'])
    connection.onRequest(`workspace/${what}/refresh`, () => null);
  options.prepare?.(connection);
  connection.listen();
  const folders = options.folders ?? [];
  const initialized = await connection.sendRequest(InitializeRequest.type, {
    processId: null,
    rootUri: null,
    workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
    capabilities: options.capabilities,
    initializationOptions: { settings: options.settings },
  });
  await connection.sendNotification('initialized', {});
  const stop = () => {
    connection.dispose();
    server.dispose();
  };
  onTestFinished(stop);
  return { connection, initialized, errors, stop };
}

/** Files in memory, as the server reads them from a disk. */
export class FilesInMemory implements HostFiles {
  readonly texts = new Map<string, string>();

  async *find(folder: string): AsyncIterable<readonly string[]> {
    yield [...this.texts.keys()].filter((uri) => uri.startsWith(`${folder}/`)).sort();
  }

  async findable(_: string, uris: readonly string[]): Promise<ReadonlySet<string>> {
    return new Set(uris);
  }

  async read(uri: string): Promise<string | undefined> {
    return this.texts.get(uri);
  }

  async rootOf(uri: string): Promise<string> {
    return uri.slice(0, uri.lastIndexOf('/'));
  }
}
