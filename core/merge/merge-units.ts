import { writtenLine, writtenSections } from '../compare/written.ts';
import { parseFile } from '../syntax/file.ts';
import type { ParsedLine, Section } from '../syntax/tree.ts';
import { findProperty, programmeWords } from '../syntax/vocabulary.ts';
import { elementAt, firstOf } from '../text/element.ts';

/** A text with its line ending as it stands in its file; the last line of a file may have none. */
export interface TextLine {
  readonly text: string;
  readonly ending: string;
}

/** A line with the comments and blank lines that stand right above it. */
export interface LineUnit {
  /** What tells it from the other lines of its section. */
  readonly id: string;
  /** What the line is about: an ingredient, a property, a step. */
  readonly about: string;
  /** The same without a number that may change, `speed`, `at`. */
  readonly kind: string;
  /** What tells it from others where it is new: what it says, where its section may say that several times. */
  readonly newId: string;
  /** It is done at its place among the others: a line of a programme, a step. */
  readonly isStep?: true;
  /** It says how much of an ingredient goes in. */
  readonly isIngredient?: true;
  /** Whether it is to stand here is for somebody to decide. */
  readonly isDoubted?: true;
  /** Equal where two lines say the same, however they spell it. */
  readonly meaning: string;
  readonly lead: readonly TextLine[];
  readonly line: TextLine;
}

/** A section with its lines, or the lines above the first one, which have no header. */
export interface SectionUnit {
  readonly id: string;
  /** What its header says, which several may say: trials of one day. */
  readonly key: string;
  readonly header?: LineUnit;
  /** The order of all its lines says something: a programme, a process. */
  readonly isOrdered: boolean;
  /** A batch that was mixed and measured, of which there may be another on the same day. */
  readonly isTrial: boolean;
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
    const unit = { id, about: id, kind: id, newId: id, meaning, lead, line: lineAt(index) };
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
    sections.push({ id: 'above', key: '', isOrdered: false, isTrial: false, lines });
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
        const isTrial = section.kind === 'trial';
        sections.push({
          id,
          key,
          isOrdered,
          isTrial,
          lines,
          ...(unit === undefined ? {} : { header: unit }),
        });
        return;
      }
      const line = writtenLine(parsed, index);
      const meaning = meaningOf(parsed, line?.key);
      const about = line === undefined ? '' : line.about || line.key;
      const kind = sectionKind(sections, own);
      const unit = unitAt(parsed, index, about, meaning);
      if (unit === undefined) return;
      const newId = line === undefined ? '' : newIdOf(parsed, line.about, line.key, kind);
      const word = parsed.statement.kind === 'property' ? parsed.statement.property : about;
      lines.push({ ...unit, id: lineIds.of(about), kind: word, newId, ...natureOf(parsed, kind) });
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

/** What sort of line it is, as far as a merge asks. */
function natureOf(
  { statement }: ParsedLine,
  section: Section['kind'] | undefined,
): Pick<LineUnit, 'isStep' | 'isIngredient'> {
  const isStep =
    section === 'mix' ||
    section === 'process' ||
    (section === 'trial' && statement.kind === 'property' && programmeWords.has(statement.property));
  return {
    ...(isStep ? { isStep: true } : {}),
    ...(statement.kind === 'ingredient' ? { isIngredient: true } : {}),
  };
}

/**
 * What may be said several times is told apart by what it says, as far as that can be said once: how warm the water was and how much
 * of it went in, the rise at one time, the stock of one flour.
 */
function newIdOf(
  { statement }: ParsedLine,
  about: string,
  key: string,
  section: Section['kind'] | undefined,
): string {
  if (about === '' || statement.kind === 'note') return key;
  if (statement.kind !== 'property' || section === undefined || section === 'unknown') return about;
  const isTold = about !== statement.property;
  if (isTold || !findProperty(section, statement.property)?.repeatable) return about;
  switch (statement.value?.form) {
    case 'temperature':
    case 'mass':
      return `${about} ${statement.value.form}`;
    case 'rise':
      return `${about} ${statement.value.seconds}`;
    case 'stock':
      return `${about} ${statement.value.name.folded}`;
    default:
      return key;
  }
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
