import { type WholeBlock, wholeOf } from '../../model/variant.ts';
import { parseLine } from '../../syntax/line.ts';
import { type Block, linesOf, type Section } from '../../syntax/tree.ts';
import { elementAt, firstOf, groupOf } from '../../text/element.ts';
import type { RuleEdit } from './rule.ts';

/**
 * Edits of a formula as edits of its own text. In a variant a line that comes from its base is never edited there: what it
 * becomes is written into the variant, as a line of its own, as `without`, or with the whole section it stands in.
 *
 * @param block the formula as it is analysed; edits count its lines
 * @returns `undefined` where a variant has no way to say it
 */
export function ownEdits(block: Block, edits: readonly RuleEdit[]): readonly RuleEdit[] | undefined {
  const whole = wholeOf(block);
  const isOwn = ({ line, endLine }: RuleEdit): boolean => (endLine ?? line) < (whole?.own.lines.length ?? 0);
  if (whole === undefined || edits.every(isOwn)) return edits;
  const taken = edits.filter((edit) => !isOwn(edit));
  const changed = changedLines(whole, taken);
  if (changed === undefined) return undefined;
  const topLines = ofTop(whole, changed);
  const sections = ofSections(whole, changed);
  if (topLines === undefined || sections === undefined) return undefined;
  return [...edits.filter(isOwn), ...writtenInto(whole, topLines, sections)];
}

/** What a line becomes, counted in the formula made whole: no line, one, or several. */
export type ChangedLines = ReadonlyMap<number, readonly string[]>;

/** Lines to be written below one of the variant's own. */
export interface AddedLines {
  readonly below: number;
  readonly lines: readonly string[];
}

/**
 * What changed lines of the base become in the variant itself: lines of its own, `without`, whole sections.
 *
 * @returns `undefined` where a variant has no way to say it
 */
export function addedToVariant(whole: WholeBlock, changed: ChangedLines): readonly AddedLines[] | undefined {
  const ofBase = new Map([...changed].filter(([line]) => line >= whole.own.lines.length));
  const topLines = ofTop(whole, ofBase);
  const sections = ofSections(whole, ofBase);
  return topLines === undefined || sections === undefined ? undefined : addedLines(whole, topLines, sections);
}

function changedLines(whole: WholeBlock, edits: readonly RuleEdit[]): ChangedLines | undefined {
  const first = whole.own.lines.length;
  const changed = new Map<number, readonly string[]>();
  const backwards = [...edits].sort((one, other) => other.line - one.line || other.start - one.start);
  for (const { line, endLine = line, start, end, insert } of backwards) {
    const last = changed.get(endLine) ?? [elementAt(whole.lines, endLine).text];
    const before = line === endLine ? last : [elementAt(whole.lines, line).text];
    const head = firstOf(before).slice(0, start);
    const tail = [firstOf(last).slice(end), ...last.slice(1)].join('\n');
    const becomes = `${head}${insert}${tail}`.split('\n');
    for (let between = line + 1; between <= endLine; between++) changed.set(between, []);
    if (line >= first) changed.set(line, becomes);
    // A removal begins at the end of the line before, which may be the variant's own and then stays as it is.
    else if (becomes.length !== 1 || becomes[0] !== elementAt(whole.lines, line).text) return undefined;
  }
  return changed;
}

function ofTop(whole: WholeBlock, changed: ChangedLines): readonly string[] | undefined {
  const written: string[] = [];
  for (const line of linesOf(whole.top)) {
    const becomes = changed.get(line);
    if (becomes === undefined) continue;
    const { statement, text } = elementAt(whole.lines, line);
    const [first, ...more] = becomes;
    if (first !== undefined && first !== text) {
      const now = parseLine(first, { context: 'formula', afterBlank: false }).statement;
      if (
        statement.kind === 'ingredient' &&
        (now.kind !== 'ingredient' || now.name.folded !== statement.name.folded)
      )
        written.push(`  without ${text.slice(statement.name.start, statement.name.end)}`);
      else if (
        statement.kind === 'property' &&
        (now.kind !== 'property' || now.property !== statement.property)
      )
        return undefined;
      written.push(first);
    } else if (first === undefined) {
      if (statement.kind !== 'ingredient') return undefined;
      written.push(`  without ${text.slice(statement.name.start, statement.name.end)}`);
    }
    written.push(...more);
  }
  return written;
}

function ofSections(whole: WholeBlock, changed: ChangedLines): readonly string[] | undefined {
  const written: string[] = [];
  for (const section of whole.subs) {
    const lines = [section.headerLine, ...linesOf(section)];
    if (!lines.some((line) => changed.has(line))) continue;
    const added = addedBehind(whole, lines, changed);
    if (added !== undefined) {
      written.push(...added);
      continue;
    }
    const header = changed.get(section.headerLine);
    if (header?.length === 0 || (header !== undefined && !isSameKind(groupOf(header, 0), section)))
      return undefined;
    written.push('', ...lines.flatMap((line) => changed.get(line) ?? [elementAt(whole.lines, line).text]));
    while (written.at(-1)?.trim() === '') written.pop();
  }
  return written;
}

/** What follows a section that stays as it is: a section of its own, which is all that is written. */
function addedBehind(
  whole: WholeBlock,
  lines: readonly number[],
  changed: ChangedLines,
): readonly string[] | undefined {
  const [touched, ...others] = lines.filter((line) => changed.has(line));
  if (touched === undefined || others.length > 0) return undefined;
  const [first, ...added] = changed.get(touched) ?? [];
  const begins = added.find((text) => text.trim() !== '');
  if (first !== elementAt(whole.lines, touched).text || begins === undefined) return undefined;
  const { statement } = parseLine(begins, { context: 'formula', afterBlank: true });
  return statement.kind === 'header' ? ['', ...added.slice(added.indexOf(begins))] : undefined;
}

/** Whether a header that is to be written still replaces the section of the base. */
function isSameKind(text: string, { kind, header }: Section): boolean {
  const { statement } = parseLine(text, { context: 'formula', afterBlank: true });
  if (statement.kind !== 'header' || statement.section !== kind) return false;
  if (kind === 'mix' || kind === 'process') return statement.part?.folded === header.part?.folded;
  return statement.name?.folded === header.name?.folded;
}

function writtenInto(
  whole: WholeBlock,
  topLines: readonly string[],
  sections: readonly string[],
): readonly RuleEdit[] {
  return addedLines(whole, topLines, sections).map(({ below: line, lines }) => {
    const { length } = elementAt(whole.own.lines, line).text;
    return { line, start: length, end: length, insert: lines.map((one) => `\n${one}`).join('') };
  });
}

function addedLines(
  { own }: WholeBlock,
  topLines: readonly string[],
  sections: readonly string[],
): readonly AddedLines[] {
  const top = lastWritten(own, own.top!.endLine);
  const end = lastWritten(own, own.lines.length);
  if (top === end) return [{ below: top, lines: [...topLines, ...sections] }];
  return [
    { below: top, lines: topLines },
    { below: end, lines: sections },
  ].filter(({ lines }) => lines.length > 0);
}

function lastWritten({ lines }: Block, before: number): number {
  let line = before - 1;
  while (line > 0 && elementAt(lines, line).text.trim() === '') line--;
  return line;
}
