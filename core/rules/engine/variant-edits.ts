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

/** What each line of the base becomes: no line, one, or several. */
type ChangedLines = ReadonlyMap<number, readonly string[]>;

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
    const header = changed.get(section.headerLine);
    if (header?.length === 0 || (header !== undefined && !isSameKind(groupOf(header, 0), section)))
      return undefined;
    written.push('', ...lines.flatMap((line) => changed.get(line) ?? [elementAt(whole.lines, line).text]));
    while (written.at(-1)?.trim() === '') written.pop();
  }
  return written;
}

/** Whether a header that is to be written still replaces the section of the base. */
function isSameKind(text: string, { kind, header }: Section): boolean {
  const { statement } = parseLine(text, { context: 'formula', afterBlank: true });
  if (statement.kind !== 'header' || statement.section !== kind) return false;
  if (kind === 'mix' || kind === 'process') return statement.part?.folded === header.part?.folded;
  return statement.name?.folded === header.name?.folded;
}

function writtenInto(
  { own }: WholeBlock,
  topLines: readonly string[],
  sections: readonly string[],
): readonly RuleEdit[] {
  const top = lastWritten(own, own.top!.endLine);
  const end = lastWritten(own, own.lines.length);
  const at = (line: number, lines: readonly string[]): RuleEdit => {
    const { length } = elementAt(own.lines, line).text;
    return { line, start: length, end: length, insert: lines.map((one) => `\n${one}`).join('') };
  };
  if (top === end) return [at(top, [...topLines, ...sections])];
  return [
    ...(topLines.length === 0 ? [] : [at(top, topLines)]),
    ...(sections.length === 0 ? [] : [at(end, sections)]),
  ];
}

function lastWritten({ lines }: Block, before: number): number {
  let line = before - 1;
  while (line > 0 && elementAt(lines, line).text.trim() === '') line--;
  return line;
}
