import { amountColumn } from '../../syntax/layout.ts';
import type { Block } from '../../syntax/tree.ts';
import { message } from '../../words/message.ts';
import { lineBelowFix } from '../engine/fixes.ts';
import type { Rule, RuleFix } from '../engine/rule.ts';
import { ownProblems, placeOf } from '../engine/rule-places.ts';

export const unusedPart: Rule = {
  code: 'unused-part',
  level: 'warning',
  title: 'A part that nothing takes',
  explanation:
    'The part draws nothing and no line names it, so none of it gets into the dough. Add `draws 20% of flour` to take it out of the ' +
    'formula, or a line with its name to add it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\npreferment poolish:\n  bread flour  100%\n  water  100%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\npreferment poolish:\n  draws 20% of flour\n  bread flour  100%\n  water  100%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'unused-part')) {
      const place = placeOf(block, problem);
      if (saysDraws(block, place.line)) continue;
      yield {
        ...place,
        message: message('unused-part.unused', { name: String(problem.values.name) }),
        fixes: [...drawFix(block, place.line), ...addFix(block, place.line)],
        unused: true,
      };
    }
  },
};

/** A `draws` that cannot be read is shown on its own line. */
function saysDraws(block: Block, headerLine: number): boolean {
  for (const { statement } of block.lines.slice(headerLine + 1)) {
    if (statement.kind === 'header') return false;
    if (statement.kind === 'property' && statement.property === 'draws') return true;
  }
  return false;
}

/** A part whose own lines say how much of it there is goes in whole. */
function addFix(block: Block, headerLine: number): RuleFix[] {
  const { statement } = block.lines[headerLine]!;
  if (statement.kind !== 'header' || statement.name === undefined) return [];
  const own = block.subs.find((sub) => sub.headerLine === headerLine);
  const end = own?.endLine ?? block.lines.length;
  for (let line = headerLine + 1; line < end; line++) {
    const said = block.lines[line]!.statement;
    if (said.kind === 'ingredient' && said.amount.kind !== 'mass' && said.amount.kind !== 'ofAllFlour')
      return [];
  }
  const dough = block.top?.endLine ?? 0;
  let last = -1;
  for (let line = 0; line < dough; line++)
    if (block.lines[line]!.statement.kind === 'ingredient') last = line;
  if (last < 0) return [];
  const text = `${`  ${statement.name.text}  `.padEnd(amountColumn)}remaining`;
  return [
    lineBelowFix(message('unused-part.fix-add', { part: statement.name.text }), block, last, text, true),
  ];
}

/** The usual way to bring a preferment in: a fifth of the flour goes through it. */
function drawFix(block: Block, headerLine: number): RuleFix[] {
  const statement = block.lines[headerLine]!.statement;
  if (statement.kind !== 'header' || statement.section !== 'preferment') return [];
  return [
    lineBelowFix(message('fix.draw-through', { meant: '20%' }), block, headerLine, '  draws 20% of flour'),
  ];
}
