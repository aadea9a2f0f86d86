import { message } from '../../words/message.ts';
import { canBeJudged, isLeavened } from '../engine/ranges.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';

export const noSalt: Rule = {
  code: 'no-salt',
  level: 'info',
  title: 'A dough without salt',
  explanation:
    'Some breads are made without salt on purpose. If it was forgotten: 1.5 to 2.5% of flour is common practice. ' +
    'Shown once the formula has a mix or a process.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  fresh yeast  1%\n\nprocess:\n  bulk 1 h at 25 °C\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  1%\n\nprocess:\n  bulk 1 h at 25 °C\n',
  *check({ analysis, block }) {
    if (analysis?.solved?.saltFraction !== 0 || !canBeJudged(analysis) || !isLeavened(analysis)) return;
    // While the formula is still being typed, its salt may be the next line.
    const { mixes, processes } = analysis.resolved.model;
    if (mixes.length === 0 && processes.length === 0) return;
    yield {
      ...headerPlace(block, 0),
      message: message('no-salt.none', { lowFraction: 0.015, highFraction: 0.025 }),
    };
  },
};
