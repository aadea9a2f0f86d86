import { TextDocumentContentChangeEvent } from 'vscode-languageserver';

/** How long the hand rests before a line that is being typed counts as written, in milliseconds. */
export const restMilliseconds = 1000;

interface Typed {
  readonly line: number;
  readonly timer: ReturnType<typeof setTimeout>;
  /** Something was not told of the line, so that it has to be told once the hand rests. */
  withheld: boolean;
}

/**
 * Which line of each document is being typed: that of the last edit, until an edit goes to another line or the hand rests. What is
 * half written is no mistake yet, and nothing is said of it meanwhile.
 */
export class TypedLines {
  readonly #typed = new Map<string, Typed>();
  readonly #rested: (uri: string) => void;

  /** `rested` is told of a document whose findings were not all told. */
  constructor(rested: (uri: string) => void) {
    this.#rested = rested;
  }

  /** An edit of a document: typing goes on where all of it is on one line, else it is over. */
  edited(uri: string, changes: readonly TextDocumentContentChangeEvent[]): void {
    const before = this.#typed.get(uri);
    clearTimeout(before?.timer);
    const line = lineOf(changes);
    if (line === undefined) {
      this.#typed.delete(uri);
      return;
    }
    const timer = setTimeout(() => {
      const { withheld } = this.#typed.get(uri) ?? { withheld: false };
      this.#typed.delete(uri);
      if (withheld) this.#rested(uri);
    }, restMilliseconds);
    // A server with nothing else to do may end meanwhile.
    (timer as { unref?: () => void }).unref?.();
    this.#typed.set(uri, { line, timer, withheld: before?.withheld === true });
  }

  closed(uri: string): void {
    clearTimeout(this.#typed.get(uri)?.timer);
    this.#typed.delete(uri);
  }

  /** The line that is being typed. */
  lineBeingTyped(uri: string): number | undefined {
    return this.#typed.get(uri)?.line;
  }

  withheld(uri: string): void {
    const typed = this.#typed.get(uri);
    if (typed !== undefined) typed.withheld = true;
  }
}

/** The one line on which an edit leaves off; undefined where it touches several, or is the whole text. */
function lineOf(changes: readonly TextDocumentContentChangeEvent[]): number | undefined {
  let line: number | undefined;
  for (const change of changes) {
    if (!TextDocumentContentChangeEvent.isIncremental(change)) return undefined;
    const { start, end } = change.range;
    const breaks = change.text.split('\n').length - 1;
    if (breaks > 1 || end.line - start.line > 1) return undefined;
    const left = start.line + breaks;
    if (line !== undefined && line !== left) return undefined;
    line = left;
  }
  return line;
}
