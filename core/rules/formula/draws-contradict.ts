import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { numberOf, ownProblems } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const drawsContradict: Rule = {
  code: 'draws-contradict',
  level: 'error',
  title: 'A draw does not fit what fixes the part already',
  explanation:
    'The size of a part follows from one draw, or from weights on its lines. A second one that asks for another size cannot be ' +
    'met. Keep one of them.',
  bad: 'formula Quay Tin:\n  yield 10 kg\n  bread flour  80%\n  medium rye  20%\n  water  65%\n\npreferment sour:\n  draws 20% of bread flour\n  draws 90% of medium rye\n  bread flour  50%\n  medium rye  50%\n  water  80%\n',
  good: 'formula Quay Tin:\n  yield 10 kg\n  bread flour  80%\n  medium rye  20%\n  water  65%\n\npreferment sour:\n  draws 90% of medium rye\n  bread flour  50%\n  medium rye  50%\n  water  80%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'contradiction')) {
      const line = lineOfId(String(problem.values.drawId));
      const wanted = numberOf(problem.values.wantedGrams);
      const brought = numberOf(problem.values.broughtGrams);
      const part = String(problem.values.part);
      yield {
        line,
        span: wordsOf(block, line),
        message:
          wanted === undefined || brought === undefined
            ? message('draws-contradict.fixed', { part })
            : message('draws-contradict.fixed-grams', { part, grams: wanted, otherGrams: brought }),
      };
    }
  },
};
