import type { IToken } from 'chevrotain';
import { elementAt, firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { problem, replaceFix } from './problem.ts';
import { findPropertyOf, readProperty } from './property.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement, SectionKind } from './tree.ts';

/**
 * Reads `flour 18 °C, room 21 °C, water 15 °C`, several properties on one line, as all of them, with the fix that gives each a line of
 * its own. `undefined` where some of it reads as none.
 */
export function readSeveralProperties(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
): LineRead | undefined {
  const parts: IToken[][] = [[]];
  const gaps: IToken[] = [];
  for (const token of tokens) {
    if (token.tokenType === t.Comma || /^[;/&]$/.test(token.image)) {
      gaps.push(token);
      parts.push([]);
    } else lastOf(parts).push(token);
  }
  if (gaps.length === 0 || parts.some((part) => part.length === 0)) return undefined;
  const statements: PropertyStatement[] = [];
  for (const part of parts) {
    const found = findPropertyOf(part, section);
    if (found === undefined) return undefined;
    const { statement, problems } = readProperty(line, part, found.property, found.length);
    if (problems.length > 0 || statement.kind !== 'property') return undefined;
    statements.push(statement);
  }
  const [first, ...further] = statements;
  if (first === undefined) return undefined;
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const indent = /^\s*/.exec(line)?.[0] ?? '';
  const edits = gaps.map((_, at) => ({
    start: t.endOf(lastOf(elementAt(parts, at))),
    end: firstOf(elementAt(parts, at + 1)).startOffset,
    insert: `\n${indent}`,
  }));
  const fix = replaceFix(message('fix.put-on-own-lines'), span, '', true);
  const said = message('wrong-value.own-lines', { count: parts.length });
  return { statement: first, further, problems: [problem('wrong-value', said, span, { ...fix, edits })] };
}
