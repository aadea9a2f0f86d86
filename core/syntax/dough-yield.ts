import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readAmount } from './grammar.ts';
import { nameBetween } from './name-reading.ts';
import { statementOf } from './named-line.ts';
import { problem, writeFix } from './problem.ts';
import { readNumber } from './quantity.ts';
import * as t from './tokens.ts';
import type { LineRead } from './tree.ts';

/** What German bakers call dough on a hundred of flour: `TA 168` is 68 % of water. Common practice, no source. */
const written =
  /^(?:(.*?\S)[\s,:(]+)?(?:(?:to|for|at|until)\s+)?(?:TA|dough yield|Teigausbeute)[\s:=]*(\d{3}(?:[.,]\d+)?)\)?$/iu;
const liquid = /^(?:\p{L}+ )?(?:water|milk|liquid|wasser)$/iu;
/** The least and the most that a dough comes to on a hundred of flour. */
const [least, most] = [120, 300];

/**
 * Reads `water to TA 168`, a hydration as German bakers write it, with the fix that writes it as one. `TA 168` on a line of its own says
 * the same and weighs nothing. `undefined` where the line says no dough yield.
 */
export function readDoughYield(line: string, head: readonly IToken[]): LineRead | undefined {
  const span = { start: firstOf(head).startOffset, end: t.endOf(lastOf(head)) };
  const text = line.slice(span.start, span.end);
  const [, named, figure] = written.exec(text) ?? [];
  if (figure === undefined) return undefined;
  const doughYield = readNumber(figure);
  if (doughYield < least || doughYield > most) return undefined;
  const meant = `to ${Number((doughYield - 100).toFixed(2))}% hydration`;
  const isLiquid = named !== undefined && liquid.test(named);
  const said = message('no-amount.dough-yield', {
    written: named === undefined ? text : text.slice(named.length).trim(),
    meant: `${isLiquid ? named : 'water'}  ${meant}`,
  });
  if (!isLiquid) return { statement: { kind: 'unreadable' }, problems: [problem('no-amount', said, span)] };
  const read = readAmount(meant, t.cutLine(meant).meaning);
  if (!('value' in read)) return undefined;
  const name = nameBetween(line, span.start, span.start + named.length);
  const place = {
    start: span.start + text.indexOf(text.slice(named.length).trim(), named.length),
    end: span.end,
  };
  return {
    statement: statementOf('ingredient', name, { ...read.value, ...place }),
    problems: [problem('no-amount', said, place, writeFix(place, meant, true))],
  };
}
