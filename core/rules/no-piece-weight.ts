import { lineId } from '../model/formula-model.ts';
import { amountPlace } from './places.ts';
import type { Rule } from './rule.ts';

export const noPieceWeight: Rule = {
  code: 'no-piece-weight',
  level: 'error',
  title: 'Pieces of something whose weight nobody knows',
  explanation:
    'A count is turned into a weight by the weight of one piece, and for this ingredient none is known. Write the weight, or ' +
    'define the ingredient with its `piece weight`.',
  bad: 'formula Quay Tin:\n  bread flour  1 kg\n  water  640 g\n  honey  2 pieces\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  540 g\n  egg  2 pieces\n',
  *check(context) {
    for (const problem of context.analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'no-piece-weight') continue;
      const { line, span } = amountPlace(context, lineId(problem.line));
      const message = `What one “${problem.name.text}” weighs is not known. Write the weight here, or in its section: piece weight 50 g`;
      yield { line, span, message };
    }
  },
};
