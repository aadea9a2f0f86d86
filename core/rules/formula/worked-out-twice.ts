import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace, ownProblems, relatedTo } from '../engine/rule-places.ts';

const words = {
  'two-balances': 'balance',
  'two-hydrations': 'to … hydration',
  'two-remaining': 'remaining',
} as const;

export const workedOutTwice: Rule = {
  code: 'worked-out-twice',
  level: 'error',
  title: 'Two lines of a section are to be worked out in the same way',
  explanation:
    '`balance`, `to N% hydration` and `remaining` take what the other lines leave. Two of a kind in one section leave open how ' +
    'much each takes: the first counts, the second has no amount. Write an amount on one of them.',
  bad: 'formula Quay Tin:\n  bread flour  balance\n  wholemeal wheat  balance\n  water  66%\n',
  good: 'formula Quay Tin:\n  bread flour  70%\n  wholemeal wheat  balance\n  water  66%\n',
  *check(context) {
    for (const problem of ownProblems(context.analysis, 'two-balances', 'two-hydrations', 'two-remaining')) {
      const property = words[problem.kind as keyof typeof words];
      const { line, span } = amountPlace(context, problem.lineId!);
      yield {
        line,
        span,
        message: message('worked-out-twice.again', { property, name: String(problem.values.first) }),
        related: relatedTo(context.block, problem.related, message('worked-out-twice.first', { property })),
      };
    }
  },
};
