import { lineOfId } from '../model/formula-model.ts';
import type { Block } from '../syntax/tree.ts';
import { message } from '../words/message.ts';
import { ownProblems, placeOf } from './places.ts';
import type { Rule } from './rule.ts';

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
      yield { ...placeOf(block, problem), message: message(code) };
    }
  },
};

function kindOf(block: Block, headerLine: number): 'dough' | 'part' | 'beside' {
  const statement = block.lines[headerLine]?.statement;
  if (statement?.kind !== 'header' || statement.section === 'formula') return 'dough';
  return ['filling', 'topping', 'bath'].includes(statement.section) ? 'beside' : 'part';
}
