import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import { linesFarTooMuch } from '../engine/ranges.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace } from '../engine/rule-places.ts';

export const farTooMuch: Rule = {
  code: 'far-too-much',
  level: 'warning',
  title: 'More than ten times the flour',
  explanation:
    'A percentage is of the flour of its section. Above 1000% it is most often a point left out or a weight in grams written with ' +
    'the wrong unit. Correct it; findings on ranges are silent until then.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  6500%\n  salt  2%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n',
  *check(context) {
    if (context.analysis === undefined) return;
    for (const { id, name, fraction } of linesFarTooMuch(context.analysis)) {
      const { line, span } = amountPlace(context, id);
      const hundredth = `${trimmed(fraction, 4)}%`;
      const grams = `${trimmed(fraction * 100, 4)} g`;
      yield {
        line,
        span,
        message: message('far-too-much.times', { name, fraction, choices: [hundredth, grams] }),
        fixes: [writeFix(line, span, hundredth, true), writeFix(line, span, grams)],
      };
    }
  },
};
