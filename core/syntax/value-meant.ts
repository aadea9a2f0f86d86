import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readValue } from './grammar.ts';
import { leadingWords, nameOf } from './name-reading.ts';
import { problem, writeFix } from './problem.ts';
import type { Property } from './shared-properties.ts';
import { lackingInPrice, suggestValue } from './suggest-value.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { Value } from './tree.ts';
import { wrongSize } from './value-size.ts';

/** A value of which it is plain what was meant, or what is lacking, with its finding. */
export interface MeantValue {
  readonly problem: SyntaxProblem;
  /** The value as it was meant; absent where it lacks something, or names something that stands elsewhere in the line. */
  readonly value?: Value;
}

/** What the value of a property was meant to be where it does not read as one: `yield 20 loaves at 450 g`. */
export function meantValue(
  line: string,
  rest: readonly IToken[],
  property: Property,
): MeantValue | undefined {
  const span = { start: firstOf(rest).startOffset, end: t.endOf(lastOf(rest)) };
  const text = line.slice(span.start, span.end);
  const meant = suggestValue(property.form, text);
  const read = meant === undefined ? undefined : readBehind(meant, property);
  if (meant !== undefined && read !== undefined && 'value' in read) {
    const said = message('wrong-value.meant', { written: text, example: `${property.word} ${meant}` });
    const found = problem('wrong-value', said, span, writeFix(span, meant, true));
    // `5 m` is on its way to `5 min`, where it would be unread again for a letter.
    const isPlain =
      !/\d\s*m$/.test(text) &&
      (holdNoNames.has(read.value.form) ||
        (read.value.form === 'mixedIn' && read.value.name === undefined)) &&
      wrongSize(read.value, property, span) === undefined;
    return { problem: found, ...(isPlain ? { value: read.value } : {}) };
  }
  const lacking = property.form === 'price' ? lackingInPrice(text) : undefined;
  return lacking === undefined ? undefined : { problem: problem('wrong-value', lacking, span) };
}

/** Values whose parts stand nowhere: what names something would point at the wrong words of the line. */
const holdNoNames: ReadonlySet<Value['form']> = new Set([
  'yieldPieces',
  'yieldMass',
  'yieldFlour',
  'price',
  'fraction',
  'duration',
  'mixSpeed',
  'rise',
]);

/** A figure may read otherwise behind the word of its property: a yield counts in loaves. */
function readBehind(text: string, { word, form }: Property): ReturnType<typeof readValue> {
  const line = `${word} ${text}`;
  return readValue(line, t.cutLine(line).meaning.slice(t.cutLine(word).meaning.length), form);
}

/** The finding for `90% water` in a load, which may be of the flour or of the water. */
export function percentOfWhat(line: string, rest: readonly IToken[]): SyntaxProblem | undefined {
  const [percent, ...behind] = rest;
  const name = nameOf(line, leadingWords(behind));
  if (percent?.tokenType !== t.Percent || name === undefined) return undefined;
  const span = { start: percent.startOffset, end: name.end };
  const written = line.slice(percent.startOffset, t.endOf(percent));
  const [meant, otherMeant] = [`${written} of the ${name.text}`, `${name.text} ${written}`];
  const said = message('wrong-value.percent-of-what', { written, name: name.text, meant, otherMeant });
  return problem('wrong-value', said, span, writeFix(span, meant), writeFix(span, otherMeant));
}
