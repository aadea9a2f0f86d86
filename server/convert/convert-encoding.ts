import type {
  Message,
  Position,
  PositionEncodingKind,
  Range,
  TextDocumentContentChangeEvent,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { convertedTokens } from './convert-encoded-tokens.ts';
import { type ColumnUnit, fromUtf16, toUtf16 } from './encoded-columns.ts';

type LineOf = (uri: string, line: number) => string | undefined;

/** Texts as they stand now, by the URI as the client spells it; `undefined` where one is not known. */
export interface EncodingTexts {
  /** An open document. */
  document(uri: string): TextDocument | undefined;
  /** The lines of a file that is not open. */
  lines(uri: string): readonly string[] | undefined;
}

const units: ReadonlySet<unknown> = new Set(['utf-8', 'utf-16', 'utf-32'] satisfies ColumnUnit[]);

interface Asked {
  readonly method: string;
  readonly uri: string | undefined;
}

type Data = Record<string, unknown>;
type Column = (line: string, column: number) => number;

/**
 * The one place where positions are counted otherwise than the core and the documents count them, which is in UTF-16. It
 * stands where messages come in and go out, so that nothing behind it knows of any other count. A client that counts in
 * UTF-16 passes by it untouched. Our own requests say lines and whole edits; where they say columns those are UTF-16.
 */
export class PositionEncoding {
  #texts: EncodingTexts | undefined;
  #unit: ColumnUnit = 'utf-16';
  /** What the requests that are not answered yet are about, so that their answers can be read. */
  readonly #asked = new Map<number | string, Asked>();

  /** Takes the first encoding of the client's that is known here; UTF-16 where there is none. */
  choose(offered: unknown, texts: EncodingTexts): void {
    this.#texts = texts;
    const kinds: readonly unknown[] = Array.isArray(offered) ? offered : [];
    this.#unit = kinds.find((kind): kind is ColumnUnit => units.has(kind)) ?? 'utf-16';
  }

  get kind(): PositionEncodingKind {
    return this.#unit;
  }

  /** A message of the client with its positions in UTF-16. To be called when its turn has come, not before. */
  incoming(message: Message): Message {
    if (this.#unit === 'utf-16') return message;
    const { id, method, params } = message as { id?: number | string; method?: string; params?: unknown };
    if (method === undefined) return message;
    const uri = uriOf(params);
    if (id !== undefined) this.#asked.set(id, { method, uri });
    if (!isData(params)) return message;
    if (method === 'textDocument/didChange')
      return { ...message, params: this.#changed(params, uri) } as Message;
    const unit = this.#unit;
    const column: Column = (line, at) => toUtf16(line, at, unit);
    return { ...message, params: this.#converted(params, uri, this.#remembering(), column) } as Message;
  }

  /** A message to the client with its positions as it counts them. To be called when what it tells has just been worked out. */
  outgoing(message: Message): Message {
    if (this.#unit === 'utf-16') return message;
    const { id, method, params, result } = message as Data & { id?: number | string };
    const unit = this.#unit;
    const column: Column = (line, at) => fromUtf16(line, at, unit);
    const lines = this.#remembering();
    if (method !== undefined) {
      return { ...message, params: this.#converted(params, uriOf(params), lines, column) } as Message;
    }
    const asked = id === undefined ? undefined : this.#asked.get(id);
    if (asked === undefined) return message;
    this.#asked.delete(id!);
    if (result === undefined) return message;
    const { uri } = asked;
    if (asked.method.startsWith('textDocument/semanticTokens') && uri !== undefined && isData(result)) {
      return { ...message, result: convertedTokens(result, (line) => lines(uri, line), unit) } as Message;
    }
    return { ...message, result: this.#converted(result, uri, lines, column) } as Message;
  }

  // Each change of a notification is of the text that the one before it has left.
  #changed(params: Data, uri: string | undefined): Data {
    const { contentChanges } = params;
    const open = uri === undefined ? undefined : this.#texts?.document(uri);
    if (open === undefined || !Array.isArray(contentChanges)) return params;
    const unit = this.#unit;
    const document = contentChanges.length > 1 ? TextDocument.create('', '', 0, open.getText()) : open;
    const converted = contentChanges.map((change: unknown, index) => {
      if (!isData(change) || !isRange(change.range)) {
        if (document !== open && isData(change) && typeof change.text === 'string') {
          TextDocument.update(document, [{ text: change.text }], index + 1);
        }
        return change;
      }
      const place = ({ line, character }: Position): Position => ({
        line,
        character: toUtf16(lineOfDocument(document, line) ?? '', character, unit),
      });
      const range: Range = { start: place(change.range.start), end: place(change.range.end) };
      const made = { text: change.text, range } as TextDocumentContentChangeEvent;
      if (index < contentChanges.length - 1) TextDocument.update(document, [made], index + 1);
      return made;
    });
    return { ...params, contentChanges: converted };
  }

  /** The lines of files, each file cut into lines once for a whole message. */
  #remembering(): LineOf {
    const cut = new Map<string, readonly string[]>();
    return (uri, line) => {
      const document = this.#texts?.document(uri);
      if (document !== undefined) return lineOfDocument(document, line);
      let lines = cut.get(uri);
      if (lines === undefined) {
        lines = this.#texts?.lines(uri) ?? [];
        cut.set(uri, lines);
      }
      return lines[line];
    };
  }

  /** Everything in `value` that is a position, converted by the line of the file that it lies in. */
  #converted(value: unknown, uri: string | undefined, lines: LineOf, column: Column): unknown {
    const convert = (one: unknown, about: string | undefined): unknown => {
      if (Array.isArray(one)) return one.map((each) => convert(each, about));
      if (!isData(one)) return one;
      if (isPosition(one)) {
        const line = about === undefined ? undefined : lines(about, one.line);
        return line === undefined ? one : { ...one, character: column(line, one.character) };
      }
      const own = ownUriOf(one) ?? about;
      return Object.fromEntries(
        Object.entries(one).map(([key, part]) => {
          // What is ours comes back as it went out.
          if (key === 'data') return [key, part];
          if (key === 'changes' && isData(part)) {
            return [
              key,
              Object.fromEntries(Object.entries(part).map(([of, edits]) => [of, convert(edits, of)])),
            ];
          }
          if (key === 'fromRanges' && isData(one.from))
            return [key, convert(part, ownUriOf(one.from) ?? own)];
          if (key.startsWith('target') && typeof one.targetUri === 'string')
            return [key, convert(part, one.targetUri)];
          return [key, convert(part, own)];
        }),
      );
    };
    return convert(value, uri);
  }
}

function lineOfDocument(document: TextDocument, line: number): string | undefined {
  if (!Number.isInteger(line) || line < 0 || line >= document.lineCount) return undefined;
  const range = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
  return document.getText(range).replace(/(?:\r\n|\r|\n)$/, '');
}

/** The file a message is about. */
function uriOf(params: unknown): string | undefined {
  if (!isData(params)) return undefined;
  const within = [params, params.item, params.data].filter(isData).map(ownUriOf);
  return within.find((uri) => uri !== undefined);
}

function ownUriOf({ uri, textDocument }: Data): string | undefined {
  if (isData(textDocument) && typeof textDocument.uri === 'string') return textDocument.uri;
  return typeof uri === 'string' ? uri : undefined;
}

function isData(value: unknown): value is Data {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isPosition(value: unknown): value is Position & Data {
  return isData(value) && typeof value.line === 'number' && typeof value.character === 'number';
}

function isRange(value: unknown): value is Range & Data {
  return isData(value) && isPosition(value.start) && isPosition(value.end);
}
