import type { IToken } from 'chevrotain';
import { elementAt } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { nameOf } from './name-reading.ts';
import { problem } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import { endOf, Quoted } from './tokens.ts';
import type { HeaderStatement } from './tree.ts';

/**
 * Reads `NAME like BASE` behind the word of a formula's header; `undefined` where no `like` parts two names. Of several the last
 * counts, and a name in quotes keeps its own.
 */
export function variantHeader(
  line: string,
  tokens: readonly IToken[],
  keyword: Span,
): { readonly statement: HeaderStatement; readonly problems: readonly SyntaxProblem[] } | undefined {
  const like = tokens.findLastIndex(
    ({ tokenType, image }, at) => at > 0 && tokenType !== Quoted && image.toLowerCase() === 'like',
  );
  const name = like < 0 ? undefined : nameOf(line, tokens.slice(0, like));
  if (name === undefined) return undefined;
  const header: HeaderStatement = { kind: 'header', section: 'formula', keyword, name };
  const base = nameOf(line, tokens.slice(like + 1));
  if (base !== undefined && base.folded !== '') return { statement: { ...header, base }, problems: [] };
  const word = elementAt(tokens, like);
  const said = message('missing-name.base', { example: `formula ${name.text} like Plain White:` });
  const span = { start: word.startOffset, end: endOf(word) };
  return { statement: header, problems: [problem('missing-name', said, span)] };
}
