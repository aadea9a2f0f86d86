import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace, ownProblems } from '../engine/rule-places.ts';

export const amountDoesNotFit: Rule = {
  code: 'amount-does-not-fit',
  level: 'error',
  title: 'An amount on a line that cannot have it',
  explanation:
    '`balance` is for a flour, `to N% hydration` for water (`to N% effective hydration` for anything that is mostly water), and ' +
    '`remaining` for a part that is made in the same formula. On other lines write a percentage or a weight.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  to 65% hydration\n  salt  balance\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  to 65% hydration\n  salt  2%\n',
  *check(context) {
    for (const problem of ownProblems(
      context.analysis,
      'balance-not-flour',
      'hydration-not-water',
      'remaining-not-part',
    )) {
      const { line, span, amount } = amountPlace(context, problem.lineId!);
      const name = String(problem.values.name);
      if (problem.kind === 'hydration-not-water' && amount?.kind === 'hydration') {
        const meant = `${trimmed(amount.fraction * 100, 2)}%`;
        yield {
          line,
          span,
          message: message('amount-does-not-fit.hydration', { name, meant }),
          fixes: [writeFix(line, span, meant)],
        };
        continue;
      }
      const code =
        problem.kind === 'balance-not-flour'
          ? 'amount-does-not-fit.balance'
          : 'amount-does-not-fit.remaining';
      yield { line, span, message: message(code, { name }) };
    }
  },
};
