import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readAmount } from './grammar.ts';
import { nameOf } from './name-reading.ts';
import { type NamedKind, nameless, type Options, statementOf } from './named-line.ts';
import { problem, replaceFix } from './problem.ts';
import * as t from './tokens.ts';
import type { Amount, LineRead, Name } from './tree.ts';

/** A line whose amount stands before its name, `500 g of raisins`: read as it is meant, with the fix that turns it. */
export function amountFirst(
  line: string,
  trailing: readonly IToken[],
  amount: Amount,
  kind: NamedKind,
  options: Options,
): LineRead {
  // `500 g of raisins`
  const named = trailing.length > 1 && firstOf(trailing).tokenType === t.Of ? trailing.slice(1) : trailing;
  const name = nameOf(line, named);
  if (name === undefined) return nameless(amount.start, amount.end, kind);
  const span = { start: amount.start, end: name.end };
  const weighed = weightInBrackets(line, named);
  const warm = warmBehind(line, named);
  if (warm !== undefined && kind === 'ingredient') {
    const written = line.slice(amount.start, amount.end);
    const meant = `${warm.name.text}  ${written}, at ${warm.written}`;
    const said = message('amount-first.name-first', { example: meant });
    const place = { start: span.start, end: t.endOf(lastOf(named)) };
    const fix = replaceFix(message('fix.put-name-first'), place, meant, true);
    const warmed = { ...options, celsius: warm.celsius };
    return {
      statement: statementOf(kind, warm.name, amount, warmed),
      problems: [problem('amount-first', said, span, fix)],
    };
  }
  if (weighed !== undefined && kind === 'ingredient') {
    const measured = line.slice(amount.start, amount.end);
    const meant = `${weighed.name.text}  ${line.slice(weighed.amount.start, weighed.amount.end)}  # ${measured}`;
    const said = message('amount-first.name-first', { example: meant });
    const fix = replaceFix(message('fix.put-name-first'), span, meant, true);
    return {
      statement: statementOf(kind, weighed.name, weighed.amount, options),
      problems: [problem('amount-first', said, span, fix)],
    };
  }
  const swapped = `${line.slice(name.start, name.end)}  ${line.slice(amount.start, amount.end)}`;
  return {
    statement: statementOf(kind, name, amount, options),
    problems: [
      problem(
        'amount-first',
        message('amount-first.name-first', { example: swapped }),
        span,
        replaceFix(message('fix.put-name-first'), span, swapped, true),
      ),
    ],
  };
}

/** `4 cups all-purpose flour (540 g)`, `4 cups (540 g) flour`: what stands in brackets is what the measure weighs. */
function weightInBrackets(
  line: string,
  tokens: readonly IToken[],
): { readonly name: Name; readonly amount: Amount } | undefined {
  for (const at of [0, tokens.length - 3]) {
    const [open, mass, close] = tokens.slice(Math.max(0, at), at + 3);
    if (open?.tokenType !== t.LeftParen || mass?.tokenType !== t.Mass || close?.tokenType !== t.RightParen)
      continue;
    const name = nameOf(line, at === 0 ? tokens.slice(3) : tokens.slice(0, at));
    const read = readAmount(line, [mass]);
    if (name !== undefined && 'value' in read) return { name, amount: read.value };
  }
  return undefined;
}

/** `375 g water at 30 °C`, `1 cup water (about 105 F)`. */
function warmBehind(
  line: string,
  tokens: readonly IToken[],
): { readonly name: Name; readonly celsius: number; readonly written: string } | undefined {
  const open = tokens.findIndex(({ tokenType }) => tokenType === t.LeftParen);
  const bracketed = open < 0 ? undefined : warmInWords(tokens.slice(open));
  const [at, last] = tokens.slice(-2);
  const quantity = last === undefined ? undefined : t.quantityOf(last);
  const name = nameOf(line, bracketed === undefined ? tokens.slice(0, -2) : tokens.slice(0, open));
  if (name === undefined) return undefined;
  if (bracketed !== undefined) return { name, ...bracketed };
  if (at?.tokenType !== t.At || quantity?.kind !== 'temperature') return undefined;
  return { name, celsius: quantity.celsius, written: line.slice(quantity.start, quantity.end) };
}

/** How warm words with one temperature and no other figure say that something is: `(about 105 F)`, `(cold from fridge, 5 °C)`, `cold 5 °C`. */
export function warmInWords(
  tokens: readonly IToken[],
): { readonly celsius: number; readonly written: string } | undefined {
  const figures = tokens.flatMap((token) => t.quantityOf(token) ?? []);
  const [quantity] = figures;
  if (figures.length !== 1 || quantity?.kind !== 'temperature') return undefined;
  const words = tokens.filter(({ tokenType }) => tokenType === t.Word).map(({ image }) => image);
  if (words.some((word) => /\d/.test(word) || !/\p{L}/u.test(word))) return undefined;
  const written = tokens.find((token) => t.quantityOf(token) === quantity)?.image;
  return written === undefined ? undefined : { celsius: quantity.celsius, written };
}

/** `milk 550 ml (cold from fridge 5 °C)`, `water 62% hot 60 °C`: as warm as its remark says. */
export function warmthBehind(line: string, trailing: readonly IToken[]): Options | undefined {
  const warm = trailing[0]?.tokenType === t.At ? undefined : warmInWords(trailing);
  if (warm === undefined) return undefined;
  const span = { start: firstOf(trailing).startOffset, end: t.endOf(lastOf(trailing)) };
  let blank = span.start;
  while (blank > 0 && /\s/.test(line.charAt(blank - 1))) blank--;
  const meant = `, at ${warm.written}`;
  const said = message('missing-comma.warmth', {
    written: line.slice(span.start, span.end),
    meant: `at ${warm.written}`,
  });
  const words = line
    .slice(span.start, span.end)
    .replace(warm.written, '')
    .replace(/[(),]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const remark = words === '' ? '' : `  # ${words}`;
  const place = { start: blank, end: span.end };
  return {
    celsius: warm.celsius,
    problems: [
      problem('missing-comma', said, span, replaceFix(message('fix.put-comma'), place, meant + remark, true)),
    ],
  };
}
