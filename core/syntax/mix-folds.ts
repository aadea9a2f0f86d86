import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { handVerb } from './hand-words.ts';
import { problem, replaceFix } from './problem.ts';
import * as t from './tokens.ts';
import type { LineRead } from './tree.ts';

const spreadOut = /(?<!\p{L})(?:every|each|apart|times|x\s?\d|\d\s?x|sets?)(?!\p{L})/iu;
const often = /(?:[x×]\s?(\d+)|(\d+)\s?(?:[x×]|times|sets?))(?!\p{L})/iu;
const between = /(\d+(?:[.,]\d+)?)\s*(min(?:ute)?s?|h(?:ours?)?)(?!\p{L})/iu;
/** More sets of folds than anyone gives a dough. */
const mostSets = 12;

/**
 * `fold x3 every 30 min` in a mix: no half hour of folding, but several short ones with a rest before each. Not read, for how long a
 * fold takes is not said; the finding says how it is written, and its fix writes it as often as the line says.
 */
export function readFoldsOfMix(line: string, tokens: readonly IToken[]): LineRead | undefined {
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  if (handVerb(text)?.verb !== 'fold' || !spreadOut.test(text)) return undefined;
  const [, behind, before] = often.exec(text) ?? [];
  const [, figure, unit = ''] = between.exec(text) ?? [];
  const sets = Number(behind ?? before);
  const rest = `rest ${figure ?? '30'} ${/^h/i.test(unit) ? 'h' : 'min'}`;
  const pair = [rest, 'fold 1 min'];
  const said = message('unknown-property.folds', { written: text, meant: pair.join(', ') });
  const indent = line.slice(0, span.start).trim() === '' ? line.slice(0, span.start) : '  ';
  const isTold = figure !== undefined && sets > 0 && sets <= mostSets;
  const all = Array.from({ length: isTold ? sets : 0 }, () => pair).flat();
  const fixes = isTold
    ? [
        replaceFix(
          message('fix.write', { meant: `${sets} × ${pair.join(', ')}` }),
          span,
          all.join(`\n${indent}`),
          true,
        ),
      ]
    : [];
  return {
    statement: { kind: 'unreadable' },
    problems: [problem('unknown-property', said, span, ...fixes)],
  };
}
