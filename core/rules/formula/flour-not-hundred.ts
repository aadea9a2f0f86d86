import { sectionAt } from '../../syntax/line-place.ts';
import type { IngredientStatement } from '../../syntax/tree.ts';
import { lastOf } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { replaceFix, sectionBehindFix, writeFix } from '../engine/fixes.ts';
import type { Rule, RuleContext, RuleFix } from '../engine/rule.ts';
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
      const starch = starchUpTo(context, last.line, 1 - sum);
      if (starch !== undefined) {
        const said = message('flour-not-hundred.starch', {
          fraction: sum,
          name: starch.name.text,
          example: 'counts as flour',
        });
        const title = message('fix.define-ingredient', { name: starch.name.text });
        const own = `ingredient ${starch.name.text}:\n  like ${starch.name.text}\n  counts as flour`;
        const fix = sectionBehindFix(title, block, own);
        yield { line: last.line, span: last.span, message: said, related, fixes: [fix] };
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

/** `tapioca starch 20%` beside flours of 80 %, which many count with them; in the section of a line. `undefined` where no one starch fills it up. */
function starchUpTo({ block }: RuleContext, line: number, missing: number): IngredientStatement | undefined {
  const section = sectionAt(block, line);
  const lines = block.lines.slice((section?.headerLine ?? 0) + 1, section?.endLine ?? block.lines.length);
  return lines.flatMap(({ statement }) => {
    const isStarch = statement.kind === 'ingredient' && /\bstarch$|\bstarch \(/.test(statement.name.folded);
    const isRest =
      isStarch &&
      statement.amount.kind === 'fraction' &&
      Math.abs(statement.amount.fraction - missing) < 1e-6;
    return isRest ? [statement] : [];
  })[0];
}
