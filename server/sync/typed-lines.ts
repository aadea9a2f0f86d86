import { type Diagnostic, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import type { Findings } from './published-diagnostics.ts';

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
  readonly #isCalm: boolean;
  readonly #rested: (uri: string) => void;

  /** Without `isCalm` no line counts as being typed. `rested` is told of a document whose findings were not all told. */
  constructor(isCalm: boolean, rested: (uri: string) => void) {
    this.#isCalm = isCalm;
    this.#rested = rested;
  }

  /** An edit of a document: typing goes on where all of it is on one line, else it is over. */
  edited(uri: string, changes: readonly TextDocumentContentChangeEvent[]): void {
    if (!this.#isCalm) return;
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

  /** The findings of a document but for those of the line that is being typed; the list without them has an id of its own. */
  without(uri: string, { told, diagnostics }: Findings): { resultId: string; items: () => Diagnostic[] } {
    const typed = this.#typed.get(uri);
    if (typed === undefined || !told.findings.some(({ place }) => place.line === typed.line))
      return { resultId: told.id, items: diagnostics };
    typed.withheld = true;
    return {
      resultId: `${told.id} but line ${typed.line}`,
      items: () => diagnostics().filter(({ range }) => range.start.line !== typed.line),
    };
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
