import { splitLines } from '../text/lines.ts';
import { parseLine } from './line.ts';
import { problem } from './problem.ts';
import type {
  Block,
  Context,
  HeaderStatement,
  ParsedLine,
  Section,
  SourceFile,
  SyntaxProblem,
} from './tree.ts';
import { isTopSection, sectionWords } from './vocabulary.ts';

/**
 * Remembers how lines read, by their text and surroundings, and blocks by their lines, so that a keystroke costs the
 * line it touches and everything unmoved in meaning stays the same object. One memo serves one file; what the last
 * text no longer holds is forgotten.
 */
export interface ParseMemo {
  lines: Map<string, ParsedLine>[];
  blocks: Map<ParsedLine, Block[]>;
  readonly shared: SharedLines | undefined;
}

/** Many files may share what lines read as; a file alone needs nothing to share. */
export function createParseMemo(shared?: SharedLines): ParseMemo {
  return { lines: [], blocks: new Map(), shared };
}

/** As many lines as are remembered beyond the files that hold them, twice over. */
const mostShared = 20_000;

/**
 * How lines read, shared by the files of a workspace: `salt 2%` stands in most of them, is read once and kept once. What
 * nobody has asked for lately is forgotten.
 */
export class SharedLines {
  private recent = new Map<string, ParsedLine>();
  private older = new Map<string, ParsedLine>();

  get(slot: number, text: string, read: () => ParsedLine): ParsedLine {
    const key = `${slot} ${text}`;
    let line = this.recent.get(key);
    if (line !== undefined) return line;
    line = this.older.get(key) ?? read();
    if (this.recent.size >= mostShared) {
      this.older = this.recent;
      this.recent = new Map();
    }
    this.recent.set(key, line);
    return line;
  }
}

const contexts: readonly Context[] = ['none', 'unknown', ...sectionWords];
const contextNumber = new Map(contexts.map((context, index) => [context, index]));

/**
 * Reads a whole file, line by line. Never throws; the lines and their endings joined give the text. `isKnown` says
 * which folded names are known without the file and must say the same each time a memo is used.
 */
export function parseFile(
  text: string,
  memo: ParseMemo = createParseMemo(),
  isKnown: (folded: string) => boolean = () => false,
): SourceFile {
  const { texts, endings } = splitLines(text);
  const before = memo.lines;
  const after: Map<string, ParsedLine>[] = [];
  const isFirst = memo.shared !== undefined && before.length === 0;
  const lines: ParsedLine[] = new Array(texts.length);
  let context: Context = 'none';
  let afterBlank = true;
  const read = (line: string, isAfterBlank: boolean): ParsedLine => {
    const slot = contextNumber.get(context)! * 2 + (isAfterBlank ? 1 : 0);
    after[slot] ??= new Map();
    const kept: Map<string, ParsedLine> = after[slot];
    let parsed = kept.get(line);
    if (parsed === undefined) {
      const fresh = (): ParsedLine => parseLine(line, { context, afterBlank: isAfterBlank });
      // Lines of a text that is being typed come and go; only a text read for the first time shares its lines.
      parsed = before[slot]?.get(line) ?? (isFirst ? memo.shared!.get(slot, line, fresh) : fresh());
      kept.set(line, parsed);
    }
    return parsed;
  };
  const said = namesAbove(lines);
  for (let index = 0; index < texts.length; index++) {
    const line = texts[index]!;
    let parsed = read(line, afterBlank);
    // `strong white:` half typed after a blank line is an ingredient that somebody knows, and opens no section.
    if (parsed.statement.kind === 'header' && parsed.statement.section === 'unknown') {
      const folded = parsed.statement.name?.folded ?? '';
      if (isKnown(folded) || said(index).has(folded)) parsed = read(line, false);
    }
    lines[index] = parsed;
    if (parsed.statement.kind === 'header') context = parsed.statement.section;
    afterBlank = parsed.empty && parsed.tokens.every((token) => token.kind === 'blank');
  }
  memo.lines = after;
  return { lines, endings, blocks: cutBlocks(lines, memo) };
}

/** The names that lines and headers above a line say, gathered once and only as far as anyone asks. */
function namesAbove(lines: readonly ParsedLine[]): (index: number) => ReadonlySet<string> {
  const names = new Set<string>();
  let next = 0;
  return (index) => {
    for (; next < index; next++) {
      const { statement } = lines[next]!;
      const isNamed =
        statement.kind === 'ingredient' ||
        statement.kind === 'planned' ||
        (statement.kind === 'header' && statement.section !== 'unknown');
      if (isNamed && statement.name !== undefined) names.add(statement.name.folded);
    }
    return names;
  };
}

/** The text of a parsed file. */
export function textOf(file: SourceFile): string {
  return file.lines
    .map((line, index) => line.tokens.map((token) => token.text).join('') + file.endings[index]!)
    .join('');
}

function cutBlocks(lines: readonly ParsedLine[], memo: ParseMemo): SourceFile['blocks'] {
  const starts: number[] = [];
  lines.forEach((line, index) => {
    const statement = line.statement;
    if (statement.kind === 'header' && (statement.section === 'unknown' || isTopSection(statement.section)))
      starts.push(index);
  });
  if (starts[0] !== 0) starts.unshift(0);
  const known = memo.blocks;
  const next = new Map<ParsedLine, Block[]>();
  const blocks = starts.map((firstLine, index) => {
    const end = starts[index + 1] ?? lines.length;
    const first = lines[firstLine]!;
    const same = known.get(first)?.find((block) => isSame(block.lines, lines, firstLine, end));
    const block = same ?? makeBlock(lines.slice(firstLine, end));
    const list = next.get(first);
    if (list === undefined) next.set(first, [block]);
    else if (!list.includes(block)) list.push(block);
    return { block, firstLine };
  });
  memo.blocks = next;
  return blocks;
}

function isSame(
  held: readonly ParsedLine[],
  lines: readonly ParsedLine[],
  start: number,
  end: number,
): boolean {
  if (held.length !== end - start) return false;
  for (let index = held.length - 1; index >= 0; index--)
    if (held[index] !== lines[start + index]) return false;
  return true;
}

function makeBlock(lines: readonly ParsedLine[]): Block {
  const sections: { header: HeaderStatement; headerLine: number }[] = [];
  lines.forEach((line, index) => {
    if (line.statement.kind === 'header') sections.push({ header: line.statement, headerLine: index });
  });
  const made: Section[] = sections.map((section, index) => ({
    kind: section.header.section,
    header: section.header,
    headerLine: section.headerLine,
    endLine: sections[index + 1]?.headerLine ?? lines.length,
  }));
  const [first, ...others] = made;
  const top =
    first !== undefined && (first.kind === 'unknown' || isTopSection(first.kind)) ? first : undefined;
  const subs = top === undefined ? made : others;
  const problems: (SyntaxProblem & { line: number })[] = [];
  if (top?.kind !== 'formula') {
    for (const sub of subs) {
      const word = sub.header.section;
      const message =
        top === undefined
          ? `A ${word} belongs to a formula. Put “formula NAME:” above it.`
          : `A ${word} belongs to a formula, and the ${top.kind} above has closed it. Move it up to its formula.`;
      problems.push({ ...problem('no-formula', message, sub.header.keyword), line: sub.headerLine });
    }
  }
  return top === undefined ? { lines, subs, problems } : { lines, top, subs, problems };
}
