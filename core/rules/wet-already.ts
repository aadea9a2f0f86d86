import { mass, percent, trimmed } from '../text/figures.ts';
import { replaceFix } from './fixes.ts';
import { amountPlace, numberOf, ownProblems } from './places.ts';
import type { Rule, RuleFix } from './rule.ts';

export const wetAlready: Rule = {
  code: 'wet-already',
  level: 'error',
  title: 'The other lines bring more water than the hydration asked for',
  explanation:
    '`to N% hydration` adds the water that is missing. Preferments, soakers or other lines bring more than that already, so less ' +
    'than nothing would have to be added. Ask for more, or use less of what is wet.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  to 30% hydration\n  poolish  120%\n\npreferment poolish:\n  bread flour  100%\n  water  100%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  to 68% hydration\n  poolish  60%\n\npreferment poolish:\n  bread flour  100%\n  water  100%\n',
  *check(context) {
    for (const problem of ownProblems(context.analysis, 'below-own-water')) {
      const { line, span, amount } = amountPlace(context, problem.lineId!);
      const own = numberOf(problem.values.ownFraction);
      const over = numberOf(problem.values.overGrams);
      const wanted = numberOf(problem.values.fraction) ?? 0;
      const kind = problem.values.effective === 'yes' ? 'effective hydration' : 'hydration';
      const fixes: RuleFix[] = [];
      if (own !== undefined && amount?.kind === 'hydration') {
        const least = `to ${trimmed(Math.ceil(own * 1000) / 10, 1)}% ${kind}`;
        fixes.push(replaceFix(`Write ${least}, the least that can be reached`, line, span, least));
      }
      const made = own === undefined ? 'more' : percent(own);
      const much =
        over === undefined || context.analysis?.solved?.assumedScale === true
          ? ''
          : `, ${mass(over)} of water too much`;
      const message = `The other lines make ${made} ${kind} already, and ${percent(wanted)} is wanted${much}. Ask for more, or use less of what is wet.`;
      yield { line, span, message, fixes };
    }
  },
};
