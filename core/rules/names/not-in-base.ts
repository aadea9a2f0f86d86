import type { Definition } from '../../model/scope.ts';
import { basesOf, droppedNames, isVariant, wholeBlock, wholeOf } from '../../model/variant.ts';
import { type Block, linesOf, type Name } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { nearestWord } from '../../text/nearest.ts';
import { message } from '../../words/message.ts';
import { removeLineFix, writeFix } from '../engine/fixes.ts';
import type { Rule, RuleContext, RuleFix } from '../engine/rule.ts';

export const notInBase: Rule = {
  code: 'not-in-base',
  level: 'error',
  title: 'A variant leaves out what its base does not have',
  explanation:
    'After `without` stands what a variant does not take of its base: an ingredient line or a part, by its name there. ' +
    'Write the name as the base has it, or take the line out.',
  bad: 'formula Plain White:\n  bread flour  100%\n  water  65%\n\nformula Wet White like Plain White:\n  water  75%\n  without milk\n',
  good: 'formula Plain White:\n  bread flour  100%\n  water  60%\n  milk  5%\n\nformula Wet White like Plain White:\n  water  75%\n  without milk\n',
  *check(context) {
    const own = ownBlock(context);
    if (own.top?.kind !== 'formula') return;
    const dropped = droppedNames(own);
    if (dropped.length === 0) return;
    if (!isVariant(own)) {
      const { line, name } = elementAt(dropped, 0);
      const example = `formula ${own.top.header.name?.text ?? ''} like Plain White:`;
      const said = message('not-in-base.no-base', { name: name.text, example });
      yield { line, span: { start: name.start, end: name.end }, message: said };
      return;
    }
    const bases = basesOf(own, context.scope);
    if (bases.length === 0) return;
    const there = namesIn(bases, context);
    for (const { line, name } of dropped) {
      if (there.has(name.folded)) continue;
      const meant = nearestWord(name.folded, there.keys());
      const written = meant === undefined ? undefined : there.get(meant)!.text;
      yield {
        line,
        span: { start: name.start, end: name.end },
        message: message('not-in-base.none', { name: name.text, otherName: elementAt(bases, 0).name.text }),
        fixes: fixesFor(own, line, name, written),
      };
    }
  },
};

function ownBlock({ block }: RuleContext): Block {
  return wholeOf(block)?.own ?? block;
}

/** The ingredient lines and parts of the base, by folded name. */
function namesIn(bases: readonly Definition[], { scope }: RuleContext): ReadonlyMap<string, Name> {
  const [base] = bases;
  const whole = wholeBlock(base!.block, scope.from(base!.uri));
  const names = new Map<string, Name>();
  for (const line of linesOf(whole.top!)) {
    const { statement } = elementAt(whole.lines, line);
    if (statement.kind === 'ingredient') names.set(statement.name.folded, statement.name);
  }
  for (const { header } of whole.subs)
    if (header.name !== undefined) names.set(header.name.folded, header.name);
  return names;
}

function fixesFor(own: Block, line: number, name: Name, written: string | undefined): readonly RuleFix[] {
  if (written !== undefined) return [writeFix(line, name, written, true)];
  const { statement } = elementAt(own.lines, line);
  const isAlone =
    statement.kind === 'property' && statement.value?.form === 'names' && statement.value.names.length === 1;
  return isAlone ? [removeLineFix(message('not-in-base.fix'), own, line, true)] : [];
}
