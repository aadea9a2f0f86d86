import type { IToken } from 'chevrotain';
import { readAmount } from './grammar.ts';
import { nameBetween, nameOf } from './names.ts';
import { insertFix, problem, replaceFix } from './problem.ts';
import * as t from './tokens.ts';
import type {
  Amount,
  IngredientStatement,
  Name,
  PlannedStatement,
  Quantity,
  Statement,
  SyntaxProblem,
} from './tree.ts';
import { units } from './units.ts';

export interface LineRead {
  readonly statement: Statement;
  readonly problems: readonly SyntaxProblem[];
  readonly otherwise?: IngredientStatement | PlannedStatement;
}

const quantityStarts = new Set([t.Percent, t.Mass, t.Volume, t.Count]);

/**
 * Reads an ingredient line or a line of a plan: a name, its amount (the last amount form before the first comma that
 * stands free), and options after commas.
 */
export function readNamedAmount(
  line: string,
  tokens: readonly IToken[],
  kind: 'ingredient' | 'planned',
): LineRead {
  const commaAt = freeComma(tokens);
  const head = commaAt < 0 ? tokens : tokens.slice(0, commaAt);
  const found = lastAmount(line, head);
  const options = commaAt < 0 ? { problems: [] } : readOptions(line, tokens.slice(commaAt + 1), kind);
  if (head.length === 0) return nameless(tokens[0]!.startOffset, t.endOf(tokens[tokens.length - 1]!), kind);
  if (found === undefined) {
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
  if (trailing.length > 0) problems.push(afterAmount(line, trailing, kind));
  problems.push(...pointProblems(head.slice(found.from, found.to)));
  const clean = colon === undefined ? name : cleanName(line, head.slice(0, found.from), colon);
  if (kind === 'planned' && found.amount.kind !== 'count' && found.amount.kind !== 'mass') {
    const { start, end } = found.amount;
    const message = `“${line.slice(start, end)}” cannot be planned. Write pieces or a weight: ${clean.text}  24 pieces`;
    const amount = unknownAmount('its amount cannot be planned', start);
    const wrong = problem('no-amount', message, { start, end });
    return { statement: statementOf(kind, clean, amount, options), problems: [wrong] };
  }
  return {
    statement: statementOf(kind, clean, found.amount, options),
    problems: [...problems, ...options.problems].slice(0, 1),
  };
}

/** `1.000 g` is one gram where a point is the decimal sign and a kilogram where it parts thousands. */
export function pointProblems(tokens: readonly IToken[]): SyntaxProblem[] {
  return tokens.flatMap((token) => {
    const quantity = t.quantityOf(token);
    if (quantity === undefined || !/^[1-9]\d{0,2}\.\d{3}$/.test(quantity.number)) return [];
    if (!['g', 'ml', 'pieces'].includes(units.get(quantity.unit)?.canonical ?? '')) return [];
    const tail = token.image.slice(quantity.number.length);
    // Where no zero can go, one more shows that the point is a decimal point.
    const shortest = String(Number(quantity.number));
    const one = `${shortest === quantity.number ? `${shortest}0` : shortest}${tail}`;
    const thousand = `${quantity.number.replace('.', '')}${tail}`;
    const message = `“${token.image}” is read as ${one}. Write ${one} or ${thousand}, so that nobody reads it the other way.`;
    const fixes = [
      replaceFix(`Write ${thousand}`, quantity, thousand),
      replaceFix(`Write ${one}`, quantity, one),
    ];
    return [problem('point-or-thousand', message, { start: quantity.start, end: quantity.end }, ...fixes)];
  });
}

interface Options {
  readonly celsius?: number;
  readonly readyMinutes?: number;
  readonly problems: readonly SyntaxProblem[];
}

function statementOf(
  kind: 'ingredient' | 'planned',
  name: Name,
  amount: Amount,
  options: Options = { problems: [] },
): IngredientStatement | PlannedStatement {
  if (kind === 'planned') {
    return {
      kind,
      name,
      amount,
      ...(options.readyMinutes === undefined ? {} : { readyMinutes: options.readyMinutes }),
    };
  }
  return { kind, name, amount, ...(options.celsius === undefined ? {} : { celsius: options.celsius }) };
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
    const type = tokens[index]!.tokenType;
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
    if (inName.has(head[from]!)) continue;
    const type = head[from]!.tokenType;
    if (type === t.Balance || type === t.Remaining) {
      if (from !== head.length - 1) continue;
    } else if (!quantityStarts.has(type)) continue;
    // `to 69 % hydration` starts a word before its number.
    const start = type === t.Percent && from > 0 && head[from - 1]!.tokenType === t.To ? from - 1 : from;
    for (const to of [start + 4, start + 3, start + 2, start + 1]) {
      if (to > head.length) continue;
      const read = readAmount(line, head.slice(start, to));
      if ('value' in read) return { from: start, to, amount: read.value };
    }
  }
  return undefined;
}

function signProblems(amount: Amount): SyntaxProblem[] {
  const value =
    amount.kind === 'fraction' || amount.kind === 'hydration'
      ? amount.fraction
      : amount.kind === 'mass'
        ? amount.grams
        : amount.kind === 'volume'
          ? amount.millilitres
          : amount.kind === 'count'
            ? amount.count
            : 0;
  return value < 0
    ? [problem('negative-amount', 'An amount cannot be below nothing. Take the minus sign out.', amount)]
    : [];
}

function colonBeforeAmount(colon: IToken): SyntaxProblem {
  const span = { start: colon.startOffset, end: t.endOf(colon) };
  return problem(
    'stray-colon',
    'No colon goes between an ingredient and its amount.',
    span,
    replaceFix('Take the colon out', span, ' ', true),
  );
}

function cleanName(line: string, tokens: readonly IToken[], colon: IToken): Name {
  const before = tokens.filter((token) => token.startOffset < colon.startOffset);
  return nameOf(line, before) ?? nameBetween(line, colon.startOffset, colon.startOffset);
}

export function strangeCharacter(token: IToken): SyntaxProblem {
  const span = { start: token.startOffset, end: t.endOf(token) };
  if (/^[\p{C}\p{Z}]/u.test(token.image)) {
    const code = token.image.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
    const message = `A character that cannot be seen (U+${code}) stands here. Take it out.`;
    return problem('unreadable', message, span, replaceFix('Take it out', span, '', true));
  }
  return problem(
    'unreadable',
    `“${token.image}” cannot stand here. Take it out, or put the name in quotes: "…".`,
    span,
  );
}

function afterAmount(
  line: string,
  trailing: readonly IToken[],
  kind: 'ingredient' | 'planned',
): SyntaxProblem {
  const first = trailing[0]!;
  const span = { start: first.startOffset, end: t.endOf(trailing[trailing.length - 1]!) };
  const text = line.slice(span.start, span.end);
  const isOption = kind === 'ingredient' ? first.tokenType === t.At : first.image.toLowerCase() === 'ready';
  const example = kind === 'ingredient' ? 'butter  4%, at 8 °C' : 'Morning Tin  24 pieces, ready 07:15';
  if (isOption) {
    let blank = span.start;
    while (blank > 0 && /\s/.test(line[blank - 1]!)) blank--;
    const fix = replaceFix('Put the comma', { start: blank, end: span.start }, ', ', true);
    return problem('missing-comma', `A comma goes before “${text}”: ${example}`, span, fix);
  }
  return problem(
    'after-amount',
    `Only a comma and ${kind === 'ingredient' ? 'a temperature' : 'a time'} may follow the amount, and “${text}” is neither: ${example}`,
    span,
  );
}

function amountFirst(
  line: string,
  trailing: readonly IToken[],
  amount: Amount,
  kind: 'ingredient' | 'planned',
  options: Options,
): LineRead {
  const name = nameOf(line, trailing);
  if (name === undefined) return nameless(amount.start, amount.end, kind);
  const span = { start: amount.start, end: name.end };
  const swapped = `${line.slice(name.start, name.end)}  ${line.slice(amount.start, amount.end)}`;
  return {
    statement: statementOf(kind, name, amount, options),
    problems: [
      problem(
        'amount-first',
        `The name comes first, then its amount: ${swapped}`,
        span,
        replaceFix('Put the name first', span, swapped, true),
      ),
    ],
  };
}

function nameless(start: number, end: number, kind: 'ingredient' | 'planned'): LineRead {
  const which = kind === 'ingredient' ? 'ingredient' : 'formula';
  const message = `Which ${which}? Its name stands before the amount.`;
  return {
    statement: { kind: 'unreadable' },
    problems: [problem('missing-name', message, { start, end })],
  };
}

function unknownAmount(reason: string, at: number): Amount {
  return { kind: 'unknown', reason, start: at, end: at };
}

function withoutAmount(line: string, head: readonly IToken[], kind: 'ingredient' | 'planned'): LineRead {
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
    if (quantity.kind === 'bare') {
      const whole = nameOf(line, head)!;
      const message =
        kind === 'ingredient'
          ? `“${quantity.number}” of what? Write a unit: ${quantity.number}% of flour, or ${quantity.number} g.`
          : `“${quantity.number}” of what? Write a unit: ${quantity.number} pieces, or ${quantity.number} kg.`;
      const written = kind === 'ingredient' ? ['%', ' g'] : [' pieces', ' kg'];
      const fixes = written.map((unit, index) =>
        insertFix(`Write ${quantity.number}${unit}`, quantity.end, unit, index === 0),
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
  const whole = nameOf(line, head)!;
  const strange = head.find((token) => token.tokenType === t.Unknown);
  if (strange !== undefined)
    return { statement: { kind: 'unreadable' }, problems: [strangeCharacter(strange)] };
  if (last.tokenType === t.Colon) return colonAtEnd(last);
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
  kind: 'ingredient' | 'planned',
  name: Name,
  quantity: Extract<NonNullable<ReturnType<typeof t.quantityOf>>, { kind: 'grouped' }>,
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

/** The message for a number written with marks between its thousands. */
export function twoReadings(written: string, readings: readonly string[]): string {
  return readings.length > 1
    ? `“${written}” can be read two ways. Write ${readings.join(' or ')}.`
    : `“${written}” is written in groups of three. Write ${readings[0]}.`;
}

/** The finding for a range where one value is needed. */
export function rangeProblem(quantity: Extract<Quantity, { kind: 'range' }>, written: string): SyntaxProblem {
  const span = { start: quantity.start, end: quantity.end };
  const fixes = [quantity.low, quantity.high].map((end) => replaceFix(`Write ${end}`, span, end));
  const message = `“${written}” is a range; one value is needed. Choose one end and keep the other in a comment.`;
  return problem('range', message, span, ...fixes);
}

function readOptions(line: string, tokens: readonly IToken[], kind: 'ingredient' | 'planned'): Options {
  if (tokens.length === 0) return { problems: [] };
  const span = { start: tokens[0]!.startOffset, end: t.endOf(tokens[tokens.length - 1]!) };
  const [first, second, third] = tokens;
  const quantity = second === undefined ? undefined : t.quantityOf(second);
  if (third === undefined && first !== undefined) {
    if (kind === 'ingredient' && first.tokenType === t.At) {
      if (quantity?.kind === 'temperature') return { celsius: quantity.celsius, problems: [] };
      if (second === undefined) return { problems: [] };
      if (quantity?.kind === 'range') return { problems: [rangeProblem(quantity, second.image)] };
      if (quantity?.kind === 'bare') {
        const fixes = [' °C', ' °F'].map((unit, index) =>
          insertFix(`Write ${quantity.number}${unit}`, quantity.end, unit, index === 0),
        );
        const message = `“${quantity.number}” of what? Write a unit: at ${quantity.number} °C`;
        return { problems: [problem('missing-unit', message, quantity, ...fixes)] };
      }
    }
    if (kind === 'planned' && first.image.toLowerCase() === 'ready') {
      if (quantity?.kind === 'clock') return { readyMinutes: quantity.minutes, problems: [] };
      if (second === undefined) return { problems: [] };
    }
  }
  const known = kind === 'ingredient' ? 'a temperature, like “at 8 °C”' : 'a time, like “ready 07:15”';
  const message = `After the comma goes ${known}; “${line.slice(span.start, span.end)}” is not known here. Put other words after a #.`;
  return { problems: [problem('unknown-option', message, span)] };
}
