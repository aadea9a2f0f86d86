import type { IToken } from 'chevrotain';
import { elementAt, firstOf, lastOf } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { amountFirst, warmthBehind } from './amount-first.ts';
import { withoutAmount } from './amount-missing.ts';
import { readAmount } from './grammar.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { type NamedKind, nameless, type Options, statementOf, unknownAmount } from './named-line.ts';
import { pointProblems, rangeProblem, strangeCharacter } from './number-problems.ts';
import { colonOutFix, insertFix, problem, replaceFix, unitFixes, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { Amount, LineRead, Name } from './tree.ts';
import { rangeInWords, sumOfTwo, weightInTwo } from './two-amounts.ts';

const quantityStarts = new Set([t.Percent, t.Mass, t.Volume, t.Count]);

/**
 * Reads an ingredient line or a line of a plan: a name, its amount (the last amount form before the first comma that
 * stands free), and options after commas.
 */
export function readNamedAmount(line: string, tokens: readonly IToken[], kind: NamedKind): LineRead {
  const commaAt = freeComma(tokens);
  const head = commaAt < 0 ? tokens : tokens.slice(0, commaAt);
  const found = lastAmount(line, head);
  const options = commaAt < 0 ? { problems: [] } : readOptions(line, tokens.slice(commaAt + 1), kind);
  if (head.length === 0) return nameless(firstOf(tokens).startOffset, t.endOf(lastOf(tokens)), kind);
  if (found === undefined) {
    const behind = commaAt < 0 ? undefined : behindRemark(line, head, tokens.slice(commaAt + 1), kind);
    if (behind !== undefined) return behind;
    const missing = withoutAmount(line, head, kind);
    return { ...missing, problems: [...missing.problems, ...options.problems].slice(0, 1) };
  }
  const name = nameOf(line, head.slice(0, found.from));
  const trailing = head.slice(found.to);
  if (name === undefined) return amountFirst(line, trailing, found.amount, kind, options);
  if (name.folded === '') return nameless(name.start, found.amount.end, kind);
  const problems: SyntaxProblem[] = [...signProblems(found.amount)];
  const colon = head.slice(0, found.from).find((token) => token.tokenType === t.Colon);
  if (colon !== undefined) problems.push(colonBeforeAmount(colon));
  const strange = head.slice(0, found.from).find((token) => token.tokenType === t.Unknown);
  if (strange !== undefined) problems.push(strangeCharacter(strange));
  const warm = kind === 'ingredient' && commaAt < 0 ? warmthBehind(line, trailing) : undefined;
  if (warm !== undefined)
    return {
      statement: statementOf(kind, name, found.amount, warm),
      problems: [...problems, ...warm.problems].slice(0, 1),
    };
  if (trailing.length > 0) problems.push(afterAmount(line, trailing, kind, found.amount, commaAt < 0));
  const plus = plusBefore(line, head[found.from - 1], found.amount);
  if (plus !== undefined) {
    const { start } = plus.span;
    const named = nameBetween(line, name.start, start);
    return { statement: statementOf(kind, named, unknownAmount('unreadable', start)), problems: [plus] };
  }
  const two =
    rangeInWords(line, head, found) ??
    weightInTwo(line, head, found.from) ??
    sumOfTwo(line, head, found.from);
  if (two !== undefined) {
    const { start, end } = two.problem.span;
    const { grams } = two;
    const named = nameBetween(line, name.start, start);
    const amount: Amount =
      grams === undefined ? unknownAmount('unreadable', start) : { kind: 'mass', grams, start, end };
    return {
      statement: statementOf(kind, named, amount, options),
      problems: [{ ...two.problem, unlessKnown: name.folded }],
      otherwise: statementOf(kind, name, found.amount, options),
    };
  }
  problems.push(...pointProblems(head.slice(found.from, found.to)));
  // `water ~66%`, `salt = 2%`: the sign right before the amount belongs to no name.
  const isLoose = strange !== undefined && found.from > 1 && strange === head[found.from - 1];
  const dash = found.from > 1 ? dashOf(head[found.from - 1]) : undefined;
  if (dash !== undefined) problems.push(dashBeforeAmount(dash));
  const sign = colon ?? (isLoose ? strange : dash);
  const clean = sign === undefined ? name : cleanName(line, head.slice(0, found.from), sign);
  if (kind === 'planned' && found.amount.kind !== 'count' && found.amount.kind !== 'mass') {
    const { start, end } = found.amount;
    const example = `${clean.text}  24 pieces`;
    const said = message('no-amount.planned', { written: line.slice(start, end), example });
    const amount = unknownAmount('not-planned', start);
    const wrong = problem('no-amount', said, { start, end });
    return { statement: statementOf(kind, clean, amount, options), problems: [wrong] };
  }
  return {
    statement: statementOf(kind, clean, found.amount, options),
    problems: [...problems, ...options.problems, ...unfinishedProblems(line, found.amount)].slice(0, 1),
  };
}

/** Which tokens stand in a parenthesis that is closed on the line: they belong to a name, whatever they are. */
function insideParentheses(tokens: readonly IToken[]): ReadonlySet<IToken> {
  const inside = new Set<IToken>();
  const open: number[] = [];
  tokens.forEach((token, index) => {
    if (token.tokenType === t.LeftParen) open.push(index);
    if (token.tokenType !== t.RightParen) return;
    const start = open.pop();
    if (start !== undefined) for (const one of tokens.slice(start, index + 1)) inside.add(one);
  });
  return inside;
}

/** The first comma outside parentheses; commas within numbers and quotes are no tokens of their own. */
function freeComma(tokens: readonly IToken[]): number {
  let depth = 0;
  for (let index = 0; index < tokens.length; index++) {
    const type = elementAt(tokens, index).tokenType;
    if (type === t.LeftParen) depth++;
    else if (type === t.RightParen) depth = Math.max(0, depth - 1);
    else if (type === t.Comma && depth === 0) return index;
  }
  return -1;
}

function lastAmount(
  line: string,
  head: readonly IToken[],
): { from: number; to: number; amount: Amount } | undefined {
  const inName = insideParentheses(head);
  for (let from = head.length - 1; from >= 0; from--) {
    if (inName.has(elementAt(head, from))) continue;
    const type = elementAt(head, from).tokenType;
    if (type === t.Balance || type === t.Remaining) {
      if (from !== head.length - 1) continue;
    } else if (!quantityStarts.has(type)) continue;
    // `to 69 % hydration` starts a word before its number.
    const start =
      type === t.Percent && from > 0 && elementAt(head, from - 1).tokenType === t.To ? from - 1 : from;
    for (const to of [start + 4, start + 3, start + 2, start + 1]) {
      if (to > head.length) continue;
      const read = readAmount(line, head.slice(start, to));
      if ('value' in read) return { from: start, to, amount: read.value };
    }
  }
  return undefined;
}

/** `to 69%` says of nothing what it comes to. */
function unfinishedProblems(line: string, amount: Amount): SyntaxProblem[] {
  if (amount.kind !== 'unknown' || amount.reason !== 'half-typed') return [];
  const written = line.slice(amount.start, amount.end);
  const fix = insertFix(message('fix.write-hydration'), amount.end, ' hydration', true);
  const said = message('missing-amount.unfinished', { written, example: `${written} hydration` });
  return [problem('missing-amount', said, amount, fix)];
}

function signProblems(amount: Amount): SyntaxProblem[] {
  const value =
    amount.kind === 'fraction' || amount.kind === 'ofAllFlour' || amount.kind === 'hydration'
      ? amount.fraction
      : amount.kind === 'mass'
        ? amount.grams
        : amount.kind === 'volume'
          ? amount.millilitres
          : amount.kind === 'count'
            ? amount.count
            : 0;
  return value < 0 ? [problem('negative-amount', message('negative-amount.negative'), amount)] : [];
}

/** `butter +5%`, `water + 5%`: more than something that the line does not say. */
function plusBefore(line: string, before: IToken | undefined, amount: Amount): SyntaxProblem | undefined {
  const start = before?.image === '+' ? before.startOffset : amount.start;
  if (line.charAt(start) !== '+') return undefined;
  const span = { start, end: amount.end };
  const written = line.slice(start, amount.end);
  const meant = written.replace(/^\+\s*/, '');
  const said = message('negative-amount.plus', { written });
  return problem('negative-amount', said, span, writeFix(span, meant));
}

function colonBeforeAmount(colon: IToken): SyntaxProblem {
  const span = { start: colon.startOffset, end: t.endOf(colon) };
  return problem('stray-colon', message('stray-colon.amount'), span, colonOutFix(span, ' '));
}

/** `water - 620 g`: a dash that belongs to no name. */
function dashOf(token: IToken | undefined): IToken | undefined {
  return token !== undefined && /^[-–—−]$/.test(token.image) ? token : undefined;
}

function dashBeforeAmount(dash: IToken): SyntaxProblem {
  const span = { start: dash.startOffset, end: t.endOf(dash) };
  const title = message('fix.take-sign-out', { written: dash.image });
  const said = message('unreadable.between', { written: dash.image });
  return problem(
    'unreadable',
    said,
    span,
    replaceFix(title, { start: span.start, end: span.end + 1 }, ' ', true),
  );
}

/** The name before a sign that does not belong to it. */
function cleanName(line: string, tokens: readonly IToken[], sign: IToken): Name {
  const before = tokens.filter((token) => token.startOffset < sign.startOffset);
  return nameOf(line, before) ?? nameBetween(line, sign.startOffset, sign.startOffset);
}

function afterAmount(
  line: string,
  trailing: readonly IToken[],
  kind: NamedKind,
  amount: Amount,
  isLast: boolean,
): SyntaxProblem {
  const first = firstOf(trailing);
  const span = { start: first.startOffset, end: t.endOf(lastOf(trailing)) };
  const text = line.slice(span.start, span.end);
  const isOption = kind === 'ingredient' ? first.tokenType === t.At : first.image.toLowerCase() === 'ready';
  const example = kind === 'ingredient' ? 'butter  4%, at 8 °C' : 'Morning Tin  24 pieces, ready 07:15';
  if (isOption) {
    let blank = span.start;
    while (blank > 0 && /\s/.test(line.charAt(blank - 1))) blank--;
    const gap = { start: blank, end: span.start };
    const fix = replaceFix(message('fix.put-comma'), gap, ', ', true);
    return problem('missing-comma', message('missing-comma.before', { written: text, example }), span, fix);
  }
  const meant = kind === 'ingredient' ? meantBehind(line, text, amount, span) : undefined;
  if (meant !== undefined) return meant;
  const remark = text.replace(/^(?:\/\/|[-–—(;#])\s*/, '').replace(/\)$/, '');
  const fixes =
    isLast && remark !== ''
      ? [
          replaceFix(
            message('fix.make-remark'),
            span,
            `${/\s/.test(line[span.start - 1] ?? '') ? '' : '  '}# ${remark}`,
            text.startsWith('('),
          ),
        ]
      : [];
  const said = message(`after-amount.${kind}`, { written: text, example });
  return problem('after-amount', said, span, ...fixes);
}

/** `66% hydration` and `3 g per piece` lack a word or have another one. */
function meantBehind(line: string, text: string, amount: Amount, span: Span): SyntaxProblem | undefined {
  const written = line.slice(amount.start, amount.end);
  const whole = { start: amount.start, end: span.end };
  const meant = suggestAmount(amount, written, text.toLowerCase());
  if (meant === undefined) return undefined;
  const said = message('after-amount.meant', { written: `${written} ${text}`, meant });
  return problem('after-amount', said, whole, writeFix(whole, meant, true));
}

function suggestAmount(amount: Amount, written: string, behind: string): string | undefined {
  if (/^to\s/i.test(written)) {
    const word = ['hydration', 'effective hydration'].find((one) => one.startsWith(behind));
    return word === undefined ? undefined : `${written} ${word}`;
  }
  if (amount.kind === 'fraction' && /^of (?:the )?(?:(?:total|whole|overall) )?flour$/.test(behind))
    return `${written} of all flour`;
  if (amount.kind === 'fraction')
    return /^(?:effective )?hydration$/.test(behind) ? `to ${written} ${behind}` : undefined;
  return /^(?:each|(?:\/|per|an?|each)\s*(?:pieces?|pc|loaf|roll|bun|ball))$/.test(behind)
    ? `${written} a piece`
    : undefined;
}

/** `almonds, chopped 150 g`: the amount stands behind a remark. */
function behindRemark(
  line: string,
  head: readonly IToken[],
  rest: readonly IToken[],
  kind: NamedKind,
): LineRead | undefined {
  const found = kind === 'ingredient' ? lastAmount(line, rest) : undefined;
  const name = nameOf(line, head);
  const remark = found === undefined ? undefined : nameOf(line, rest.slice(0, found.from));
  if (found?.to !== rest.length || name === undefined || remark === undefined) return undefined;
  if (/[()]/.test(name.text + remark.text)) return undefined;
  const span = { start: name.start, end: found.amount.end };
  const written = line.slice(found.amount.start, found.amount.end);
  const said = message('unknown-option.ingredient', { written: `${remark.text} ${written}` });
  const fix = writeFix(span, `${name.text}  ${written}  # ${remark.text}`, true);
  return {
    statement: statementOf(kind, name, found.amount),
    problems: [problem('unknown-option', said, span, fix)],
  };
}

/** `water 60%, tap 24 °C`: a temperature with words around it. */
function warmthInWords(line: string, tokens: readonly IToken[], span: Span): Options | undefined {
  const figures = tokens.filter((token) => t.quantityOf(token) !== undefined);
  const [figure] = figures;
  const quantity = figure === undefined ? undefined : t.quantityOf(figure);
  if (figure === undefined || figures.length > 1 || quantity?.kind !== 'temperature') return undefined;
  if (tokens.some(({ image }) => !/[\p{L}\d]/u.test(image))) return undefined;
  const words = tokens
    .filter((token) => token !== figure && token.tokenType !== t.At)
    .map(({ image }) => image)
    .join(' ');
  const meant = `at ${figure.image}${words === '' ? '' : `  # ${words}`}`;
  const said = message('unknown-option.warmth', {
    written: line.slice(span.start, span.end),
    meant: `at ${figure.image}`,
  });
  return {
    celsius: quantity.celsius,
    problems: [problem('unknown-option', said, span, writeFix(span, meant, true))],
  };
}

function readOptions(line: string, tokens: readonly IToken[], kind: NamedKind): Options {
  if (tokens.length === 0) return { problems: [] };
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const [first, second, third] = tokens;
  const quantity = second === undefined ? undefined : t.quantityOf(second);
  if (third === undefined && first !== undefined) {
    if (kind === 'ingredient' && first.tokenType === t.At) {
      if (quantity?.kind === 'temperature') return { celsius: quantity.celsius, problems: [] };
      if (second === undefined) return { problems: [] };
      if (quantity?.kind === 'range') return { problems: [rangeProblem(quantity, second.image)] };
      if (quantity?.kind === 'bare') {
        const fixes = unitFixes(quantity.number, [' °C', ' °F'], quantity);
        const example = `at ${quantity.number} °C`;
        const said = message('missing-unit.other', { written: quantity.number, example });
        return { problems: [problem('missing-unit', said, quantity, ...fixes)] };
      }
    }
    if (kind === 'planned' && first.image.toLowerCase() === 'ready') {
      if (quantity?.kind === 'clock') return { readyMinutes: quantity.minutes, problems: [] };
      if (second === undefined) return { problems: [] };
    }
  }
  const written = line.slice(span.start, span.end);
  const warm = kind === 'ingredient' ? warmthInWords(line, tokens, span) : undefined;
  if (warm !== undefined) return warm;
  const said = message(`unknown-option.${kind}`, { written });
  // `butter 40 g, melted`: words without a figure are a remark.
  const comma = line.lastIndexOf(',', span.start);
  const isRemark =
    kind === 'ingredient' &&
    written.length > 2 &&
    comma >= 0 &&
    tokens.every((token) => t.quantityOf(token) === undefined);
  const place = { start: comma, end: span.end };
  const fixes = isRemark ? [replaceFix(message('fix.make-remark'), place, `  # ${written}`, true)] : [];
  return { problems: [problem('unknown-option', said, span, ...fixes)] };
}
