import { ownProblems, placeOf, relatedTo } from './places.ts';
import type { Rule } from './rule.ts';

export const loop: Rule = {
  code: 'loop',
  level: 'error',
  title: 'Something is an ingredient of itself',
  explanation:
    'A part is made of itself, by way of other parts or formulas, so it can never be weighed. Culture of yesterday’s is written ' +
    'as `ripe culture 20%` in the preferment, not as a line with its own name.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  62%\n  levain  30%\n\npreferment levain:\n  bread flour  100%\n  water  80%\n  levain  20%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  62%\n  levain  30%\n\npreferment levain:\n  bread flour  100%\n  water  80%\n  ripe culture 20%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'loop')) {
      yield {
        ...placeOf(block, problem),
        message: `This goes round in a circle: ${problem.values.loop}. Take this line out; for culture of its own write “ripe culture 20%”.`,
        related: relatedTo(block, problem.related, 'part of the circle'),
      };
    }
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'loop-of-formulas') continue;
      const { name, line } = problem;
      const message = `“${name.text}” is made with this formula itself, so neither can be weighed. Take one of the two out.`;
      yield { line, span: { start: name.start, end: name.end }, message };
    }
  },
};
