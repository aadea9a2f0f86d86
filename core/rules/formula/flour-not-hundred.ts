import { lastOf } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { replaceFix, writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFix } from '../engine/rule.ts';
import { amountPlace, numberOf, ownProblems, relatedTo } from '../engine/rule-places.ts';
import { splitPercentFix } from './split-percent.ts';

export const flourNotHundred: Rule = {
  code: 'flour-not-hundred',
  level: 'error',
  title: 'The flours of a section do not make 100%',
  explanation:
    'Baker’s percent are of all the flour, so the flour lines of a section make 100% together. Correct one of them, or write ' +
    '`balance` on one: it then takes whatever is left.',
  bad: 'formula Quay Tin:\n  bread flour  80%\n  wholemeal wheat  15%\n  water  66%\n',
  good: 'formula Quay Tin:\n  bread flour  80%\n  wholemeal wheat  balance\n  water  66%\n',
  *check(context) {
    const { analysis, block } = context;
    let split: RuleFix | undefined;
    for (const problem of ownProblems(analysis, 'flour-not-hundred')) {
      const places = [problem, ...(problem.related ?? [])];
      const last = amountPlace(context, lastOf(places).lineId!);
      const sum = numberOf(problem.values.sumFraction) ?? 0;
      const onTop = numberOf(problem.values.gramsOnTop);
      const related = relatedTo(block, places.slice(0, -1), message('flour-not-hundred.other'));
      if (onTop !== undefined) {
        const said = message('flour-not-hundred.on-top', { fraction: sum, grams: onTop });
        yield { line: last.line, span: last.span, message: said, related };
        continue;
      }
      split ??= splitPercentFix(context);
      if (split !== undefined) {
        const said = message('flour-not-hundred.split', { fraction: sum });
        yield { line: last.line, span: last.span, message: said, related, fixes: [split] };
        continue;
      }
      const fixes: RuleFix[] = [];
      const { amount } = last;
      if (amount?.kind === 'fraction') {
        const others = sum - amount.fraction;
        const left = Math.max(0, 1 - others);
        const exact = `${trimmed(left * 100, 4)}%`;
        if (left > 1e-6) {
          const isAlone = places.length === 1;
          if (!isAlone)
            fixes.push(replaceFix(message('fix.write-balance'), last.line, last.span, 'balance', true));
          fixes.push(writeFix(last.line, last.span, exact, isAlone));
        }
      }
      const said = message(sum < 1 ? 'flour-not-hundred.short' : 'flour-not-hundred.above', {
        fraction: sum,
        apartFraction: Math.abs(sum - 1),
      });
      yield { line: last.line, span: last.span, message: said, related, fixes };
    }
  },
};
