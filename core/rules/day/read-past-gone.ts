import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';

export const readPastGone: Rule = {
  code: 'read-past-gone',
  level: 'info',
  title: 'An experiment reads a dough that is broken down by then',
  explanation:
    'The dough is expected to be broken down when it is read. In an experiment that may be the very point: it shows what such a dough is like. ' +
    'It is information, and no warning.',
  bad: 'flour weak:\n  grain wheat\n  milling white\n  protein 9%\n\nformula Soft:\n  yield 10 kg\n  weak  100%\n  water  60%\n  salt  2%\n\nexperiment Too far:\n  dough Soft, in spiral, speed 2 for 30 min\n  read at 8 min, 30 min\n',
  good: 'flour weak:\n  grain wheat\n  milling white\n  protein 9%\n\nformula Soft:\n  yield 10 kg\n  weak  100%\n  water  60%\n  salt  2%\n\nexperiment Too far:\n  dough Soft, in spiral, speed 2 for 30 min\n  read at 2 min, 4 min\n',
  *check({ experiment }) {
    for (const dough of experiment?.doughs ?? []) {
      const first = dough.readings.find(({ expected }) => expected.known && expected.value.gone);
      const { programme } = dough;
      const after = programme.known ? programme.value.outcome.breakdownAfter : programme;
      if (first === undefined || !after.known) continue;
      yield {
        line: dough.line,
        span: { start: dough.name.start, end: dough.name.end },
        message: message('read-past-gone.gone', {
          name: dough.formula,
          minutes: first.minutes,
          lowMinutes: after.value.low,
          highMinutes: after.value.high,
        }),
      };
    }
  },
};
