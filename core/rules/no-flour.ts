import { lineOfId } from '../model/formula-model.ts';
import type { Block } from '../syntax/tree.ts';
import { ownProblems, placeOf } from './places.ts';
import type { Rule, RuleEdit, RuleFix } from './rule.ts';

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
      const message =
        problem.values.sumFraction === 0
          ? 'The flour of this section weighs nothing, so percentages of it are nothing too. Write how much flour there is.'
          : messages[kindOf(block, lineOfId(problem.sectionId))];
      const isPart =
        problem.values.sumFraction !== 0 && kindOf(block, lineOfId(problem.sectionId)) === 'part';
      const fixes = isPart ? ofAllFlourFix(block, lineOfId(problem.sectionId)) : [];
      yield { ...placeOf(block, problem), message, fixes };
    }
  },
};

/** Of the dough’s flour is what most bakers mean by the percentages of a soaker without flour. */
function ofAllFlourFix(block: Block, headerLine: number): RuleFix[] {
  const edits: RuleEdit[] = [];
  for (let line = headerLine + 1; line < block.lines.length; line++) {
    const { statement } = block.lines[line]!;
    if (statement.kind === 'header') break;
    if (statement.kind !== 'ingredient' || statement.amount.kind !== 'fraction') continue;
    const { end } = statement.amount;
    edits.push({ line, start: end, end, insert: ' of all flour' });
  }
  return edits.length === 0 ? [] : [{ title: 'Write them of all flour', edits, preferred: true }];
}

const messages = {
  dough:
    'This section has no flour and no line of 100%: percent of what? Add the flour line, or write 100% on what the others are measured by.',
  part: 'This section has no flour and no line of 100%: percent of what? Its percentages are of itself: write 100% on one line and the others against it, or “of all flour” behind each to measure by the dough’s.',
  beside:
    'Percent of what? Nothing here is flour: write how much goes on a piece, as in 3 g a piece, or how much in all, as in 200 g.',
};

function kindOf(block: Block, headerLine: number): keyof typeof messages {
  const statement = block.lines[headerLine]?.statement;
  if (statement?.kind !== 'header' || statement.section === 'formula') return 'dough';
  return ['filling', 'topping', 'bath'].includes(statement.section) ? 'beside' : 'part';
}
