import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Span } from '../../text/span.ts';
import type { Message } from '../../words/message.ts';
import { message } from '../../words/message.ts';
import type { RuleEdit, RuleFix } from './rule.ts';

/** A fix that writes something else in one place. */
export function replaceFix(
  title: Message,
  line: number,
  span: Span,
  insert: string,
  preferred = false,
): RuleFix {
  return fixOf(title, [{ line, start: span.start, end: span.end, insert }], preferred);
}

/** A fix that is called by what it writes. */
export function writeFix(line: number, span: Span, meant: string, preferred = false): RuleFix {
  return replaceFix(message('fix.write', { meant }), line, span, meant, preferred);
}

/** A fix that takes a line out, with the line break before it, so that it works on the last line of a file too. */
export function removeLineFix(title: Message, block: Block, line: number, preferred = false): RuleFix {
  return fixOf(title, [lineOut(block, line)], preferred);
}

/** A fix that writes a line of its own below another. */
export function lineBelowFix(
  title: Message,
  block: Block,
  line: number,
  text: string,
  preferred = false,
): RuleFix {
  const end = elementAt(block.lines, line).text.length;
  return fixOf(title, [{ line, start: end, end, insert: `\n${text}` }], preferred);
}

/** A fix that writes a new section behind the block. */
export function sectionBehindFix(title: Message, block: Block, text: string): RuleFix {
  let line = block.lines.length - 1;
  while (line > 0 && elementAt(block.lines, line).text.trim() === '') line--;
  const end = elementAt(block.lines, line).text.length;
  return fixOf(title, [{ line, start: end, end, insert: `\n\n${text}` }], false);
}

function lineOut(block: Block, line: number): RuleEdit {
  const end = elementAt(block.lines, line).text.length;
  if (line === 0) return { line, start: 0, end, insert: '' };
  return {
    line: line - 1,
    start: elementAt(block.lines, line - 1).text.length,
    endLine: line,
    end,
    insert: '',
  };
}

function fixOf(title: Message, edits: readonly RuleEdit[], preferred: boolean): RuleFix {
  return preferred ? { title, edits, preferred: true } : { title, edits };
}
