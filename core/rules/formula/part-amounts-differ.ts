import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { numberOf, ownProblems, placeOf, relatedTo } from '../engine/rule-places.ts';

export const partAmountsDiffer: Rule = {
  code: 'part-amounts-differ',
  level: 'error',
  title: 'More or less of a part is taken than is made',
  explanation:
    'The part is made by weight, and the lines that take it ask for another weight. Write the part in percent, so that it is made ' +
    'as it is needed, take `remaining`, or correct one of the weights.',
  bad: 'formula Quay Tin:\n  bread flour  1 kg\n  water  600 g\n  levain  300 g\n\npreferment levain:\n  bread flour  100 g\n  water  100 g\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  600 g\n  levain  300 g\n\npreferment levain:\n  bread flour  100%\n  water  100%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'part-amounts-differ')) {
      const made = numberOf(problem.values.madeGrams);
      const taken = numberOf(problem.values.takenGrams);
      const name = String(problem.values.name);
      yield {
        ...placeOf(block, problem),
        message:
          made === undefined || taken === undefined
            ? message('part-amounts-differ.differ', { name })
            : message('part-amounts-differ.differ-grams', { name, grams: made, otherGrams: taken }),
        related: relatedTo(block, problem.related, message('part-amounts-differ.part')),
      };
    }
  },
};
