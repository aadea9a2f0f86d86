import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace, numberOf, ownProblems, relatedTo } from '../engine/rule-places.ts';

export const nothingLeft: Rule = {
  code: 'nothing-left',
  level: 'error',
  title: 'The other flours leave nothing for the balance',
  explanation:
    '`balance` takes what the other flours leave of 100%. They make 100% or more already. Lower one of them, or take this line out.',
  bad: 'formula Quay Tin:\n  bread flour  85%\n  medium rye  20%\n  wholemeal wheat  balance\n  water  68%\n',
  good: 'formula Quay Tin:\n  bread flour  70%\n  medium rye  20%\n  wholemeal wheat  balance\n  water  68%\n',
  *check(context) {
    for (const problem of ownProblems(context.analysis, 'nothing-left-for-balance')) {
      const { line, span } = amountPlace(context, problem.lineId!);
      const sum = numberOf(problem.values.sumFraction);
      const name = String(problem.values.name);
      yield {
        line,
        span,
        message:
          sum === undefined
            ? message('nothing-left.flours', { name })
            : message('nothing-left.flours-fraction', { name, fraction: sum }),
        related: relatedTo(context.block, problem.related, message('nothing-left.flour')),
      };
    }
  },
};
