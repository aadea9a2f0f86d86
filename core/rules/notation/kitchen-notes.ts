import type { Scope } from '../../model/scope.ts';
import { isKnownStep } from '../../syntax/known-step.ts';
import { parseLine } from '../../syntax/line.ts';
import { printLine } from '../../syntax/print.ts';
import { namelessSection, suggestSection } from '../../syntax/suggest-section.ts';
import type { Surroundings } from '../../syntax/surroundings.ts';
import type { LineFix } from '../../syntax/syntax-problem.ts';
import type { Block, ParsedLine, SectionKind } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { message } from '../../words/message.ts';
import type { RuleFix } from '../engine/rule.ts';

/**
 * Kitchen notes, amounts and steps that stand in no section, made a formula: a header with the name of their title or their file, and
 * the sections for what is mixed and what is done. Every line of theirs is in it, as it reads there, and what reads as nothing as a note.
 */

/** Where a line of notes belongs. */
type Kind = 'blank' | 'amount' | 'mix' | 'step' | 'words';

interface Part {
  /** Folded; empty of the dough. */
  readonly name: string;
  readonly header: string;
  readonly around: Surroundings;
  readonly lines: string[];
}

interface Notes {
  readonly name: string;
  /** The formula's own lines, then its parts. */
  readonly parts: Part[];
  readonly mix: string[];
  readonly process: string[];
}

const within = (context: Surroundings['context']): Surroundings => ({ context, afterBlank: false });
const inFormula = within('formula');
const inProcess = within('process');
const fewestAmounts = 2;

/** The fix that makes a formula of the lines from `first` on; none where they are too few to be one, as while a header is typed. */
export function notesFix(block: Block, first: number, uri: string, scope: Scope): RuleFix | undefined {
  const end = block.subs[0]?.headerLine ?? block.lines.length;
  let last = end - 1;
  while (last > first && elementAt(block.lines, last).text.trim() === '') last--;
  const lines = block.lines.slice(first, last + 1);
  const isMixedBelow = block.subs.some(({ kind }) => kind === 'mix');
  const kinds = lines.map((line) => kindOf(line));
  if (kinds.filter((kind) => kind === 'amount').length < fewestAmounts) return undefined;
  const recipes = recipesOf(lines, kinds, nameOfFile(uri), scope);
  const text = recipes.map((notes) => textOf(notes, isMixedBelow)).join('\n\n');
  const name = recipes[0]?.name ?? '';
  return {
    title: message('fix.make-formula', { name }),
    edits: [
      { line: first, start: 0, endLine: last, end: elementAt(block.lines, last).text.length, insert: text },
    ],
    preferred: true,
  };
}

const figure = /\d|[¼½¾⅓⅔]/;
const mixing =
  /^(?:mix|knead|load|stir|combine|beat|autoly[sz]e|slow|fast|first speed|second speed|1st|2nd|speed|low|high|slap|by hand|add)\b/i;
const timed = /\d\s*(?:h|hours?|hrs?|min|minutes?|mins?|'|s|sec|seconds?)(?![\p{L}])/iu;

const bullet = /^(?:[-–—*•·●▪◦☐☑✓✔]|\d{1,2}[.)])\s+(?=\S)/u;
const plainOf = (text: string): string => text.trim().replace(bullet, '');

function kindOf({ text, empty }: ParsedLine): Kind {
  const plain = plainOf(text);
  if (plain === '' || empty) return 'blank';
  if (isKnownStep(plain) && !mixing.test(plain)) return 'step';
  if (mixing.test(plain) && (timed.test(plain) || !isAmount(plain))) return 'mix';
  if (isAmount(plain)) return 'amount';
  return figure.test(plain) && timed.test(plain) ? 'step' : 'words';
}

/** Whether a text reads as an ingredient with its amount, or as how much is made. */
function isAmount(text: string): boolean {
  return readsAsAmount(mendedLines(text, inFormula)) || readsAsAmount(mendedLines(text, inFormula, true));
}

function readsAsAmount(mended: readonly string[]): boolean {
  return mended.every((line) => {
    const { statement, problems } = parseLine(`  ${line}`, inFormula);
    const isAsked = statement.kind === 'ingredient' && statement.amount.kind !== 'unknown';
    const isSaid =
      statement.kind === 'note' || (statement.kind === 'property' && statement.value !== undefined);
    return problems.length === 0 && (isAsked || isSaid);
  });
}

/** What a line of words heads: the dough, its mixing or its process, a part by what it is called, or a formula by its title. */
type Heading =
  | { readonly of: 'dough' | 'mix' | 'process'; readonly title: string }
  | { readonly of: 'part'; readonly section: SectionKind; readonly title: string }
  | { readonly of: 'formula'; readonly title: string };

function headingAt(lines: readonly ParsedLine[], kinds: readonly Kind[], index: number): Heading | undefined {
  if (kinds[index] !== 'words') return undefined;
  const title = titleOf(elementAt(lines, index));
  if (title === undefined) return undefined;
  const nameless = namelessSection(foldName(title));
  if (nameless !== undefined) return { of: nameless, title };
  const next = nextLine(kinds, index);
  if (next === undefined || (index > 0 && kinds[index - 1] !== 'blank')) return undefined;
  const section = suggestSection(foldName(title));
  if (section !== undefined && kinds[next] === 'amount') return { of: 'part', section, title };
  // Below a title may stand another heading before the first amount.
  const isAbove = kinds[next] === 'amount' || isHeadingOfNotes(lines, kinds, next);
  return isAbove ? { of: 'formula', title } : undefined;
}

function isHeadingOfNotes(lines: readonly ParsedLine[], kinds: readonly Kind[], index: number): boolean {
  const of = headingAt(lines, kinds, index)?.of;
  return of === 'dough' || of === 'part';
}

function nextLine(kinds: readonly Kind[], index: number): number | undefined {
  const next = kinds.findIndex((kind, at) => at > index && kind !== 'blank');
  return next < 0 ? undefined : next;
}

/** Gathers notes line by line. */
class Gatherer {
  readonly recipes: Notes[] = [];
  readonly #taken = new Set<string>();
  #into: string[] = [];
  #now: string[] = [];

  readonly #fileName: string;
  readonly #scope: Scope;

  constructor(fileName: string, scope: Scope) {
    this.#fileName = fileName;
    this.#scope = scope;
  }

  get #notes(): Notes {
    return this.recipes.at(-1) ?? this.#begin(this.#fileName);
  }

  #begin(title: string): Notes {
    const part: Part = { name: '', header: '', around: inFormula, lines: [] };
    const notes = { name: freeName(title, this.#scope, this.#taken), parts: [part], mix: [], process: [] };
    this.recipes.push(notes);
    this.#into = part.lines;
    this.#now = part.lines;
    return notes;
  }

  head(heading: Heading): void {
    const { of, title } = heading;
    if (of === 'formula') {
      this.#begin(title);
      return;
    }
    const notes = this.#notes;
    if (of === 'part') {
      const { section } = heading;
      const part = {
        name: foldName(title),
        header: `${section} ${title}:`,
        around: within(section),
        lines: [],
      };
      notes.parts.push(part);
      this.#into = part.lines;
      this.#now = part.lines;
      return;
    }
    if (of === 'dough') this.#into = elementAt(notes.parts, 0).lines;
    this.#now = of === 'dough' ? this.#into : of === 'mix' ? notes.mix : notes.process;
    this.#now.push(`# ${title}`);
  }

  line(kind: Kind, text: string): void {
    const notes = this.#notes;
    const folded = foldName(text.replace(/^(?:all (?:of )?)?(?:the )?/i, ''));
    const isPart = kind === 'words' && notes.parts.some(({ name }) => name !== '' && name === folded);
    if (isPart) this.#now = elementAt(notes.parts, 0).lines;
    else if (kind === 'amount') this.#now = this.#into;
    else if (kind === 'mix' && notes.process.every((line) => line.startsWith('#'))) this.#now = notes.mix;
    else if (kind === 'step' || kind === 'mix') this.#now = notes.process;
    if (kind === 'blank' && text === '') return;
    if (isPart) this.#now.push(`${text.slice(text.length - folded.length)}  remaining`);
    else this.#now.push(kind === 'words' ? wordsLine(text, this.#now === notes.process) : text);
  }
}

/** The notes one after another: a title after a blank line, with amounts below it, begins another formula, or a part by its name. */
function recipesOf(
  lines: readonly ParsedLine[],
  kinds: readonly Kind[],
  fileName: string,
  scope: Scope,
): Notes[] {
  const gathered = new Gatherer(fileName, scope);
  for (const [index, { text }] of lines.entries()) {
    const heading = headingAt(lines, kinds, index);
    if (heading !== undefined) gathered.head(heading);
    else gathered.line(elementAt(kinds, index), plainOf(text));
  }
  return gathered.recipes;
}

/** Words of a process are steps; elsewhere they are a note, but for those with a figure, which may be an amount: they stay, to be told. */
function wordsLine(text: string, isStep: boolean): string {
  return isStep || figure.test(text) ? text : `note ${text.replace(/^note\s+/i, '')}`;
}

function titleOf({ tokens }: ParsedLine): string | undefined {
  const words = tokens
    .filter(({ kind }) => kind !== 'comment')
    .map(({ text }) => text)
    .join('')
    .replace(/^[\s#*=_–—-]+|[\s:*=_–—-]+$/gu, '');
  return words === '' || words.length > longestTitle ? undefined : words;
}

const longestTitle = 60;

function nameOfFile(uri: string): string {
  const name = uri.slice(uri.lastIndexOf('/') + 1).replace(/\.[^.]*$/, '');
  return safelyDecoded(name).replace(/[_-]+/g, ' ').trim() || 'My dough';
}

function safelyDecoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** A name that a header can say and that no formula has. */
function freeName(title: string, scope: Scope, taken: Set<string>): string {
  const plain = title.replace(/"/g, '');
  const written = [plain, `"${plain}"`, 'My dough'].find((name) => {
    const { statement, problems } = parseLine(`formula ${name}:`, { context: 'none', afterBlank: true });
    return (
      problems.length === 0 &&
      statement.kind === 'header' &&
      statement.name !== undefined &&
      statement.base === undefined
    );
  })!;
  const isTaken = (name: string): boolean => {
    const folded = foldName(name.replace(/"/g, ''));
    return taken.has(folded) || scope.find('formula', folded).length > 0;
  };
  let name = written;
  for (let count = 2; isTaken(name); count++)
    name = `${written.replace(/"$/, '')} ${count}${written.endsWith('"') ? '"' : ''}`;
  taken.add(foldName(name.replace(/"/g, '')));
  return name;
}

const machine = /\b(?:speed|slow|fast|low|high|1st|2nd|gear|mixer|machine|spiral|hook|rpm)\b/i;
const planetary = /\b(?:stand mixer|planetary|dough hook|kitchen machine)\b/i;

const bareBehind = /\s(\d{1,5}(?:\.\d+)?)$/;
const leastGrams = 150;

function textOf({ name, parts, mix, process }: Notes, isMixedBelow: boolean): string {
  // A figure without a unit is grams where one of them is no percent of anything.
  const areGrams = parts.some(({ lines }) =>
    lines.some((line) => Number(bareBehind.exec(line)?.[1]) >= leastGrams),
  );
  const sections = parts.map(({ header, around, lines }, index) =>
    [index === 0 ? `formula ${name}:` : header, ...written(lines, around, areGrams)].join('\n'),
  );
  const words = mix.join(' ');
  const where = machine.test(words) ? `in ${planetary.test(words) ? 'planetary' : 'spiral'}` : 'by hand';
  const byHand = where === 'by hand' ? { byHand: true as const } : {};
  if (mix.length > 0 && isMixedBelow) sections[0] += mix.map((line) => `\n  note ${line}`).join('');
  else if (mix.length > 0)
    sections.push([`mix ${where}:`, ...written(mix, { ...within('mix'), ...byHand })].join('\n'));
  if (process.length > 0) sections.push(['process:', ...written(process, inProcess)].join('\n'));
  return sections.join('\n\n');
}

/** Lines in the form of the section that they come into. */
function written(lines: readonly string[], around: Surroundings, areGrams = false): string[] {
  return lines
    .flatMap((line) => mendedLines(line, around, areGrams))
    .map((line) => printLine(parseLine(`  ${line.trim()}`, around), around.context));
}

const mostFixes = 8;

/** A line with the fixes taken that an editor would take unasked; where they write several lines, those. */
function mendedLines(text: string, around: Surroundings, areGrams = false): string[] {
  let now = `  ${text.trim()}`;
  for (let count = 0; count < mostFixes; count++) {
    const { code, fixes = [] } = parseLine(now, around).problems[0] ?? {};
    const inGrams = areGrams && code === 'missing-unit' && fixes.length === 2 ? fixes[1] : undefined;
    const fix = inGrams ?? fixes.find(({ preferred }) => preferred === true);
    if (fix === undefined) return [now.trim()];
    now = withFix(now, fix);
    const several = now.split('\n');
    if (several.length > 1) return several.flatMap((line) => mendedLines(line, around, areGrams));
  }
  return [now.trim()];
}

function withFix(text: string, { edits }: LineFix): string {
  return [...edits]
    .sort((one, other) => other.start - one.start)
    .reduce((now, { start, end, insert }) => now.slice(0, start) + insert + now.slice(end), text);
}
