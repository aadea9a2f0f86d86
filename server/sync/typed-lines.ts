import { type Diagnostic, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import type { Findings } from './published-diagnostics.ts';

/** How long the hand rests before a line that is being typed counts as written, in milliseconds. */
export const restMilliseconds = 1000;

/** From where the hand was to where it is; one line but for a moment after a line break. */
interface Lines {
  readonly first: number;
  readonly last: number;
}

interface Typed {
  readonly lines: Lines;
  readonly timer: ReturnType<typeof setTimeout>;
  /** Something was not told of the line, so that it has to be told once the hand rests. */
  withheld: boolean;
}

/**
 * Which line of each document is being typed: that of the last edit, until an edit goes to another line or the hand rests. What is
 * half written is no mistake yet, and nothing is said of it meanwhile; nor of the line before one that is only begun, for the flour to
 * come may be what its flours lack.
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
    const lines = linesOf(changes);
    if (lines === undefined) {
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
    this.#typed.set(uri, { lines, timer, withheld: before?.withheld === true });
  }

  closed(uri: string): void {
    clearTimeout(this.#typed.get(uri)?.timer);
    this.#typed.delete(uri);
  }

  /** The findings of a document but for those of the line that is being typed; the list without them has an id of its own. */
  without(uri: string, { told, diagnostics }: Findings): { resultId: string; items: () => Diagnostic[] } {
    const typed = this.#typed.get(uri);
    if (typed === undefined || !told.findings.some(({ place }) => isIn(typed.lines, place.line)))
      return { resultId: told.id, items: diagnostics };
    typed.withheld = true;
    const { first, last } = typed.lines;
    return {
      resultId: `${told.id} but lines ${first} to ${last}`,
      items: () => diagnostics().filter(({ range }) => !isIn(typed.lines, range.start.line)),
    };
  }
}

function isIn({ first, last }: Lines, line: number): boolean {
  return line >= first && line <= last;
}

/**
 * The one line on which an edit leaves off, with the one before where the edit is no more than a line break; undefined where it touches
 * several, or is the whole text.
 */
function linesOf(changes: readonly TextDocumentContentChangeEvent[]): Lines | undefined {
  let lines: Lines | undefined;
  for (const change of changes) {
    if (!TextDocumentContentChangeEvent.isIncremental(change)) return undefined;
    const { start, end } = change.range;
    const breaks = change.text.split('\n').length - 1;
    if (breaks > 1 || end.line - start.line > 1) return undefined;
    const last = start.line + breaks;
    if (lines !== undefined && lines.last !== last) return undefined;
    lines = { first: change.text.trim() === '' ? start.line : last, last };
  }
  return lines;
}
