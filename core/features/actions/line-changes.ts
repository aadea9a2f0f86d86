import type { Block, SourceFile } from '../../syntax/tree.ts';
import type { FileEdit, TextEdit } from '../../text/edits.ts';
import { elementAt, entryOf } from '../../text/element.ts';
import type { LineEdit } from '../../text/span.ts';
import type { VariantBorder } from './action.ts';

/**
 * Changes of whole lines of one file, gathered and then told as the fewest characters that have to change, so that
 * cursors, folds and marks of an editor stay where they are. Lines are counted from `firstLine` of the file.
 */
export class LineChanges {
  /** What each touched line becomes: no line, one, or several. */
  private readonly changed = new Map<number, string[]>();
  private readonly snippets = new Set<number>();
  private readonly uri: string;
  private readonly source: SourceFile;
  private readonly firstLine: number;
  private readonly variant: VariantBorder | undefined;

  constructor(
    to: {
      readonly uri: string;
      readonly source: SourceFile;
      readonly firstLine: number;
      readonly variant?: VariantBorder;
    },
    firstLine = to.firstLine,
  ) {
    this.uri = to.uri;
    this.variant = to.variant;
    this.source = to.source;
    this.firstLine = firstLine;
  }

  /** The line as it was before the changes. */
  text(line: number): string {
    return this.source.lines[this.firstLine + line]?.text ?? '';
  }

  replace(line: number, ...texts: readonly string[]): this {
    this.changed.set(this.firstLine + line, [...texts]);
    return this;
  }

  /** Replaces stretches of one line that has not been changed yet. */
  edit(line: number, ...edits: readonly LineEdit[]): this {
    const sorted = [...edits].sort((one, other) => other.start - one.start);
    const text = sorted.reduce(
      (now, { start, end, insert }) => now.slice(0, start) + insert + now.slice(end),
      this.text(line),
    );
    return this.replace(line, text);
  }

  /** Makes an edit in the first line of what a line has become; its columns are those from before, ahead of which nothing changed. */
  editBelow({ line, start, end, insert }: LineEdit & { readonly line: number }): this {
    const [first = '', ...others] = this.textsOf(line);
    const text = first.slice(0, start) + insert + first.slice(end);
    return this.replace(line - this.firstLine, ...text.split('\n'), ...others);
  }

  remove(line: number): this {
    return this.replace(line);
  }

  addBelow(line: number, ...texts: readonly string[]): this {
    this.textsOf(line).push(...texts);
    return this;
  }

  addAbove(line: number, ...texts: readonly string[]): this {
    this.textsOf(line).unshift(...texts);
    return this;
  }

  /** The lines that take the place of a line hold a snippet: `${1:words}` stands for words to be typed over. */
  asSnippet(line: number): this {
    this.snippets.add(this.firstLine + line);
    return this;
  }

  edits(): readonly FileEdit[] | undefined {
    // A snippet is typed over where it stands, and what a variant says stands elsewhere.
    if (this.variant !== undefined)
      return this.snippets.size > 0
        ? undefined
        : this.variant.edits(this.changed, this.textOfLines(this.source.lines.length));
    const ending = this.source.endings.find((one) => one !== '') ?? '\n';
    const lines = [...this.changed.keys()].sort((one, other) => one - other);
    const edits: TextEdit[] = [];
    for (let at = 0; at < lines.length; at++) {
      const line = elementAt(lines, at);
      const texts = entryOf(this.changed, line);
      if (texts.length > 0) {
        edits.push(...this.editOf(line, texts, ending));
        continue;
      }
      let last = line;
      while (lines[at + 1] === last + 1 && entryOf(this.changed, last + 1).length === 0) {
        last++;
        at++;
      }
      edits.push(this.removal(line, last));
    }
    return edits.length === 0 ? undefined : [{ uri: this.uri, edits }];
  }

  /** The text that so many lines make after the changes. */
  textOfLines(count: number): string {
    const lines = this.variant?.order ?? Array.from({ length: count }, (_, line) => line);
    return lines
      .flatMap((line) => (line < 0 ? '' : (this.changed.get(this.firstLine + line) ?? [this.text(line)])))
      .join('\n');
  }

  private textsOf(line: number): string[] {
    const at = this.firstLine + line;
    const texts = this.changed.get(at) ?? [elementAt(this.source.lines, at).text];
    this.changed.set(at, texts);
    return texts;
  }

  private editOf(line: number, texts: readonly string[], ending: string): TextEdit[] {
    const before = elementAt(this.source.lines, line).text;
    const after = texts.join(ending);
    if (before === after) return [];
    const most = Math.min(before.length, after.length);
    let start = 0;
    while (start < most && before[start] === after[start]) start++;
    let same = 0;
    // What stands in a snippet must not lose its closing brace to the words behind it.
    const isSnippet = this.snippets.has(line);
    while (
      !isSnippet &&
      same < most - start &&
      before[before.length - 1 - same] === after[after.length - 1 - same]
    )
      same++;
    // Neither half of a pair of surrogates is replaced without the other, and no line break is cut in two.
    if (start > 0 && isPairCut(before, start, after)) start--;
    if (same > 0 && isPairCut(before, before.length - same, after, after.length - same)) same--;
    const insert = after.slice(start, after.length - same);
    return [
      {
        line,
        start,
        end: before.length - same,
        insert,
        ...(isSnippet ? { snippet: true as const } : {}),
      },
    ];
  }

  private removal(line: number, last: number): TextEdit {
    const { lines } = this.source;
    if (last + 1 < lines.length) return { line, start: 0, endLine: last + 1, end: 0, insert: '' };
    const end = elementAt(lines, last).text.length;
    if (line === 0) return { line, start: 0, endLine: last, end, insert: '' };
    // The last lines go with the break before them; a line of before that changes too is told apart, in front of it.
    return { line: line - 1, start: elementAt(lines, line - 1).text.length, endLine: last, end, insert: '' };
  }
}

/** The edits that write other lines in the place of all that a block says; the blank lines behind it stay. */
export function blockReplaced(
  to: {
    readonly uri: string;
    readonly source: SourceFile;
    readonly firstLine: number;
    readonly block: Block;
  },
  texts: readonly string[],
): readonly FileEdit[] | undefined {
  const changes = new LineChanges(to);
  let last = to.block.lines.length - 1;
  while (last > 0 && elementAt(to.block.lines, last).text.trim() === '') last--;
  for (let line = 1; line <= last; line++) changes.remove(line);
  return changes.replace(0, ...texts).edits();
}

function isPairCut(before: string, at: number, after: string, atAfter = at): boolean {
  return isLow(before.charCodeAt(at)) || isLow(after.charCodeAt(atAfter));
}

const isLow = (code: number): boolean => code >= 0xdc00 && code <= 0xdfff;
