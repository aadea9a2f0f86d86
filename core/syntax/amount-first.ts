import type { IToken } from 'chevrotain';
import { firstOf } from '../text/element.ts';
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
    const fix = replaceFix(message('fix.put-name-first'), span, meant, true);
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

/** `375 g water at 30 °C`. */
function warmBehind(
  line: string,
  tokens: readonly IToken[],
): { readonly name: Name; readonly celsius: number; readonly written: string } | undefined {
  const [at, last] = tokens.slice(-2);
  const quantity = last === undefined ? undefined : t.quantityOf(last);
  const name = nameOf(line, tokens.slice(0, -2));
  if (at?.tokenType !== t.At || quantity?.kind !== 'temperature' || name === undefined) return undefined;
  return { name, celsius: quantity.celsius, written: line.slice(quantity.start, quantity.end) };
}
