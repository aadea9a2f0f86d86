import type { IToken } from 'chevrotain';
import { message } from '../words/message.ts';
import { readDoughYield } from './dough-yield.ts';
import { readAmount } from './grammar.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { type NamedKind, nameless, statementOf, unknownAmount } from './named-line.ts';
import { groupedProblem, rangeProblem, strangeCharacter } from './number-problems.ts';
import { colonOutFix, insertFix, problem, replaceFix, unitFixes, writeFix } from './problem.ts';
import { readNumber } from './quantity.ts';
import { amountBefore, unreadAmount } from './suggest-amount.ts';
import * as t from './tokens.ts';
import type {
  Amount,
  IngredientStatement,
  LineRead,
  Name,
  PlannedStatement,
  Quantity,
  QuantityOf,
} from './tree.ts';
import { units } from './units.ts';

/** A line without an amount, taken apart once for all that looks at it. */
interface Unfinished {
  readonly line: string;
  readonly kind: NamedKind;
  readonly first: IToken;
  readonly last: IToken;
  readonly head: readonly IToken[];
  /** Where the last token ends. */
  readonly end: number;
  /** The name that the whole line would be. */
  readonly whole: Name;
  /** What the first token counts. */
  readonly count: Quantity | undefined;
}

/** Reads a line that holds no amount, and says in a baker's words what its end most likely lacks; `head` holds a token at least. */
export function withoutAmount(line: string, head: readonly IToken[], kind: NamedKind): LineRead {
  const [first] = head;
  const last = head.at(-1);
  const whole = nameOf(line, head);
  if (first === undefined || last === undefined || whole === undefined)
    return { statement: { kind: 'unreadable' }, problems: [] };
  const parts = { line, kind, first, last, head, end: t.endOf(last), whole, count: t.quantityOf(first) };
  return (
    (kind === 'ingredient' ? readDoughYield(line, head) : undefined) ??
    otherQuantityAtEnd(parts) ??
    unfinishedHydration(parts) ??
    countedFirst(parts) ??
    measuredFirst(parts) ??
    numberFirst(parts) ??
    unreadAtEnd(parts) ??
    strangeSign(parts) ??
    plannedFirst(parts) ??
    capitalUnit(parts) ??
    nothingAtEnd(parts)
  );
}

/** `strong white 500`, `water 60-70`, `oven 230 °C`: a quantity stands last that is no amount as it is. */
function otherQuantityAtEnd(parts: Unfinished): LineRead | undefined {
  const { line, kind, head, last, end, whole } = parts;
  const quantity = t.quantityOf(last);
  const to = unfinishedTo(head);
  const name = nameOf(line, head.slice(0, to > 0 ? to : -1));
  if (quantity === undefined || name === undefined) return undefined;
  const span = { start: quantity.start, end: quantity.end };
  const statement = statementOf(kind, name, unknownAmount('unreadable', quantity.start));
  if (quantity.kind === 'range')
    return { statement, problems: [rangeProblem(quantity, line.slice(span.start, span.end))] };
  if (quantity.kind === 'grouped') return grouped(line, kind, name, quantity, statement);
  if (quantity.kind !== 'bare') {
    const said = message('no-amount.other-quantity', { written: line.slice(span.start, span.end) });
    return { statement, problems: [problem('no-amount', said, span)] };
  }
  const { number } = quantity;
  if (to > 0) {
    const fix = insertFix(message('fix.write-percent-sign'), quantity.end, '% hydration', true);
    const said = message('missing-unit.hydration', { example: `to ${number}% hydration` });
    return { statement, problems: [problem('missing-unit', said, span, fix)] };
  }
  if (kind === 'ingredient' && countedName.test(name.text)) {
    const said = message('missing-unit.counted', {
      written: number,
      example: `${name.text}  ${number} pieces`,
    });
    return {
      statement: statementOf(kind, name, pieces(quantity, quantity.start, quantity.end)),
      problems: [problem('missing-unit', said, span, ...unitFixes(number, ['%', ' pieces'], quantity, 1))],
    };
  }
  const said = message(`missing-unit.${kind}`, { written: number });
  const units = kind === 'ingredient' ? ['%', ' g'] : [' pieces', ' kg'];
  // Beyond twice the flour it is grams, or the end of a name: the baker chooses.
  const likely = kind === 'ingredient' && readNumber(number) > 200 ? -1 : 0;
  const fixes = unitFixes(number, units, quantity, likely);
  // Where the whole text is a known name, its amount is missing and not the unit.
  return {
    statement,
    problems: [{ ...problem('missing-unit', said, span, ...fixes), unlessKnown: whole.folded }],
    otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
  };
}

/** Where the `to` of a half-typed `to 69% hydration` stands, which is no part of the name; −1 without one. */
function unfinishedTo(head: readonly IToken[]): number {
  const from = toAt(head);
  return from > 0 && from >= head.length - 2 ? from : -1;
}

const toAt = (head: readonly IToken[]): number =>
  head.findIndex((token, index) => index > 0 && token.tokenType === t.To);

/** `water to`, `water to hydration`: the figure is not typed yet. */
function unfinishedHydration({ line, kind, head, last, end }: Unfinished): LineRead | undefined {
  const from = toAt(head);
  const name = from > 0 ? nameOf(line, head.slice(0, from)) : undefined;
  const to = head[from];
  if (name === undefined || to === undefined) return undefined;
  if (from === head.length - 1) {
    const example = `${name.text}  to 69% hydration`;
    const said = message('missing-amount.unfinished', { written: `${name.text} to`, example });
    const span = { start: last.startOffset, end };
    return {
      statement: statementOf(kind, name, unknownAmount('half-typed', end)),
      problems: [problem('missing-amount', said, span)],
    };
  }
  if (last.tokenType !== t.Hydration || head.length - from > 3) return undefined;
  const span = { start: to.startOffset, end };
  const written = line.slice(t.endOf(to), end).trim();
  const example = `${name.text}  to 69% ${written}`;
  const said = message('missing-amount.to-how-much', { written, example });
  return {
    statement: statementOf(kind, name, unknownAmount('half-typed', span.start)),
    problems: [problem('missing-amount', said, span)],
  };
}

/** `6 eggs`: a count before what is counted. */
function countedFirst({ line, kind, first, end, whole, count }: Unfinished): LineRead | undefined {
  const eggs = counted.exec(whole.text)?.[1];
  if (count?.kind !== 'bare' || eggs === undefined || kind !== 'ingredient') return undefined;
  const suggestion = `${eggs}  ${count.number} pieces`;
  const span = { start: count.start, end };
  const said = message('amount-first.counted', { example: suggestion });
  const named = nameBetween(line, end - eggs.length, end);
  return {
    statement: statementOf(kind, named, pieces(count, count.start, t.endOf(first))),
    problems: [problem('amount-first', said, span, writeFix(span, suggestion, true))],
  };
}

/** `2 Tbsp cinnamon`, `1 stick butter`: an amount before the name, in a unit that the notation spells otherwise. */
function measuredFirst({ line, kind, first, end }: Unfinished): LineRead | undefined {
  const start = first.startOffset;
  const before = kind === 'ingredient' ? amountBefore(line.slice(start, end)) : undefined;
  if (before === undefined) return undefined;
  const read = readAmount(before.meant, t.cutLine(before.meant).meaning);
  const name = nameBetween(line, start + before.nameAt, end);
  if (!('value' in read) || name.folded === '') return undefined;
  // Whatever is written in its place leaves the blank before the name.
  const measured = line.slice(start, start + before.nameAt).trimEnd();
  const amount = { ...read.value, start, end: start + measured.length };
  const meant = `${name.text}  ${before.meant}`;
  const span = { start, end };
  const fix = replaceFix(message('fix.put-name-first'), span, meant, true);
  const said = message('amount-first.name-first', { example: meant });
  return { statement: statementOf(kind, name, amount), problems: [problem('amount-first', said, span, fix)] };
}

/** `680 water`: a number before a name, of which the unit is not said. */
function numberFirst({ line, kind, head, count, end, whole }: Unfinished): LineRead | undefined {
  const name = nameOf(line, head.slice(1));
  if (count?.kind !== 'bare' || kind !== 'ingredient' || name === undefined) return undefined;
  // `500 gx` and `2 large` are no number of a thing called so.
  if (!/^\p{L}{3}/u.test(name.text) || /^(?:small|medium|large|pieces?)\b/i.test(name.text)) return undefined;
  const span = { start: count.start, end };
  const said = message('missing-unit.ingredient', { written: count.number });
  const fixes = ['%', ' g'].map((unit) => writeFix(span, `${name.text}  ${count.number}${unit}`));
  return {
    statement: statementOf(kind, name, unknownAmount('unreadable', count.start)),
    problems: [{ ...problem('missing-unit', said, span, ...fixes), unlessKnown: whole.folded }],
    otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
  };
}

/** Amounts that bakers write and the notation does not: `1 1/2 cups`, `a pinch`. */
function unreadAtEnd({ line, kind, first, head, end, whole }: Unfinished): LineRead | undefined {
  const start = first.startOffset;
  const unread = unreadAmount(line.slice(start, end), start, kind === 'planned');
  if (unread === undefined) return undefined;
  const named = nameOf(
    line,
    head.filter((token) => t.endOf(token) <= unread.start),
  );
  if (named === undefined) return undefined;
  const amount: Amount =
    unread.millilitres === undefined
      ? unknownAmount('unreadable', unread.start)
      : { kind: 'volume', millilitres: unread.millilitres, start: unread.start, end };
  return {
    statement: statementOf(kind, named, amount),
    // Where the whole text is a known name, its amount is missing.
    problems: [{ ...unread.problem, unlessKnown: whole.folded }],
    otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
  };
}

function strangeSign({ head, last }: Unfinished): LineRead | undefined {
  const strange = head.find((token) => token.tokenType === t.Unknown);
  if (strange !== undefined)
    return { statement: { kind: 'unreadable' }, problems: [strangeCharacter(strange)] };
  return last.tokenType === t.Colon ? colonAtEnd(last) : undefined;
}

/** `24 baps` in a plan. */
function plannedFirst({ line, kind, head, end, whole, count }: Unfinished): LineRead | undefined {
  const name = nameOf(line, head.slice(1));
  if (count?.kind !== 'bare' || kind !== 'planned' || name === undefined || !/\p{L}/u.test(whole.text))
    return undefined;
  const span = { start: count.start, end };
  const suggestion = `${name.text}  ${count.number} pieces`;
  const said = message('amount-first.planned', { example: suggestion });
  const fix = writeFix(span, suggestion, true);
  return {
    statement: statementOf(kind, name, unknownAmount('unreadable', count.start)),
    problems: [{ ...problem('amount-first', said, span, fix), unlessKnown: whole.folded }],
    otherwise: statementOf(kind, whole, unknownAmount('missing', end)),
  };
}

/** `500 G`: a unit in capitals, unless a quote is open. */
function capitalUnit({ line, kind, head, last, end, whole }: Unfinished): LineRead | undefined {
  const unit = openQuote(head) === undefined ? otherCaseUnit(head) : undefined;
  if (unit === undefined) return undefined;
  const span = { start: last.startOffset, end };
  const example = `${head.at(-2)?.image ?? ''} ${unit}`;
  const said = message('missing-unit.letters', { written: last.image, unit, meant: example });
  const named = nameOf(line, head.slice(0, -2)) ?? whole;
  return {
    statement: statementOf(kind, named, unknownAmount('unreadable', span.start)),
    problems: [problem('missing-unit', said, span, writeFix(span, unit, true))],
  };
}

/** A name, and nothing behind it. */
function nothingAtEnd({ kind, head, end, whole }: Unfinished): LineRead {
  if (whole.folded === '') return nameless(whole.start, end, kind);
  const statement = statementOf(kind, whole, unknownAmount('missing', end));
  const open = openQuote(head);
  if (open !== undefined) {
    const span = { start: open.startOffset, end };
    return { statement, problems: [problem('missing-amount', message('missing-amount.open-quote'), span)] };
  }
  const example = kind === 'ingredient' ? '4%' : '24 pieces';
  const said = message('missing-amount.none', { name: whole.text, example: `${whole.text}  ${example}` });
  return {
    statement,
    problems: [problem('missing-amount', said, { start: whole.start, end: whole.end })],
  };
}

const openQuote = (head: readonly IToken[]): IToken | undefined =>
  head.find((token) => token.tokenType === t.Quoted && !/^".*"$/.test(token.image));

/** `eggs 6`: nobody weighs six of them in grams. */
const countedName = /^(?:(?:small|medium|large|whole) )?(?:eggs?|egg yolks?|egg whites?|yolks?)$/i;

function pieces(bare: { readonly number: string }, start: number, end: number): Amount {
  const count = readNumber(bare.number);
  return count > 0 ? { kind: 'count', count, start, end } : unknownAmount('unreadable', start);
}

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
  const written = line.slice(quantity.start, quantity.end);
  const named = /\s/.test(quantity.number) && quantity.readings[1] !== undefined;
  const whole = nameBetween(line, name.start, quantity.start + quantity.first.length);
  const found = groupedProblem(quantity, written, name.text);
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
