import { expect } from 'vitest';
import {
  type Diagnostic,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  type Position,
  type Range,
} from 'vscode-languageserver-protocol/node';
import { splitLines } from '../../core/text/lines.ts';
import { Client, pulling } from '../server/client.ts';

export const encodings = ['utf-8', 'utf-16', 'utf-32'] as const;
export type Encoding = (typeof encodings)[number];

/** How long a stretch of a line is in the units of an encoding, by what Node and the language know of them. */
const lengthIn: Readonly<Record<Encoding, (text: string) => number>> = {
  // A lone surrogate has no bytes of its own; it is sent as the replacement character, which has three.
  'utf-8': (text) => Buffer.byteLength(text, 'utf8'),
  'utf-16': ({ length }) => length,
  'utf-32': (text) => [...text].length,
};

export class EncodedEditor {
  readonly encoding: Encoding;
  readonly #client: Client;
  #version = 1;

  private constructor(encoding: Encoding, client: Client) {
    this.encoding = encoding;
    this.#client = client;
  }

  static async start(encoding: Encoding): Promise<EncodedEditor> {
    const capabilities = { ...pulling, general: { positionEncodings: [encoding] } };
    const client = await Client.start({ capabilities });
    expect(client.initialized?.capabilities.positionEncoding).toBe(encoding);
    return new EncodedEditor(encoding, client);
  }

  stop(): Promise<unknown> {
    return this.#client.stop();
  }

  /** Types one text after the other into a file, each as the stretch in which it differs from the one before, and then asks. */
  async typed(uri: string, texts: readonly string[]): Promise<unknown> {
    const [first = '', ...others] = texts;
    await this.#client.open(uri, first, ++this.#version);
    let before = first;
    for (const text of others) {
      this.#client.change(uri, ...this.#change(before, text));
      before = text;
    }
    return this.#answers(uri);
  }

  /** The findings of a text that is opened as it is, and what formatting makes of it. */
  async opened(uri: string, text: string): Promise<unknown> {
    await this.#client.open(uri, text, ++this.#version);
    return this.#answers(uri);
  }

  async #answers(uri: string): Promise<unknown> {
    const { connection } = this.#client;
    const textDocument = { uri };
    const report = await connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument });
    const items: readonly Diagnostic[] = report.kind === 'full' ? report.items : [];
    const edits = await connection.sendRequest(DocumentFormattingRequest.type, {
      textDocument,
      options: { tabSize: 2, insertSpaces: true },
    });
    await this.#client.close(uri);
    return { found: items.map(({ code, range, message }) => ({ code, range, message })), edits };
  }

  #change(before: string, after: string): [string, Range] {
    let start = 0;
    while (start < before.length && before[start] === after[start]) start++;
    let end = 0;
    const most = Math.min(before.length, after.length) - start;
    while (end < most && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
    // No editor parts a letter of two units, or the two letters of a line break.
    const parts = (text: string, at: number): boolean => /[\uDC00-\uDFFF\n]/.test(text[at] ?? '') && at > 0;
    while (start > 0 && (parts(before, start) || parts(after, start))) start--;
    while (end > 0 && (parts(before, before.length - end) || parts(after, after.length - end))) end--;
    return [
      after.slice(start, after.length - end),
      { start: this.#place(before, start), end: this.#place(before, before.length - end) },
    ];
  }

  #place(text: string, at: number): Position {
    const { texts } = splitLines(text.slice(0, at));
    return { line: texts.length - 1, character: lengthIn[this.encoding](texts.at(-1) ?? '') };
  }

  /** A place that the core tells, as the encoding counts it. */
  range(line: string, { line: row, start, end }: { line: number; start: number; end: number }): Range {
    const at = (column: number): Position => ({
      line: row,
      character: lengthIn[this.encoding](line.slice(0, column)),
    });
    return { start: at(start), end: at(end) };
  }
}
