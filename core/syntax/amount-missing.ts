import type { IToken } from 'chevrotain';
import { message } from '../words/message.ts';
import { readAmount } from './grammar.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { type NamedKind, nameless, statementOf, unknownAmount } from './named-line.ts';
import { rangeProblem, strangeCharacter, twoReadings } from './number-problems.ts';
import { colonOutFix, insertFix, problem, replaceFix, unitFixes, writeFix } from './problem.ts';
import { readNumber } from './quantity.ts';
import { unreadAmount } from './suggest-amount.ts';
import * as t from './tokens.ts';
import type {
  Amount,
  IngredientStatement,
  LineRead,
  Name,
  PlannedStatement,
  QuantityOf,
  SyntaxProblem,
} from './tree.ts';
import { units } from './units.ts';

/** Reads a line that holds no amount, and says in a baker's words what its end most likely lacks. */
export function withoutAmount(line: string, head: readonly IToken[], kind: NamedKind): LineRead {
  const last = head[head.length - 1]!;
  const quantity = t.quantityOf(last);
  const end = t.endOf(last);
  // The `to` of a half-typed `to 69% hydration` is no part of the name.
  const from = head.findIndex((token, index) => index > 0 && token.tokenType === t.To);
  const to = from > 0 && from >= head.length - 2 ? from : -1;
  const name = nameOf(line, head.slice(0, to > 0 ? to : -1));
  if (quantity !== undefined && name !== undefined) {
    const span = { start: quantity.start, end: quantity.end };
    const statement = statementOf(kind, name, unknownAmount('unreadable', quantity.start));
    if (quantity.kind === 'range')
      return { statement, problems: [rangeProblem(quantity, line.slice(span.start, span.end))] };
    if (quantity.kind === 'grouped') return grouped(line, kind, name, quantity, statement);
    if (quantity.kind === 'bare' && to > 0) {
      const fix = insertFix(message('fix.write-percent-sign'), quantity.end, '% hydration', true);
      const said = message('missing-unit.hydration', { example: `to ${quantity.number}% hydration` });
      return { statement, problems: [problem('missing-unit', said, span, fix)] };
    }
    if (quantity.kind === 'bare' && kind === 'ingredient' && countedName.test(name.text)) {
      const { number } = quantity;
      const said = message('missing-unit.counted', {
        written: number,
        example: `${name.text}  ${number} pieces`,
      });
      return {
        statement: statementOf(kind, name, pieces(quantity, quantity.start, quantity.end)),
        problems: [problem('missing-unit', said, span, ...unitFixes(number, [' pieces'], quantity.end))],
      };
    }
    if (quantity.kind === 'bare') {
      const whole = nameOf(line, head)!;
      const said = message(`missing-unit.${kind}`, { written: quantity.number });
      const units = kind === 'ingredient' ? ['%', ' g'] : [' pieces', ' kg'];
      // Beyond twice the flour it is grams, or the end of a name: the baker chooses.
      const likely = kind === 'ingredient' && readNumber(quantity.number) > 200 ? -1 : 0;
      const fixes = unitFixes(quantity.number, units, quantity.end, likely);
      // Where the whole text is a known name, its amount is missing and not the unit.
      return {
        statement,
        problems: [{ ...problem('missing-unit', said, span, ...fixes), unlessKnown: whole.folded }],
        otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
      };
    }
    const said = message('no-amount.other-quantity', { written: line.slice(span.start, span.end) });
    return { statement, problems: [problem('no-amount', said, span)] };
  }
  if (to > 0 && to === head.length - 1 && name !== undefined) {
    const example = `${name.text}  to 69% hydration`;
    const said = message('missing-amount.unfinished', { written: `${name.text} to`, example });
    const span = { start: last.startOffset, end };
    return {
      statement: statementOf(kind, name, unknownAmount('half-typed', end)),
      problems: [problem('missing-amount', said, span)],
    };
  }
  if (from > 0 && last.tokenType === t.Hydration && head.length - from <= 3) {
    const water = nameOf(line, head.slice(0, from))!;
    const span = { start: head[from]!.startOffset, end };
    const written = line.slice(t.endOf(head[from]!), end).trim();
    const example = `${water.text}  to 69% ${written}`;
    const said = message('missing-amount.to-how-much', { written, example });
    return {
      statement: statementOf(kind, water, unknownAmount('half-typed', span.start)),
      problems: [problem('missing-amount', said, span)],
    };
  }
  const whole = nameOf(line, head)!;
  const count = t.quantityOf(head[0]!);
  const eggs = counted.exec(whole.text)?.[1];
  if (count?.kind === 'bare' && eggs !== undefined && kind === 'ingredient') {
    const meant = `${eggs}  ${count.number} pieces`;
    const span = { start: count.start, end };
    const said = message('amount-first.counted', { example: meant });
    const named = nameBetween(line, end - eggs.length, end);
    return {
      statement: statementOf(kind, named, pieces(count, count.start, endOfCount(head))),
      problems: [problem('amount-first', said, span, writeFix(span, meant, true))],
    };
  }
  const unread = unreadAmount(
    line.slice(head[0]!.startOffset, end),
    head[0]!.startOffset,
    kind === 'planned',
  );
  const named = head.filter((token) => unread === undefined || t.endOf(token) <= unread.start);
  if (unread !== undefined && named.length > 0) {
    const amount: Amount =
      unread.millilitres === undefined
        ? unknownAmount('unreadable', unread.start)
        : { kind: 'volume', millilitres: unread.millilitres, start: unread.start, end };
    return {
      statement: statementOf(kind, nameOf(line, named)!, amount),
      // Where the whole text is a known name, its amount is missing.
      problems: [{ ...unread.problem, unlessKnown: whole.folded }],
      otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
    };
  }
  const strange = head.find((token) => token.tokenType === t.Unknown);
  if (strange !== undefined)
    return { statement: { kind: 'unreadable' }, problems: [strangeCharacter(strange)] };
  if (last.tokenType === t.Colon) return colonAtEnd(last);
  if (count?.kind === 'bare' && /\p{L}/u.test(whole.text) && kind === 'planned') {
    const name = nameOf(line, head.slice(1))!;
    const span = { start: count.start, end };
    const meant = `${name.text}  ${count.number} pieces`;
    const said = message('amount-first.planned', { example: meant });
    const fix = writeFix(span, meant, true);
    return {
      statement: statementOf(kind, name, unknownAmount('unreadable', count.start)),
      problems: [{ ...problem('amount-first', said, span, fix), unlessKnown: whole.folded }],
      otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
    };
  }
  const open = head.find((token) => token.tokenType === t.Quoted && !/^".*"$/.test(token.image));
  const unit = open === undefined ? otherCaseUnit(head) : undefined;
  if (unit !== undefined) {
    const span = { start: last.startOffset, end };
    const meant = `${head[head.length - 2]!.image} ${unit}`;
    const said = message('missing-unit.letters', { written: last.image, unit, meant });
    const named = nameOf(line, head.slice(0, -2)) ?? whole;
    return {
      statement: statementOf(kind, named, unknownAmount('unreadable', span.start)),
      problems: [problem('missing-unit', said, span, writeFix(span, unit, true))],
    };
  }
  if (whole.folded === '') return nameless(whole.start, end, kind);
  if (open !== undefined) {
    const span = { start: open.startOffset, end };
    return {
      statement: statementOf(kind, whole, unknownAmount('missing', end)),
      problems: [problem('missing-amount', message('missing-amount.open-quote'), span)],
    };
  }
  const example = kind === 'ingredient' ? '4%' : '24 pieces';
  const said = message('missing-amount.none', { name: whole.text, example: `${whole.text}  ${example}` });
  return {
    statement: statementOf(kind, whole, unknownAmount('missing', end)),
    problems: [problem('missing-amount', said, { start: whole.start, end: whole.end })],
  };
}

/** `eggs 6`: nobody weighs six of them in grams. */
const countedName = /^(?:(?:small|medium|large|whole) )?(?:eggs?|egg yolks?|egg whites?|yolks?)$/i;

function pieces(bare: { readonly number: string }, start: number, end: number): Amount {
  const count = readNumber(bare.number);
  return count > 0 ? { kind: 'count', count, start, end } : unknownAmount('unreadable', start);
}

const endOfCount = (head: readonly IToken[]): number => t.endOf(head[0]!);

/** `3 large eggs`: what a kitchen counts. */
const counted = /^[\d/]+ (?:(?:small|medium|large) )?(eggs?|egg yolks?|egg whites?|yolks?)$/i;

function colonAtEnd(colon: IToken): LineRead {
  const span = { start: colon.startOffset, end: t.endOf(colon) };
  const wrong = problem('stray-colon', message('stray-colon.no-section'), span, colonOutFix(span));
  return { statement: { kind: 'unreadable' }, problems: [wrong] };
}

/** `500 G`: the unit that the last word is but for capitals. */
function otherCaseUnit(head: readonly IToken[]): string | undefined {
  const [number, word] = head.slice(-2);
  if (head.length < 3 || number?.tokenType !== t.Bare || word === undefined) return undefined;
  const unit = units.get(word.image.toLowerCase());
  return unit !== undefined && quantityMeasures.has(unit.measure) ? unit.canonical : undefined;
}

const quantityMeasures: ReadonlySet<string> = new Set(['mass', 'volume', 'count']);

function grouped(
  line: string,
  kind: NamedKind,
  name: Name,
  quantity: QuantityOf<'grouped'>,
  statement: IngredientStatement | PlannedStatement,
): LineRead {
  const span = { start: quantity.start, end: quantity.end };
  const written = line.slice(span.start, span.end);
  const [first, second] = quantity.readings;
  const byBlank = /\s/.test(quantity.number);
  const whole = nameBetween(line, name.start, quantity.start + quantity.first.length);
  const named = byBlank && second !== undefined;
  const split = `${quantity.first}  ${quantity.rest}`;
  const choices = named
    ? [writeFix(span, first!), replaceFix(message('fix.take-as-name', { name: whole.text }), span, split)]
    : quantity.readings.map((reading) => writeFix(span, reading));
  const said = named
    ? message('two-readings.or-name', {
        written,
        meant: first!,
        name: whole.text,
        example: `${whole.text}  ${quantity.rest}`,
      })
    : twoReadings(written, quantity.readings);
  const found: SyntaxProblem = problem('two-readings', said, span, ...choices);
  if (!named) return { statement, problems: [found] };
  const rest = t.cutLine(quantity.rest).meaning;
  const read = readAmount(quantity.rest, rest);
  if (!('value' in read)) return { statement, problems: [found] };
  const shift = quantity.end - quantity.rest.length;
  const amount = { ...read.value, start: read.value.start + shift, end: read.value.end + shift };
  return {
    statement,
    problems: [{ ...found, unlessKnown: whole.folded }],
    otherwise: statementOf(kind, whole, amount),
  };
}
