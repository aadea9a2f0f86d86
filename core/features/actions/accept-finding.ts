import type { Finding } from '../../rules/engine/finding.ts';
import { rulesByCode } from '../../rules/engine/rule-catalogue.ts';
import { isWritingError } from '../../rules/notation/syntax-rows.ts';
import { commentColumn, upTo } from '../../syntax/layout.ts';
import type { ParsedLine } from '../../syntax/tree.ts';
import { indentOf } from '../../text/indent.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { LineChanges } from './line-changes.ts';
import { commentOf } from './line-layout.ts';

/** A line with its accept is not made longer than this; the accept goes on the line above instead. */
const longestLine = 100;
const reason = '$' + '{1:reason}';

export const acceptFinding: Action = {
  id: 'accept-finding',
  kind: 'fix',
  name: 'Accept a finding with a reason',
  explanation:
    'Writes `# accept CODE: reason` for a finding on the line of the cursor and leaves the cursor on the reason. It goes to the end of the ' +
    'line; where the line has a comment already or would grow long, to a line of its own above; and where an accept stands there ' +
    'already, into its list. Errors in how a line is written cannot be accepted.',
  example:
    'formula Quay Tin:\n  bread flour        100%\n  water              65%\n  ‸salt               9%\n',
  variants: true,
  *offers(context) {
    for (const finding of findingsAt(context)) {
      if (!rulesByCode.has(finding.code) || isWritingError(finding.code) || /-accept$/.test(finding.code))
        continue;
      yield {
        title: message('accept-finding.accept', { code: finding.code }),
        argument: `${finding.code} ${finding.place.line}`,
        findings: [finding],
        edits: () => accept(context, finding.code, finding.place.line - context.firstLine),
      };
    }
  },
};

/** One finding of each code and line, on the lines of the range that lie in the block at its start. */
function findingsAt({ findings, firstLine, line, lastLine }: ActionContext): Finding[] {
  const seen = new Set<string>();
  return findings().filter(({ place, code }) => {
    const key = `${code} ${place.line}`;
    const at = place.line - firstLine;
    if (at < line || at > lastLine || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function accept(context: ActionContext, code: string, line: number) {
  const changes = new LineChanges(context);
  const parsed = context.block.lines[line];
  if (parsed === undefined) return undefined;
  const above = line > 0 ? context.block.lines[line - 1] : undefined;
  for (const [at, held] of [
    [line, parsed],
    [line - 1, above],
  ] as const) {
    const last = held?.accept?.codes.at(-1);
    if (held === undefined || last === undefined || (at !== line && !held.empty)) continue;
    return changes.edit(at, { start: last.span.end, end: last.span.end, insert: `, ${code}` }).edits();
  }
  const written = `# accept ${code}: ${reason}`;
  const text = upTo(parsed.text.trimEnd(), commentColumn) + written;
  if (commentOf(parsed) === '' && (text.length <= longestLine || line === 0))
    return changes.asSnippet(line).replace(line, text).edits();
  if (line === 0) return commentMovedUp(changes, parsed, written);
  const indent = indentOf(parsed.text);
  return changes
    .asSnippet(line - 1)
    .addBelow(line - 1, `${indent}${written}`)
    .edits();
}

/** The first line of a block takes its accept at its own end, so that a comment there makes room. */
function commentMovedUp(changes: LineChanges, parsed: ParsedLine, written: string) {
  const comment = commentOf(parsed);
  const text = parsed.text.slice(0, parsed.text.length - comment.length);
  return changes
    .asSnippet(0)
    .replace(0, asSnippetText(comment.trim()), asSnippetText(upTo(text, commentColumn)) + written)
    .edits();
}

const asSnippetText = (text: string): string => text.replace(/[$}\\]/g, '\\$&');
