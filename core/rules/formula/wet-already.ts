import { trimmed } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';
import { replaceFix } from '../engine/fixes.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule, RuleFix } from '../engine/rule.ts';
import { amountPlace, numberOf, ownProblems } from '../engine/rule-places.ts';

export const wetAlready: Rule = {
  code: 'wet-already',
  level: 'error',
  title: 'The other lines bring more water than the hydration asked for',
  explanation:
    '`to N% hydration` adds the water that is missing. Preferments, soakers or other lines bring more than that already, so less ' +
    'than nothing would have to be added. Ask for more, or use less of what is wet.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  to 30% hydration\n  poolish  120%\n\npreferment poolish:\n  bread flour  100%\n  water  100%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  to 68% hydration\n  poolish  60%\n\npreferment poolish:\n  bread flour  100%\n  water  100%\n',
  *check(context) {
    for (const problem of ownProblems(context.analysis, 'below-own-water')) {
      const { line, span, amount } = amountPlace(context, problem.lineId!);
      const own = numberOf(problem.values.ownFraction);
      const over = numberOf(problem.values.overGrams);
      const wanted = numberOf(problem.values.fraction) ?? 0;
      const isEffective = problem.values.effective === 'yes';
      const fixes: RuleFix[] = [];
      if (own !== undefined && amount?.kind === 'hydration') {
        const least = `to ${trimmed(Math.ceil(own * 1000) / 10, 1)}% ${isEffective ? 'effective hydration' : 'hydration'}`;
        fixes.push(replaceFix(message('wet-already.fix', { meant: least }), line, span, least));
      }
      const isSized = over !== undefined && context.analysis?.solved?.assumedScale !== true;
      const said = paragraph(
        already(own, wanted, isEffective),
        isSized ? message('wet-already.too-much', { grams: over }) : undefined,
        message('wet-already.help'),
      );
      yield { line, span, message: said, fixes };
    }
  },
};

/** What the other lines make already. */
function already(fraction: number | undefined, targetFraction: number, isEffective: boolean): Message {
  if (fraction === undefined)
    return message(isEffective ? 'wet-already.more-effective' : 'wet-already.more', { targetFraction });
  const code = isEffective ? 'wet-already.effective-hydration' : 'wet-already.hydration';
  return message(code, { fraction, targetFraction });
}
