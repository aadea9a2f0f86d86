import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace, numberOf, ownProblems, propertyPlace, relatedTo } from '../engine/rule-places.ts';

export const gramsExceedTotal: Rule = {
  code: 'grams-exceed-total',
  level: 'error',
  title: 'Lines in weight outweigh the whole',
  explanation:
    'The lines written as a weight are more than the section may weigh in all, so nothing would be left for the flour. Raise the ' +
    'yield, or write those lines in percent.',
  bad: 'formula Quay Tin:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  sunflower seeds  3 kg\n',
  good: 'formula Quay Tin:\n  yield 12 kg\n  bread flour  100%\n  water  65%\n  sunflower seeds  1 kg\n',
  *check(context) {
    const { analysis, block } = context;
    for (const problem of ownProblems(analysis, 'grams-exceed-total')) {
      const header = lineOfId(problem.sectionId);
      const place = header === 0 ? propertyPlace(context, 'yield') : headerPlace(block, header);
      const lines = numberOf(problem.values.linesGrams);
      const total = numberOf(problem.values.totalGrams);
      const name = String(problem.values.name);
      yield {
        ...place,
        message:
          lines === undefined || total === undefined
            ? message('grams-exceed-total.more', { name })
            : message('grams-exceed-total.more-grams', { name, grams: lines, otherGrams: total }),
        related: relatedTo(block, problem.related, message('grams-exceed-total.in-weight')),
      };
    }
  },
};
