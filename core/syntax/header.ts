import type { IToken } from 'chevrotain';
import { message } from '../words/message.ts';
import { isByHand, isIn, mixHeader } from './header-mix.ts';
import { variantHeader } from './header-variant.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { otherHeader, strayColon } from './other-header.ts';
import { colonOutFix, insertFix, problem, replaceFix, writeFix } from './problem.ts';
import type { HeaderRead, Surroundings } from './surroundings.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import { Colon, Comma, Count, endOf, Mass, Percent, Quoted, quantityOf, Volume } from './tokens.ts';
import type { SectionKind } from './tree.ts';
import { isTopSection, roleWords, sectionWords } from './vocabulary.ts';
import { writtenDate } from './written-date.ts';

const amounts = new Set([Mass, Percent, Volume, Count]);
const wordAt = (tokens: readonly IToken[], index: number): string => {
  const token = tokens[index];
  return token === undefined || token.tokenType === Quoted ? '' : token.image.toLowerCase();
};

/**
 * Reads a line as a header, or says that it is none (`undefined`). A header begins with a section word and ends with
 * a colon; a few forms are taken as headers without their colon, since nothing else can be meant.
 */
export function readHeader(
  line: string,
  tokens: readonly IToken[],
  around: Surroundings,
): HeaderRead | undefined {
  const last = tokens[tokens.length - 1];
  if (last === undefined) return undefined;
  const first = wordAt(tokens, 0);
  const isSection = (sectionWords as readonly string[]).includes(first);
  if (last.tokenType === Colon) {
    if (isSection) return withoutColons(line, tokens, first as SectionKind, around);
    return otherHeader(line, tokens, around);
  }
  if (!isSection || tokens.some((token) => amounts.has(token.tokenType))) return undefined;
  if (isMixedOfTrial(line, tokens, around)) return undefined;
  const displaced = displacedColon(line, tokens, first as SectionKind, around);
  if (displaced !== undefined) return displaced;
  const colonAt = tokens.findIndex((token) => token.tokenType === Colon);
  const head = colonAt < 0 ? tokens : tokens.slice(0, colonAt);
  if (!opensWithoutColon(head, first, around)) return undefined;
  const read = sectionHeader(line, head, first as SectionKind, around);
  const wrong =
    colonAt < 0 ? missingColon(line, first, last) : afterColon(tokens[colonAt]!, tokens[colonAt + 1]!, last);
  return { statement: read.statement, problems: [wrong, ...read.problems] };
}

/** `formula: Quay Tin:` and `formula Quay Tin::` have one colon too many. */
function withoutColons(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
  around: Surroundings,
): HeaderRead {
  const last = tokens[tokens.length - 1]!;
  let words = tokens.slice(0, -1);
  let stray: IToken | undefined;
  while (words.length > 1 && words[words.length - 1]!.tokenType === Colon) {
    stray = words[words.length - 1];
    words = words.slice(0, -1);
  }
  if (words.length > 2 && words[1]!.tokenType === Colon) {
    stray = words[1];
    words = [words[0]!, ...words.slice(2)];
  }
  const read = sectionHeader(line, words, section, around, last);
  if (stray === undefined || read.problems.length > 0) return read;
  const span = { start: stray.startOffset, end: endOf(stray) };
  const wrong = problem('stray-colon', message('stray-colon.two'), span, colonOutFix(span));
  return { statement: read.statement, problems: [wrong] };
}

/** `mix in big spiral` within a trial: what was run, short of two letters. */
export function isMixedOfTrial(line: string, tokens: readonly IToken[], around: Surroundings): boolean {
  if (around.context !== 'trial' || around.afterBlank || wordAt(tokens, 0) !== 'mix' || !/^\s/.test(line))
    return false;
  const second = wordAt(tokens, 1);
  return (second === 'in' || second === 'by') && tokens.every(({ tokenType }) => tokenType !== Colon);
}

/** `formula: Quay Tin`: the colon stands behind the first word in place of the last. */
function displacedColon(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
  around: Surroundings,
): HeaderRead | undefined {
  const [head, colon, ...words] = tokens;
  if (colon?.tokenType !== Colon || words.length === 0 || section === 'process') return undefined;
  if (!around.afterBlank || ((roleWords as readonly string[]).includes(section) && around.context !== 'none'))
    return undefined;
  const read = sectionHeader(line, [head!, ...words], section, around);
  if (read.problems.length > 0) return undefined;
  const span = { start: colon.startOffset, end: endOf(colon) };
  const end = endOf(words[words.length - 1]!);
  const edits = [
    { ...span, insert: '' },
    { start: end, end, insert: ':' },
  ];
  const said = message('missing-colon.displaced', { section });
  const fix = { title: message('fix.put-colon-at-end'), edits, preferred: true as const };
  return { statement: read.statement, problems: [problem('missing-colon', said, span, fix)] };
}

/** `process: bulk 1 h` */
function afterColon(colon: IToken, next: IToken, last: IToken): SyntaxProblem {
  const blank = { start: endOf(colon), end: next.startOffset };
  const fix = replaceFix(message('fix.put-on-own-line'), blank, '\n  ', true);
  const span = { start: next.startOffset, end: endOf(last) };
  return problem('missing-colon', message('missing-colon.goes-on'), span, fix);
}

function missingColon(line: string, section: string, last: IToken): SyntaxProblem {
  const end = endOf(last);
  const isOpen = last.tokenType === Quoted && !/^".*"$/.test(last.image);
  if (!isOpen) {
    // `formula Quay Tin;` and `formula Quay Tin -` have another sign in its place.
    const from = line.slice(0, end).replace(/[\s.;,：{=–—-]+$/u, '').length;
    const fix = replaceFix(message('fix.put-colon'), { start: from, end }, ':', true);
    const said = message('missing-colon.at-end', { section });
    return problem('missing-colon', said, { start: end - 1, end }, fix);
  }
  const at = last.image.endsWith(':') ? end - 1 : end;
  const fix = insertFix(message('fix.close-quote'), at, at === end ? '":' : '"', true);
  const span = { start: last.startOffset, end };
  return problem('missing-colon', message('missing-colon.open-quote'), span, fix);
}

function opensWithoutColon(tokens: readonly IToken[], first: string, around: Surroundings): boolean {
  const second = tokens[1];
  switch (first) {
    case 'formula':
    case 'preferment':
      return second !== undefined;
    case 'plan':
    case 'experiment':
    case 'bakery':
    case 'mixer':
      if (second === undefined || around.context === 'none') return second !== undefined;
      // `experiment How long` and `mixer big spiral` are lines of a trial; a day stands in a header alone.
      if (around.context === 'trial') return tokens.some((token) => quantityOf(token)?.kind === 'date');
      return around.afterBlank;
    case 'trial':
      return second !== undefined && quantityOf(second)?.kind === 'date';
    case 'process':
      return second === undefined;
    case 'mix':
      // `mix 5 min by hand` is what is done, and no header.
      if (around.context === 'process' || tokens.some((one) => quantityOf(one)?.kind === 'duration'))
        return false;
      return (
        tokens.some((_, index) => index > 0 && index < tokens.length - 1 && isIn(tokens, index)) ||
        isByHand(tokens)
      );
    default:
      return false;
  }
}

function sectionHeader(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
  around: Surroundings,
  colon?: IToken,
): HeaderRead {
  const head = tokens[0]!;
  const keyword = { start: head.startOffset, end: endOf(head) };
  const rest = tokens.slice(1);
  if (section === 'mix') return mixHeader(line, rest, keyword);
  if (section === 'process') {
    const part = nameOf(line, rest);
    return { statement: { kind: 'header', section, keyword, ...(part ? { part } : {}) }, problems: [] };
  }
  if (section === 'trial') return trialHeader(line, rest, keyword);
  if (section === 'experiment') {
    const [comma, date] = rest.slice(-2);
    const day = date === undefined ? undefined : quantityOf(date);
    const isOpen = comma?.tokenType === Comma;
    const words = isOpen || wordAt(rest, rest.length - 2) === 'on' ? rest.slice(0, -2) : rest.slice(0, -1);
    const named = day?.kind === 'date' ? nameOf(line, words) : undefined;
    if (date !== undefined && day?.kind === 'date' && named !== undefined && named.folded !== '') {
      const statement = { kind: 'header', section, keyword, name: named, date: day.iso } as const;
      return { statement, problems: isOpen ? [] : [commaLacks(line, named, date)] };
    }
  }
  const variant = section === 'formula' ? variantHeader(line, rest, keyword) : undefined;
  if (variant !== undefined) return variant;
  const name = nameOf(line, rest);
  if (name !== undefined && name.folded !== '')
    return { statement: { kind: 'header', section, keyword, name }, problems: [] };
  const at = colon?.startOffset ?? keyword.end;
  if (isTopSection(section) && !(section === 'bakery' && rest.length === 0)) {
    // `flour:` and `salt:` half typed among ingredients must not cut the formula in two.
    const role = (roleWords as readonly string[]).includes(section) && around.context !== 'none';
    return {
      statement: undefined,
      problems: [role ? strayColon(line, tokens, colon) : withoutName(section, keyword.start, at)],
    };
  }
  // `soaker:` is called by what it is, and so is a `bakery:`, for a folder has but one; a quoted nothing is a name to come.
  if (rest.length === 0)
    return {
      statement: { kind: 'header', section, keyword, name: nameBetween(line, keyword.start, keyword.end) },
      problems: [],
    };
  return {
    statement: { kind: 'header', section, keyword },
    problems: [withoutName(section, keyword.start, at)],
  };
}

/** `experiment Wet and dry on 2026-05-15:` */
function commaLacks(
  line: string,
  name: { start: number; end: number; text: string },
  date: IToken,
): SyntaxProblem {
  const span = { start: date.startOffset, end: endOf(date) };
  const between = { start: name.end, end: date.startOffset };
  const said = message('missing-comma.before', {
    written: line.slice(span.start, span.end),
    example: `experiment ${name.text}, ${line.slice(span.start, span.end)}:`,
  });
  return problem('missing-comma', said, span, replaceFix(message('fix.put-comma'), between, ', ', true));
}

function withoutName(section: SectionKind, start: number, end: number): SyntaxProblem {
  const example = `${section} ${nameExamples[section]}:`;
  return problem('missing-name', message('missing-name.section', { section, example }), { start, end });
}

const nameExamples: Partial<Record<SectionKind, string>> = {
  formula: 'Morning Tin',
  flour: 'strong white',
  ingredient: 'malt extract',
  mixer: 'big spiral',
  bakery: 'Quay Lane',
  plan: 'Saturday market',
  experiment: 'Wet and dry',
  preferment: 'night poolish',
  soaker: 'linseed soaker',
  scald: 'rye scald',
  part: 'butter block',
  filling: 'nut filling',
  topping: 'seed crust',
  bath: 'malt bath',
};

function trialHeader(
  line: string,
  rest: readonly IToken[],
  keyword: { start: number; end: number },
): HeaderRead {
  const date = rest[0] === undefined ? undefined : quantityOf(rest[0]);
  if (date?.kind !== 'date') return otherDate(line, rest, keyword);
  const words =
    rest.length > 1 ? line.slice(endOf(rest[0]!), endOf(rest[rest.length - 1]!)).replace(/^[\s,]+/, '') : '';
  return {
    statement: { kind: 'header', section: 'trial', keyword, date: date.iso, ...(words ? { words } : {}) },
    problems: [],
  };
}

/** `trial 3 March 2026, cold flour:`: a day that is written otherwise, or none. */
function otherDate(
  line: string,
  rest: readonly IToken[],
  keyword: { start: number; end: number },
): HeaderRead {
  const header = { kind: 'header', section: 'trial', keyword } as const;
  const [first, last] = [rest[0], rest.at(-1)];
  const start = first?.startOffset ?? keyword.end;
  const end = last === undefined ? start : endOf(last);
  const found = writtenDate(line.slice(start, end));
  if (found === undefined)
    return { statement: header, problems: [problem('missing-date', message('missing-date.first'), keyword)] };
  const span = { start, end: start + found.end };
  const [day = '', other] = found.days;
  const said =
    other === undefined
      ? message('missing-date.meant', { meant: `trial ${day}:` })
      : message('missing-date.which', { meant: `trial ${day}:`, otherMeant: `trial ${other}:` });
  const fixes = found.days.map((one) => writeFix(span, one, other === undefined));
  const words = line.slice(span.end, end).replace(/^[\s,]+/, '');
  const date = other === undefined ? { date: day } : {};
  return {
    statement: { ...header, ...date, ...(words ? { words } : {}) },
    problems: [problem('missing-date', said, span, ...fixes)],
  };
}
