import { lineId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace } from '../engine/rule-places.ts';

export const noPieceWeight: Rule = {
  code: 'no-piece-weight',
  level: 'error',
  title: 'Pieces of something whose weight is not known',
  explanation:
    'A count is turned into a weight by the weight of one piece, and for this ingredient none is known. Write the weight, or ' +
    'define the ingredient with its `piece weight`.',
  bad: 'formula Quay Tin:\n  bread flour  1 kg\n  water  640 g\n  honey  2 pieces\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  540 g\n  egg  2 pieces\n',
  *check(context) {
    for (const problem of context.analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'no-piece-weight') continue;
      const { line, span } = amountPlace(context, lineId(problem.line));
      const said = message('no-piece-weight.unknown', {
        name: problem.name.text,
        example: 'piece weight 50 g',
      });
      yield { line, span, message: said };
    }
  },
};
