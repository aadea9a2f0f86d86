import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readValue } from './grammar.ts';
import { problem, writeFix } from './problem.ts';
import * as t from './tokens.ts';
import type { LineRead } from './tree.ts';

const begins =
  /^(?:ddt|fdt|tdt|(?:(?:desired|final|finished|target|wanted) )?(?:dough )?temp(?:erature)?|target|dough(?: out| off| leaves)?)\s*:?\s*(?:at |of |should be )?/i;

/** What says of itself that it is the dough’s, among steps that have temperatures of their own. */
const beginsInProcess =
  /^(?:ddt|fdt|tdt|(?:(?:desired|final|finished|target|wanted) )?dough temp(?:erature)?\.?)\s*:?\s*(?:at |of |should be )?/i;

/**
 * `dough temp 24 °C`, `dough out at 23 °C` at the end of a mix: the temperature wanted is the formula’s and stands below its header.
 * Kept as a note until it does.
 */
export function readMixTemperature(line: string, tokens: readonly IToken[]): LineRead | undefined {
  return readOfFormula(line, tokens, begins);
}

/** `dough temperature 24 °C` among the steps, where it would be a step of its own and the water drawn for none. */
export function readDoughTemperature(line: string, tokens: readonly IToken[]): LineRead | undefined {
  return readOfFormula(line, tokens, beginsInProcess);
}

function readOfFormula(line: string, tokens: readonly IToken[], pattern: RegExp): LineRead | undefined {
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  const found = pattern.exec(text);
  if (found === null) return undefined;
  const bare = /^\d{2}$/.exec(text.slice(found[0].length));
  const value =
    bare === null ? text.slice(found[0].length) : `${bare[0]} °${Number(bare[0]) > 45 ? 'F' : 'C'}`;
  const { meaning } = t.cutLine(value);
  if (meaning.length === 0 || !('value' in readValue(value, meaning, 'temperature'))) return undefined;
  const meant = `dough temperature ${value}`;
  const said = message('unknown-property.of-formula', { written: text, meant });
  return {
    statement: { kind: 'note', text },
    problems: [{ ...problem('unknown-property', said, span), ofFormula: meant }],
  };
}

/** `preheat 1 h at 250 °C`: time and heat of the oven, which the dough does not spend. Without a time it takes none and says nothing of it. */
export function readPreheating(line: string, tokens: readonly IToken[]): LineRead | undefined {
  if (!/^pre-?heat(?:ing)?$/i.test(firstOf(tokens).image)) return undefined;
  if (!tokens.some((token) => t.quantityOf(token)?.kind === 'duration')) return undefined;
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  const meant = `note ${text}`;
  const said = message('unknown-property.mix-said', { meant });
  const fix = writeFix(span, meant, true);
  return { statement: { kind: 'note', text }, problems: [problem('unknown-property', said, span, fix)] };
}

/**
 * `base temperature 56 °C`, the sum of room, flour and water by which French bakers warm their water: the notation works the water out of the
 * mixing instead. Kept as a note. Common practice, no source.
 */
export function readBaseTemperature(line: string, tokens: readonly IToken[]): LineRead | undefined {
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  if (
    !/^(?:base temp(?:erature)?|temp[eé]rature de base|TB)[\s:=]+\d[\d.,]*\s*(?:°?\s*[CF]?|deg\w*)$/u.test(
      text,
    )
  )
    return undefined;
  const meant = `note ${text}`;
  const said = message('unknown-property.base-temperature', {
    written: text,
    example: 'dough temperature 25 °C',
    meant,
  });
  const fix = writeFix(span, meant, true);
  return { statement: { kind: 'note', text }, problems: [problem('unknown-property', said, span, fix)] };
}
