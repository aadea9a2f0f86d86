import { ownCopy, splitLines } from '../text/lines.ts';
import { message } from '../words/message.ts';
import { parseLine } from './line.ts';
import { problem } from './problem.ts';
import { suggestSection } from './suggest-section.ts';
import { below, type Surroundings } from './surroundings.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import type { Block, Context, HeaderStatement, ParsedLine, Section, SourceFile } from './tree.ts';
import { isTopSection, sectionWords } from './vocabulary.ts';

/**
 * Remembers the last text of one file as it was read, so that a keystroke costs the lines it touches and everything
 * unmoved in meaning stays the same object.
 */
export interface ParseMemo {
  last: LastRead | undefined;
  readonly shared: SharedLines | undefined;
}

interface LastRead extends Pick<SourceFile, 'lines' | 'blocks'> {
  /** Lines that read as they do because of the names above them, or would read otherwise for other names. */
  readonly contextDependent: readonly number[];
}

/** Many files may share what lines read as; a file alone needs nothing to share. */
export function createParseMemo(shared?: SharedLines): ParseMemo {
  return { last: undefined, shared };
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

/** What a line stands in, whatever is right above it. */
type Within = Omit<Surroundings, 'afterBlank'>;
const outside: Within = { context: 'none' };
const isAlike = (one: Within, other: Within): boolean =>
  one.context === other.context && one.byHand === other.byHand && one.stepsBegun === other.stepsBegun;

/** How many lines two texts have in common at their beginnings and, of the others, at their ends. */
interface CommonLines {
  readonly head: number;
  readonly tail: number;
}

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
  const last = memo.last ?? nothing;
  const common = commonLines(last.lines, texts);
  const shift = texts.length - last.lines.length;
  const lines = last.lines.slice(0, common.head);
  const contextDependent = last.contextDependent.filter((index) => index < common.head);
  const lastContextDependent = last.contextDependent.at(-1) ?? -1;
  const share = memo.last === undefined ? memo.shared : undefined;
  const known = heldLines(last, common);
  const said = namesAbove(lines);
  let { within, afterBlank } = surroundings(lines, common.head);
  const read = (line: string, isAfterBlank: boolean): ParsedLine => {
    const slot = slotOf(within, isAfterBlank);
    const kept = mapOf(known, slot);
    let parsed = kept.get(line);
    if (parsed === undefined) {
      // A piece of a text holds all of it, and those of former letters would add up to many times the file.
      const own = memo.last === undefined ? line : ownCopy(line);
      const fresh = (): ParsedLine => parseLine(own, { ...within, afterBlank: isAfterBlank });
      // Lines of a text that is being typed come and go; only a text read for the first time shares its lines.
      parsed = share === undefined ? fresh() : share.get(slot, line, fresh);
      kept.set(line, parsed);
    }
    return parsed;
  };
  const firstOfTail = texts.length - common.tail;
  let before: Within | undefined;
  let end = common.head;
  for (; end < texts.length; end++) {
    if (end >= firstOfTail) {
      before ??= surroundings(last.lines, end - shift).within;
      const isAsBefore = isAlike(within, before) && afterBlank === isBlankAt(last.lines, end - 1 - shift);
      if (isAsBefore && end - shift > lastContextDependent) break;
    }
    const line = texts[end]!;
    let parsed = read(line, afterBlank);
    // `strong white:` half typed after a blank line is an ingredient that somebody knows, and opens no section.
    if (parsed.statement.kind === 'header' && parsed.statement.section === 'unknown') {
      const folded = parsed.statement.name?.folded ?? '';
      // `levain:` below a line that takes it begins its part, but for a word.
      const isPart = suggestSection(folded) !== undefined;
      if (!isPart && (isKnown(folded) || said(end).has(folded))) parsed = read(line, false);
      contextDependent.push(end);
    }
    lines.push(parsed);
    within = withinAfter(parsed, within);
    if (before !== undefined) before = withinAfter(last.lines[end - shift]!, before);
    afterBlank = isBlank(parsed);
  }
  for (let index = end; index < texts.length; index++) lines.push(last.lines[index - shift]!);
  const blocks = cutBlocks(lines, last, { head: common.head, tail: texts.length - end });
  memo.last = { lines, blocks, contextDependent };
  return { lines, endings, blocks };
}

const nothing: LastRead = { lines: [], blocks: [], contextDependent: [] };

function commonLines(some: readonly ParsedLine[], others: readonly string[]): CommonLines {
  const most = Math.min(some.length, others.length);
  let head = 0;
  while (head < most && some[head]?.text === others[head]) head++;
  let tail = 0;
  while (tail < most - head && some[some.length - 1 - tail]?.text === others[others.length - 1 - tail])
    tail++;
  return { head, tail };
}

/** What a line at this place stands in, and whether after a blank line. */
function surroundings(lines: readonly ParsedLine[], index: number): { within: Within; afterBlank: boolean } {
  let within = outside;
  let stepsBegun = false;
  for (let above = index - 1; above >= 0; above--) {
    const { statement } = lines[above]!;
    stepsBegun ||= statement.kind === 'step' && statement.begins === true;
    if (statement.kind !== 'header') continue;
    within = below(statement);
    break;
  }
  if (stepsBegun) within = { ...within, stepsBegun };
  return { within, afterBlank: isBlankAt(lines, index - 1) };
}

function withinAfter({ statement }: ParsedLine, before: Within): Within {
  if (statement.kind === 'step' && statement.begins === true) return { ...before, stepsBegun: true };
  return statement.kind === 'header' ? below(statement) : before;
}

/** The start of a file counts as a blank line. */
function isBlankAt(lines: readonly ParsedLine[], index: number): boolean {
  return index < 0 || isBlank(lines[index]!);
}

function isBlank(line: ParsedLine): boolean {
  return line.empty && line.tokens.every((token) => token.kind === 'blank');
}

/** How lines read by their text, a map for each of the surroundings that they may stand in. */
type KnownLines = Map<string, ParsedLine>[];

function slotOf({ context, byHand, stepsBegun }: Within, isAfterBlank: boolean): number {
  const flags = [isAfterBlank, byHand === true, stepsBegun === true];
  return flags.reduce((slot, flag) => slot * 2 + (flag ? 1 : 0), contextNumber.get(context)!);
}

function mapOf(known: KnownLines, slot: number): Map<string, ParsedLine> {
  known[slot] ??= new Map();
  return known[slot];
}

/** The lines of the last text that may have to be read again: those that changed, and those that names above may sway. */
function heldLines({ lines, contextDependent }: LastRead, { head, tail }: CommonLines): KnownLines {
  const known: KnownLines = [];
  let { within, afterBlank } = surroundings(lines, head);
  const end = Math.max(lines.length - tail, (contextDependent.at(-1) ?? -1) + 1);
  const isContextDependent = new Set(contextDependent);
  for (let index = head; index < end; index++) {
    const line = lines[index]!;
    if (!isContextDependent.has(index)) mapOf(known, slotOf(within, afterBlank)).set(line.text, line);
    within = withinAfter(line, within);
    afterBlank = isBlank(line);
  }
  return known;
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

/** Cuts the lines into blocks; what is as before at both ends of the file keeps its blocks without a look at its lines. */
function cutBlocks(
  lines: readonly ParsedLine[],
  last: LastRead,
  { head, tail }: CommonLines,
): SourceFile['blocks'] {
  const shift = lines.length - last.lines.length;
  const firstOfTail = lines.length - tail;
  const starts = [0];
  for (const { firstLine } of last.blocks) if (firstLine > 0 && firstLine < head) starts.push(firstLine);
  for (let index = Math.max(1, head); index < firstOfTail; index++)
    if (opensBlock(lines[index]!)) starts.push(index);
  for (const { firstLine } of last.blocks) {
    const index = firstLine + shift;
    if (index > 0 && index >= firstOfTail && opensBlock(lines[index]!)) starts.push(index);
  }
  const heldAt = new Map(last.blocks.map(({ block, firstLine }) => [firstLine, block]));
  // Two sections may read alike; each is its own block, so a block is taken over once.
  const taken = new Set<Block>();
  const held = starts.map((firstLine, index) => {
    const end = starts[index + 1] ?? lines.length;
    const isInTail = firstLine >= firstOfTail;
    const block = end <= head || isInTail ? heldAt.get(isInTail ? firstLine - shift : firstLine) : undefined;
    if (block?.lines.length !== end - firstLine) return undefined;
    taken.add(block);
    return block;
  });
  const movable = held.includes(undefined) ? byFirstLine(last.blocks, taken) : nothingMoved;
  return starts.map((firstLine, index) => {
    const stayed = held[index];
    if (stayed !== undefined) return { block: stayed, firstLine };
    const end = starts[index + 1] ?? lines.length;
    const alike = movable.get(lines[firstLine]!) ?? [];
    const at = alike.findLastIndex((block) => isSame(block.lines, lines, firstLine, end));
    const [moved] = at < 0 ? [] : alike.splice(at, 1);
    return { block: moved ?? makeBlock(lines.slice(firstLine, end)), firstLine };
  });
}

const nothingMoved: ReadonlyMap<ParsedLine, Block[]> = new Map();

/** Blocks of the last text that nobody has taken over, by their first line, the first of them last. */
function byFirstLine(
  blocks: SourceFile['blocks'],
  taken: ReadonlySet<Block>,
): ReadonlyMap<ParsedLine, Block[]> {
  const found = new Map<ParsedLine, Block[]>();
  for (const { block } of blocks.toReversed()) {
    const first = block.lines[0];
    if (first === undefined || taken.has(block)) continue;
    const alike = found.get(first);
    if (alike === undefined) found.set(first, [block]);
    else alike.push(block);
  }
  return found;
}

function opensBlock({ statement }: ParsedLine): boolean {
  if (statement.kind !== 'header') return false;
  return (statement.section === 'unknown' && statement.within !== true) || isTopSection(statement.section);
}

function isSame(
  held: readonly ParsedLine[],
  lines: readonly ParsedLine[],
  start: number,
  end: number,
): boolean {
  if (held.length !== end - start || held[0] !== lines[start]) return false;
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
      const { section } = sub.header;
      const said =
        top === undefined
          ? message('no-formula.none-above', { section })
          : message('no-formula.closed', { section, otherSection: top.kind });
      problems.push({ ...problem('no-formula', said, sub.header.keyword), line: sub.headerLine });
    }
  }
  return top === undefined ? { lines, subs, problems } : { lines, top, subs, problems };
}
