import { lineOfId } from '../../model/formula-model.ts';
import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleEdit, RuleFix } from '../engine/rule.ts';
import { ownProblems, placeOf } from '../engine/rule-places.ts';

export const noFlour: Rule = {
  code: 'no-flour',
  level: 'error',
  title: 'Percent of flour, and no flour',
  explanation:
    'A percentage is of the flour lines of its own section. Where a section has none, one line of 100% stands in for it ' +
    '(a soaker: `linseed 100%`). Add the flour, or write weights.',
  bad: 'formula Quay Tin:\n  yield 10 pieces of 500 g\n  water  65%\n  salt  2%\n',
  good: 'formula Quay Tin:\n  yield 10 pieces of 500 g\n  bread flour  100%\n  water  65%\n  salt  2%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'no-flour')) {
      const code =
        problem.values.sumFraction === 0
          ? ('no-flour.weighs-nothing' as const)
          : (`no-flour.${kindOf(block, lineOfId(problem.sectionId))}` as const);
      const fixes = code === 'no-flour.part' ? ofAllFlourFix(block, lineOfId(problem.sectionId)) : [];
      yield { ...placeOf(block, problem), message: message(code), fixes };
    }
  },
};

/** Of the dough’s flour is what most bakers mean by the percentages of a soaker without flour. */
function ofAllFlourFix(block: Block, headerLine: number): RuleFix[] {
  const edits: RuleEdit[] = [];
  for (let line = headerLine + 1; line < block.lines.length; line++) {
    const { statement } = elementAt(block.lines, line);
    if (statement.kind === 'header') break;
    if (statement.kind !== 'ingredient' || statement.amount.kind !== 'fraction') continue;
    const { end } = statement.amount;
    edits.push({ line, start: end, end, insert: ' of all flour' });
  }
  return edits.length === 0 ? [] : [{ title: message('no-flour.fix-of-all-flour'), edits, preferred: true }];
}

function kindOf(block: Block, headerLine: number): 'dough' | 'part' | 'beside' {
  const statement = block.lines[headerLine]?.statement;
  if (statement?.kind !== 'header' || statement.section === 'formula') return 'dough';
  return ['filling', 'topping', 'bath'].includes(statement.section) ? 'beside' : 'part';
}
