import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { goesInAlone } from './goes-in.ts';
import { byHandAlone, handPhrase, handVerb } from './hand-words.ts';
import { everything, fillers, goesIn, loads, manners, rests, speeds, time, works } from './mix-words.ts';
import { problem, replaceFix } from './problem.ts';
import { readPlainProperty } from './property.ts';
import { readNumber } from './quantity.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement } from './tree.ts';

/**
 * A line of a mix in a baker's own words, `add butter bit by bit, mix 8 min fast`, as the lines of the notation that say the
 * same. Every word of it that is no sign of joining is in them: as a name, a time, a speed, or a remark behind a `#`.
 */

/** A piece of a written line: some text of ours, or text of the line from a column on. */
interface Piece {
  readonly text: string;
  readonly at?: number;
  /** Says how much of the name behind it goes in. */
  readonly isPortion?: true;
}

interface Written {
  readonly pieces: readonly Piece[];
  readonly isRun: boolean;
  /** Whether what goes in is plain without a time behind it: `everything in`, `salt`. */
  readonly saysWhat?: boolean;
  /** Where it stands in the line. */
  readonly span: Span;
}

const unitNames: Readonly<Record<string, string>> = { h: 'h', m: 'min', "'": 'min', '′': 'min', s: 's' };

/**
 * Reads a line of a mix that the notation does not have in these words; `undefined` where some of it means nothing known. By hand there
 * are no speeds: what is mixed is kneaded.
 */
export function readMixSaid(line: string, tokens: readonly IToken[], byHand = false): LineRead | undefined {
  const span = {
    start: elementAt(tokens, 0).startOffset,
    end: t.endOf(elementAt(tokens, tokens.length - 1)),
  };
  const remarks: string[] = [];
  const written =
    untilSeen(line.slice(span.start, span.end), span) ??
    (byHand ? undefined : sumOfTimes(line.slice(span.start, span.end), span)) ??
    writtenOf(line.slice(span.start, span.end), span.start, remarks, byHand);
  if (written === undefined) return undefined;
  const whole = line.slice(span.start, span.end);
  const isSaid = written.some(({ isRun, saysWhat }) => isRun || saysWhat);
  if (!isSaid && !everything.test(whole) && !goesIn.test(whole)) return undefined;
  const statements = written.map((one) => statementOf(one));
  if (statements.some((one) => one === undefined)) return undefined;
  const [statement, ...further] = statements as PropertyStatement[];
  if (statement === undefined) return undefined;
  const lines = written.map(({ pieces }) => pieces.map(({ text }) => text).join(''));
  const remark = remarks.length === 0 ? '' : `  # ${remarks.join(', ')}`;
  const indent = line.slice(0, span.start).trim() === '' ? line.slice(0, span.start) : '  ';
  const meant = lines.join(`\n${indent}`) + remark;
  const found = message('unknown-property.mix-said', { meant: lines.join(', ') });
  const fix = replaceFix(message('fix.write', { meant: lines.join(', ') }), span, meant, true);
  return { statement, problems: [problem('unknown-property', found, span, fix)], further };
}

/** `until window`, `check window`, `scrape down`: what the baker looks for or does beside it, and no time. */
function untilSeen(text: string, span: Span): Written[] | undefined {
  if (
    !/^(?:(?:un)?till?|check|look for|watch|see that|scrape|cover|clean)\s+\S/i.test(text) ||
    time.test(text)
  )
    return undefined;
  return [{ span, isRun: false, saysWhat: true, pieces: [{ text: 'note ' }, { text, at: span.start }] }];
}

/** `6 + 2 min`, `slow 6, fast 2`: minutes slow, then minutes fast. Common practice in German bakeries, no source. */
function sumOfTimes(text: string, span: Span): Written[] | undefined {
  const found =
    /^(\d{1,2}) ?\+ ?(\d{1,2}) ?(?:min(?:utes)?|'|′)\.?$/i.exec(text) ??
    /^slow:? (\d{1,2}) ?[,+/]? ?fast:? (\d{1,2})$/i.exec(text);
  return found?.slice(1).map((minutes, index) => ({
    span,
    isRun: true,
    pieces: [{ text: `speed ${index + 1} for ${minutes} min` }],
  }));
}

/** The lines that a text of a line says; remarks are added to the list. */
function writtenOf(text: string, from: number, remarks: string[], byHand: boolean): Written[] | undefined {
  const written: Written[] = [];
  let names: { readonly all: Piece[]; readonly span: Span; readonly word: 'load' | 'add' } | undefined;
  const flush = (): void => {
    if (names === undefined) return;
    const { all, span, word } = names;
    const saysWhat = all.every(
      ({ text, isPortion }) => isPortion === true || text === ', ' || text === 'all' || goesInAlone(text),
    );
    written.push({ span, isRun: false, saysWhat, pieces: [{ text: `${word} ` }, ...all] });
    names = undefined;
  };
  let verb: Verb | undefined;
  // What is named before a time goes in for it: `flour, water: 4 min slow`.
  const isTimed = time.test(text);
  for (const clause of clausesOf(text)) {
    const start = from + clause.start;
    const read = readClause(clause.text, start, verb, byHand);
    if (read === undefined) return undefined;
    verb = read.verb;
    const span = { start, end: start + clause.text.length };
    if (read.names.length > 0) {
      // `add yolks, sugar, honey` goes on with names; a verb begins another load.
      if (names !== undefined && !read.begins) names.all.push({ text: ', ' }, ...read.names);
      else {
        flush();
        // `olives, 1 min slow`: a name alone goes in where its line says that it is mixed; `everything` is what is loaded.
        const isPlain = read.all || goesInAlone(read.names.find((one) => one.isPortion !== true)?.text ?? '');
        if (read.verb === undefined && read.run === undefined && !isPlain && !isTimed) return undefined;
        names = {
          all: [...read.names],
          span,
          word: read.verb === 'load' || (read.verb === undefined && !read.all) ? 'add' : 'load',
        };
      }
    }
    remarks.push(...read.remarks);
    if (read.run === undefined) continue;
    flush();
    written.push({ span, isRun: true, pieces: read.run });
  }
  flush();
  return written;
}

interface Clause {
  readonly text: string;
  readonly start: number;
}

/** What stands between signs and words of joining; `and` joins only what has a time before it. */
function clausesOf(text: string): Clause[] {
  const clauses: Clause[] = [];
  let start = 0;
  const push = (end: number): void => {
    const raw = text.slice(start, end);
    const lead = raw.length - raw.trimStart().length;
    if (raw.trim() !== '') clauses.push({ text: raw.trim(), start: start + lead });
  };
  const joint =
    /\s*[;/]\s*|(?<=\p{L})(?<!speed|gear|slow|fast|low|high):\s+(?=\d)|^\+\s+|,(?!\d)\s*|(?<!^[1-4])\.\s+|\.$|\s+(?:then|and then)\s+|\s+(?:and|&|\+)\s+/giu;
  const phrases = [...text.matchAll(handPhrase)];
  for (const found of text.matchAll(joint)) {
    if (phrases.some(({ index, 0: { length } }) => found.index > index && found.index < index + length))
      continue;
    push(found.index);
    start = found.index + found[0].length;
  }
  push(text.length);
  return withSpeedsJoined(clauses).flatMap(withRunsApart);
}

/** `butter over 6 min, speed 1`: a speed alone is that of the time before it. */
function withSpeedsJoined(clauses: readonly Clause[]): Clause[] {
  const joined: Clause[] = [];
  for (const clause of clauses) {
    const before = joined.at(-1);
    const isSpeed = speeds.some(([pattern]) => pattern.exec(clause.text)?.[0].length === clause.text.length);
    if (before === undefined || !isSpeed || !time.test(before.text)) {
      joined.push(clause);
      continue;
    }
    const from = before.start + before.text.length;
    const gap = ' '.repeat(clause.start - from);
    joined[joined.length - 1] = { text: before.text + gap + clause.text, start: before.start };
  }
  return joined;
}

/** `6 min slow 1 min fast`: a clause with several times is as many. */
function withRunsApart(clause: Clause): Clause[] {
  const times = [...clause.text.matchAll(new RegExp(time.source, 'giu'))];
  const second = times[1];
  if (second === undefined) return [clause];
  const at = second.index;
  const rest = { text: clause.text.slice(at), start: clause.start + at };
  return [{ text: clause.text.slice(0, at).trimEnd(), start: clause.start }, ...withRunsApart(rest)];
}

type Verb = 'rest' | 'load' | 'knead' | 'fold' | 'stir' | 'work';

interface ReadClause {
  readonly names: readonly Piece[];
  /** What is done, here or in what stands before. */
  readonly verb: Verb | undefined;
  /** Whether its names are `all` or `everything`. */
  readonly all: boolean;
  /** Whether it says what is done itself. */
  readonly begins: boolean;
  readonly run: readonly Piece[] | undefined;
  readonly remarks: readonly string[];
}

function readClause(
  text: string,
  from: number,
  before: Verb | undefined,
  byHand: boolean,
): ReadClause | undefined {
  const timed = time.exec(text);
  let left = text;
  const takeOut = (at: number, length: number): void => {
    left = left.slice(0, at) + ' '.repeat(length) + left.slice(at + length);
  };
  if (timed !== null) takeOut(timed.index, timed[0].length);
  const remarks: string[] = [];
  let speed: number | undefined;
  for (const [pattern, number] of speeds) {
    const found = timed === null || speed !== undefined ? null : pattern.exec(left);
    if (found === null) continue;
    speed = number;
    if (byHand) remarks.push(found[0].trim());
    takeOut(found.index, found[0].length);
  }
  const own = verbOf(left.trim(), byHand);
  if (own !== undefined) takeOut(left.length - left.trimStart().length, own.length);
  const isEntry = own === undefined && timed === null && !everything.test(left.trim());
  const entry = isEntry ? goesIn.exec(left.trimEnd()) : null;
  if (entry !== null) takeOut(entry.index, entry[0].length);
  const verb = own?.verb ?? (entry === null ? before : 'load');
  const manner = manners.exec(left.trimEnd());
  if (manner !== null) {
    const how = manner[0].trim().replace(/\s*\b(?:over|during|within)$/i, '');
    if (how !== '') remarks.push(how);
    takeOut(manner.index, left.length - manner.index);
  }
  const names = namesIn(left, from);
  if (names === undefined) return undefined;
  // `oil 2 min` is worked in.
  const isWorkedIn = verb === undefined && names.length === 1 && goesInAlone(names[0]?.text ?? '');
  const run = timed === null ? undefined : runOf(timed, from, speed, isWorkedIn ? 'load' : verb, byHand);
  if (timed !== null && run === undefined) return undefined;
  const all = /^all(?: |$)/.test(names[0]?.text ?? '');
  return { names, all, verb, begins: own !== undefined || entry !== null, run, remarks };
}

function verbOf(text: string, byHand: boolean): { readonly verb: Verb; readonly length: number } | undefined {
  const rest = rests.exec(text);
  if (rest !== null) return { verb: 'rest', length: rest[0].length };
  const load = loads.exec(text);
  if (load !== null) return { verb: 'load', length: load[0].length };
  const hand = byHand || byHandAlone.test(text) ? handVerb(text) : undefined;
  if (hand !== undefined) return hand;
  const work = works.exec(text);
  if (work === null) return undefined;
  const verb = /^knead/i.test(text) ? 'knead' : /^stir/i.test(text) ? 'stir' : 'work';
  return { verb, length: work[0].length };
}

/** The name that is left of a clause, in pieces of the line. */
function namesIn(left: string, from: number): Piece[] | undefined {
  const words = [...left.matchAll(/\S+/g)].map((found) => ({ text: found[0], at: found.index }));
  while (words.length > 0 && fillers.test(elementAt(words, 0).text)) words.shift();
  while (words.length > 0 && fillers.test(elementAt(words, words.length - 1).text)) words.pop();
  const [first] = words;
  const last = words.at(-1);
  if (first === undefined || last === undefined) return [];
  const text = left.slice(first.at, last.at + last.text.length);
  const all = everything.exec(text);
  if (all !== null) {
    const but = /\s+(?:but|except|without)\s+(?:the )?/i.exec(text);
    if (but === null) return [{ text: 'all', at: from + first.at }];
    const at = but.index + but[0].length;
    return [{ text: 'all but ' }, { text: text.slice(at), at: from + first.at + at }];
  }
  const heldBack = /^(?:the )?(?:held[ -]back|reserved|second) water$/i.exec(text);
  if (heldBack !== null)
    return [
      { text: 'remaining ', isPortion: true },
      { text: 'water', at: from + first.at + text.length - 5 },
    ];
  const portion = portionIn(text, from + first.at);
  if (portion !== undefined) return portion;
  // A figure in what is left is an amount of something, and no name says it.
  if (/\d\s*(?:%|g|kg|ml|l|oz|lb)(?![\p{L}])/iu.test(text) || /[()]/.test(text)) return undefined;
  return [{ text, at: from + first.at }];
}

/** `90 % of the water`, `1300 g water`, `half the water`, which a load takes as they are. */
function portionIn(text: string, at: number): Piece[] | undefined {
  const [, portion = '', name = ''] =
    /^(\d[\d.,]*\s*(?:%\s+of|(?:g|kg|oz|lb)(?:\s+of)?)|half(?:\s+of)?|(?:the )?rest\s+of)\s+(?:the\s+)?(\p{L}.*)$/iu.exec(
      text,
    ) ?? [];
  const named = { text: name, at: at + text.length - name.length };
  return name === '' ? undefined : [{ text: `${portion} `, at, isPortion: true }, named];
}

/** `speed 1 for 4 min`, `rest 20 min`, `knead 8 min`. */
function runOf(
  timed: RegExpExecArray,
  from: number,
  speed: number | undefined,
  verb: Verb | undefined,
  byHand: boolean,
): readonly Piece[] | undefined {
  const [, figure = '', unit = ''] = timed;
  if (/[-–]/.test(figure)) return undefined;
  const unitName = unitNames[unit.charAt(0).toLowerCase()];
  if (unitName === undefined || !(readNumber(figure) > 0)) return undefined;
  const minutes = [{ text: `${figure} ${unitName}`, at: from + timed.index }];
  if (verb === 'rest') return [{ text: 'rest ' }, ...minutes];
  if ((byHand || speed === undefined) && (verb === 'knead' || verb === 'fold' || verb === 'stir'))
    return [{ text: `${verb} ` }, ...minutes];
  // A time without a speed is taken as the slow one only where a word says that it is mixed.
  if (speed === undefined && verb === undefined) return undefined;
  if (byHand) return [{ text: 'knead ' }, ...minutes];
  return [{ text: `speed ${speed ?? 1} for ` }, ...minutes];
}

/** The statement of a written line, with names and values where the line has them. */
function statementOf({ pieces, span }: Written): PropertyStatement | undefined {
  const text = pieces.map((piece) => piece.text).join('');
  const statement = readPlainProperty(text, 'mix');
  if (statement === undefined) return undefined;
  const columns: number[] = [];
  for (const piece of pieces)
    for (let index = 0; index < piece.text.length; index++)
      columns.push(piece.at === undefined ? -1 : piece.at + index);
  return placed(statement, (start, end) => {
    const own = columns.slice(start, end).filter((column) => column >= 0);
    const [first, last] = [own[0], own.at(-1)];
    return first === undefined || last === undefined
      ? span
      : { start: first, end: Math.min(last + 1, span.end) };
  });
}

/** The same data with every span where the line has it. */
function placed<T>(data: T, at: (start: number, end: number) => Span): T {
  if (Array.isArray(data)) return data.map((one) => placed(one, at)) as T;
  if (typeof data !== 'object' || data === null) return data;
  const entries = Object.entries(data).map(([key, value]) => [key, placed(value, at)]);
  const made = Object.fromEntries(entries) as Record<string, unknown>;
  const { start, end } = data as { start?: unknown; end?: unknown };
  if (typeof start === 'number' && typeof end === 'number') Object.assign(made, at(start, end));
  return made as T;
}
