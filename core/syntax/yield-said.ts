import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { countsBreads } from './bread-words.ts';
import { readValue } from './grammar.ts';
import { insertFix, problem, writeFix } from './problem.ts';
import { suggestValue } from './suggest-value.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement } from './tree.ts';

/** How a line begins that says how much a formula makes. Common practice, no source. */
const begins =
  /^(?:makes?|yields?|gives|batch|for|quantity|total(?: dough)?(?: weight)?|dough weight|base(?=\s.*\sflour$))(?=[\s:])\s*:?\s*/i;
/** What may stand without a word before it: `40 x 480 g`, `12 rolls at 60 g`, `2 900 g loaves`. */
const wordless =
  /^\d{1,6}\s*(?:[x×]\s*\d|\s\d+\s*(?:g|kg)\s+(\p{L}+)$|(\p{L}+)\s*(?:,|;|of|at|@|à|each|\d))/iu;
/** How many there are, and in words what of. */
const countOnly =
  /^(?:(?:makes?|yields?|gives|for)\s*:?\s+)?(?:(?:about|around|approx\.?)\s+)?(?:\d+(?:\s*[-–]\s*\d+)?|an?|one|two|three|four|five|six|eight|ten|twelve)\s+(?:\p{L}+\s+){0,3}(\p{L}+)$/iu;
const serves = /^(?:serves|portions|servings)\s*:?\s+\d+(?:\s*[-–]\s*\d+)?$/i;

/**
 * Reads a line of a formula that says in other words how much it makes: as a yield where it says how heavy that is, else as a note. `undefined`
 * where it says something else.
 */
export function readYieldSaid(line: string, tokens: readonly IToken[]): LineRead | undefined {
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  if (isCountAlone(text)) {
    const said = message('wrong-value.count-alone', { written: text, example: 'yield 10 buns of 60 g' });
    const fix = insertFix(message('fix.write', { meant: `note ${text}` }), span.start, 'note ', true);
    return { statement: { kind: 'note', text }, problems: [problem('wrong-value', said, span, fix)] };
  }
  const word = begins.exec(text)?.[0] ?? '';
  const bare = wordless.exec(text);
  const noun = bare?.[1] ?? bare?.[2];
  if (word === '' && (bare === null || (noun !== undefined && !countsBreads(noun)))) return undefined;
  const value = text.slice(word.length);
  const read = yieldValue(value) ?? yieldValue(suggestValue('yield', value));
  if (read === undefined) return undefined;
  const meant = `yield ${read.written}`;
  const said = message('unknown-property.said-otherwise', { section: 'formula', written: text, meant });
  const statement: PropertyStatement = {
    kind: 'property',
    property: 'yield',
    keyword: { start: span.start, end: span.start + word.trimEnd().length },
    valueSpan: { start: span.start + word.length, end: span.end },
    value: read.value,
  };
  return { statement, problems: [problem('unknown-property', said, span, writeFix(span, meant, true))] };
}

function isCountAlone(text: string): boolean {
  const noun = countOnly.exec(text)?.[1];
  return (noun !== undefined && !/^pieces?$/i.test(noun) && countsBreads(noun)) || serves.test(text);
}

/** A value of a yield as the notation has it, and what it says. */
function yieldValue(
  written: string | undefined,
): { readonly written: string; readonly value: NonNullable<PropertyStatement['value']> } | undefined {
  if (written === undefined) return undefined;
  const head = 'yield ';
  const tokens = t.cutLine(head + written).meaning.slice(1);
  const read = tokens.length === 0 ? undefined : readValue(head + written, tokens, 'yield');
  return read !== undefined && 'value' in read ? { written, value: read.value } : undefined;
}
