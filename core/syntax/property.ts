import type { IToken } from 'chevrotain';
import { elementAt, firstOf, lastOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { nearestWord } from '../text/nearest.ts';
import { message } from '../words/message.ts';
import { readValue } from './grammar.ts';
import { leadingWords, nameOf, wordTypes } from './name-reading.ts';
import { groupedProblem, pointProblems, rangeProblem, strangeCharacter } from './number-problems.ts';
import { colonOutFix, problem, unitFixes, writeFix } from './problem.ts';
import type { Form, Property } from './shared-properties.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement, SectionKind, Value } from './tree.ts';
import { unitsWanted } from './units-wanted.ts';
import { meantValue, percentOfWhat } from './value-meant.ts';
import { wrongSize } from './value-size.ts';
import { doughForms, findProperty, holdsIngredients, properties, wordsOfForm } from './vocabulary.ts';

/**
 * The property that a line says, with the number of tokens its word takes; `undefined` when the line says none.
 * Among ingredients the words before the first quantity must be the property and nothing else, so that
 * `water kefir 3%` stays an ingredient; elsewhere the longest property that begins the line is taken.
 */
export function findPropertyOf(
  tokens: readonly IToken[],
  section: SectionKind,
): { property: Property; length: number } | undefined {
  let words = 0;
  while (
    words < tokens.length &&
    wordTypes(elementAt(tokens, words)) &&
    elementAt(tokens, words).tokenType !== t.Comma
  )
    words++;
  const text = (from: number, to: number): string =>
    tokens
      .slice(from, to)
      .map((token) => token.image.toLowerCase())
      .join(' ');
  if (!holdsIngredients(section)) {
    for (let length = Math.min(words, 4); length > 0; length--) {
      const property = findProperty(section, text(0, length));
      if (property !== undefined) return { property, length };
    }
    return undefined;
  }
  // `yield: 24 pieces of 880 g`
  const colon = tokens.slice(0, words).findIndex((token) => token.tokenType === t.Colon);
  const before = words > 1 ? elementAt(tokens, words - 1).tokenType : undefined;
  const whole = colon > 0 ? colon : before === t.From || before === t.At ? words - 1 : words;
  const exact = findProperty(section, text(0, whole));
  if (exact !== undefined && whole > 0) return { property: exact, length: whole };
  if (words > 1 && text(0, 1) === 'draws' && elementAt(tokens, 1).tokenType === t.All) {
    const draws = findProperty(section, 'draws');
    if (draws !== undefined) return { property: draws, length: 1 };
  }
  const without = findProperty(section, 'without');
  if (without !== undefined && words > 1 && text(0, 1) === 'without' && quantityFree(tokens))
    return { property: without, length: 1 };
  const form = findProperty(section, 'form');
  if (form !== undefined && text(0, 1) === 'form' && words === tokens.length && words === 2) {
    const word = text(1, 2);
    if ((doughForms as readonly string[]).includes(word)) return { property: form, length: 1 };
  }
  return undefined;
}

/** Whether a line holds names alone: `without milk, spelt 630`, and no `without milk 3%`. */
const quantityFree = (tokens: readonly IToken[]): boolean =>
  tokens.every((token) => (t.quantityOf(token)?.kind ?? 'bare') === 'bare');

/** Reads a line that says a property, or says in a baker's words why it cannot. */
export function readProperty(
  line: string,
  tokens: readonly IToken[],
  property: Property,
  length: number,
): LineRead {
  const head = firstOf(tokens);
  const keyword = { start: head.startOffset, end: t.endOf(elementAt(tokens, length - 1)) };
  let rest = tokens.slice(length);
  // `protein: 12%`: say so, and read it as if the colon were not there.
  let colon: SyntaxProblem | undefined;
  if (rest[0]?.tokenType === t.Colon) {
    const span = { start: rest[0].startOffset, end: t.endOf(rest[0]) };
    const said = message('stray-colon.property', { property: property.word });
    colon = problem('stray-colon', said, span, colonOutFix(span));
    rest = rest.slice(1);
  }
  const last = rest[rest.length - 1];
  const valueSpan =
    last === undefined
      ? { start: keyword.end, end: keyword.end }
      : { start: firstOf(rest).startOffset, end: t.endOf(last) };
  const statement: PropertyStatement = { kind: 'property', property: property.word, keyword, valueSpan };
  if (last === undefined) {
    const said = message('missing-value.none', { property: property.word, example: property.example });
    return { statement, problems: [colon ?? problem('missing-value', said, keyword)] };
  }
  const read = readValue(line, rest as IToken[], property.form);
  if ('value' in read) {
    const wrong = wrongWord(read.value, property);
    if (wrong !== undefined) return { statement, problems: [wrong] };
    const value = withCanonicalWord(read.value, property);
    if (value.form === 'testedDough' && value.unread !== undefined) {
      const { text, start, end } = value.unread;
      const meant = meantValue(line, rest, property);
      if (meant !== undefined) return { statement, problems: [meant.problem] };
      const said = message('wrong-value.dough-part', { written: text, example: property.example });
      return { statement, problems: [problem('wrong-value', said, { start, end })] };
    }
    const bad = wrongSize(value, property, valueSpan);
    if (bad !== undefined) return { statement, problems: [bad] };
    const problems = [...(colon === undefined ? [] : [colon]), ...pointProblems(rest)].slice(0, 1);
    return { statement: { ...statement, value }, problems };
  }
  const meant = meantValue(line, rest, property);
  if (meant?.value !== undefined)
    return {
      statement: { ...statement, value: meant.value },
      problems: [withoutColon(meant.problem, colon)],
    };
  return { statement, problems: [meant?.problem ?? valueProblem(line, rest, property, read.stoppedAt)] };
}

/** A finding whose fixes also take the colon out that stands before the value. */
function withoutColon(found: SyntaxProblem, colon: SyntaxProblem | undefined): SyntaxProblem {
  if (colon === undefined) return found;
  const out = colon.fixes.flatMap(({ edits }) => edits);
  return { ...found, fixes: found.fixes.map((fix) => ({ ...fix, edits: [...out, ...fix.edits] })) };
}

/** What a text of the notation says as a property of a section; `undefined` where it has a problem or says none. */
export function readPlainProperty(text: string, section: SectionKind): PropertyStatement | undefined {
  const { meaning } = t.cutLine(text);
  const found = findPropertyOf(meaning, section);
  if (found === undefined) return undefined;
  const { statement, problems } = readProperty(text, meaning, found.property, found.length);
  return problems.length === 0 && statement.kind === 'property' && statement.value !== undefined
    ? statement
    : undefined;
}

function withCanonicalWord(value: Value, property: Property): Value {
  const allowed = wordsOfForm[property.form];
  if (value.form !== 'word' || allowed === undefined) return value;
  const word = allowed.find((one) => foldName(one) === foldName(value.word));
  return word === undefined ? value : { ...value, word };
}

function wrongWord(value: Value, property: Property): SyntaxProblem | undefined {
  if (value.form !== 'word') return undefined;
  if (property.form === 'currency') {
    if (/^[A-Z]{3}$/.test(value.word)) return undefined;
    const upper = value.word.toUpperCase();
    const fixes = /^[A-Z]{3}$/.test(upper) ? [writeFix(value.span, upper, true)] : [];
    return problem('wrong-value', message('wrong-value.currency'), value.span, ...fixes);
  }
  const allowed = wordsOfForm[property.form];
  if (allowed === undefined || allowed.some((one) => foldName(one) === foldName(value.word)))
    return undefined;
  const meant = nearestWord(foldName(value.word), allowed);
  const fixes = meant === undefined ? [] : [writeFix(value.span, meant, true)];
  const said = message('wrong-value.no-such-word', { property: property.word, words: allowed });
  return problem('wrong-value', said, value.span, ...fixes);
}

function valueProblem(
  line: string,
  rest: readonly IToken[],
  property: Property,
  stoppedAt: IToken | undefined,
): SyntaxProblem {
  const at = stoppedAt ?? lastOf(rest);
  const end = t.endOf(lastOf(rest));
  const span = { start: at.startOffset, end: t.endOf(at) };
  const quantity = t.quantityOf(at);
  const strange = rest.find((token) => token.tokenType === t.Unknown);
  if (strange !== undefined) return strangeCharacter(strange);
  const asksOf = property.form === 'load' ? percentOfWhat(line, rest.slice(rest.indexOf(at))) : undefined;
  if (asksOf !== undefined) return asksOf;
  if (quantity?.kind === 'range' && property.form === 'massRange') {
    const both = `${quantity.low} to ${quantity.high}`;
    const said = message('range.both-units', { meant: both });
    return problem('range', said, span, writeFix(span, both, true));
  }
  if (quantity?.kind === 'range') return rangeProblem(quantity, at.image);
  if (quantity?.kind === 'grouped') {
    const isBehindName = property.form === 'stock' && at !== rest[0];
    const behind = isBehindName ? line.slice(firstOf(rest).startOffset, at.startOffset).trimEnd() : undefined;
    return groupedProblem(quantity, at.image, behind);
  }
  const atSpeedNumber = quantity?.kind === 'bare' && at === rest[0] && isSpeed.has(property.form);
  if (quantity?.kind === 'bare' && at === rest[rest.length - 1] && !atSpeedNumber) {
    const units = unitsWanted(property.form, rest.at(-2), rest.at(-3));
    if (units !== undefined) {
      // No room, water or dough is that hot in degrees Celsius.
      const isHot = quantity.value > (property.form === 'temperature' ? 45 : 60) && units.includes(' °F');
      const turned = isHot && property.form !== 'heldAt' ? [...units].reverse() : units;
      const fixes = unitFixes(quantity.number, turned, quantity, isHot && turned === units ? -1 : 0);
      const said = message('missing-unit.other', { written: quantity.number, example: property.example });
      return problem('missing-unit', said, span, ...fixes);
    }
  }
  if (stoppedAt === undefined || (atSpeedNumber && rest.length === 1)) {
    const said = message('missing-value.unfinished', { property: property.word, example: property.example });
    return problem('missing-value', said, { start: Math.max(0, end - 1), end });
  }
  const said = message('wrong-value.other-form', {
    written: line.slice(at.startOffset, end),
    property: property.word,
    example: property.example,
  });
  return problem('wrong-value', said, { start: at.startOffset, end });
}

const isSpeed: ReadonlySet<Form> = new Set(['machineSpeed', 'mixSpeed']);

/** The finding for a word that no property of the section is called by. */
export function unknownProperty(line: string, tokens: readonly IToken[], section: SectionKind): LineRead {
  const words = leadingWords(tokens);
  const first = nameOf(line, words.length === 0 ? tokens.slice(0, 1) : words)!;
  const known = properties[section].map((one) => one.word);
  const near =
    nearestWord(first.folded, known) ??
    known.find((word) => word.startsWith(`${first.folded} `)) ??
    nearestWord(words[0]?.image.toLowerCase() ?? '', known);
  const note = noteInstead(line, tokens, section);
  const meant =
    note !== undefined && near !== undefined && !isMeant(line, tokens, near, section) ? undefined : near;
  const span = { start: first.start, end: first.end };
  const statement = { kind: 'unreadable' } as const;
  if (meant !== undefined) {
    const at =
      nearestWord(first.folded, [meant]) === undefined &&
      !meant.startsWith(first.folded) &&
      words[0] !== undefined
        ? { start: span.start, end: t.endOf(words[0]) }
        : span;
    const said = message('unknown-property.meant', { section, written: line.slice(at.start, at.end), meant });
    return { statement, problems: [problem('unknown-property', said, at, writeFix(at, meant, true))] };
  }
  if (section === 'experiment' && /^(?:date|day|on)$/.test(words[0]?.image.toLowerCase() ?? '')) {
    const said = message('unknown-property.day', {
      written: first.text,
      example: 'experiment Wet and dry, 2026-05-15:',
    });
    return { statement, problems: [problem('unknown-property', said, span)] };
  }
  if (note !== undefined) return { statement, problems: [note] };
  const said = message('unknown-property.none', { section, name: first.text, words: known });
  return { statement, problems: [problem('unknown-property', said, span)] };
}

/** Whether a line reads as the property that its first words were taken for a slip of. */
function isMeant(line: string, tokens: readonly IToken[], meant: string, section: SectionKind): boolean {
  const count = meant.split(' ').length;
  const rest = tokens.slice(Math.min(count, leadingWords(tokens).length));
  const property = findProperty(section, meant);
  return (
    property !== undefined &&
    (rest.length === 0 || 'value' in readValue(line, rest as IToken[], property.form))
  );
}

/** What else stands on a sheet of the mill, beside what the notation works with. */
const ofTheMill = /^(?:W|P\/L|P|L|G|Ie|falling|FN|fallzahl|gluten|wet|dry|amylase|maltose)$/i;

/**
 * `score 7/10`, `proof 50 min` in a trial, which measures none of it, and `W 320` of a flour, with which nothing is worked out: it may stand
 * as a note.
 */
function noteInstead(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
): SyntaxProblem | undefined {
  const isOfMill = section === 'flour' && ofTheMill.test(firstOf(tokens).image);
  if (tokens.length < 2 || !(section === 'trial' || isOfMill)) return undefined;
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const written = line.slice(span.start, span.end);
  const meant = `note ${written}`;
  // What is measured may be meant in other words, and a step or an ingredient may stand in the wrong section.
  const isPlain = tokens.every((token) => ['bare', undefined].includes(t.quantityOf(token)?.kind));
  const words = isOfMill
    ? ['protein', 'absorption', 'peak', 'stability']
    : properties.trial.map((one) => one.word).filter((word) => word !== 'note');
  const code = isOfMill ? 'unknown-property.note-of-flour' : 'unknown-property.note-of-trial';
  const said = message(code, { written, meant, words });
  return problem('unknown-property', said, span, writeFix(span, meant, isPlain));
}

const beginsName: ReadonlySet<Form> = new Set(['duration', 'mixedIn']);

/**
 * Whether a line of a trial is of a part whose name begins like a property: `mixed seeds soaker 18 °C`, `rest sponge 18 °C`.
 * A word of a form behind the property, as in `mixed in` and `rest for`, makes it that property.
 */
export function isPartThatBegins({ form }: Property, length: number, tokens: readonly IToken[]): boolean {
  const next = tokens[length];
  return (
    beginsName.has(form) &&
    next !== undefined &&
    wordTypes(next) &&
    ![t.In, t.By, t.For, t.At, t.Colon, t.Comma].includes(next.tokenType)
  );
}

/** `trial` takes the temperature of a part by its name: `night poolish 18 °C`. */
export function readPartTemperature(line: string, tokens: readonly IToken[]): LineRead | undefined {
  const last = tokens[tokens.length - 1];
  const quantity = last === undefined ? undefined : t.quantityOf(last);
  const name = nameOf(line, tokens.slice(0, -1));
  if (
    quantity?.kind !== 'temperature' ||
    name === undefined ||
    tokens.slice(0, -1).some((token) => !wordTypes(token))
  )
    return undefined;
  const statement: PropertyStatement = {
    kind: 'property',
    property: 'part temperature',
    keyword: { start: name.start, end: name.end },
    valueSpan: { start: quantity.start, end: quantity.end },
    value: { form: 'partTemperature', name, celsius: quantity.celsius },
  };
  return { statement, problems: [] };
}
