import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace, ownProblems, relatedTo } from '../engine/rule-places.ts';

export const noPieces: Rule = {
  code: 'no-pieces',
  level: 'error',
  title: 'So much a piece, and no number of pieces',
  explanation: 'An amount `a piece` needs a yield in pieces: `yield 24 pieces of 880 g`.',
  bad: 'formula Quay Buns:\n  yield 5 kg\n  bread flour  100%\n  water  60%\n\ntopping glaze:\n  sugar  4 g a piece\n',
  good: 'formula Quay Buns:\n  yield 60 pieces of 80 g\n  bread flour  100%\n  water  60%\n\ntopping glaze:\n  sugar  4 g a piece\n',
  *check(context) {
    for (const problem of ownProblems(context.analysis, 'no-pieces')) {
      const { line, span } = amountPlace(context, problem.lineId!);
      yield {
        line,
        span,
        message: message('no-pieces.unknown', { example: 'yield 24 pieces of 880 g' }),
        related: relatedTo(context.block, problem.related, message('no-pieces.also')),
      };
    }
  },
};
