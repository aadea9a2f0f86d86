import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { ownProblems } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const nothingToDraw: Rule = {
  code: 'nothing-to-draw',
  level: 'error',
  title: 'A part draws what is not there',
  explanation:
    '`draws 22% of flour` takes a share of the formula’s lines into the part. Both must have it: the formula a line to draw from, ' +
    'and the part a line to weigh it by.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\npreferment sour:\n  draws 20% of medium rye\n  medium rye  100%\n  water  80%\n',
  good: 'formula Quay Tin:\n  bread flour  80%\n  medium rye  20%\n  water  65%\n\npreferment sour:\n  draws 50% of medium rye\n  medium rye  100%\n  water  80%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'drawn-not-in-formula', 'drawn-not-in-part')) {
      const line = lineOfId(String(problem.values.drawId));
      const name = String(problem.values.name).replace(/^\?/, '');
      const said =
        problem.kind === 'drawn-not-in-formula'
          ? message('nothing-to-draw.formula', { name })
          : message('nothing-to-draw.part', { part: String(problem.values.part), name });
      yield { line, span: wordsOf(block, line), message: said };
    }
  },
};
