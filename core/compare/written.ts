import type { Block, ParsedLine, Quantity, Section, Token } from '../syntax/tree.ts';
import { foldName } from '../text/names.ts';

/** A section as it is written, line by line, without blanks and comments. */
export interface WrittenSection {
  /** `formula`, `preferment`, `mix` … */
  readonly kind: string;
  readonly name?: string;
  /** What tells it from other sections of its formula: its kind and name, the part it is about, the day of a trial. */
  readonly key: string;
  /** The header in words, without its colon. */
  readonly title: string;
  readonly line: number;
  readonly lines: readonly WrittenLine[];
}

export interface WrittenLine {
  /** Equal where two lines say the same, however they spell it: `1 kg` and `1000 g`. */
  readonly key: string;
  /** The line as written, blanks folded. */
  readonly text: string;
  /** What the line is about: the name of an ingredient, a property, a speed, a step. Lines are matched by it. */
  readonly about: string;
  /** The same in words. */
  readonly name: string;
  /** What follows the name. */
  readonly value: string;
  readonly kind: 'property' | 'ingredient' | 'planned' | 'step' | 'note' | 'other';
  readonly line: number;
  /** The temperature that an ingredient line gives after its amount. */
  readonly celsius?: number;
}

/** The sections of a block as written; lines count from `firstLine`. */
export function writtenSections(block: Block, firstLine: number): WrittenSection[] {
  const sections = block.top === undefined ? block.subs : [block.top, ...block.subs];
  return sections.map((section) => writtenSection(block, section, firstLine));
}

/** What is written, one key a line, the headers among them: equal where nothing but blanks and comments differ. */
export function writtenKeys(sections: readonly WrittenSection[]): string[] {
  return sections.flatMap(({ title, lines }) => [`${title}:`, ...lines.map(({ key }) => key)]);
}

function writtenSection(block: Block, section: Section, firstLine: number): WrittenSection {
  const { header } = section;
  const lines: WrittenLine[] = [];
  for (let line = section.headerLine + 1; line < section.endLine; line++) {
    const written = writtenLine(block.lines[line]!, firstLine + line);
    if (written !== undefined) lines.push(written);
  }
  const about = header.part ?? header.name;
  const own = header.section === 'mix' || header.section === 'process' ? header.part : about;
  const day = header.section === 'trial' ? `${header.date ?? ''} ${foldName(header.words ?? '')}` : '';
  return {
    kind: header.section,
    key: `${header.section} ${own?.folded ?? day}`.trim(),
    title: meaningOf(block.lines[section.headerLine]!)
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s*:$/, '')
      .replace(/ ,/g, ','),
    line: firstLine + section.headerLine,
    lines,
    ...(header.name === undefined ? {} : { name: header.name.text }),
  };
}

/** A line as written; `undefined` for one that holds nothing but blanks and comment. */
export function writtenLine(parsed: ParsedLine, line: number): WrittenLine | undefined {
  const tokens = meaningOf(parsed);
  if (tokens.length === 0) return undefined;
  const { statement } = parsed;
  const key = tokens.map(keyOf).join(' ');
  const text = spaced(tokens);
  const about = aboutOf(parsed);
  const value = spaced(tokens.filter((token) => token.start >= about.end));
  return {
    key,
    text,
    about: about.key,
    name: about.words,
    value: value.replace(/^(for|,) ?/, ''),
    line,
    kind:
      statement.kind === 'property' ||
      statement.kind === 'ingredient' ||
      statement.kind === 'planned' ||
      statement.kind === 'step' ||
      statement.kind === 'note'
        ? statement.kind
        : 'other',
    ...(statement.kind === 'ingredient' && statement.celsius !== undefined
      ? { celsius: statement.celsius }
      : {}),
  };
}

/** Properties that are told apart by the number or time that follows the word. */
const numbered: ReadonlySet<string> = new Set(['speed', 'at']);
/** Properties of which one section may have several that differ in the name that follows. */
const named: ReadonlySet<string> = new Set(['draws']);

function aboutOf(parsed: ParsedLine): { key: string; words: string; end: number } {
  const { statement, text } = parsed;
  switch (statement.kind) {
    case 'ingredient':
    case 'planned':
      return { key: statement.name.folded, words: statement.name.text, end: statement.name.end };
    case 'property': {
      const { property, keyword, value } = statement;
      if (numbered.has(property)) {
        const number = parsed.tokens.find((token) => token.start >= keyword.end && token.kind === 'quantity');
        if (number !== undefined)
          return {
            key: `${property} ${keyOf(number)}`,
            words: `${property} ${number.text}`,
            end: number.end,
          };
      }
      const of = named.has(property) && value?.form === 'draws' ? ` ${value.name.folded}` : '';
      return { key: property + of, words: property, end: keyword.end };
    }
    case 'step': {
      const { words, known } = statement;
      return { key: known ?? words.folded, words: words.text, end: words.end };
    }
    case 'note': {
      const start = text.search(/\S/);
      return { key: 'note', words: 'note', end: start + 4 };
    }
    default:
      return { key: '', words: '', end: 0 };
  }
}

function meaningOf(parsed: ParsedLine): readonly Token[] {
  return parsed.tokens.filter(
    (token) => token.kind !== 'blank' && token.kind !== 'comment' && token.text.trim() !== '',
  );
}

function spaced(tokens: readonly Token[]): string {
  return tokens
    .map(({ text }) => text.trim())
    .join(' ')
    .replace(/ ([,)])/g, '$1')
    .replace(/\( /g, '(');
}

function keyOf(token: Token): string {
  const { quantity } = token;
  return quantity === undefined ? foldName(token.text.trim()) : quantityKey(quantity);
}

/** Equal for `1 kg` and `1000 g`. */
function quantityKey(quantity: Quantity): string {
  const { start: _start, end: _end, number: _number, unit: _unit, ...rest } = quantity;
  const meaning = rest.kind === 'temperature' ? { kind: rest.kind, celsius: rest.celsius } : rest;
  return JSON.stringify(meaning, (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toPrecision(12)) : value,
  );
}
