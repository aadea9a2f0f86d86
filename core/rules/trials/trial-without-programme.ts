import { trialsOf } from '../../analysis/trials.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleFix } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { keepsNothing, programmeEdits, trialsToKeep } from './kept-programme.ts';

export const trialWithoutProgramme: Rule = {
  code: 'trial-without-programme',
  level: 'hint',
  title: 'A trial does not state what was run',
  explanation:
    'A trial that keeps no programme of its own is read under the formula’s programme as it is now: change its minutes, and what the trial is measured ' +
    'against changes with them, and the calibration of the mixer too. Write into the trial what was run: `mixed in big spiral` or `mixed by hand`, then ' +
    'its `load`, `add`, `speed`, `rest`, `knead`, `fold` and `stir` lines. The fix writes the programme as it is now; where a reading lies past its end, ' +
    'something else was run, and only you know what. Whatever changes a programme for you, and whatever logs a reading, writes these lines of itself. Stop the mixer before a probe or a hand goes in.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n  speed 2 for 2 min\n\ntrial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 18 °C\n  end  24 °C, developing\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n  speed 2 for 2 min\n\ntrial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 18 °C\n  mixed in spiral\n' +
    '  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  end  24 °C, developing\n',
  *check({ analysis, block, scope }) {
    if (analysis === undefined) return;
    const without = trialsOf(analysis, scope).filter(keepsNothing);
    if (without.length === 0) return;
    const writable = trialsToKeep(analysis, scope);
    for (const { model } of without) {
      const fixes: RuleFix[] = [];
      if (writable.includes(model)) {
        const title = message('trial-without-programme.fix-this');
        fixes.push({ title, edits: programmeEdits(analysis, [model]), preferred: true });
        if (writable.length > 1)
          fixes.push({
            title: message('trial-without-programme.fix-all', { count: writable.length }),
            edits: programmeEdits(analysis, writable),
          });
      }
      yield {
        ...headerPlace(block, model.headerLine),
        message: message(fixes.length > 0 ? 'trial-without-programme.none' : 'trial-without-programme.write'),
        fixes,
      };
    }
  },
};
