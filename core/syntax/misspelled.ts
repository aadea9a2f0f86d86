import { nearestWord } from '../text/nearest.ts';
import type { Span } from '../text/span.ts';
import { nameOf } from './names.ts';
import { problem, replaceFix } from './problem.ts';
import { findPropertyOf, readProperty, withArticle, wordTypes } from './property.ts';
import { cutLine } from './tokens.ts';
import type { LineRead, SectionKind } from './tree.ts';
import { properties } from './vocabulary.ts';

export interface Misspelled {
  readonly meant: string;
  readonly span: Span;
}

const mostWords = 3;

/**
 * The property that the first words of an ingredient line were most likely meant to be: `yeild 12 pieces of 800 g`. Only
 * where the line would then read without a problem, so that no ingredient with a like name is taken for one.
 */
export function misspelledProperty(text: string, section: SectionKind): Misspelled | undefined {
  const { meaning } = cutLine(text);
  const known = properties[section].flatMap(({ word }) => (word === 'note' ? [] : [word]));
  for (let count = 1; count <= Math.min(mostWords, meaning.length); count++) {
    if (!wordTypes(meaning[count - 1]!)) return undefined;
    const { folded, start, end } = nameOf(text, meaning.slice(0, count))!;
    const meant = nearestWord(folded, known);
    if (meant === undefined) continue;
    const written = cutLine(text.slice(0, start) + meant + text.slice(end));
    const found = findPropertyOf(written.meaning, section);
    if (found?.property.word !== meant) continue;
    const { problems } = readProperty(
      text.slice(0, start) + meant + text.slice(end),
      written.meaning,
      found.property,
      found.length,
    );
    if (problems.length === 0) return { meant, span: { start, end } };
  }
  return undefined;
}

/** An ingredient line that does not read, where it is a property with a slip in it. */
export function unlessMisspelled(text: string, read: LineRead, section: SectionKind): LineRead {
  if (read.problems.length === 0 || read.problems.some(({ unlessKnown }) => unlessKnown !== undefined))
    return read;
  const found = misspelledProperty(text, section);
  if (found === undefined) return read;
  const { meant, span } = found;
  const message = `${withArticle(section)} says nothing called “${text.slice(span.start, span.end)}”. Is it “${meant}”?`;
  return {
    statement: { kind: 'unreadable' },
    problems: [problem('unknown-property', message, span, replaceFix(`Write ${meant}`, span, meant, true))],
  };
}
