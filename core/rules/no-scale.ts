import { ownProblems, placeOf, relatedTo } from './places.ts';
import type { Rule } from './rule.ts';

export const noScale: Rule = {
  code: 'no-scale',
  level: 'error',
  title: 'Nothing says how much is made',
  explanation:
    'Percent beside weights need one thing that fixes how much flour there is: a yield, or a flour in weight. A part needs a line ' +
    'that takes it, a `draws`, or weights of its own.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  20 g\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  65%\n  salt  20 g\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'under-determined')) {
      const isDough = problem.sectionId === analysis!.resolved.input.sections[0]!.id;
      const message = isDough
        ? 'Some lines are in weight and the flour is in percent: nothing says how much flour there is. Write a yield, or the flour in weight.'
        : `Nothing says how much of “${problem.values.name}” is made. Draw it, name it in a line of the formula, or write its flour in weight.`;
      yield {
        ...placeOf(block, problem),
        message,
        related: relatedTo(block, problem.related, 'a line in weight'),
      };
    }
  },
};
