import type { IToken } from 'chevrotain';
import { elementAt, lastOf } from '../text/element.ts';
import { nearestWord } from '../text/nearest.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { readValue } from './grammar.ts';
import { nameOf, wordTypes } from './name-reading.ts';
import { problem, writeFix } from './problem.ts';
import { findPropertyOf, readProperty } from './property.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { LineRead, SectionKind } from './tree.ts';
import { findProperty, properties } from './vocabulary.ts';

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
  const { meaning } = t.cutLine(text);
  const known = properties[section].flatMap(({ word }) => (word === 'note' ? [] : [word]));
  for (let count = 1; count <= Math.min(mostWords, meaning.length); count++) {
    if (!wordTypes(elementAt(meaning, count - 1))) return undefined;
    const { folded, start, end } = nameOf(text, meaning.slice(0, count))!;
    const meant = slipOf(folded, known);
    if (meant === undefined) continue;
    const written = t.cutLine(text.slice(0, start) + meant + text.slice(end));
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

/** The property that words are with a slip in them. Where it has as many words each is near its own: `Base Loaf` is no slip of `bake loss`. */
function slipOf(written: string, known: readonly string[]): string | undefined {
  const meant = nearestWord(written, known);
  const [words, meantWords] = [written.split(' '), meant?.split(' ') ?? []];
  if (words.length !== meantWords.length) return meant;
  return words.every((word, at) => nearestWord(word, meantWords.slice(at, at + 1)) !== undefined)
    ? meant
    : undefined;
}

/** An ingredient line that does not read, where it is a property with a slip in it. */
export function unlessMisspelled(text: string, read: LineRead, section: SectionKind): LineRead {
  if (read.problems.length === 0 || read.problems.some(({ unlessKnown }) => unlessKnown !== undefined))
    return read;
  const found = misspelledProperty(text, section);
  if (found === undefined) return read;
  return { statement: { kind: 'unreadable' }, problems: [slipProblem(text, section, found)] };
}

function slipProblem(text: string, section: SectionKind, { meant, span }: Misspelled): SyntaxProblem {
  const said = message('unknown-property.meant', {
    section,
    written: text.slice(span.start, span.end),
    meant,
  });
  return problem('unknown-property', said, span, writeFix(span, meant, true));
}

/**
 * `yeild 24 pieces of 880 g` among ingredients: words that are a property but for a slip or for their end, before what
 * reads as its value. Short words are let be: they may be names.
 */
export function readSlippedProperty(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
): LineRead | undefined {
  let words = 0;
  while (
    words < tokens.length &&
    wordTypes(elementAt(tokens, words)) &&
    elementAt(tokens, words).tokenType !== t.From
  )
    words++;
  const name = nameOf(line, tokens.slice(0, words));
  if (name === undefined) return undefined;
  if (words === tokens.length) return wordyProperty(line, tokens, section);
  if (name.folded.length < 5) return undefined;
  const known = properties[section].map((one) => one.word).filter((word) => word.length >= 5);
  const meant = known.find((word) => word.startsWith(name.folded)) ?? slipOf(name.folded, known);
  const property = meant === undefined ? undefined : findProperty(section, meant);
  if (property === undefined || !('value' in readValue(line, tokens.slice(words) as IToken[], property.form)))
    return undefined;
  const read = readProperty(line, tokens, property, words);
  const span = { start: name.start, end: name.end };
  return { ...read, problems: [slipProblem(line, section, { meant: property.word, span })] };
}

/** `ferment overnight`: a property whose value is said in words, where no amount could make an ingredient of the line. */
function wordyProperty(line: string, tokens: readonly IToken[], section: SectionKind): LineRead | undefined {
  const last = lastOf(tokens).tokenType;
  if (last === t.Balance || last === t.Remaining || last === t.Colon) return undefined;
  for (let length = Math.min(tokens.length - 1, 3); length > 0; length--) {
    const property = findProperty(section, nameOf(line, tokens.slice(0, length))!.folded);
    if (property !== undefined && property.word.length >= 5)
      return readProperty(line, tokens, property, length);
  }
  return undefined;
}
