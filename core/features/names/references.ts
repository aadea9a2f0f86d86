import type { Place } from '../../text/span.ts';
import type { Steps } from '../../text/steps.ts';
import { finish } from '../../text/steps.ts';
import { type NameBook, nameAt, placeOfUse, usesOf } from './name-book.ts';

/** A name somewhere in the workspace. */
export interface Reference {
  readonly uri: string;
  readonly place: Place;
}

/** The name again in the same file. */
export interface Highlight {
  readonly place: Place;
  /** The line defines it or says how much of it there is; the others only speak of it. */
  readonly writes: boolean;
}

/** Wherever the workspace speaks of what the name at a column means. */
export function* referencesAt(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
  withDefinitions: boolean,
): Steps<Reference[]> {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return [];
  const uses = yield* usesOf(book, target);
  const found = uses
    .filter(({ mention }) => withDefinitions || mention.use !== 'definition')
    .map((use) => ({ uri: use.at.uri, place: placeOfUse(book, use) }));
  if (!withDefinitions || target.meaning.is !== 'several') return found.sort(byPlace);
  const definitions = target.meaning.definitions.map(({ uri: of, firstLine, name }) => ({
    uri: of,
    place: { line: firstLine, start: name.start, end: name.end },
  }));
  return [...definitions, ...found].sort(byPlace);
}

function byPlace(one: Reference, other: Reference): number {
  if (one.uri !== other.uri) return one.uri < other.uri ? -1 : 1;
  return one.place.line - other.place.line || one.place.start - other.place.start;
}

/** Where the file names what the name at a column means, and which of those places say how much of it there is. */
export function highlightsAt(book: NameBook, uri: string, line: number, column: number): Highlight[] {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return [];
  return finish(usesOf(book, target, uri)).map((use) => ({
    place: placeOfUse(book, use),
    writes: ['definition', 'line', 'planned'].includes(use.mention.use),
  }));
}
