import type { IToken } from 'chevrotain';
import { nearestWord } from '../text/nearest.ts';
import { message } from '../words/message.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { colonOutFix, insertFix, problem, replaceFix, writeFix } from './problem.ts';
import { namelessSection, otherWordsForFormula, suggestSection, withoutShare } from './suggest-section.ts';
import type { HeaderRead, Surroundings } from './surroundings.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import { Bare, endOf, quantityOf } from './tokens.ts';
import type { HeaderStatement, Name, SectionKind } from './tree.ts';
import { allPropertyWords, holdsIngredients, roleWords, sectionWords, subSections } from './vocabulary.ts';

/** Reads a line with a colon at its end that begins with no word of a section: what it most likely means, or that it is none. */
export function otherHeader(
  line: string,
  tokens: readonly IToken[],
  around: Surroundings,
): HeaderRead | undefined {
  const words = tokens.slice(0, -1);
  const colon = tokens[tokens.length - 1]!;
  if (words.length === 0) return undefined;
  const before = words[words.length - 1]!;
  if (quantityOf(before)?.kind === 'bare' || before.tokenType === Bare) return undefined;
  const name = nameOf(line, words)!;
  const isWord = allPropertyWords.has(name.folded) || (roleWords as readonly string[]).includes(name.folded);
  const isDough =
    around.afterBlank && holdsIngredients(around.context) && namelessSection(name.folded) === 'dough';
  if ((isWord && !isDough) || !around.afterBlank)
    return { statement: undefined, problems: [strayColon(line, tokens, colon)] };
  // Notes above every section: what they are parted by is no section yet.
  if (
    around.context === 'none' &&
    (namelessSection(name.folded) ?? suggestSection(name.folded)) !== undefined
  )
    return undefined;
  const first = words[0]!;
  const span = { start: first.startOffset, end: endOf(first) };
  const meant = nearestWord(
    first.image.toLowerCase(),
    around.context === 'none' ? sectionWords : [...sectionWords, ...subSections],
  );
  const statement: HeaderStatement = {
    kind: 'header',
    section: 'unknown',
    keyword: span,
    name: nameBetween(line, span.start, name.end),
  };
  if (meant !== undefined) {
    const said = message('unknown-section.meant', { written: first.image, meant });
    return { statement, problems: [problem('unknown-section', said, span, writeFix(span, meant, true))] };
  }
  // Inside a formula it begins its part all the same, so that what stands below it is not lost.
  const isInFormula = around.context !== 'none' && !standsAlone.has(around.context);
  const nameless = isInFormula ? namelessHeader(name, around) : undefined;
  if (nameless !== undefined) return nameless;
  const section = suggestSection(name.folded);
  if (section !== undefined) return partHeader(line, section, name, isInFormula ? undefined : statement);
  if (words.length > 1 && otherWordsForFormula.has(first.image.toLowerCase())) {
    const said = message('unknown-section.meant', { written: first.image, meant: 'formula' });
    return { statement, problems: [problem('unknown-section', said, span, writeFix(span, 'formula', true))] };
  }
  const said = message('unknown-section.none', { name: name.text, words: sectionWords });
  const at = { start: span.start, end: name.end };
  if (!isInFormula || otherWordsForFormula.has(first.image.toLowerCase()))
    return { statement, problems: [problem('unknown-section', said, at)] };
  // It closes no formula: the mix and the process below it are those of the formula still.
  const fix = insertFix(message('fix.write', { meant: `part ${name.text}:` }), name.start, 'part ');
  return { statement: { ...statement, within: true }, problems: [problem('unknown-section', said, at, fix)] };
}

/** `biga:`, `poolish 33%:`: a part that lacks but its word; `unread` is what it is where it can begin none. */
function partHeader(
  line: string,
  section: SectionKind,
  name: Name,
  unread: HeaderStatement | undefined,
): HeaderRead {
  const whole = { start: name.start, end: name.end };
  const own = withoutShare(name.text);
  const share = line.slice(name.start + own.length, name.end).trim();
  const meant = `${section} ${own}:`;
  const said = message('unknown-section.part', { example: meant });
  const title = message('fix.write', { meant });
  const fix =
    share === ''
      ? insertFix(title, name.start, `${section} `, true)
      : replaceFix(title, { start: name.start, end: line.length }, `${meant}  # ${share}`, true);
  const named = nameBetween(line, name.start, name.start + own.length);
  const keyword = { start: name.start, end: name.start };
  return {
    statement: unread ?? { kind: 'header', section, keyword, name: named },
    problems: [problem('unknown-section', said, whole, fix)],
  };
}

/** `method:`, `mixing:`, `final dough:` inside a formula: its sections by the names of other kitchens. */
function namelessHeader(name: Name, around: Surroundings): HeaderRead | undefined {
  const section = namelessSection(name.folded);
  const span = { start: name.start, end: name.end };
  if (section === undefined) return undefined;
  if (section === 'dough') {
    const said = message('unknown-section.dough', { written: name.text });
    const comment = replaceFix(
      message('fix.make-comment'),
      { start: name.start, end: name.end + 1 },
      `# ${name.text}`,
      true,
    );
    // Below the formula's own header the lines are its own already.
    if (around.context === 'formula')
      return { statement: undefined, problems: [problem('unknown-section', said, span, comment)] };
    return {
      statement: { kind: 'header', section: 'part', keyword: { start: name.start, end: name.start }, name },
      problems: [{ ...problem('unknown-section', said, span), movesUp: true }],
    };
  }
  const meant = section === 'mix' ? 'mix in spiral' : section;
  const said = message('unknown-section.meant', { written: name.text, meant });
  return {
    statement: { kind: 'header', section, keyword: span },
    problems: [problem('unknown-section', said, span, writeFix(span, meant, true))],
  };
}

/** What no part can stand in, nor stand below. */
const standsAlone: ReadonlySet<string> = new Set([
  'unknown',
  'flour',
  'ingredient',
  'mixer',
  'bakery',
  'plan',
  'experiment',
]);

/** The finding for a colon behind words that begin no section. */
export function strayColon(
  line: string,
  tokens: readonly IToken[],
  colon: IToken | undefined,
): SyntaxProblem {
  const words = nameOf(line, colon === undefined ? tokens : tokens.filter((token) => token !== colon));
  const span =
    colon === undefined
      ? { start: words!.start, end: words!.end }
      : { start: colon.startOffset, end: endOf(colon) };
  const said = message('stray-colon.no-header', { name: words?.text ?? '' });
  return problem('stray-colon', said, span, colonOutFix(span));
}
