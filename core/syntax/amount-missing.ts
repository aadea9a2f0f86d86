import type { IToken } from 'chevrotain';
import { readAmount } from './grammar.ts';
import { unreadAmount } from './meant-amount.ts';
import { type NamedKind, nameless, statementOf, unknownAmount } from './named-line.ts';
import { nameBetween, nameOf } from './names.ts';
import { rangeProblem, strangeCharacter, twoReadings } from './number-problems.ts';
import { insertFix, problem, replaceFix } from './problem.ts';
import { readNumber } from './quantity.ts';
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
    const statement = statementOf(kind, name, unknownAmount('its amount cannot be read', quantity.start));
    if (quantity.kind === 'range')
      return { statement, problems: [rangeProblem(quantity, line.slice(span.start, span.end))] };
    if (quantity.kind === 'grouped') return grouped(line, kind, name, quantity, statement);
    if (quantity.kind === 'bare' && to > 0) {
      const fix = insertFix('Write the percent sign', quantity.end, '% hydration', true);
      const message = `Write the hydration in percent: to ${quantity.number}% hydration`;
      return { statement, problems: [problem('missing-unit', message, span, fix)] };
    }
    if (quantity.kind === 'bare' && kind === 'ingredient' && countedName.test(name.text)) {
      const message = `“${quantity.number}” of what? What is counted is written in pieces: ${name.text}  ${quantity.number} pieces`;
      const fix = insertFix(`Write ${quantity.number} pieces`, quantity.end, ' pieces', true);
      return {
        statement: statementOf(kind, name, pieces(quantity, quantity.start, quantity.end)),
        problems: [problem('missing-unit', message, span, fix)],
      };
    }
    if (quantity.kind === 'bare') {
      const whole = nameOf(line, head)!;
      const message =
        kind === 'ingredient'
          ? `“${quantity.number}” of what? Write a unit: ${quantity.number}% of flour, or ${quantity.number} g.`
          : `“${quantity.number}” of what? Write a unit: ${quantity.number} pieces, or ${quantity.number} kg.`;
      const written = kind === 'ingredient' ? ['%', ' g'] : [' pieces', ' kg'];
      // Beyond twice the flour it is grams, or the end of a name: the baker chooses.
      const likely = kind === 'ingredient' && readNumber(quantity.number) > 200 ? -1 : 0;
      const fixes = written.map((unit, index) =>
        insertFix(`Write ${quantity.number}${unit}`, quantity.end, unit, index === likely),
      );
      // Where the whole text is a known name, its amount is missing and not the unit.
      return {
        statement,
        problems: [{ ...problem('missing-unit', message, span, ...fixes), unlessKnown: whole.folded }],
        otherwise: statementOf(kind, whole, unknownAmount('it has no amount', end)),
      };
    }
    const message = `“${line.slice(span.start, span.end)}” is no amount. Write a percent of flour, a weight, a volume or pieces.`;
    return { statement, problems: [problem('no-amount', message, span)] };
  }
  if (to > 0 && to === head.length - 1 && name !== undefined) {
    const message = `“${name.text} to” is not finished: ${name.text}  to 69% hydration`;
    const span = { start: last.startOffset, end };
    return {
      statement: statementOf(kind, name, unknownAmount('half-typed', end)),
      problems: [problem('missing-amount', message, span)],
    };
  }
  if (from > 0 && last.tokenType === t.Hydration && head.length - from <= 3) {
    const water = nameOf(line, head.slice(0, from))!;
    const span = { start: head[from]!.startOffset, end };
    const written = line.slice(t.endOf(head[from]!), end).trim();
    return {
      statement: statementOf(kind, water, unknownAmount('half-typed', span.start)),
      problems: [problem('missing-amount', `To how much ${written}? ${water.text}  to 69% ${written}`, span)],
    };
  }
  const whole = nameOf(line, head)!;
  const count = t.quantityOf(head[0]!);
  const eggs = counted.exec(whole.text)?.[1];
  if (count?.kind === 'bare' && eggs !== undefined && kind === 'ingredient') {
    const meant = `${eggs}  ${count.number} pieces`;
    const span = { start: count.start, end };
    const message = `The name comes first, and what is counted is written in pieces: ${meant}`;
    const named = nameBetween(line, end - eggs.length, end);
    return {
      statement: statementOf(kind, named, pieces(count, count.start, endOfCount(head))),
      problems: [problem('amount-first', message, span, replaceFix(`Write ${meant}`, span, meant, true))],
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
        ? unknownAmount('its amount cannot be read', unread.start)
        : { kind: 'volume', millilitres: unread.millilitres, start: unread.start, end };
    return {
      statement: statementOf(kind, nameOf(line, named)!, amount),
      // Where the whole text is a known name, its amount is missing.
      problems: [{ ...unread.problem, unlessKnown: whole.folded }],
      otherwise: statementOf(kind, whole, unknownAmount('it has no amount', end)),
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
    const message = `The name comes first, and behind it how many: ${meant}`;
    const fix = replaceFix(`Write ${meant}`, span, meant, true);
    return {
      statement: statementOf(kind, name, unknownAmount('its amount cannot be read', count.start)),
      problems: [{ ...problem('amount-first', message, span, fix), unlessKnown: whole.folded }],
      otherwise: statementOf(kind, whole, unknownAmount('it has no amount', end)),
    };
  }
  const open = head.find((token) => token.tokenType === t.Quoted && !/^".*"$/.test(token.image));
  const unit = open === undefined ? otherCaseUnit(head) : undefined;
  if (unit !== undefined) {
    const span = { start: last.startOffset, end };
    const message = `“${last.image}” is no unit; “${unit}” is, with just these letters: ${head[head.length - 2]!.image} ${unit}`;
    const named = nameOf(line, head.slice(0, -2)) ?? whole;
    return {
      statement: statementOf(kind, named, unknownAmount('its amount cannot be read', span.start)),
      problems: [problem('missing-unit', message, span, replaceFix(`Write ${unit}`, span, unit, true))],
    };
  }
  if (whole.folded === '') return nameless(whole.start, end, kind);
  if (open !== undefined) {
    const span = { start: open.startOffset, end };
    const message = 'The quote that starts here is not closed. Put its second " right after the name.';
    return {
      statement: statementOf(kind, whole, unknownAmount('it has no amount', end)),
      problems: [problem('missing-amount', message, span)],
    };
  }
  const example = kind === 'ingredient' ? '4%' : '24 pieces';
  const message = `How much “${whole.text}”? Write an amount after it: ${whole.text}  ${example}`;
  return {
    statement: statementOf(kind, whole, unknownAmount('it has no amount', end)),
    problems: [problem('missing-amount', message, { start: whole.start, end: whole.end })],
  };
}

/** `eggs 6`: nobody weighs six of them in grams. */
const countedName = /^(?:(?:small|medium|large|whole) )?(?:eggs?|egg yolks?|egg whites?|yolks?)$/i;

function pieces(bare: { readonly number: string }, start: number, end: number): Amount {
  const count = readNumber(bare.number);
  return count > 0 ? { kind: 'count', count, start, end } : unknownAmount('its amount cannot be read', start);
}

const endOfCount = (head: readonly IToken[]): number => t.endOf(head[0]!);

/** `3 large eggs`: what a kitchen counts. */
const counted = /^[\d/]+ (?:(?:small|medium|large) )?(eggs?|egg yolks?|egg whites?|yolks?)$/i;

function colonAtEnd(colon: IToken): LineRead {
  const span = { start: colon.startOffset, end: t.endOf(colon) };
  const message = 'A colon ends only the line that starts a section.';
  const fix = replaceFix('Take the colon out', span, '', true);
  return { statement: { kind: 'unreadable' }, problems: [problem('stray-colon', message, span, fix)] };
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
    ? [replaceFix(`Write ${first}`, span, first!), replaceFix(`“${whole.text}” is the name`, span, split)]
    : quantity.readings.map((reading) => replaceFix(`Write ${reading}`, span, reading));
  const message = named
    ? `“${written}” can be read two ways. Write ${first}, or two blanks where “${whole.text}” is the name: ${whole.text}  ${quantity.rest}`
    : twoReadings(written, quantity.readings);
  const found: SyntaxProblem = problem('two-readings', message, span, ...choices);
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
