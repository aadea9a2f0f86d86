import { message } from '../../words/message.ts';
import { removeLineFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { numberOf, ownProblems, propertyPlace, relatedTo } from '../engine/rule-places.ts';

export const twoScales: Rule = {
  code: 'two-scales',
  level: 'error',
  title: 'A yield, and flour in weight beside it',
  explanation:
    'A yield fixes how much dough is made, and so does a flour written as a weight. Both at once can only agree by chance. ' +
    'Write the flours in percent, or take the yield out.',
  bad: 'formula Quay Tin:\n  yield 10 kg\n  bread flour  2 kg\n  water  1.3 kg\n',
  good: 'formula Quay Tin:\n  yield 10 kg\n  bread flour  100%\n  water  65%\n',
  *check(context) {
    const { analysis, block } = context;
    for (const problem of ownProblems(analysis, 'two-scales')) {
      const place = propertyPlace(context, 'yield');
      const wanted = numberOf(problem.values.yieldGrams);
      const made = numberOf(problem.values.linesGrams);
      yield {
        ...place,
        message:
          wanted === undefined || made === undefined
            ? message('two-scales.disagree')
            : message('two-scales.disagree-grams', { grams: wanted, otherGrams: made }),
        related: relatedTo(block, problem.related, message('two-scales.flour')),
        fixes: [removeLineFix(message('two-scales.fix'), block, place.line)],
      };
    }
  },
};
