import type { IToken } from 'chevrotain';
import { elementAt, entryOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { problem, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import { units } from './units.ts';

/** Two amounts of a line, with what they come to where that is plain. */
export interface TwoAmounts {
  readonly problem: SyntaxProblem;
  readonly grams?: number;
}

/** `2 lb 4 oz`: one weight in two units, which is written in the smaller one. */
export function weightInTwo(line: string, head: readonly IToken[], from: number): TwoAmounts | undefined {
  const [large, small] = [head[from - 1], head[from]].map((token) =>
    token === undefined ? undefined : t.quantityOf(token),
  );
  if (from < 2 || large?.kind !== 'mass' || small?.kind !== 'mass' || !(small.grams < large.grams))
    return undefined;
  const unit = entryOf(units, small.unit);
  const written = `${Number(((large.grams + small.grams) / unit.factor).toFixed(3))} ${unit.canonical}`;
  const span = { start: large.start, end: small.end };
  const two = { written: line.slice(span.start, span.end), meant: written };
  return {
    problem: problem('no-amount', message('no-amount.two-units', two), span, writeFix(span, written, true)),
    grams: large.grams + small.grams,
  };
}

/** `water 700 g + 30 g`: two amounts of one thing, which are written as their sum. */
export function sumOfTwo(line: string, head: readonly IToken[], from: number): TwoAmounts | undefined {
  const [one, sign, other] = head.slice(from - 2, from + 1);
  if (from < 3 || sign?.image !== '+' || one === undefined || other === undefined) return undefined;
  const [first, second] = [t.quantityOf(one), t.quantityOf(other)];
  if (first?.kind !== 'mass' || second?.kind !== 'mass') return undefined;
  const unit = entryOf(units, first.unit);
  const meant = `${Number(((first.grams + second.grams) / unit.factor).toFixed(3))} ${unit.canonical}`;
  const span = { start: first.start, end: second.end };
  const two = { written: line.slice(span.start, span.end), meant };
  return {
    problem: problem('no-amount', message('no-amount.sum', two), span, writeFix(span, meant, true)),
    grams: first.grams + second.grams,
  };
}

/** `65 to 68%`: a range in words, where `to` belongs neither to the name nor to a hydration. */
export function rangeInWords(
  line: string,
  head: readonly IToken[],
  found: { from: number },
): TwoAmounts | undefined {
  const isTo = elementAt(head, found.from).tokenType === t.To;
  const to = isTo ? found.from : found.from - 1;
  const [low, high] = [head[to - 1], head[to + 1]];
  if (to < 2 || low === undefined || high === undefined || elementAt(head, to).tokenType !== t.To)
    return undefined;
  const [least, most] = [t.quantityOf(low), t.quantityOf(high)];
  if (least === undefined || most === undefined || !(least.kind === 'bare' || least.kind === most.kind))
    return undefined;
  const unit = high.image.slice(most.number.length);
  const span = { start: low.startOffset, end: t.endOf(high) };
  const ends = [least.kind === 'bare' ? `${low.image}${unit}` : low.image, high.image];
  const said = message('range.one-value', { written: line.slice(span.start, span.end) });
  return { problem: problem('range', said, span, ...ends.map((end) => writeFix(span, end))) };
}
