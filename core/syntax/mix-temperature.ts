import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readValue } from './grammar.ts';
import { problem } from './problem.ts';
import * as t from './tokens.ts';
import type { LineRead } from './tree.ts';

const begins =
  /^(?:ddt|fdt|tdt|(?:(?:desired|final|finished|target|wanted) )?(?:dough )?temp(?:erature)?|target|dough(?: out| off| leaves)?)\s*:?\s*(?:at |of |should be )?/i;

/**
 * `dough temp 24 °C`, `dough out at 23 °C` at the end of a mix: the temperature wanted is the formula’s and stands below its header.
 * Kept as a note until it does.
 */
export function readMixTemperature(line: string, tokens: readonly IToken[]): LineRead | undefined {
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  const found = begins.exec(text);
  if (found === null) return undefined;
  const value = text.slice(found[0].length);
  const { meaning } = t.cutLine(value);
  if (meaning.length === 0 || !('value' in readValue(value, meaning, 'temperature'))) return undefined;
  const meant = `dough temperature ${value}`;
  const said = message('unknown-property.of-formula', { written: text, meant });
  return {
    statement: { kind: 'note', text },
    problems: [{ ...problem('unknown-property', said, span), ofFormula: meant }],
  };
}
