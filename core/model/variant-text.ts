import { meaning } from '../syntax/print.ts';
import { type Block, linesOf, type ParsedLine, type Section } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';
import { trimmed } from '../text/figures.ts';
import { takenCelsius, type WholeBlock, wholeOf } from './variant.ts';

/**
 * A formula written out in full, line by line, without the blank lines behind it: a variant with all that it takes of its base,
 * under its own name; any other formula as it stands.
 */
export function writtenOut(block: Block): readonly string[] {
  const whole = wholeOf(block);
  const top = whole?.top;
  if (whole === undefined || top === undefined)
    return withoutBlanksBehind(block.lines.map(({ text }) => text));
  const { header } = top;
  const head = elementAt(whole.lines, top.headerLine).text;
  const end = header.base!.end;
  const written = [head.slice(0, header.name!.end) + head.slice(end)];
  const lines = whole.lines.map((_, at) => withTakenCelsius(whole, at));
  written.push(...withComments(lines, linesOf(top)));
  for (const section of whole.subs) {
    written.push('', elementAt(whole.lines, section.headerLine).text);
    written.push(...withoutBlanksBehind(linesOf(section).map((line) => elementAt(whole.lines, line).text)));
  }
  return withoutBlanksBehind(written);
}

/** A line of the variant with the temperature written in that it takes of its base. */
function withTakenCelsius(whole: WholeBlock, at: number): ParsedLine {
  const line = elementAt(whole.lines, at);
  const celsius = takenCelsius(whole, at);
  if (celsius === undefined) return line;
  const { text, tokens } = line;
  const end = tokens.findLast(({ kind }) => kind !== 'blank' && kind !== 'comment')?.end ?? text.length;
  return { ...line, text: `${text.slice(0, end)}, at ${trimmed(celsius, 4)} °C${text.slice(end)}` };
}

/** The lines of a dough in their order; a comment that stands above a line of the variant's own goes with it. */
function withComments(lines: readonly ParsedLine[], held: readonly number[]): string[] {
  const isHeld = new Set(held);
  const written: string[] = [];
  const done = new Set<number>();
  const put = (line: number): void => {
    if (done.has(line)) return;
    done.add(line);
    const { text, statement } = elementAt(lines, line);
    const isDrop = statement.kind === 'property' && statement.property === 'without';
    if (!isDrop && text.trim() !== '') written.push(text);
  };
  for (const line of held) {
    if (elementAt(lines, line).empty) continue;
    let first = line;
    while (isHeld.has(first - 1) && lines[first - 1]!.empty && lines[first - 1]!.text.trim() !== '') first--;
    for (let at = first; at <= line; at++) put(at);
  }
  for (const line of held) put(line);
  return written;
}

function withoutBlanksBehind(texts: readonly string[]): string[] {
  const left = [...texts];
  while (left.length > 0 && left.at(-1)!.trim() === '') left.pop();
  return left;
}

/** What a section says, one key a line, in order; equal where two say the same. */
export function saidBy(block: Block, section: Section): readonly string[] {
  return linesOf(section).flatMap((line) => {
    const parsed = elementAt(block.lines, line);
    const isDrop = parsed.statement.kind === 'property' && parsed.statement.property === 'without';
    return parsed.empty || isDrop ? [] : [meaning(parsed)];
  });
}
