import type { IToken } from 'chevrotain';
import { foldName } from '../text/names.ts';
import { nearestWord } from '../text/nearest.ts';
import type { Span } from '../text/span.ts';
import { readValue } from './grammar.ts';
import { lackingInPrice, meantValue } from './meant-value.ts';
import { nameOf } from './names.ts';
import { groupedProblem, pointProblems, rangeProblem, strangeCharacter } from './number-problems.ts';
import { insertFix, problem, replaceFix } from './problem.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement, SectionKind, SyntaxProblem, Value } from './tree.ts';
import { wrongSize } from './value-size.ts';
import {
  doughForms,
  type Form,
  findProperty,
  holdsIngredients,
  type Property,
  properties,
  wordsOfForm,
} from './vocabulary.ts';

export const wordTypes = (token: IToken): boolean =>
  token.tokenType !== t.Quoted && t.quantityOf(token) === undefined;

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
  while (words < tokens.length && wordTypes(tokens[words]!) && tokens[words]!.tokenType !== t.Comma) words++;
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
  const before = words > 1 ? tokens[words - 1]!.tokenType : undefined;
  const whole = colon > 0 ? colon : before === t.From || before === t.At ? words - 1 : words;
  const exact = findProperty(section, text(0, whole));
  if (exact !== undefined && whole > 0) return { property: exact, length: whole };
  if (words > 1 && text(0, 1) === 'draws' && tokens[1]!.tokenType === t.All) {
    const draws = findProperty(section, 'draws');
    if (draws !== undefined) return { property: draws, length: 1 };
  }
  const form = findProperty(section, 'form');
  if (form !== undefined && text(0, 1) === 'form' && words === tokens.length && words === 2) {
    const word = text(1, 2);
    if ((doughForms as readonly string[]).includes(word)) return { property: form, length: 1 };
  }
  return undefined;
}

/** Reads a line that says a property, or says in a baker's words why it cannot. */
export function readProperty(
  line: string,
  tokens: readonly IToken[],
  property: Property,
  length: number,
): LineRead {
  const head = tokens[0]!;
  const keyword = { start: head.startOffset, end: t.endOf(tokens[length - 1]!) };
  let rest = tokens.slice(length);
  // `protein: 12%`: say so, and read it as if the colon were not there.
  let colon: SyntaxProblem | undefined;
  if (rest[0]?.tokenType === t.Colon) {
    const span = { start: rest[0].startOffset, end: t.endOf(rest[0]) };
    const message = `No colon goes between “${property.word}” and its value.`;
    colon = problem('stray-colon', message, span, replaceFix('Take the colon out', span, '', true));
    rest = rest.slice(1);
  }
  const last = rest[rest.length - 1];
  const valueSpan =
    last === undefined
      ? { start: keyword.end, end: keyword.end }
      : { start: rest[0]!.startOffset, end: t.endOf(last) };
  const statement: PropertyStatement = { kind: 'property', property: property.word, keyword, valueSpan };
  if (last === undefined) {
    const message = `“${property.word}” needs its value: ${property.example}`;
    return { statement, problems: [colon ?? problem('missing-value', message, keyword)] };
  }
  const read = readValue(line, rest as IToken[], property.form);
  if ('value' in read) {
    const wrong = wrongWord(read.value, property);
    if (wrong !== undefined) return { statement, problems: [wrong] };
    const value = withCanonicalWord(read.value, property);
    const bad = wrongSize(value, property, valueSpan);
    if (bad !== undefined) return { statement, problems: [bad] };
    const problems = [...(colon === undefined ? [] : [colon]), ...pointProblems(rest)].slice(0, 1);
    return { statement: { ...statement, value }, problems };
  }
  return { statement, problems: [valueProblem(line, rest, property, read.stoppedAt)] };
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
    const fixes = /^[A-Z]{3}$/.test(upper) ? [replaceFix(`Write ${upper}`, value.span, upper, true)] : [];
    return problem('wrong-value', 'A currency is three capitals: EUR', value.span, ...fixes);
  }
  const allowed = wordsOfForm[property.form];
  if (allowed === undefined || allowed.some((one) => foldName(one) === foldName(value.word)))
    return undefined;
  const meant = nearestWord(foldName(value.word), allowed);
  const fixes = meant === undefined ? [] : [replaceFix(`Write ${meant}`, value.span, meant, true)];
  return problem('wrong-value', `“${property.word}” is one of ${allowed.join(', ')}.`, value.span, ...fixes);
}

function valueProblem(
  line: string,
  rest: readonly IToken[],
  property: Property,
  stoppedAt: IToken | undefined,
): SyntaxProblem {
  const at = stoppedAt ?? rest[rest.length - 1]!;
  const end = t.endOf(rest[rest.length - 1]!);
  const span = { start: at.startOffset, end: t.endOf(at) };
  const quantity = t.quantityOf(at);
  const strange = rest.find((token) => token.tokenType === t.Unknown);
  const meant = meantProblem(line.slice(rest[0]!.startOffset, end), property, {
    start: rest[0]!.startOffset,
    end,
  });
  if (meant !== undefined) return meant;
  if (strange !== undefined) return strangeCharacter(strange);
  if (quantity?.kind === 'range' && property.form === 'massRange') {
    const both = `${quantity.low} to ${quantity.high}`;
    const message = `Write both ends with their unit: ${both}`;
    return problem('range', message, span, replaceFix(`Write ${both}`, span, both, true));
  }
  if (quantity?.kind === 'range') return rangeProblem(quantity, at.image);
  if (quantity?.kind === 'grouped') return groupedProblem(quantity, at.image);
  const atSpeedNumber = quantity?.kind === 'bare' && at === rest[0] && isSpeed.has(property.form);
  if (quantity?.kind === 'bare' && at === rest[rest.length - 1] && !atSpeedNumber) {
    const units = unitsWanted(property.form, rest[rest.length - 2]);
    if (units !== undefined) {
      const fixes = units.map((unit, index) =>
        insertFix(`Write ${quantity.number}${unit}`, quantity.end, unit, index === 0),
      );
      return problem(
        'missing-unit',
        `“${quantity.number}” of what? Write a unit: ${property.example}`,
        span,
        ...fixes,
      );
    }
  }
  if (stoppedAt === undefined || (atSpeedNumber && rest.length === 1)) {
    return problem(
      'missing-value',
      `“${property.word}” is not finished. It reads like: ${property.example}`,
      { start: Math.max(0, end - 1), end },
    );
  }
  const text = line.slice(at.startOffset, end);
  return problem(
    'wrong-value',
    `“${text}” does not fit here. “${property.word}” reads like: ${property.example}`,
    { start: at.startOffset, end },
  );
}

/** The finding for a value of which it is plain what was meant, or what is lacking. */
function meantProblem(text: string, property: Property, span: Span): SyntaxProblem | undefined {
  const meant = meantValue(property.form, text);
  if (meant !== undefined && 'value' in readValue(meant, t.cutLine(meant).meaning, property.form)) {
    const message = `“${text}” does not fit here. Write: ${property.word} ${meant}`;
    return problem('wrong-value', message, span, replaceFix(`Write ${meant}`, span, meant, true));
  }
  const lacking = property.form === 'price' ? lackingInPrice(text) : undefined;
  return lacking === undefined ? undefined : problem('wrong-value', lacking, span);
}

const isSpeed: ReadonlySet<Form> = new Set(['machineSpeed', 'mixSpeed']);

/** The units that a bare number at the end may have been meant in, after the token before it. */
function unitsWanted(form: Form, before: IToken | undefined): readonly string[] | undefined {
  const type = before?.tokenType;
  if (type === t.At && form === 'heldAt') return [' °C', ' °F'];
  if (type === t.At && form === 'settles') return [' g', ' kg'];
  if (type === t.Of && form === 'yield') return [' g', ' kg'];
  if (type === t.Warms) return [' °C/min'];
  if (type === t.Develops) return [' times'];
  if (before === undefined && form === 'reading') return [' min'];
  if (before === undefined && form === 'rise') return ['%'];
  return unitsFor[form];
}

const unitsFor: Partial<Record<Form, readonly string[]>> = {
  temperature: [' °C', ' °F'],
  difference: [' °C', ' °F'],
  mass: [' g', ' kg'],
  volume: [' ml'],
  pieces: [' pieces'],
  ovenLoad: [' pieces', ' kg'],
  percent: ['%'],
  protein: ['%'],
  duration: [' min', ' h'],
  heldAt: [' h', ' min'],
  settles: [' min'],
  times: [' times'],
  energy: [' kJ', ' kcal'],
  density: [' g/ml'],
  massRange: [' kg', ' g'],
  machineSpeed: [' rpm'],
  mixSpeed: [' min'],
  yield: [' kg', ' g', ' pieces'],
  reading: [' °C'],
  rise: [' min'],
  trialWater: [' °C', ' kg'],
};

export const withArticle = (section: SectionKind): string =>
  `${section === 'ingredient' ? 'An' : 'A'} ${section}`;

/** The finding for a word that no property of the section is called by. */
export function unknownProperty(line: string, tokens: readonly IToken[], section: SectionKind): LineRead {
  const words: IToken[] = [];
  for (const token of tokens) {
    if (!wordTypes(token)) break;
    words.push(token);
  }
  const first = nameOf(line, words.length === 0 ? tokens.slice(0, 1) : words)!;
  const known = properties[section].map((one) => one.word);
  const meant =
    nearestWord(first.folded, known) ??
    known.find((word) => word.startsWith(`${first.folded} `)) ??
    nearestWord(words[0]?.image.toLowerCase() ?? '', known);
  const span = { start: first.start, end: first.end };
  const statement = { kind: 'unreadable' } as const;
  if (meant !== undefined) {
    const at =
      nearestWord(first.folded, [meant]) === undefined &&
      !meant.startsWith(first.folded) &&
      words[0] !== undefined
        ? { start: span.start, end: t.endOf(words[0]) }
        : span;
    const message = `${withArticle(section)} says nothing called “${line.slice(at.start, at.end)}”. Is it “${meant}”?`;
    return {
      statement,
      problems: [problem('unknown-property', message, at, replaceFix(`Write ${meant}`, at, meant, true))],
    };
  }
  const message = `${withArticle(section)} says nothing called “${first.text}”. It may say ${known.join(', ')}.`;
  return { statement, problems: [problem('unknown-property', message, span)] };
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
