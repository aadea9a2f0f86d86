import { percent } from '../text/figures.ts';
import { replaceFix } from './fixes.ts';
import { amountPlace, ownProblems } from './places.ts';
import type { Rule } from './rule.ts';

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
      const { name } = problem.values;
      if (problem.kind === 'hydration-not-water' && amount?.kind === 'hydration') {
        const plain = percent(amount.fraction);
        yield {
          line,
          span,
          message: `“to ${plain} hydration” is for water, and “${name}” is none. Write its amount: ${plain}, or a weight.`,
          fixes: [replaceFix(`Write ${plain}`, line, span, plain)],
        };
        continue;
      }
      const message =
        problem.kind === 'balance-not-flour'
          ? `“balance” is what a flour takes of the 100%, and “${name}” is no flour. Write its percentage or weight.`
          : `“remaining” is what is left of a part made here, and “${name}” is no part. Write its percentage or weight.`;
      yield { line, span, message };
    }
  },
};
