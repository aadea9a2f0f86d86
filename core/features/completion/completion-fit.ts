import { type Asked, type LineCompletion, wordStart } from './completion-place.ts';

/** A completion fitted to what stands around the cursor, so that the line reads well once it is taken. */
export function settled(asked: Asked, one: LineCompletion): LineCompletion {
  const { text, column, before, line } = asked;
  const wordEnd = wordStart(asked) < column ? endOfWord(asked, one) : column;
  const behind = text.slice(wordEnd);
  const indent = before.length - before.trimStart().length;
  const isHeader = one.kind === 'section' && behind.trim() === '' && indent > 0;
  return {
    ...insertedBefore(behind, one),
    ...(wordEnd === column ? {} : { wordEnd }),
    ...(isHeader ? { outdent: { line, start: 0, end: indent } } : {}),
  };
}

/** Where the word or the name ends that the cursor stands in. */
function endOfWord({ block, line, text, column }: Asked, { kind, replace }: LineCompletion): number {
  const statement = block.lines[line]?.statement;
  const isName = kind === 'ingredient' || kind === 'part' || kind === 'formula';
  if (isName && (statement?.kind === 'ingredient' || statement?.kind === 'planned')) {
    const { start, end } = statement.name;
    if (start === replace.start && column <= end) return end;
  }
  const isInList = isName && statement?.kind === 'property';
  const rest = (isInList ? /^[^,#\d"]*/ : /^[\p{L}\p{M}\p{N}%'’-]*/u).exec(text.slice(column))![0];
  return column + rest.trimEnd().length;
}

/** No blanks and no colon twice, and no lines of a section before words that stand there already. */
function insertedBefore(behind: string, { snippet, ...one }: LineCompletion): LineCompletion {
  const { insert, kind, label } = one;
  const isLast = behind.trim() === '';
  if (isLast) return { ...one, ...(snippet === undefined ? {} : { snippet }) };
  if (kind === 'rule' && /^\s*[:,]/.test(behind)) return { ...one, insert: label };
  const text = snippet === undefined ? insert : `${label} `;
  return { ...one, insert: /^[\s:]/.test(behind) ? text.trimEnd() : text };
}
