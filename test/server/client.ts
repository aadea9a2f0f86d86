import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { setTimeout as after } from 'node:timers/promises';
import {
  type ClientCapabilities,
  ConfigurationRequest,
  createProtocolConnection,
  type Diagnostic,
  DiagnosticRefreshRequest,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  DocumentDiagnosticRequest,
  ExitNotification,
  type FullDocumentDiagnosticReport,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  InlayHintRefreshRequest,
  LogMessageNotification,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type Range,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type UnchangedDocumentDiagnosticReport,
} from 'vscode-languageserver-protocol/node';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';

export interface ClientOptions {
  readonly folders?: readonly string[];
  readonly capabilities?: ClientCapabilities;
  readonly initializationOptions?: unknown;
  /** The language of the editor’s own words. */
  readonly locale?: string;
  /** What the client answers when it is asked for the settings under `doughwright`. */
  readonly settings?: unknown;
}

/** An editor that sends the findings of a document when it is told to, with all that the server makes use of. */
export const pushing: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    inlayHint: { refreshSupport: true },
    workspaceEdit: { documentChanges: true },
  },
  textDocument: {
    synchronization: { didSave: true },
    publishDiagnostics: {
      versionSupport: true,
      relatedInformation: true,
      dataSupport: true,
      tagSupport: { valueSet: [1] },
    },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
    inlayHint: {},
    foldingRange: {},
  },
};

/** The same editor, asking for findings instead of being sent them. */
export const pulling: ClientCapabilities = {
  ...pushing,
  workspace: { ...pushing.workspace, diagnostics: { refreshSupport: true } },
  textDocument: { ...pushing.textDocument, diagnostic: { relatedInformation: true, dataSupport: true } },
};

/** A language client over a real server process, for tests. */
export class Client {
  readonly process: ChildProcess;
  readonly connection: ProtocolConnection;
  readonly published: PublishDiagnosticsParams[] = [];
  readonly registered: string[] = [];
  readonly logged: string[] = [];
  initialized: InitializeResult | undefined;
  settings: unknown;
  refreshes = { findings: 0, hints: 0 };
  stderr = '';
  readonly ended: Promise<number | null>;
  readonly #watchers = new Set<() => void>();
  readonly #versions = new Map<string, number>();

  constructor(settings?: unknown) {
    const program = commandLineProgram();
    if (!existsSync(program)) throw new Error(`${program} is not there; run npm run build first`);
    this.settings = settings;
    this.process = spawn(nodeProgram, [program, 'serve', '--stdio'], { stdio: 'pipe' });
    this.process.stderr!.on('data', (data) => {
      this.stderr += data;
    });
    this.ended = new Promise((resolve) => this.process.once('exit', resolve));
    this.process.stdin!.on('error', () => undefined);
    this.connection = createProtocolConnection(
      new StreamMessageReader(this.process.stdout!),
      new StreamMessageWriter(this.process.stdin!),
    );
    const { connection } = this;
    connection.onError(() => undefined);
    connection.onNotification(PublishDiagnosticsNotification.type, (params) => {
      this.published.push(params);
      for (const watcher of [...this.#watchers]) watcher();
    });
    connection.onNotification(LogMessageNotification.type, ({ message }) => void this.logged.push(message));
    connection.onRequest(ConfigurationRequest.type, ({ items }) => items.map(() => this.settings ?? null));
    connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
      this.registered.push(...registrations.map(({ method }) => method));
    });
    connection.onRequest(DiagnosticRefreshRequest.type, () => {
      this.refreshes.findings++;
    });
    connection.onRequest(InlayHintRefreshRequest.type, () => {
      this.refreshes.hints++;
    });
    connection.listen();
  }

  /** A client that has said `initialized`. */
  static async start(options: ClientOptions = {}): Promise<Client> {
    const client = new Client(options.settings);
    client.initialized = await client.connection.sendRequest(InitializeRequest.type, {
      processId: process.pid,
      rootUri: options.folders?.[0] ?? null,
      workspaceFolders: options.folders?.map((uri, index) => ({ uri, name: `folder ${index}` })) ?? null,
      capabilities: options.capabilities ?? pushing,
      initializationOptions: options.initializationOptions,
      ...(options.locale !== undefined && { locale: options.locale }),
    });
    await client.connection.sendNotification(InitializedNotification.type, {});
    return client;
  }

  open(uri: string, text: string, version = 1): Promise<void> {
    this.#versions.set(uri, version);
    const textDocument = { uri, languageId: 'doughwright', version, text };
    return this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  }

  /** Replaces a range, or the whole text; returns the new version. */
  change(uri: string, text: string, range?: Range): number {
    const version = (this.#versions.get(uri) ?? 1) + 1;
    this.#versions.set(uri, version);
    const contentChanges = [range ? { range, text } : { text }];
    void this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version },
      contentChanges,
    });
    return version;
  }

  close(uri: string): Promise<void> {
    return this.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  /** The first publication for a file, come or to come, that the condition holds for. */
  publication(
    uri: string,
    condition: (told: PublishDiagnosticsParams) => boolean,
  ): Promise<PublishDiagnosticsParams> {
    return new Promise((resolve, reject) => {
      const last = () => this.published.findLast((told) => told.uri === uri);
      const timer = setTimeout(() => {
        this.#watchers.delete(look);
        reject(
          new Error(`No such publication for ${uri}; the last was ${JSON.stringify(last())}\n${this.stderr}`),
        );
      }, 40_000);
      const look = () => {
        const told = last();
        if (!told || !condition(told)) return;
        clearTimeout(timer);
        this.#watchers.delete(look);
        resolve(told);
      };
      this.#watchers.add(look);
      look();
    });
  }

  /** Findings sent for this version of a document. */
  async findings(uri: string, version: number): Promise<Diagnostic[]> {
    return (await this.publication(uri, (told) => told.version === version)).diagnostics;
  }

  pull(
    uri: string,
    previousResultId?: string,
  ): Promise<FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport> {
    return this.connection.sendRequest(DocumentDiagnosticRequest.type, {
      textDocument: { uri },
      ...(previousResultId !== undefined && { previousResultId }),
    });
  }

  /** Takes leave as an editor does; the exit code of the server. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type);
    return this.ended;
  }

  /** Ends the process whatever state it is in; for after a test. */
  async end(): Promise<void> {
    this.connection.dispose();
    // An answer of ours may be on its way out still.
    await after(20);
    this.process.stdin!.end();
    const timer = setTimeout(() => this.process.kill('SIGKILL'), 2000);
    await this.ended;
    clearTimeout(timer);
  }
}
