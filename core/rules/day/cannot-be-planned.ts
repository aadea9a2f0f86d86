import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const cannotBePlanned: Rule = {
  code: 'cannot-be-planned',
  level: 'warning',
  title: 'A line of a plan that cannot be worked out',
  explanation:
    'A plan needs to know when its bread has to be ready, and of each formula what it weighs: pieces need the weight of a piece, ' +
    '`baked` needs the bake loss. The line is left out of the plan until the formula says it.',
  bad: 'formula Quay Tin:\n  yield 10 kg\n  bread flour  100%\n  water  66%\n  salt  2%\n\nplan Friday:\n  ready 2026-05-15 06:00\n  Quay Tin  20 pieces\n',
  good: 'formula Quay Tin:\n  yield 10 pieces of 1 kg\n  bread flour  100%\n  water  66%\n  salt  2%\n\nplan Friday:\n  ready 2026-05-15 06:00\n  Quay Tin  20 pieces\n',
  *check({ block, plan }) {
    if (block.top?.kind !== 'plan') return;
    for (const { line, name, reason } of plan?.problems ?? [])
      yield {
        line,
        span: wordsOf(block, line),
        message: message('cannot-be-planned.because', { name, reason }),
      };
  },
};
