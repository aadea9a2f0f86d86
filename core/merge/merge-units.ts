import { writtenLine, writtenSections } from '../compare/written.ts';
import { parseFile } from '../syntax/file.ts';
import type { ParsedLine, Section } from '../syntax/tree.ts';
import { findProperty } from '../syntax/vocabulary.ts';
import { elementAt, firstOf } from '../text/element.ts';

/** A text with its line ending as it stands in its file; the last line of a file may have none. */
export interface TextLine {
  readonly text: string;
  readonly ending: string;
}

/** A line with the comments and blank lines that stand right above it. */
export interface LineUnit {
  /** What the line is about, and the how-manieth of its section: lines of two states are matched by it. */
  readonly id: string;
  /** Equal where two lines say the same, however they spell it. */
  readonly meaning: string;
  readonly lead: readonly TextLine[];
  readonly line: TextLine;
}

/** A section with its lines, or the lines above the first one, which have no header. */
export interface SectionUnit {
  readonly id: string;
  readonly header?: LineUnit;
  /** The order of its lines says something: a programme, a process. */
  readonly isOrdered: boolean;
  readonly lines: readonly LineUnit[];
}

/** A formula with the sections that belong to it, a flour, a mixer … */
export interface BlockUnit {
  readonly id: string;
  readonly sections: readonly SectionUnit[];
}

/** A file taken apart so that every one of its lines stands in one place of it. */
export interface FileUnits {
  readonly blocks: readonly BlockUnit[];
  /** Comments and blank lines below the last line that says something. */
  readonly tail: readonly TextLine[];
}

/** Takes the text of a file apart. Never throws; what cannot be read is a line all the same. */
export function unitsOf(text: string): FileUnits {
  const source = parseFile(text);
  const lineAt = (index: number): TextLine => ({
    text: elementAt(source.lines, index).text,
    ending: source.endings[index] ?? '',
  });
  let lead: TextLine[] = [];
  const unitAt = (parsed: ParsedLine, index: number, id: string, meaning: string): LineUnit | undefined => {
    if (parsed.empty || parsed.text.trim() === '') {
      // What stands behind the last line ending is no line.
      if (index < source.lines.length - 1 || parsed.text !== '') lead.push(lineAt(index));
      return undefined;
    }
    const unit = { id, meaning, lead, line: lineAt(index) };
    lead = [];
    return unit;
  };
  const blockIds = new Numbered();
  const blocks = source.blocks.map(({ block, firstLine }): BlockUnit => {
    const written = writtenSections(block, firstLine);
    const own = block.top === undefined ? block.subs : [block.top, ...block.subs];
    const headers = new Map<number, { section: Section; key: string }>(
      own.map((section, at) => [section.headerLine, { section, key: elementAt(written, at).key }]),
    );
    const sectionIds = new Numbered();
    const sections: SectionUnit[] = [];
    let lines: LineUnit[] = [];
    let lineIds = new Numbered();
    sections.push({ id: 'above', isOrdered: false, lines });
    block.lines.forEach((parsed, at) => {
      const index = firstLine + at;
      const header = headers.get(at);
      if (header !== undefined) {
        const { section, key } = header;
        lines = [];
        lineIds = new Numbered();
        const id = sectionIds.of(key);
        const unit = unitAt(parsed, index, id, writtenLine(parsed, index)?.key ?? parsed.text.trim());
        const isOrdered = section.kind === 'mix' || section.kind === 'process';
        sections.push({ id, isOrdered, lines, ...(unit === undefined ? {} : { header: unit }) });
        return;
      }
      const line = writtenLine(parsed, index);
      const meaning = meaningOf(parsed, line?.key);
      const about =
        line === undefined ? '' : aboutOf(parsed, line.about, line.key, sectionKind(sections, own));
      const unit = unitAt(parsed, index, about, meaning);
      if (unit !== undefined) lines.push({ ...unit, id: lineIds.of(about) });
    });
    const top = block.top === undefined ? '' : firstOf(written).key;
    return { id: blockIds.of(top), sections: sections.filter(isThere) };
  });
  return { blocks, tail: lead };
}

function isThere({ header, lines }: SectionUnit): boolean {
  return header !== undefined || lines.length > 0;
}

/** The kind of the section that a line is read in now. */
function sectionKind(sections: readonly SectionUnit[], own: readonly Section[]): Section['kind'] | undefined {
  return own[sections.length - 2]?.kind;
}

/** A comment behind a line is of the line: whoever accepts a finding changes it. */
function meaningOf(parsed: ParsedLine, key: string | undefined): string {
  const comment = parsed.tokens.find(({ kind }) => kind === 'comment');
  return `${key || parsed.text.trim()} ${comment?.text.trim() ?? ''}`.trimEnd();
}

/** What may be said several times is told apart by what it says. */
function aboutOf(
  { statement }: ParsedLine,
  about: string,
  key: string,
  section: Section['kind'] | undefined,
): string {
  if (about === '' || statement.kind === 'note') return key;
  if (statement.kind !== 'property' || section === undefined || section === 'unknown') return about;
  const isTold = about !== statement.property;
  return findProperty(section, statement.property)?.repeatable && !isTold ? key : about;
}

/** Makes equal ids different: the second of a name is another one. */
class Numbered {
  private readonly counts = new Map<string, number>();

  of(id: string): string {
    const count = (this.counts.get(id) ?? 0) + 1;
    this.counts.set(id, count);
    return count === 1 ? id : `${id} (${count})`;
  }
}
