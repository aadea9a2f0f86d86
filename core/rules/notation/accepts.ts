import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { nearestWord } from '../../text/nearest.ts';
import type { Span } from '../../text/span.ts';
import { type Message, message } from '../../words/message.ts';
import { replaceFix, writeFix } from '../engine/fixes.ts';
import type { RuleFinding, RuleFix } from '../engine/rule.ts';
import { rules, rulesByCode } from '../engine/rule-catalogue.ts';
import { isWritingError } from './syntax-rows.ts';

/** One code of an `# accept`, the line it is about, and whether it silenced anything. */
export interface AcceptUse {
  readonly line: number;
  readonly span: Span;
  readonly comment: Span;
  readonly isOnly: boolean;
  readonly code: string;
  /** The line whose findings it silences; absent when nothing follows in its section. */
  readonly target: number | undefined;
  readonly isWritingError: boolean;
  used: boolean;
}

/** The accepts of a block. One that stands alone is about the next line that is no comment. */
export function acceptsOf(block: Block): AcceptUse[] {
  return block.lines.flatMap((parsed, line) => {
    const { accept } = parsed;
    if (accept === undefined) return [];
    const target = parsed.empty ? lineBelow(block, line) : line;
    return accept.codes.map(({ code, span }) => ({
      line,
      span,
      comment: accept.span,
      isOnly: accept.codes.length === 1,
      code,
      target,
      isWritingError: isWritingError(code),
      used: false,
    }));
  });
}

function lineBelow(block: Block, line: number): number | undefined {
  for (let next = line + 1; next < block.lines.length; next++) {
    const { empty, tokens } = elementAt(block.lines, next);
    if (!empty) return next;
    if (tokens.every((token) => token.kind === 'blank')) return undefined;
  }
  return undefined;
}

/** What is to be said of accepts once all findings are in. */
export function* judgeAccepts(
  block: Block,
  accepts: readonly AcceptUse[],
): Iterable<RuleFinding & { readonly code: string }> {
  for (const accept of accepts) {
    const { line, span, code } = accept;
    if (!rulesByCode.has(code)) {
      const meant = nearestWord(
        code,
        rules.map((rule) => rule.code).filter((one) => !isWritingError(one)),
      );
      yield {
        code: 'unknown-accept',
        line,
        span,
        message:
          meant === undefined
            ? message('unknown-accept.none', { code })
            : message('unknown-accept.meant', { code, meant }),
        fixes: meant === undefined ? [] : [writeFix(line, span, meant, true)],
      };
      continue;
    }
    if (accept.used) continue;
    const fixes = takeOut(block, accept);
    yield { code: 'unused-accept', line, span, message: whyUnused(accept), fixes, unused: true };
  }
}

function whyUnused({ code, isWritingError, target }: AcceptUse): Message {
  if (isWritingError) return message('unused-accept.writing', { code });
  return target === undefined
    ? message('unused-accept.nothing-below')
    : message('unused-accept.none', { code });
}

function takeOut(block: Block, { line, comment, isOnly, span }: AcceptUse): RuleFix[] {
  const { text, empty } = elementAt(block.lines, line);
  if (!isOnly) return [];
  if (empty && line > 0) {
    const before = elementAt(block.lines, line - 1).text.length;
    return [
      {
        title: message('unused-accept.fix'),
        edits: [{ line: line - 1, start: before, endLine: line, end: text.length, insert: '' }],
        preferred: true,
      },
    ];
  }
  const start = text.slice(0, comment.start).trimEnd().length;
  return [
    replaceFix(
      message('unused-accept.fix'),
      line,
      { start: Math.min(start, span.start), end: comment.end },
      '',
      true,
    ),
  ];
}
