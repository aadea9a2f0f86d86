import type { Meaning, PlacedBlock } from '../../model/meaning.ts';
import { partsOf } from '../../model/mentions.ts';
import type { Section } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Place } from '../../text/span.ts';
import { linesStoodFor, type NameBook, type NameTarget, nameAt, placeOfUse } from './name-book.ts';

/** A section, or one line, somewhere in the workspace: the name in it, and all of it. */
export interface Destination {
  readonly uri: string;
  readonly name: Place;
  readonly firstLine: number;
  readonly lastLine: number;
  readonly lastColumn: number;
}

export interface DefinitionAnswer {
  /** The name that was asked about. */
  readonly origin: Place;
  readonly destinations: readonly Destination[];
}

/**
 * Where the name at a column is settled: a part, flour, ingredient, mixer or formula at the header of its section; what
 * a mix loads, a part draws or a trial measured at the line of the formula that says how much. What is known from the
 * catalogue alone is settled nowhere.
 */
export function definitionAt(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
): DefinitionAnswer | undefined {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return undefined;
  const lines = linesStoodFor(book, target).map((use): Destination => {
    const name = placeOfUse(book, use);
    const { length } = elementAt(use.at.block.lines, use.mention.line).text;
    return { uri: use.at.uri, name, firstLine: name.line, lastLine: name.line, lastColumn: length };
  });
  return {
    origin: placeOfUse(book, target),
    destinations: lines.length > 0 ? lines : sectionsOf(book, inItsPlace(target)),
  };
}

/** A part of the base that a variant has its own of is settled there, unless it is that one which asks. */
function inItsPlace({ at, mention, meaning }: NameTarget): Meaning {
  if (meaning.is !== 'part' || mention.use === 'definition') return meaning;
  const own = partsOf(at.block).get(mention.name.folded);
  return own === undefined ? meaning : { is: 'part', at, headerLine: own.headerLine };
}

/** The sections that say what the name at a column is made of. */
export function typeDefinitionAt(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
): DefinitionAnswer | undefined {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return undefined;
  return { origin: placeOfUse(book, target), destinations: sectionsOf(book, target.meaning) };
}

function sectionsOf(book: NameBook, meaning: Meaning): Destination[] {
  if (meaning.is === 'part') return [destinationOf(meaning.at, meaning.headerLine)];
  const definitions =
    meaning.is === 'definition' ? [meaning.definition] : meaning.is === 'several' ? meaning.definitions : [];
  return definitions.map((definition) => {
    const now = book
      .source(definition.uri)
      ?.blocks.find(
        ({ block, firstLine }) => block === definition.block && firstLine === definition.firstLine,
      );
    return destinationOf({ uri: definition.uri, ...(now ?? definition) }, 0);
  });
}

/** The section of a block whose header stands at a line, counted in the block. */
export function destinationOf({ uri, block, firstLine }: PlacedBlock, headerLine: number): Destination {
  const section = block.top?.headerLine === headerLine ? block.top : sectionFrom(block.subs, headerLine);
  const isWhole = section === block.top;
  let last = (isWhole || section === undefined ? block.lines.length : section.endLine) - 1;
  while (last > headerLine && elementAt(block.lines, last).empty) last--;
  const named = section?.header.name ?? section?.header.keyword ?? { start: 0, end: 0 };
  return {
    uri,
    name: { line: firstLine + headerLine, start: named.start, end: named.end },
    firstLine: firstLine + headerLine,
    lastLine: firstLine + last,
    lastColumn: elementAt(block.lines, last).text.length,
  };
}

function sectionFrom(sections: readonly Section[], headerLine: number): Section | undefined {
  return sections.find((section) => section.headerLine === headerLine);
}
