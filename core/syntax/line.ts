import { firstOf, groupOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readNamedAmount } from './amount.ts';
import {
  readBaseTemperature,
  readDoughTemperature,
  readMixTemperature,
  readPreheating,
} from './beside-steps.ts';
import { readNightOfPart } from './cold-step.ts';
import { markAtStart, ruleOrComment, withoutMarks } from './foreign-markup.ts';
import { isMixedOfTrial, readHeader } from './header.ts';
import { readSlippedProperty, unlessMisspelled } from './misspelled.ts';
import { readFoldsOfMix } from './mix-folds.ts';
import { readMixSaid } from './mix-said.ts';
import { readMixerSaid } from './mixer-said.ts';
import { beyondProblem } from './number-problems.ts';
import { problem, writeFix } from './problem.ts';
import {
  findPropertyOf,
  isPartThatBegins,
  readPartTemperature,
  readProperty,
  unknownProperty,
} from './property.ts';
import { readSaidOtherwise } from './said-otherwise.ts';
import { readSeveralProperties } from './several-properties.ts';
import { readStep } from './step.ts';
import { isStepAlone, readFurtherStep, unlessStep } from './steps-outside.ts';
import type { Surroundings } from './surroundings.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import { cutLine } from './tokens.ts';
import type { Accept, ParsedLine, SectionKind, Statement, Token } from './tree.ts';
import { holdsIngredients } from './vocabulary.ts';
import { readYieldSaid } from './yield-said.ts';

/** Longer lines are kept and not read: no line of a formula comes near, and a pasted blob must not stall the editor. */
export const longestLine = 4000;

const notePattern = /^([\s\uFEFF]*)(note)(?=\s|$)/i;
const acceptPattern = /^#\s*accept(?:\s+(.*))?$/iu;

/** What git writes around the two states of a line that it could not merge. */
const mergeMarkPattern = /^\uFEFF?(?:<{7}|\|{7}|={7}|>{7})(?=\s|$)/;

/**
 * Reads one line in its surroundings. Never throws, needs nothing but the line, and keeps every character: the
 * tokens joined give the line.
 */
export function parseLine(text: string, around: Surroundings): ParsedLine {
  if (text.length > longestLine) return tooLong(text);
  const note = notePattern.exec(text);
  if (note !== null && around.context !== 'none' && around.context !== 'unknown')
    return parseNote(text, note);
  const { tokens, meaning, comment } = cutLine(text);
  const accept = comment === undefined ? undefined : readAccept(comment);
  const rest = accept === undefined ? {} : { accept };
  if (mergeMarkPattern.test(text)) return { text, tokens, empty: false, ...mergeMark(text) };
  if (meaning.length === 0) {
    return { text, tokens, statement: { kind: 'blank' }, problems: [], empty: true, ...rest };
  }
  return { text, tokens, empty: false, ...rest, ...readMarkup(text, meaning, around) };
}

type Read = Pick<ParsedLine, 'statement' | 'problems' | 'otherwise' | 'further'>;

/** Reads a line by what it says, and tells of bullets, tables and the like with one finding in place of all others. */
function readMarkup(text: string, meaning: Meaning, around: Surroundings): Read {
  if (around.context === 'unknown') return readLine(text, meaning, around);
  const started = markAtStart(text);
  if (started !== undefined && around.context !== 'none') {
    const said = cutLine(started.text).meaning;
    // `- # from the mill` says nothing.
    const read: Read =
      said.length === 0
        ? { statement: { kind: 'unreadable' }, problems: [] }
        : readLine(started.text, said, around);
    return { ...read, problems: [started.problem] };
  }
  const read = readLine(text, meaning, around);
  if (read.problems.length === 0 || read.further !== undefined || around.context === 'none') return read;
  const ruled = ruleOrComment(text);
  if (ruled !== undefined) return { statement: { kind: 'unreadable' }, problems: [ruled] };
  for (const marked of withoutMarks(text)) {
    const said = cutLine(marked.text).meaning;
    if (said.length === 0) continue;
    const plain = readLine(marked.text, said, around);
    const isRead = plain.problems.length === 0 || plain.further !== undefined;
    if (isRead) return { ...plain, problems: [marked.problem] };
  }
  return read;
}

function readLine(text: string, meaning: Meaning, around: Surroundings): Read {
  const header = readHeader(text, meaning, around);
  if (header === undefined) {
    const read = readBody(text, meaning, around);
    const beyond =
      around.context === 'unknown' || around.context === 'none' ? undefined : beyondProblem(meaning);
    return beyond === undefined ? read : { statement: read.statement, problems: [beyond] };
  }
  return { statement: header.statement ?? { kind: 'unreadable' }, problems: header.problems.slice(0, 1) };
}

type Meaning = ReturnType<typeof cutLine>['meaning'];

function readBody(text: string, meaning: Meaning, around: Surroundings): Read {
  return (
    readFurtherStep(text, meaning, around) ??
    unlessStep(text, meaning, around, readOfSection(text, meaning, around))
  );
}

function readOfSection(text: string, meaning: Meaning, around: Surroundings): Read {
  const { context, byHand } = around;
  const first = firstOf(meaning);
  if (context === 'unknown') return { statement: { kind: 'silent' } as const, problems: [] };
  if (context === 'none') {
    const span = {
      start: first.startOffset,
      end: lastOf(meaning).startOffset + lastOf(meaning).image.length,
    };
    return {
      statement: { kind: 'unreadable' } as const,
      problems: [problem('outside-section', message('outside-section.none-above'), span)],
    };
  }
  if (isMixedOfTrial(text, meaning, around)) return mixedMeant(first);
  const found = findPropertyOf(meaning, context);
  const made = context === 'formula' && found === undefined ? readYieldSaid(text, meaning) : undefined;
  if (made !== undefined) return made;
  if (context === 'trial' && found !== undefined && isPartThatBegins(found.property, found.length, meaning)) {
    const part = readPartTemperature(text, meaning);
    if (part !== undefined) return part;
  }
  const said =
    found === undefined
      ? readSaidOtherwise(text, meaning, context as SectionKind, byHand)
      : readProperty(text, meaning, found.property, found.length);
  if (said !== undefined) {
    const isBad = said.problems.some(({ code }) => code === 'wrong-value' || code === 'unreadable');
    const otherwise = isBad
      ? (saidInOtherWords(text, meaning, around) ??
        readSeveralProperties(text, meaning, context as SectionKind))
      : undefined;
    return otherwise ?? said;
  }
  if (holdsIngredients(context))
    return (
      readBaseTemperature(text, meaning) ??
      readSlippedProperty(text, meaning, context as SectionKind) ??
      readNightOfPart(meaning) ??
      unlessMisspelled(text, readNamedAmount(text, meaning, 'ingredient'), context as SectionKind)
    );
  if (context === 'plan') return readNamedAmount(text, meaning, 'planned');
  if (context === 'process')
    return readDoughTemperature(text, meaning) ?? readPreheating(text, meaning) ?? readStep(text, meaning);
  const otherwise = saidInOtherWords(text, meaning, around);
  if (otherwise !== undefined) return otherwise;
  return (
    (context === 'trial' ? readPartTemperature(text, meaning) : undefined) ??
    unknownProperty(text, meaning, context as SectionKind)
  );
}

/** A line that no property reads, as bakers have it for what the notation says in its own words. */
function saidInOtherWords(
  text: string,
  meaning: Meaning,
  { context, byHand }: Surroundings,
): Read | undefined {
  switch (context) {
    case 'mix':
      // `first rise 1 h` is no hour of mixing.
      if (isStepAlone(meaning)) return undefined;
      return (
        readMixTemperature(text, meaning) ??
        readBaseTemperature(text, meaning) ??
        readFoldsOfMix(text, meaning) ??
        readMixSaid(text, meaning, byHand)
      );
    case 'mixer':
      return readMixerSaid(text, meaning);
    case 'bakery':
    case 'trial':
      return readSaidOtherwise(text, meaning, context);
    default:
      return undefined;
  }
}

/** `mix in big spiral` in a trial: the header of a mix has a colon, and what was run is said in the past. */
function mixedMeant({ startOffset, image }: Meaning[number]): Read {
  const span = { start: startOffset, end: startOffset + image.length };
  const said = message('unknown-property.mixed', { example: 'mixed in big spiral' });
  const found = problem('unknown-property', said, span, writeFix(span, 'mixed', true));
  return { statement: { kind: 'unreadable' }, problems: [found] };
}

function mergeMark(text: string): Pick<ParsedLine, 'statement' | 'problems'> {
  const span = { start: 0, end: text.trimEnd().length };
  return {
    statement: { kind: 'unreadable' },
    problems: [problem('unreadable', message('unreadable.merge'), span)],
  };
}

function tooLong(text: string): ParsedLine {
  const tokens: Token[] = [{ kind: 'unknown', text, start: 0, end: text.length }];
  const commentOrNote = /^[\s\uFEFF]*(#|note\s)/i.test(text.slice(0, 200));
  if (commentOrNote) return { text, tokens, statement: { kind: 'blank' }, problems: [], empty: false };
  const said = message('line-too-long.longer', { count: longestLine });
  return {
    text,
    tokens,
    statement: { kind: 'unreadable' },
    problems: [problem('line-too-long', said, { start: 0, end: 80 })],
    empty: false,
  };
}

function parseNote(text: string, note: RegExpExecArray): ParsedLine {
  const tokens: Token[] = [];
  const push = (kind: Token['kind'], start: number, end: number): void => {
    if (end > start) tokens.push({ kind, text: text.slice(start, end), start, end });
  };
  const wordStart = groupOf(note, 1).length;
  const wordEnd = wordStart + groupOf(note, 2).length;
  const trailing = /\s(#\s*accept(?:\s.*)?)$/iu.exec(text.slice(wordEnd));
  const rawEnd = trailing === null ? text.length : wordEnd + trailing.index + 1;
  push('blank', 0, wordStart);
  push('word', wordStart, wordEnd);
  push('raw', wordEnd, rawEnd);
  push('comment', rawEnd, text.length);
  const comment = trailing === null ? undefined : tokens[tokens.length - 1];
  const accept = comment === undefined ? undefined : readAccept(comment);
  const statement: Statement = { kind: 'note', text: text.slice(wordEnd, rawEnd).trim() };
  return {
    text,
    tokens,
    statement,
    problems: [] as SyntaxProblem[],
    empty: false,
    ...(accept === undefined ? {} : { accept }),
  };
}

/** `# accept CODE, CODE: reason`. */
function readAccept(comment: Token): Accept | undefined {
  const match = acceptPattern.exec(comment.text);
  if (match === null) return undefined;
  const colon = comment.text.indexOf(':');
  const listEnd = colon < 0 ? comment.text.length : colon;
  const listStart = comment.text.toLowerCase().indexOf('accept') + 'accept'.length;
  const codes: { code: string; span: { start: number; end: number } }[] = [];
  const pattern = /[^\s,]+/g;
  const list = comment.text.slice(listStart, listEnd);
  for (let one = pattern.exec(list); one !== null; one = pattern.exec(list)) {
    const start = comment.start + listStart + one.index;
    codes.push({ code: one[0].toLowerCase(), span: { start, end: start + one[0].length } });
  }
  const reason = colon < 0 ? '' : comment.text.slice(colon + 1).trim();
  const span = { start: comment.start, end: comment.end };
  return reason === '' ? { span, codes } : { span, codes, reason };
}
