import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import { removeLineFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { ownProblems, placeOf, relatedTo } from '../engine/rule-places.ts';

export const drawnAndAdded: Rule = {
  code: 'drawn-and-added',
  level: 'error',
  title: 'A part is drawn and named in a line as well',
  explanation:
    'With `draws` a part is taken out of the totals and goes into the dough by itself. Without it the part is named in a line and ' +
    'added. This part does both and would be in the dough twice. Take the line out, or the `draws`.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  poolish  40%\n\npreferment poolish:\n  draws 20% of flour\n  bread flour  100%\n  water  100%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\npreferment poolish:\n  draws 20% of flour\n  bread flour  100%\n  water  100%\n',
  *check({ analysis, block }) {
    for (const problem of ownProblems(analysis, 'drawn-and-added')) {
      const place = placeOf(block, problem);
      const draw = lineOfId(String(problem.values.drawId));
      yield {
        ...place,
        message: message('drawn-and-added.both', { part: String(problem.values.name) }),
        related: relatedTo(block, problem.related, message('drawn-and-added.draws')),
        fixes: [
          removeLineFix(message('fix.take-line-out'), block, place.line, true),
          removeLineFix(message('fix.take-draws-out'), block, draw),
        ],
      };
    }
  },
};
