import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Keystroke } from './formulas.ts';

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: { readonly uri: string; readonly version?: number; readonly items?: unknown[] };
  readonly result?: unknown;
}

const only = 'untitled:bench';

/**
 * One server process and the time each of its answers took, in milliseconds. Speaks the protocol by hand, so that no
 * library's queue is measured with it: a time is taken when the last byte of a message arrives.
 */
export class Session {
  readonly #process: ChildProcess;
  readonly #began = performance.now();
  readonly #answers = new Map<number, (at: number) => void>();
  readonly #publications = new Map<string, (at: number) => void>();
  readonly #versions = new Map<string, number>();
  #buffer = Buffer.alloc(0);
  #ids = 0;
  /** Publications received so far. */
  publications = 0;

  constructor(program: string, args: readonly string[]) {
    this.#process = spawn(process.execPath, [program, ...args], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.#process.stdout!.on('data', (chunk: Buffer) => this.#receive(chunk));
  }

  /** From the start of the process to its answer to `initialize`. */
  async initialize(): Promise<number> {
    const capabilities = {
      textDocument: { publishDiagnostics: { versionSupport: true }, hover: { contentFormat: ['markdown'] } },
    };
    const at = await this.#request('initialize', { processId: process.pid, rootUri: null, capabilities });
    this.#send({ method: 'initialized', params: {} });
    return at - this.#began;
  }

  /** From the start of the process to the findings of a document just opened. */
  async open(text: string, uri = only): Promise<number> {
    this.#versions.set(uri, 1);
    const published = this.#publication(uri);
    this.#send({
      method: 'textDocument/didOpen',
      params: { textDocument: { uri, languageId: 'doughwright', version: 1, text } },
    });
    return (await published) - this.#began;
  }

  /** One stroke, answered by findings and by a hover on its line; how long each took. */
  async key(stroke: Keystroke, uri = only): Promise<{ findings: number; hover: number }> {
    const from = performance.now();
    this.#change(stroke, uri);
    const published = this.#publication(uri);
    const hovered = this.#hover(stroke, uri);
    return { findings: (await published) - from, hover: (await hovered) - from };
  }

  /** All strokes at once; how long until the findings of the last, and how many publications it took. */
  async burst(strokes: readonly Keystroke[]): Promise<{ milliseconds: number; publications: number }> {
    const before = this.publications;
    const from = performance.now();
    for (const stroke of strokes) this.#change(stroke, only);
    const at = await this.#publication(only);
    return { milliseconds: at - from, publications: this.publications - before };
  }

  /** Resident memory of the process in MB. */
  megabytes(): number {
    const status = readFileSync(`/proc/${this.#process.pid}/status`, 'utf8');
    return Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1] ?? Number.NaN) / 1024;
  }

  /**
   * Milliseconds that the thread of the process which answers has worked so far, whatever else the machine did meanwhile; not what
   * others of its threads compile and tidy.
   */
  worked(): number {
    return Number(readFileSync(`/proc/${this.#process.pid}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
  }

  async stop(): Promise<void> {
    const ended = new Promise((resolve) => this.#process.once('exit', resolve));
    await this.#request('shutdown');
    this.#send({ method: 'exit' });
    await ended;
  }

  #change({ line, start, end, insert }: Keystroke, uri: string): void {
    const version = (this.#versions.get(uri) ?? 0) + 1;
    this.#versions.set(uri, version);
    const range = { start: { line, character: start }, end: { line, character: end } };
    this.#send({
      method: 'textDocument/didChange',
      params: { textDocument: { uri, version }, contentChanges: [{ range, text: insert }] },
    });
  }

  #hover({ line, start }: Keystroke, uri: string): Promise<number> {
    return this.#request('textDocument/hover', {
      textDocument: { uri },
      position: { line, character: start },
    });
  }

  /** When the findings of the newest version of a document arrive. */
  #publication(uri: string): Promise<number> {
    const key = `${uri} ${this.#versions.get(uri)}`;
    return new Promise((resolve) => this.#publications.set(key, resolve));
  }

  #request(method: string, params?: unknown): Promise<number> {
    const id = ++this.#ids;
    this.#send({ id, method, params });
    return new Promise((resolve) => this.#answers.set(id, resolve));
  }

  #send(message: object): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.#process.stdin!.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  #receive(chunk: Buffer): void {
    const at = performance.now();
    this.#buffer = Buffer.concat([this.#buffer, chunk]);
    for (;;) {
      const head = this.#buffer.indexOf('\r\n\r\n');
      if (head < 0) return;
      const length = Number(/content-length: *(\d+)/i.exec(this.#buffer.toString('latin1', 0, head))?.[1]);
      const end = head + 4 + length;
      if (this.#buffer.length < end) return;
      const message = JSON.parse(this.#buffer.toString('utf8', head + 4, end)) as Message;
      this.#buffer = this.#buffer.subarray(end);
      this.#take(message, at);
    }
  }

  #take(message: Message, at: number): void {
    if (message.method === 'textDocument/publishDiagnostics' && message.params !== undefined) {
      this.publications++;
      const key = `${message.params.uri} ${message.params.version}`;
      this.#publications.get(key)?.(at);
      this.#publications.delete(key);
    } else if (message.method && message.id !== undefined) this.#send({ id: message.id, result: null });
    else if (message.id !== undefined) this.#answers.get(message.id)?.(at);
  }
}
