import { blockAt } from '../../syntax/line-place.ts';
import type { ParsedLine, SourceFile, Statement, Token } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { indentOf } from '../../text/indent.ts';
import type { Span } from '../../text/span.ts';

/** A stretch of a file that may hold several lines. */
export interface Stretch {
  readonly firstLine: number;
  readonly start: number;
  readonly lastLine: number;
  readonly end: number;
}

/**
 * What a growing selection takes in from a column on, the least first: a word or quantity, the name or amount it belongs
 * to, what the line says, the section without and with its header, the formula with all that belongs to it, the file.
 */
export function selectionsAt(file: SourceFile, line: number, column: number): Stretch[] {
  const parsed = file.lines[line];
  if (parsed === undefined) return [];
  const inLine = spansAt(parsed, column).map(
    ({ start, end }): Stretch => ({ firstLine: line, start, lastLine: line, end }),
  );
  const found = blockAt(file, line);
  const around: Stretch[] = [];
  const push = (first: number, past: number): void => {
    let last = past - 1;
    while (last > first && elementAt(file.lines, last).text.trim() === '') last--;
    const start =
      first === last && elementAt(file.lines, first).text.trim() === ''
        ? 0
        : indentOf(elementAt(file.lines, first).text).length;
    if (first <= line && line <= last)
      around.push({ firstLine: first, start, lastLine: last, end: elementAt(file.lines, last).text.length });
  };
  if (found !== undefined) {
    const { block, firstLine } = found;
    const section = block.subs.findLast((one) => one.headerLine + firstLine <= line) ?? block.top;
    if (section !== undefined) {
      push(firstLine + section.headerLine + 1, firstLine + section.endLine);
      push(firstLine + section.headerLine, firstLine + section.endLine);
    }
    push(firstLine, firstLine + block.lines.length);
  }
  const last = file.lines.length - 1;
  around.push({ firstLine: 0, start: 0, lastLine: last, end: elementAt(file.lines, last).text.length });
  const growing: Stretch[] = [];
  for (const one of [...inLine, ...around]) {
    const before = growing.at(-1);
    if (before === undefined || (holds(one, before) && !holds(before, one))) growing.push(one);
  }
  return growing;
}

function holds(outer: Stretch, inner: Stretch): boolean {
  const startsBefore =
    outer.firstLine < inner.firstLine || (outer.firstLine === inner.firstLine && outer.start <= inner.start);
  const endsBehind =
    outer.lastLine > inner.lastLine || (outer.lastLine === inner.lastLine && outer.end >= inner.end);
  return startsBefore && endsBehind;
}

/** The stretches of one line that hold a column, from the least to the most. */
function spansAt(parsed: ParsedLine, column: number): Span[] {
  const words = parsed.tokens.filter((token) => token.kind !== 'blank');
  const comment = words.find((token) => token.kind === 'comment');
  const said = words.filter((token) => token !== comment);
  const touching = words.filter((token) => token.start <= column && column <= token.end);
  const spans: Span[] = [];
  // Between two tokens that touch, the one behind the cursor is meant unless it is a mere mark.
  const token = touching.findLast((one) => !isMark(one)) ?? touching.at(-1);
  if (token !== undefined) spans.push(spanOf(token));
  for (const span of meaningfulSpans(parsed.statement))
    if (span.start <= column && column <= span.end) spans.push(span);
  const [first, last] = [said[0], said.at(-1)];
  if (first !== undefined && last !== undefined) spans.push({ start: first.start, end: last.end });
  const end = words.at(-1)?.end ?? parsed.text.length;
  spans.push({ start: words[0]?.start ?? 0, end });
  spans.push({ start: 0, end: parsed.text.length });
  return spans
    .filter(({ start, end: past }) => start <= column && column <= past)
    .sort((one, other) => one.end - one.start - (other.end - other.start));
}

function isMark({ kind }: Token): boolean {
  return kind === 'comma' || kind === 'colon' || kind === 'leftParen' || kind === 'rightParen';
}

const spanOf = ({ start, end }: Span): Span => ({ start, end });

function meaningfulSpans(statement: Statement): Span[] {
  switch (statement.kind) {
    case 'ingredient':
    case 'planned':
      return [spanOf(statement.name), spanOf(statement.amount)];
    case 'header':
      return [statement.name, statement.part, statement.mixer].flatMap((one) =>
        one === undefined ? [] : [spanOf(one)],
      );
    case 'property': {
      const { value, keyword, valueSpan } = statement;
      const items =
        value?.form === 'load'
          ? value.items.flatMap((item) => [
              spanOf(item.name),
              ...(item.allBut ?? []).map(spanOf),
              spanOf(item),
            ])
          : [];
      const name = value !== undefined && 'name' in value ? [spanOf(value.name)] : [];
      return [spanOf(keyword), ...items, ...name, spanOf(valueSpan)];
    }
    case 'step':
      return [spanOf(statement.words)];
    default:
      return [];
  }
}
