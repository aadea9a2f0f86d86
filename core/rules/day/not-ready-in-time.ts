import { elementAt, firstOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const notReadyInTime: Rule = {
  code: 'not-ready-in-time',
  level: 'warning',
  title: 'A plan whose bread cannot be ready in time',
  explanation:
    'Mixers and oven do one batch after another, and no dough is mixed before the plan says `begin`. What this leaves too late is ' +
    'told with how late it is. Begin earlier, ask for less, or give the line a later `ready`.',
  bad: 'formula Quay Tin:\n  yield 20 pieces of 900 g\n  bread flour  100%\n  water  66%\n  salt  2%\n\nprocess:\n  bulk 2 h\n  proof 1 h\n  bake 40 min\n\nplan Friday:\n  ready 2026-05-15 06:00\n  begin 2026-05-15 03:00\n  Quay Tin  20 pieces\n',
  good: 'formula Quay Tin:\n  yield 20 pieces of 900 g\n  bread flour  100%\n  water  66%\n  salt  2%\n\nprocess:\n  bulk 2 h\n  proof 1 h\n  bake 40 min\n\nplan Friday:\n  ready 2026-05-15 06:00\n  begin 2026-05-15 01:00\n  Quay Tin  20 pieces\n',
  *check({ block, plan }) {
    if (block.top?.kind !== 'plan' || plan === undefined) return;
    for (const [index, { dough, lateMinutes, lateReason }] of plan.day.doughs.entries()) {
      if (!(lateMinutes > 0.5)) continue;
      const line = firstOf(elementAt(plan.formulas, index).lines);
      const seconds = Math.ceil(lateMinutes) * 60;
      const late = { name: dough.name, seconds };
      const said =
        lateReason === undefined
          ? message('not-ready-in-time.late', late)
          : message('not-ready-in-time.because', { ...late, reason: message(`late.${lateReason}`) });
      yield { line, span: wordsOf(block, line), message: said };
    }
  },
};
